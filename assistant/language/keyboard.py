"""Which keys lie beside each other, so that a finger slips from one to the other."""

from __future__ import annotations

_KEYS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")


def are_neighbours(one: str, other: str) -> bool:
    """Whether the keys of two letters touch each other."""
    places = [(row, keys.index(c)) for c in (one, other) for row, keys in enumerate(_KEYS) if c in keys]
    if len(places) < 2:
        return False
    (row, column), (row2, column2) = places
    return abs(row - row2) <= 1 and -1 <= (column - column2) * (1 if row >= row2 else -1) <= 1
