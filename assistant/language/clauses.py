"""`Sarah is pregnant. Tom and Mo are driving`: a line in its sentences and clauses, each of its guest."""

from __future__ import annotations

import re
from functools import lru_cache

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.retold import either

# A short word before a full stop is an initial or an abbreviation (`R. is vegan`, `St. Émilion`).
_END = r"(?<=\w{3})[.!]"
_STOP = re.compile(rf"(?:{_END}|(?<=\w{{3}}):)\s++")  # `we are nine: Kate and Jo are driving`
_PIECES = re.compile(rf"((?<!\s)\s*+(?:[,;]|{_END})\s++(?:and\s++)?+|(?<!\s)\s++and\s++)", re.IGNORECASE)
_LINK = re.compile(r"((?:(?<!\s)\s++)?+[,;]\s*+(?:and\s++)?|(?<!\s)\s++and\s++)")
_TOO = re.compile(r"(?<=\w)(?:,?\s(?:too|also|as well|either))?[ .!,;]*+$", re.IGNORECASE)
_JUST = re.compile(r"^(?:(?:just|actually|really|now|both|all|apparently)\s)+(?=\w)", re.IGNORECASE)
_NAME = re.compile(r"(?<![\w-])[^\W\d][\w-]*+")
_ONE = re.compile(rf"(?:(?:my|our|his|her|their)\s(?:\w{{1,20}}\s){{0,2}}?)?{_NAME.pattern}", re.IGNORECASE)
FEWEST_TOLD = 4


@lru_cache(maxsize=1)
def _several() -> re.Pattern[str]:
    """A last name with what is told of several guests. Raises KnowledgeError for a broken file."""
    verbs, alone = read_data(
        corpus_dir() / "language" / "guests.toml",
        lambda tables: [either(tables["retold"][key]) for key in ("of_several", "several_do")],
    )
    return re.compile(rf"{_ONE.pattern}\s(?P<told>{verbs}\s.+|{alone}[ .!]*)", re.IGNORECASE)


@lru_cache(maxsize=1)
def _words() -> tuple[frozenset[str], frozenset[str]]:
    """The words for an allergy, and those behind a name of whom no need is told. Raises KnowledgeError."""
    return read_data(
        corpus_dir() / "language" / "guests.toml",
        lambda tables: (
            frozenset(tables["asks"]["allergic"]),
            frozenset((*tables["named"]["does"], *tables["retold"]["who"])),
        ),
    )


def without_too(need: str) -> str:
    """What is told of a guest, without that another is so too, or only so (`just veggie`, `both vegan`)."""
    return _JUST.sub("", _TOO.sub("", need))


def again_allergic(link: str, part: str) -> bool:
    """Whether a part only says again that the need before it is an allergy (`no nuts, allergic`)."""
    words = part.lower().split()
    return bool(link) and len(words) < FEWEST_TOLD and not _words()[0].isdisjoint(words)


def of_another(part: str) -> bool:
    """Whether a part tells of somebody else, but no need (`Marcus he just hates oak`)."""
    return not _words()[1].isdisjoint(part.lower().split()[1:2])


def pieces(typed: str) -> list[str]:
    """What stands between commas, stops and `and`, and between each two of them the link as typed."""
    return _PIECES.split(typed)


def sentences(typed: str) -> list[str]:
    """The sentences of a line; an initial ends none."""
    return [part for part in _STOP.split(typed) if part.strip()] or [typed]


def clauses(typed: str) -> list[tuple[str, str]]:
    """The parts between commas and `and`, each behind its link (empty for the first).

    What is told of several guests (`Tom and Mo are driving`) is told of each.
    """
    pieces = _LINK.split(typed)
    parts = [("", pieces[0]), *zip(pieces[1::2], pieces[2::2], strict=True)]
    for at, (_, part) in enumerate(parts):
        told = _several().fullmatch(part.strip())
        for before in _names_before(at, parts) if told else ():
            link, name = parts[before]
            parts[before] = (link, f"{name.strip()} {told['told']}" if told else name)
    return [row for row in parts if not _host().match(row[1].strip())]


@lru_cache(maxsize=1)
def _host() -> re.Pattern[str]:
    """That whoever speaks drinks nothing, and no more. Raises KnowledgeError for a broken file."""
    said = read_data(corpus_dir() / "language" / "guests.toml", lambda tables: either(tables["own"]["host"]))
    return re.compile(
        rf"^(?:and\s|but\s|me,?\s)?{said}(?:\s(?:tonight|myself|though))?[ .!]*$", re.IGNORECASE
    )


def _names_before(at: int, parts: list[tuple[str, str]]) -> range:
    """Where the names stand that go with a clause: all that open the line, else those written as names."""
    first = at
    while first and _ONE.fullmatch(parts[first - 1][1].strip()):
        first -= 1
    while first and first < at and not parts[first][1].strip()[0].isupper():
        first += 1
    return range(first, at)
