"""`toms asking`, `sams had some`: the names of tonight's guests, typed without an apostrophe."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache, partial

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import key
from assistant.language.guest_named import has_name
from assistant.language.guests import Asked
from assistant.language.lexicon import Lexicon


@lru_cache(maxsize=1)
def _runs_on() -> tuple[frozenset[str], str, frozenset[str], str]:
    """Words that go on with `is` and with `has`, and those two. Raises KnowledgeError for a broken file."""

    def of(tables: dict[str, dict[str, list[str]]]) -> tuple[frozenset[str], str, frozenset[str], str]:
        table = tables["name_s"]
        return (frozenset(table["be"]), table["is"][0], frozenset(table["have"]), table["has"][0])

    return read_data(corpus_dir() / "language" / "guests.toml", of)


def as_spelt(typed: str, needs: Iterable[Asked], lexicon: Lexicon) -> str:
    """The text with the names of guests told of set apart from what was run on to them.

    Not where the name is a food's as well: `olives` are olives, though Olive is a guest.
    """
    guests = {one.guest for one in needs if has_name(one.guest) and one.guest.isalpha()}
    for name in sorted(guests):
        if not _is_food(name, lexicon):
            pattern = rf"\b{re.escape(name)}['’]?s\b(?P<rest>\s+(?P<next>[\w'’]+))?"
            typed = re.sub(pattern, partial(_apart, name), typed, flags=re.IGNORECASE)
    return typed


def _is_food(name: str, lexicon: Lexicon) -> bool:
    labels = (lexicon.name(one).label for one in lexicon.find(name))
    return any(key(label)[-1:] == key(name) for label in labels)


def _apart(name: str, found: re.Match[str]) -> str:
    be, is_, have, has = _runs_on()
    next_, rest = (found["next"] or "").lower(), found["rest"] or ""
    if next_ in be or (next_.endswith("ing") and len(next_) > 4):
        return f"{name} {is_}{rest}"
    return f"{name} {has}{rest}" if next_ in have else f"{name}'s{rest}"
