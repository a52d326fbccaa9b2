"""What is poured tonight as hosts call it: by the name on the bottle, or short (`the riesling`)."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache

from assistant.knowledge.files import corpus_dir
from assistant.knowledge.store import Knowledge
from assistant.language.data import read_words
from assistant.language.fold import fold, key, stem
from assistant.language.follow_lines import says
from assistant.language.frame import Frame, Reading
from assistant.language.phrases import Phrases
from assistant.language.sorting import EDIBLE
from assistant.stock.records import Stock
from assistant.table.tonight import Tonight

MOST_BOTTLES = 500
"""Bottles of a list that are known by name; of a longer one most names are words of something else too."""
JUDGES = "judge-pair"
LAYS = ("set-table", "choose-wines", "substitute", "teach")
KINDS = ("kind/sparkling-wine", "kind/rose-wine", "kind/orange-wine")
"""Kinds whose names, behind `the`, are names of nothing on a plate (`the red` may be a pepper)."""
JUDGED = ("foods-for-wine", "judge-pair", "why", "unclear", "wines-for-food")
NAMES, THE = ("prefLabel", "altLabel"), "the"
ANOTHER = {"a", "an", "another", "some"}
_VINTAGE = re.compile(r"\s(?:(?:1[89]|20)\d\d|nv)$", re.IGNORECASE)


def bottles_called(
    tonight: Tonight, stock: Stock, knowledge: Knowledge, dishes: Mapping[str, str]
) -> Phrases:
    """Names of tonight's bottles, and of a short list, each standing for its style; short names of dishes.

    `the bubbly` is one of them where there is one of that kind.
    """
    names: dict[str, str] = dict(dishes)
    names |= dict(_only_ones(tonight.wines, knowledge))
    homes = _homes(tonight.wines, knowledge)
    names |= {home: f"{THE} {knowledge.label(wine)}" for home, wine in homes.items()}
    for name, wine in (*_listed(stock), *_of_evening(tonight)):
        names |= {
            said: knowledge.label(wine) for said in (name, _VINTAGE.sub("", name).rstrip()) if _tells(said)
        }
    return Phrases(names, lambda said, _, rest: said in homes and _goes_on(rest, homes[said], knowledge))


def _homes(poured: Sequence[str], knowledge: Knowledge) -> dict[str, str]:
    """`the Oregon`, `the Oregon one`: what is poured of that region, where nothing else there is."""
    at_home: dict[str, list[str]] = {}
    for wine in poured:
        for region in knowledge.entry(wine).get("home", ()):
            at_home.setdefault(knowledge.label(region).lower(), []).append(wine)
    alone = {home: wines[0] for home, wines in at_home.items() if len(wines) == 1}
    unnamed = {home: wine for home, wine in alone.items() if home not in _called(wine, knowledge)}
    return {f"{THE} {home}{one}": wine for home, wine in unnamed.items() for one in ("", " one")}


def _called(wine: str, knowledge: Knowledge) -> set[str]:
    return {name.lower() for field in NAMES for name in knowledge.entry(wine).get(field, ())}


def _goes_on(rest: str, wine: str, knowledge: Knowledge) -> bool:
    """Whether more of the name stands behind a region (`the Oregon pinot noir`)."""
    words = {word for name in _called(wine, knowledge) for word in name.split()}
    return bool(words.intersection(rest.lower().split()[:1]))


def _of_evening(tonight: Tonight) -> Iterator[tuple[str, str]]:
    lines = tonight.evening.wines if tonight.evening else ()
    yield from ((line.name, line.wine) for line in lines if line.name)


def _listed(stock: Stock) -> Iterator[tuple[str, str]]:
    if not stock or stock.count > MOST_BOTTLES:
        return
    yield from ((bottle.name, style) for style, bottles in stock.of.items() for bottle in bottles)


def _only_ones(poured: Sequence[str], knowledge: Knowledge) -> Iterator[tuple[str, str]]:
    for kind in KINDS:
        of_kind = [wine for wine in poured if kind in knowledge.broader(wine)]
        if len(of_kind) == 1:
            called = (name for field in NAMES for name in knowledge.entry(kind).get(field, ()))
            yield from ((f"{THE} {name}", f"{THE} {knowledge.label(of_kind[0])}") for name in called)


def _tells(name: str) -> bool:
    """Whether a name is told from what else is said: two words, or one that is no everyday word."""
    words = key(name)
    return len(words) > 1 or any(fold(name) not in _plain() for _ in words)


@lru_cache(maxsize=1)
def _plain() -> frozenset[str]:
    return frozenset(read_words(corpus_dir() / "language" / "plain-english.txt"))


def as_poured(frame: Frame, poured: Sequence[str], knowledge: Knowledge) -> Frame:
    """The frame with wines called short read as the one poured, or just chosen, that has all these words.

    `the riesling` is the off-dry Riesling where no other is poured; `a riesling` may come to the table.
    """
    frame = _what_it_is(frame)
    meant = {r.id: wine for r, wine in _meant(frame, poured, knowledge)}
    if not meant:
        return frame
    readings = tuple(
        replace(r, id=meant[r.id], label=knowledge.label(meant[r.id])) if r.id in meant else r
        for r in frame.text.readings
    )
    wines = tuple(dict.fromkeys(meant.get(wine, wine) for wine in frame.wines))
    return replace(frame, wines=wines, text=replace(frame.text, readings=readings))


def _what_it_is(frame: Frame) -> Frame:
    """`what's this one, the pink one`: a wine is to be described, whatever was eaten with the last."""
    named = [reading for reading in frame.text.readings if reading.kind in EDIBLE]
    asked = len(frame.wines) == 1 and not named and frame.intent in JUDGED and says(frame, "what-is-it")
    return replace(frame, intent="describe", dishes=(), preferences=()) if asked else frame


def _meant(frame: Frame, poured: Sequence[str], knowledge: Knowledge) -> Iterator[tuple[Reading, str]]:
    """The wines read that are called short, each with the one poured that is meant."""
    for reading in frame.text.readings:
        said = _words(reading.text)
        found = [wine for wine in poured if said < _words(knowledge.label(wine))]
        short = reading.type == "Wine" and reading.id not in poured and not reading.corrected_from
        if short and len(found) == 1 and _is_there(frame, reading):
            yield reading, found[0]


def _is_there(frame: Frame, reading: Reading) -> bool:
    """Whether a wine named may be one poured: `a Riesling` is not, and to lay a table only `the Riesling`."""
    before = frame.text.stems[max(0, reading.start - 1) : reading.start]
    return before == (THE,) if frame.intent in LAYS else not set(before) & ANOTHER


def _words(name: str) -> frozenset[str]:
    """The words of a name, hyphens kept: `off-dry` is not dry."""
    return frozenset(stem(fold(word)) for word in name.split())


def of_kind_here(frame: Frame, poured: Sequence[str], knowledge: Knowledge) -> Frame:
    """The frame that judges the wines of the table of a kind that is asked of (`red with the salmon`).

    What is named beside the kind is judged too (`Cava or red`), and nothing that merely stands.
    """
    limits = [one for one in frame.preferences if one.property == "kind" and one.wanted and not one.banned]
    kinds = {*(one.wanted for one in limits), *(name for name in frame.wines if name not in poured)}
    here = [wine for wine in poured if kinds & set(knowledge.broader(wine))]
    if frame.intent != JUDGES or not here:
        return frame
    covered = {kind for wine in here for kind in knowledge.broader(wine)}
    named = {reading.id for reading in frame.text.readings} - covered
    wines = dict.fromkeys([*(wine for wine in frame.wines if wine in named), *here])
    kept = tuple(limit for limit in frame.preferences if limit not in limits)
    return replace(frame, wines=tuple(wines), preferences=kept)
