"""The table as it is told in talk: what is put on it, taken off, swapped, poured and paid for."""
