"""The printed sheets of an evening: from the record of a plan to one HTML file."""
