"""`number two`, `wine 3`, `the second one`: a wine of the table called by its place in pouring order."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import fold
from assistant.language.follow_words import follow_words
from assistant.language.quantities import numbers
from assistant.language.standing import wines_of
from assistant.pairing.flight import pour_order
from assistant.table.pointed import pointed_at

if TYPE_CHECKING:
    from assistant.language.standing import Talk
    from assistant.pairing.engine import Engine
    from assistant.session import Session

NOT_PLACED = ("pour-order", "undo")
"""Asked for these, `the last one` is no wine of the table: it is the order, or what was done last."""
_NUMBER = r"\w{1,8}"


@lru_cache(maxsize=1)
def number_patterns() -> tuple[re.Pattern[str], ...]:
    """Names with one number, names with two, and names with a place in words."""
    return read_data(corpus_dir() / "language" / "by-number.toml", _read)


def _read(tables: Mapping[str, Any]) -> tuple[re.Pattern[str], ...]:
    said = {name: "|".join(map(re.escape, words)) for name, words in tables["words"].items()}
    behind = rf"(?!\w|[.,:/]\d|\s?[%€£$:=]|\s(?:{said['counted']}|{said['told']})\b)"
    lead = rf"(?:(?:{said['wine']})\s(?:(?:{said['number']})\s)?|(?:{said['number']})\s)"
    one = rf"(?<!\w)(?P<lead>){lead}({_NUMBER}){behind}"
    ends = rf"(?=\s?(?:$|[,.?!;])|\s(?:{said['ends']})\b)"
    first = rf"\b(?:(?:{said['several']})|(?P<lead>{said['between']}))\s({_NUMBER})"
    two = rf"{first}\s(?:{said['links']})\s({_NUMBER}){ends}"
    placed = rf"(?P<lead>)\bthe\s({_NUMBER})\s(?:{said['one']})\b(?!\s(?:{said['told']})\b)"
    return tuple(re.compile(pattern, re.IGNORECASE) for pattern in (one, two, placed))


def in_pouring_order(wines: Sequence[str], engine: Engine) -> tuple[str, ...]:
    """The wines of a table, the one that is poured first in front."""
    glasses = [engine.glasses[wine] for wine in wines]
    return tuple(glass.wine for glass in pour_order(glasses, engine.knowledge.constants)) if glasses else ()


def by_number(typed: str, session: Session) -> dict[str, str]:
    """Each such name in a text, and what is pointed back at, with what it means.

    `The second one` of a list just shown is none.
    """
    wines = session.tonight.wines
    one, two, placed = number_patterns()
    found = [match for pattern in (one, two) for match in pattern.finditer(typed)] if wines else []
    places = list(placed.finditer(typed)) if wines and not _of_list(wines, session.talk) else []
    if places and session.parser.parse(typed).intent not in NOT_PLACED:
        found += places
    order = in_pouring_order(wines, session.engine) if found else ()
    meant = ((match[0], _meant(match, order, session.engine)) for match in found)
    return {**{name: label for name, label in meant if label}, **pointed_at(typed, session)}


def _of_list(wines: Sequence[str], talk: Talk | None) -> bool:
    """Whether the last answer named several wines that are not all poured."""
    listed = wines_of(talk.picks) if talk else ()
    return len(listed) > 1 and not set(listed) <= set(wines)


def _meant(match: re.Match[str], order: Sequence[str], engine: Engine) -> str:
    """What was found with labels in place of numbers, or an empty text where there is no such place."""
    first = 2
    spans = [match.span(group) for group in range(first, match.re.groups + 1)]
    ordinal = match.re is number_patterns()[-1]
    labels = [_label(match.string[start:end], order, engine, ordinal) for start, end in spans]
    if not all(labels):
        return ""
    between = match.string[spans[0][1] : spans[1][0]] if len(spans) > 1 else ""
    lead = f"{match['lead']} " if match["lead"] else ""
    return lead + between.join(labels)


def _label(word: str, order: Sequence[str], engine: Engine, ordinal: bool) -> str:
    """The wine at the place that a number tells, or a place in words; else an empty text."""
    told = numbers((fold(word),))
    value = told[0][2] if told else 0.0
    at = int(value) if 0 < value <= len(order) else 0
    at = at or (follow_words().places.get(fold(word), 0) if ordinal else 0)
    meant = order[at - 1 : at] if at > 0 else order[-1:] if at else ()
    return engine.knowledge.label(meant[0]) if meant else ""
