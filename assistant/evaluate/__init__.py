"""The question corpus: what people ask, how it should be read, and how much of it is read that way."""
