"""TOML files of the corpus -> records. Anybody may edit them, so what is wrong is told in a sentence."""

from __future__ import annotations

import re
import tomllib
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any

from assistant.evaluate.corpus import Corpus, Dialogue, Question, Refusal, Turn, intents
from assistant.knowledge.files import corpus_dir
from assistant.knowledge.problems import KnowledgeError, Problem
from assistant.language.data import telling
from assistant.notebook.reading import read_bytes

FOLDERS = ("questions", "dialogues", "refusals")
LARGEST = 20_000_000
TABLES = ("question", "dialogue", "refusal")
LISTS = ("foods", "methods", "wines", "limits", "terms", "wishes", "unknown")
TURN_LISTS = ("present", "absent", "wines", "limits", "no_limits", "also")
Row = Mapping[str, Any]


class _RowError(Exception):
    """What is wrong with a row, and the remedy."""


def shipped_files() -> list[Path]:
    """The files of the shipped corpus, in a fixed order."""
    return [file for name in FOLDERS for file in sorted((corpus_dir() / name).glob("*.toml"))]


def read_corpus(files: Sequence[Path] = ()) -> Corpus:
    """The corpus in these files, the shipped one by default.

    Raises KnowledgeError with one problem for each file that cannot be used, and for ids used twice.
    """
    corpus, problems = Corpus(), []
    for file in files or shipped_files():
        try:
            corpus += _read(file)
        except KnowledgeError as error:
            problems += error.problems
    twice = [i for i, times in Counter(corpus.ids()).items() if times > 1]
    problems += [
        Problem(i, "stands for more than one question.", "Give each an id of its own.") for i in twice
    ]
    if problems:
        raise KnowledgeError(problems)
    return corpus


def _read(file: Path) -> Corpus:
    with telling(file):
        text = read_bytes(file, LARGEST).decode("utf-8")
        tables = tomllib.loads(text)
        try:
            return _corpus(tables)
        except _RowError as wrong:
            what, remedy, mark = wrong.args
            source = f"{file.parent.name}/{file.name}"
            raise KnowledgeError([Problem(source, what, remedy, _line(text, mark))]) from None


def _line(text: str, mark: str) -> int | None:
    """The line on which the id, question or key in doubt stands."""
    found = re.search(re.escape(mark), text) if mark else None
    return text.count("\n", 0, found.start()) + 1 if found else None


def _corpus(tables: Row) -> Corpus:
    if not any(tables.get(name) for name in TABLES):
        raise _RowError("holds no [[question]], [[dialogue]] or [[refusal]].", "See corpus/README.md.", "")
    _only(tables, ("intent", *TABLES), "")
    return Corpus(
        tuple(_question(row, tables.get("intent")) for row in _rows(tables, "question")),
        tuple(_dialogue(row) for row in _rows(tables, "dialogue")),
        tuple(_refusal(row) for row in _rows(tables, "refusal")),
    )


def _rows(tables: Row, name: str) -> list[Row]:
    rows = tables.get(name, [])
    if not isinstance(rows, list) or not all(isinstance(row, dict) for row in rows):
        raise _RowError(f"{name} is no list of tables.", f"Write [[{name}]] above each.", name)
    return rows


def _question(row: Row, intent: str | None) -> Question:
    _only(row, ("id", "ask", "intent", "pass", *LISTS), _mark(row))
    lists = {name: _names(row, name) for name in LISTS}
    asked = _text(row, "intent") if "intent" in row or intent is None else intent
    return Question(_text(row, "id"), _text(row, "ask"), _intent(asked, row), _text(row, "pass"), **lists)


def _dialogue(row: Row) -> Dialogue:
    _only(row, ("id", "pass", "turn"), _mark(row))
    turns = tuple(_turn(turn) for turn in _rows(row, "turn"))
    if not turns:
        raise _RowError(f"{_mark(row)} has no turns.", "Write [[dialogue.turn]] for each.", _mark(row))
    return Dialogue(_text(row, "id"), _text(row, "pass"), turns)


def _turn(row: Row) -> Turn:
    _only(row, ("ask", "intent", "pick", "fresh", *TURN_LISTS), _mark(row))
    lists = {name: _names(row, name) for name in TURN_LISTS}
    for name in lists["also"]:
        _intent(name, row)
    pick, fresh = row.get("pick"), row.get("fresh", False)
    if pick is not None and (type(pick) is not int or pick < 1):
        raise _RowError(f"{pick!r} is no place in a list.", "Write pick = 2 for the second.", _mark(row))
    if type(fresh) is not bool:
        raise _RowError(f"{fresh!r} is neither true nor false.", "Write fresh = true.", _mark(row))
    return Turn(_text(row, "ask"), _intent(_text(row, "intent"), row), pick=pick, fresh=fresh, **lists)


def _refusal(row: Row) -> Refusal:
    _only(row, ("id", "ask", "about"), _mark(row))
    return Refusal(_text(row, "id"), _text(row, "ask"), _text(row, "about"))


def _mark(row: Row) -> str:
    return str(row.get("id") or row.get("ask") or "")


def _only(row: Row, known: Iterable[str], mark: str) -> None:
    odd = next((name for name in row if name not in known), None)
    if odd is not None:
        where = f"{mark}: " if mark else ""
        raise _RowError(f"{where}nothing is called {odd!r} here.", f"Use {', '.join(known)}.", mark or odd)


def _text(row: Row, name: str) -> str:
    value = row.get(name)
    if not isinstance(value, str) or not value.strip():
        mark = _mark(row)
        raise _RowError(f"{mark or 'a row'} has no {name}.", f'Write {name} = "...".', mark)
    return value


def _intent(name: str, row: Row) -> str:
    if name not in intents():
        raise _RowError(f"{name!r} is no intent.", f"Use one of {', '.join(sorted(intents()))}.", _mark(row))
    return name


def _names(row: Row, name: str) -> tuple[str, ...]:
    value = row.get(name, [])
    if not isinstance(value, list) or not all(isinstance(v, str) and v for v in value):
        raise _RowError(f"{_mark(row)}: {name} is no list of words.", f'Write {name} = ["..."].', _mark(row))
    return tuple(value)
