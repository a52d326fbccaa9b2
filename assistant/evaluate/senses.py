"""What words mean, as numbers: words used alike lie near each other, so that one never met is weighed too.

The table is made by `assistant.evaluate.make_senses`; only the fit reads it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from assistant.knowledge.files import corpus_dir
from assistant.language.data import telling
from assistant.language.evidence import SENSE

FINE = 127  # steps that a number is kept in, each way
Table = NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class Senses:
    """`words` and their `table`, a row of numbers without unit for each."""

    words: tuple[str, ...]
    table: Table

    def of(self, rows: Iterable[Mapping[str, float]]) -> Table:
        """The senses of each row of traits, summed as much as each counts."""
        at = {f"{SENSE} {word}": i for i, word in enumerate(self.words)}
        return np.array([self._sum({at[t]: much for t, much in row.items() if t in at}) for row in rows])

    def _sum(self, much: Mapping[int, float]) -> Table:
        return np.asarray([*much.values()], "float32") @ self.table[[*much]] if much else 0 * self.table[0]


def shipped_senses() -> Path:
    """The table of a checkout."""
    return corpus_dir() / "fitting" / "word-senses.npz"


def read_senses(file: Path | None = None) -> Senses:
    """The table of a file, the shipped one by default. Raises KnowledgeError for a broken one."""
    path = file or shipped_senses()
    with telling(path), np.load(path, allow_pickle=False) as found:
        words = bytes(found["words"]).decode("utf-8").split()
        table = found["table"].astype("float32") * found["unit"].astype("float32")[:, None]
    return Senses(tuple(words), table)


def write_senses(senses: Senses, file: Path) -> None:
    """Writes a table, each row in steps of its own largest number."""
    unit = np.maximum(abs(senses.table).max(axis=1), 1e-9) / FINE
    table = np.round(senses.table / unit[:, None]).astype("int8")
    words = np.frombuffer(" ".join(senses.words).encode("utf-8"), "uint8")
    np.savez_compressed(file, words=words, table=table, unit=unit.astype("float32"))
