"""`It's not Ann who's pregnant, it's Kay`, `Ann isn't pregnant`, `forget Ann`: what was told is corrected."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.drives import drives_told
from assistant.language.fold import fold, key
from assistant.language.frame import Text
from assistant.language.guest_named import has_name, own_name
from assistant.language.guests import Asked
from assistant.language.own_needs import own_words
from assistant.language.retold import either

OFF, ON = (rf"(?P<{name}>(?<!\w)[^\W\d]\w{{0,30}})" for name in ("off", "on"))
NEED = r"(?P<need>[^,;.]{1,40}?)"
END = r"[ .!]*$"


@dataclass(frozen=True, slots=True)
class Corrected:
    """The guest `off` whom the need is taken, as called before; `on`: who has it; `goes`: with all needs;
    `names`: who had no name gets one; `rest`: what is told behind it;
    `one`: a guest without a name who goes."""

    off: str
    on: str = ""
    need: str = ""
    goes: bool = False
    names: bool = False
    rest: str = ""
    one: Asked | None = None


@dataclass(frozen=True, slots=True)
class CorrectedWords:
    """The turns of the table `corrected` of corpus/language/guests.toml."""

    moves: tuple[re.Pattern[str], ...]
    goes: tuple[re.Pattern[str], ...]
    nameless: tuple[re.Pattern[str], ...]
    named: re.Pattern[str]
    taken: re.Pattern[str]
    isnt: re.Pattern[str]
    no_name: frozenset[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> CorrectedWords:
        """The turns of the file. Raises KeyError for a key that is missing."""
        table = {name: either(words) for name, words in tables["corrected"].items()}
        is_not, it_is, meant, who, isnt, has = (
            table[name] for name in ("is_not", "it_is", "meant", "who", "isnt", "has")
        )
        doubles = rf"(?:\s{table['doubles']}){{0,3}}"
        link = rf"[,;.]?\s(?:(?:but|and|{it_is})\s){{0,2}}"
        then = rf"(?:\s{either(tables['drives']['tails'])})*"  # `isn't vegan any more, Kay is`
        moves = (
            rf"(?<!\w){is_not}\s{OFF}\s{who}\s{NEED}{link}{ON}(?:{has})?{END}",
            rf"(?<!\w){it_is}\s{ON}\s?{who}\s{NEED}[,;.]?\s(?:and\s)?{is_not}\s(?:\w{{1,30}}[.]?\s)?{OFF}{END}",
            rf"(?<!\w){is_not}\s{OFF}{link}{ON}\s?{who}\s{NEED}{END}",
            rf"{OFF}{isnt}{doubles}\s{NEED}{then}{link}{ON}(?:{has}){END}",
            rf"(?<!\w){meant}\s{ON},?\s(?:and\s)?not\s{OFF}{END}",
            rf"(?<!\w){is_not}\s{OFF}[,;.]?\s(?:but\s|{meant}\s){ON}{END}",
        )
        kin = either(tables["named"]["kin"])
        goes = (
            rf"^(?:{table['opens']}\s){{0,3}}{table['goes']}\s(?:(?:my\s|our\s)?{kin}\s)?{OFF}(?:[,;.]?\s{table['goes_behind']})?{END}",
            rf"^(?:{table['opens']}\s){{0,3}}{table['takes']}\s{OFF}\s{table['goes_behind']}{END}",
            rf"^(?:{table['opens']}\s){{0,3}}{OFF}(?:{isnt}\s{table['guest']}|\sis\sno\sguest)\b",
        )
        kind, need = rf"(?:guest|{table['nameless']})", r"(?P<need>[^,;.]{1,40}?)"
        so = r"(?P<so>[^,;.]{1,40}?)"
        one = rf"(?:the|that|this|our|my)\s(?:{kind}(?:\s{table['nameless_who']}\s{need})?|{so}\s{kind})"
        nameless = (
            rf"^(?:{table['opens']}\s){{0,3}}{table['goes']}\s{one}(?:[,;.]?\s{table['goes_behind']})?{END}",
            rf"^(?:{table['opens']}\s){{0,3}}{table['takes']}\s{one}\s{table['goes_behind']}{END}",
        )
        takes = either([*tables["corrected"]["takes"], *tables["corrected"]["goes"]])
        taken = (
            rf"^(?:{table['opens']}\s){{0,3}}{takes}\s(?:(?:the|that)\s)?{NEED}"
            rf"\s(?:off|from|away from|for)\s{OFF}{END}"
        )
        return cls(
            _patterns(moves),
            _patterns(goes),
            _patterns(nameless),
            _patterns((rf"^(?:{table['opens']}\s){{0,3}}{table['named']}\s{ON}{END}",))[0],
            _patterns((taken,))[0],
            _patterns((rf"{OFF}{isnt}{doubles}\s(?P<need>[^,;.]{{1,40}})",))[0],
            frozenset((*tables["retold"]["no_name"], *tables["corrected"]["no_name"])),
        )


def _patterns(lines: Sequence[str]) -> tuple[re.Pattern[str], ...]:
    return tuple(re.compile(line, re.IGNORECASE) for line in lines)


@lru_cache(maxsize=1)
def _words() -> CorrectedWords:
    """The shipped turns. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", CorrectedWords.of)


def corrected(text: Text, needs: Sequence[Asked], spoken: Sequence[str] = ()) -> Corrected | None:
    """What is corrected of a guest with needs; None for any other text.

    `spoken`: whom `she` and `he` mean.
    """
    words, said = _words(), text.typed.replace("’", "'").strip()
    for pattern in words.moves:
        found = pattern.search(said)
        if found and (off := _known(found["off"], needs)):
            return Corrected(off, found["on"], (found.groupdict().get("need") or "").strip())
    named = words.named.search(said) if needs and not text.readings else None
    if named and _nameless(needs[-1].guest) and fold(named["on"]) not in words.no_name:
        return Corrected(needs[-1].guest, named["on"], names=True)
    if one := _one_meant(said, needs):
        return Corrected(one.guest, goes=True, one=one)
    for pattern in words.goes:
        found = pattern.search(said)
        if found and (off := _known(found["off"], needs)):
            return Corrected(off, goes=True)
    found = words.taken.search(said) or words.isnt.search(said)
    off = _known(found["off"], needs) or _meant(found["off"], spoken) if found and "?" not in said else ""
    rest = said[found.end() :].strip(" ,;.") if found and "?" not in said else ""
    return Corrected(off, need=found["need"].strip(), rest=rest) if (off or rest) and found else None


def _one_meant(said: str, needs: Sequence[Asked]) -> Asked | None:
    """The guest without a name who is said to go, by the need said or as the last told of."""
    found = next(filter(None, (pattern.search(said) for pattern in _words().nameless)), None)
    wanted = set(key(found["need"] or found["so"] or "")) if found else set()
    some = [one for one in needs if found and _nameless(one.guest) and wanted <= set(key(one.need))]
    return some[-1] if some else None


def _nameless(guest: str) -> bool:
    return guest == own_words().called or not has_name(guest)


def as_corrected(typed: str) -> str:
    """`It's not Ann who's pregnant, it's Kay` as `Kay is pregnant`; any other text as it is.

    So `Ann isn't driving, Kay is`.
    """
    drives = drives_told(typed)
    if drives and drives.changes and drives.on:
        return ", ".join((*(f"{name} is driving" for name in drives.on), *drives.rest))
    found = (pattern.search(typed.replace("’", "'").strip()) for pattern in _words().moves)
    told = (f"{one['on']} is {one['need'].strip()}" for one in found if one and "need" in one.groupdict())
    return next(told, typed)


def _known(name: str, needs: Sequence[Asked]) -> str:
    """The guest with needs who is called so; empty where there is none."""
    called = (one.guest for one in needs if has_name(one.guest))
    return next((guest for guest in called if fold(name) in _names(guest)), "")


def _names(guest: str) -> set[str]:
    return {fold(guest), *(fold(word) for word in own_name(guest))}


def _meant(name: str, spoken: Sequence[str]) -> str:
    return spoken[0] if len(spoken) == 1 and fold(name) in ("she", "he") else ""
