"""Limits a guest puts on the wine: words from corpus/language/preferences.toml, regions, wine kinds."""

from __future__ import annotations

import re
from collections.abc import Container, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path
from typing import Any

from spacy.lang.en.stop_words import STOP_WORDS

from assistant.language.data import read_data
from assistant.language.eating import WITHOUT_ALCOHOL
from assistant.language.fold import fold, key, stem
from assistant.language.frame import Preference, Reading, Text
from assistant.language.quantities import quantity_words
from assistant.language.small_words import small_words
from assistant.language.turning import FOODS, denied, negated

LONGEST = 8  # words of a limit
POURED, SEEKS_FOODS = ("wine", "preference"), "foods-for-wine"
SEEKS = frozenset({"wines-for-food", "one-bottle", "choose-wines", "substitute"})
BUBBLES, SPARKLING = "bubbles", "kind/sparkling-wine"


@lru_cache(maxsize=1)
def _alcohol_patterns() -> tuple[re.Pattern[str], re.Pattern[str]]:
    """How a strength is limited: `under 12 %`, `12 % or lower`."""
    words = small_words()
    before, behind = (
        "|".join(sorted(words[f"at-most{where}"] | words[f"at-least{where}"], key=len, reverse=True))
        for where in ("", "-behind")
    )
    said = "|".join(quantity_words().numbers)
    share = rf"(?P<number>\d{{1,2}}(?:\.\d)?|{said})\s*(?:%|percent|per cent|abv)"
    drink = r"(?:\s*(?:alcohol|abv|vol))?"
    return (
        re.compile(rf"\b(?P<way>{before})\s+{share}"),
        re.compile(rf"\b{share}{drink}\s*,?\s*(?P<way>{behind})s?\b"),
    )


@dataclass(frozen=True, slots=True)
class PreferenceWord:
    """A phrase, what it asks of the wine, and what its negation asks; `turned`: it counts as denied alone."""

    words: tuple[str, ...]
    asks: Preference
    negated: Preference
    turned: bool = False


def read_preference_words(file: Path) -> list[PreferenceWord]:
    """The preference words of a TOML file, longest phrases first."""
    found = read_data(file, lambda tables: [p for row in tables["word"] for p in _phrases(row)])
    return sorted(found, key=lambda p: -len(p.words))


def _phrases(row: Mapping[str, Any]) -> Iterable[PreferenceWord]:
    low, high = row.get("min"), row.get("max")
    asks = Preference(row["label"], row["property"], low, high)
    turn = row.get("edge", low if low is not None else high)
    negated = replace(
        asks,
        label=f"not {row['label']}",
        low=turn if low is None else None,
        high=turn if low is not None else None,
    )
    yield from (PreferenceWord(key(phrase), asks, negated) for phrase in row["phrases"])
    yield from (PreferenceWord(key(phrase), asks, negated, turned=True) for phrase in row.get("turned", ()))


def by_first(words: Iterable[PreferenceWord]) -> dict[str, list[PreferenceWord]]:
    """The words by the stem that each begins with, in their order."""
    starts: dict[str, list[PreferenceWord]] = {}
    for word in words:
        starts.setdefault(word.words[0], []).append(word)
    return starts


def find_preferences(
    text: Text, starts: Mapping[str, list[PreferenceWord]], taken: set[int], among: Mapping[int, Reading]
) -> tuple[list[Preference], set[int]]:
    """Preferences in the text and the token positions they used; `taken` positions are left alone.

    `starts`: the words as `by_first` gives them; `among`: the kind of wine that the limit starting at a
    position is about.
    """
    found: list[Preference] = []
    used: set[int] = set()
    for at in range(len(text.stems)):
        if at in taken or at in used:
            continue
        for word in starts.get(text.stems[at], ()):
            span = None if word.turned and not denied(text, at) else _span(text.stems, at, word.words)
            if span and not span & (taken | used) and not _of_else(text, max(span) + 1, len(span), starts):
                limit = word.negated if negated(text, at) else word.asks
                found.append(_among(limit, word.asks.label, among[at]) if at in among else limit)
                used |= span
                break
    found += _strengths(text.typed.lower())
    return found, used


def parts_of(words: Iterable[PreferenceWord]) -> frozenset[tuple[str, ...]]:
    """What a limit is made of: `acidity` is part of `high acidity`, `extra dry` of no limit."""
    said = (word.words for word in words)
    return frozenset(p[i:j] for p in said for i in range(len(p)) for j in range(i + 1, len(p) + 1))


def stems_of(text: Text, reading: Reading) -> tuple[str, ...]:
    """The stems of what was read, without hyphens."""
    return tuple(stem for stem in text.stems[reading.start : reading.end] if stem.isalnum())


def consistent(limits: Sequence[Preference], words: Sequence[PreferenceWord]) -> list[Preference]:
    """The limits without what is ruled out as well (`nothing sparkling, bubbles give me hiccups`).

    Sparkling wine is asked for as bubbles, a limit of `words`, where a drink without alcohol is wanted.
    """
    out = {(limit.property, limit.wanted, limit.among) for limit in limits if limit.banned}
    kept = (one for one in limits if one.banned or (one.property, one.wanted, one.among) not in out)
    return of_drinks(tuple(kept), sparkling(words))


def sparkling(words: Iterable[PreferenceWord]) -> Preference:
    """The limit that asks for bubbles. Raises StopIteration where the file has none."""
    return next(word.asks for word in words if word.asks.property == BUBBLES and word.asks.low is not None)


def of_drinks(limits: Sequence[Preference], bubbles: Preference) -> list[Preference]:
    """The limits, sparkling wine being asked for as `bubbles` where a drink without alcohol is wanted."""
    free = any(limit.wanted == WITHOUT_ALCOHOL and not limit.banned for limit in limits)
    return [bubbles if free and limit.wanted == SPARKLING and not limit.banned else limit for limit in limits]


def _of_else(text: Text, behind: int, words: int, limits: Container[str]) -> bool:
    """Whether a word that could limit the wine tells of what stands behind it.

    That is a food, at once or after one more describing word (`sweet red onions`), or anything else that
    is neither a wine nor a small word (`a big tray`, `the sweet end`).
    """
    starts = {r.start: r for r in text.readings}
    near = [starts.get(i) for i in (behind, behind + 1)]
    word = text.stems[behind] if behind < len(text.stems) else ","
    small = not word.isalpha() or word in STOP_WORDS or word in small_words()["linking"] or word in limits
    if near[0] is not None:
        return near[0].kind in FOODS
    if small or (words > 1 and text.stems[behind - 1] in small_words()["measured"]):
        return False
    return near[1] is None or near[1].kind in FOODS


def wishes(text: Text) -> list[str]:
    """What is asked for and no wine can be chosen by: prices, diets, `cheap`."""
    named = {i for r in text.readings for i in range(r.start, r.end)}
    told = [i for i, stem in enumerate(text.stems) if stem in small_words()["told"] and i not in named]
    return [text.words[i] for i in told] + _prices(text)


def made_so(intent: str, text: Text) -> list[str]:
    """How a wine that is sought should be made, by which none can be chosen (`only organic ones`).

    Of foods that are sought, that they are to stand (`can sit out an hour`).
    """
    if intent == SEEKS_FOODS:
        pairs = range(len(text.stems) - 1)
        stand = [i for i in pairs if " ".join(text.stems[i : i + 2]) in small_words()["stands-out"]]
        return [" ".join(text.words[i : i + 2]) for i in stand]
    said = small_words()["made-so"] if intent in SEEKS else frozenset[str]()
    eaten = {r.start for r in text.readings if r.kind in FOODS}
    named = {i for r in text.readings for i in range(r.start, r.end)}
    terms = [r for r in text.readings if r.type == "Term" and said.intersection(text.stems[r.start : r.end])]
    poured = {r.start for r in text.readings if r.kind in POURED}
    poured |= {i for i, word in enumerate(text.stems) if word in small_words()["bottle"]}
    plain = [
        text.words[i - 1] for i in sorted(poured) if i and text.stems[i - 1] in said and i - 1 not in named
    ]
    return [*(r.text for r in terms if r.end not in eaten), *plain]


def _prices(text: Text) -> list[str]:
    money = small_words()["money"]
    near = [range(max(0, i - 1), i + 2) for i, stem in enumerate(text.stems) if stem in money]
    spans = [[j for j in span if j < len(text.words) and _counts(text, j, money)] for span in near]
    return [" ".join(text.words[j] for j in span) for span in spans if len(span) > 1]


def _counts(text: Text, at: int, money: frozenset[str]) -> bool:
    word = text.stems[at]
    return word in money or word in quantity_words().numbers or any(c.isdigit() for c in word)


def _among(limit: Preference, asked: str, kind: Reading) -> Preference:
    """A limit on the wines of a kind: all others stay."""
    label = f"{asked} if {kind.label}" if limit.label == asked else f"no {asked} {kind.label}"
    return replace(limit, label=label, among=kind.id)


def phrase_before(stems: tuple[str, ...], at: int, starts: Mapping[str, list[PreferenceWord]]) -> int | None:
    """Where a limit phrase starts that ends right before this position, or None."""
    near = range(max(0, at - LONGEST), at)
    return next((i for i in near if any(w.words == stems[i:at] for w in starts.get(stems[i], ()))), None)


def _span(stems: tuple[str, ...], at: int, words: tuple[str, ...]) -> set[int] | None:
    places: list[int] = []
    i = at
    for word in words:
        while i < len(stems) and places and stems[i] in ("-", "–"):
            i += 1
        if i >= len(stems) or stems[i] != word:
            return None
        places.append(i)
        i += 1
    return set(places)


def _strengths(typed: str) -> list[Preference]:
    """The limits on strength; each number counts once, with what stands before it."""
    before, behind = _alcohol_patterns()
    found = list(before.finditer(typed))
    taken = {match.start("number") for match in found}
    found += [match for match in behind.finditer(typed) if match.start("number") not in taken]
    return [_alcohol(match) for match in found]


def _alcohol(match: re.Match[str]) -> Preference:
    said = match["number"]
    number = quantity_words().numbers[stem(fold(said))] if said.isalpha() else float(said)
    upper = match["way"] in small_words()["at-most"] | small_words()["at-most-behind"]
    label = f"{'under' if upper else 'over'} {number:g} % alcohol"
    return Preference(label, "alcoholPercent", None if upper else number, number if upper else None)
