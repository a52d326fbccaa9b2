"""`toms asking`, `sams had some`: the names of tonight's guests, typed without an apostrophe."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache, partial
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import fold, key
from assistant.language.guest_named import has_name
from assistant.language.guests import Asked, guest_words
from assistant.language.lexicon import Lexicon


@dataclass(frozen=True, slots=True)
class Joined:
    """The table `name_s` of corpus/language/guests.toml: what goes on with `is`, and what with `has`."""

    be: frozenset[str]
    have: frozenset[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> Joined:
        """The words of the file. Raises KeyError for a key that is missing."""
        return cls(*(frozenset(tables["name_s"][key]) for key in ("be", "have")))


@lru_cache(maxsize=1)
def _joined() -> Joined:
    """The shipped words. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", Joined.of)


def as_spelt(typed: str, needs: Iterable[Asked], lexicon: Lexicon) -> str:
    """The text with the names of guests told of set apart from what was run on to them.

    Not where the name is a food's as well: `olives` are olives, though Olive is a guest.
    """
    guests = {one.guest for one in needs if has_name(one.guest) and one.guest.isalpha()}
    for name in sorted(guests):
        if not _is_food(name, lexicon):
            pattern = rf"\b{re.escape(name)}['’]?s\b(?P<rest>\s+(?P<next>[\w'’]+)(?=\s+(?P<then>\w+))?)?"
            typed = re.sub(pattern, partial(_apart, name), typed, flags=re.IGNORECASE)
    return typed


def _is_food(name: str, lexicon: Lexicon) -> bool:
    labels = (lexicon.name(one).label for one in lexicon.find(name))
    return any(key(label)[-1:] == key(name) for label in labels)


def _apart(name: str, found: re.Match[str]) -> str:
    known, next_, rest = _joined(), (found["next"] or "").lower(), found["rest"] or ""
    if fold(found["then"] or "") in guest_words().kin:  # `Yusuf's pregnant wife` is another guest
        return f"{name}'s{rest}"
    if next_ in known.be or (next_.endswith("ing") and len(next_) > 4):
        return f"{name} is{rest}"
    return f"{name} has{rest}" if next_ in known.have else f"{name}'s{rest}"
