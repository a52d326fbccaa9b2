"""From a frame to an answer: a record first, its words second."""
