"""The numbers of an evening, kept with source and basis in ontology/evening/*.toml."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from assistant.answers.wording import Wording
from assistant.knowledge.concepts import Amount
from assistant.knowledge.files import corpus_dir, ontology_dir
from assistant.language.data import read_data, telling

Row = Mapping[str, Any]
HAIR = 1e-9  # what floating point adds to a whole number


def file_of(name: str) -> Path:
    """Where the numbers of this name lie."""
    return ontology_dir() / "evening" / f"{name}.toml"


@lru_cache
def tables(name: str) -> Row:
    """The tables of a file of numbers. Raises KnowledgeError where it cannot be read."""
    return read_data(file_of(name), dict)


def rows(name: str, table: str) -> list[Row]:
    """The rows of a list of tables. Raises KnowledgeError where there is none."""
    with telling(file_of(name)):
        return list(tables(name)[table])


def fact(name: str, section: str, key: str) -> Amount:
    """One number with its range; its unit stands in the file. Raises KnowledgeError."""
    with telling(file_of(name)):
        return amount(tables(name)[section][key])


def amount(row: Row) -> Amount:
    """A number from its row. Raises KeyError where a part is missing."""
    return Amount(row["low"], row["typical"], row["high"], row["basis"], row["source"])


@lru_cache
def wording() -> Wording:
    """The sentences of a plan."""
    return Wording(corpus_dir() / "planning" / "wording.toml")
