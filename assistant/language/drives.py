"""`Kate isn't driving any more, Jo is`: who drives and who drives no more, each part of its own guest."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import fold
from assistant.language.retold import CONTINUES, either, first_hand

MOST_CALLED = 3
ON, OFF = ("on", "same"), ("off", "other", "not")
SURE, LEANS = ("on", "off"), ("same", "other", "not")  # the latter only say something beside the former


@dataclass(frozen=True, slots=True)
class Drives:
    """The guests who drive and who do not, as typed; `rest`: the parts that tell of something else.

    `changes`: whether more is told than who drives.
    """

    on: tuple[str, ...]
    off: tuple[str, ...]
    rest: tuple[str, ...] = ()
    changes: bool = False


@dataclass(frozen=True, slots=True)
class _Words:
    """The turns of the table `drives` of corpus/language/guests.toml."""

    kinds: Mapping[str, re.Pattern[str]]
    parts: re.Pattern[str]
    lead: re.Pattern[str]
    she: frozenset[str]
    no_name: frozenset[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> _Words:
        """The turns of the file. Raises KeyError for a key that is missing."""
        table = tables["drives"]
        she = frozenset(table["she"])
        no_name = frozenset((*tables["retold"]["no_name"], *table["leads"], *tables["nobody"]["words"]))
        ends = rf"[,;.!:](?:\s|$)|\s(?={either((*table['links'], *table['for']))}\s)"
        leads = rf"(?:{either(table['leads'])}(?:\s|$)){{1,4}}"
        every = frozenset(tables["things"]["words"])
        return cls(_kinds(tables), _pattern(ends), _pattern(leads), she, (no_name | every) - she)


def _kinds(tables: Mapping[str, Any]) -> dict[str, re.Pattern[str]]:
    """What is told in a part, by what stands behind a guest, or, with `not`, before one."""
    table = tables["drives"]
    kin, name = either(tables["named"]["kin"]), r"[^\W\d]\w{0,30}"
    who = rf"(?P<who>{either(table['whose'])}\s{kin}(?:\s{name})?|{name})"
    tail, small = rf"(?:\s{either(table['tails'])}){{0,3}}", rf"(?:{either(table['a'])}\s)?"
    rides = rf"{either(table['rides'])}\s{small}{either(table['ride'])}"
    turns = {kind: either(table[kind]) for kind in ("on", "same", "other", "beside")}
    turns["off"] = rf"(?:{either(table['off'])}|{rides})"
    alone = {"off": rf"(?:{who}(?:\s|(?=')))?{turns['off']}{tail}"}  # `..., getting a cab`
    kinds = {
        kind: _pattern(alone.get(kind, rf"{who}(?:\s|(?=')){turn}{tail}")) for kind, turn in turns.items()
    }
    return {**kinds, "not": _pattern(rf"{either(table['not'])}\s{who}{tail}")}


def _pattern(line: str) -> re.Pattern[str]:
    return re.compile(line, re.IGNORECASE)


@lru_cache(maxsize=1)
def _words() -> _Words:
    """The shipped turns. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", _Words.of)


def drives_told(typed: str) -> Drives | None:
    """Who drives and who does not after a line; None where it tells of no driving, or not of whom."""
    told = list(_told(typed.replace("’", "'").strip()))
    kinds = [kind for kind, _ in told]
    if not any(kind in SURE for kind in kinds) or any(not who for _, who in told):
        return None
    on, off = ([who for kind, who in told if kind in wanted] for wanted in (ON, OFF))
    rest = tuple(who for kind, who in told if kind == "rest")
    changes = bool(off) or any(kind in LEANS for kind in kinds)
    return Drives(tuple(dict.fromkeys(on)), tuple(dict.fromkeys(off)), rest, changes)


def _told(typed: str) -> Iterator[tuple[str, str]]:
    """What each part tells, and of whom; names alone go with the part behind them."""
    words, before, waiting = _words(), "", list[str]()
    for part in filter(None, map(_bare, words.parts.split(typed))):
        kind, who = _heard(part)
        if not kind and _is_name(part):
            waiting.append(part)
            continue
        who = before if fold(who) in words.she else who
        yield from ((kind or "rest", one) for one in (*waiting, who if kind else part))
        before, waiting = (who if kind else before), []
    yield from (("rest", one) for one in waiting)


def _bare(part: str) -> str:
    """A part without what only opens it (`no wait`), first hand."""
    led = _words().lead.match(part.strip())
    return first_hand(part.strip()[led.end() if led else 0 :])


def _heard(part: str) -> tuple[str, str]:
    """The kind of a part and the guest it tells of; empty where it tells of no driving."""
    for kind, pattern in _words().kinds.items():
        found = pattern.fullmatch(part)
        who = (found["who"] or min(_words().she)) if found else ""
        if who and (_is_name(who) or fold(who) in _words().she):
            return kind, who
    return "", ""


def _is_name(said: str) -> bool:
    """Whether a guest may be called so: a word that is none of those that no name is."""
    word = fold(said.split()[-1])
    names = word not in _words().no_name | _words().she and not word.endswith(CONTINUES)
    return names and word.isalpha() and len(said.split()) <= MOST_CALLED
