"""What words speak for by what they mean, be they in no question that was ever learnt from."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from pathlib import Path
from zipfile import BadZipFile

import numpy as np
from numpy.typing import NDArray

from assistant.language.data import telling

FINE = 127  # steps that a weight is kept in, each way
Row = NDArray[np.float64]


class Meanings:
    """Words in order, and for each a row of weights by intent, in steps of `unit` log odds."""

    def __init__(self, words: NDArray[np.bytes_], table: NDArray[np.int8], unit: float) -> None:
        self.words, self.table, self.unit = words, table, unit

    def of(self, word: str) -> Row | None:
        """The weights of a word, None where it is not in the table."""
        sought = word.encode("utf-8")
        at = bisect_left(self.words, sought)
        if at == len(self.words) or self.words[at] != sought:
            return None
        return np.asarray(self.table[at] * self.unit, np.float64)


def none(intents: int) -> Meanings:
    """The table that holds no word."""
    return Meanings(np.array([], "S1"), np.zeros((0, intents), "int8"), 1.0)


def stepped(words: Sequence[str], table: Row) -> Meanings:
    """The table of some words in order, each weight the nearest step."""
    unit = float(np.abs(table).max()) / FINE
    return Meanings(np.array([w.encode("utf-8") for w in words]), np.round(table / unit).astype("int8"), unit)


def read_meanings(file: Path, intents: int) -> Meanings:
    """The table of a file for so many intents. Raises KnowledgeError for a broken one."""
    with telling(file):
        try:
            with np.load(file, allow_pickle=False) as found:
                words, table, unit = found["words"], found["table"], float(found["unit"])
        except (BadZipFile, EOFError) as error:
            raise ValueError(str(error)) from error
        if table.shape != (len(words), intents):
            raise ValueError(f"it holds {table.shape} weights, not {len(words)} rows of {intents}")
        return Meanings(words, table, unit)


def write_meanings(meanings: Meanings, file: Path) -> None:
    """Writes a table."""
    np.savez(file, words=meanings.words, table=meanings.table, unit=meanings.unit)
