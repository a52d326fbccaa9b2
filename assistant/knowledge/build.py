"""Digest entries -> concepts: inherits traits, homes, courses and roles from the kinds."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from assistant.knowledge.concepts import (
    Amount,
    Entry,
    Food,
    Method,
    Part,
    Rule,
    Wine,
    first,
)
from assistant.knowledge.digest import Digest

# id, label, alternatives, hidden, kinds, definition
_Named = tuple[str, str, tuple[str, ...], tuple[str, ...], tuple[str, ...], str | None]
_METHOD_FACTORS = {"glutamateFactor", "concentrate", "methodWeight"}


def broader(digest: Digest, subject: str) -> tuple[str, ...]:
    """All broader concepts of a subject, nearest first, each once."""
    found: list[str] = []
    queue = list(digest.get(subject, {}).get("broader", ()))
    while queue:
        kind = queue.pop(0)
        if kind not in found:
            found.append(kind)
            queue.extend(digest.get(kind, {}).get("broader", ()))
    return tuple(found)


def _named(subject: str, entry: Entry, kinds: tuple[str, ...]) -> _Named:
    return (
        subject,
        first(entry, "prefLabel", subject),
        tuple(entry.get("altLabel", ())),
        tuple(entry.get("hiddenLabel", ())),
        kinds,
        first(entry, "definition"),
    )


def _inherited(digest: Digest, lineage: tuple[str, ...], name: str) -> frozenset[str]:
    return frozenset(v for s in lineage for v in digest.get(s, {}).get(name, ()))


def _nearest(digest: Digest, lineage: tuple[str, ...], name: str) -> Any:
    for subject in lineage:
        values = digest.get(subject, {}).get(name)
        if values:
            return values[0]
    return None


def amounts_of(entry: Entry) -> dict[str, Amount]:
    """The amounts of an entry by property."""
    return {name: values[0] for name, values in entry.items() if isinstance(values[0], Amount)}


def food(digest: Digest, subject: str) -> Food:
    """The food with this short name."""
    entry = digest[subject]
    kinds = broader(digest, subject)
    lineage = (subject, *kinds)
    traits = _inherited(digest, lineage, "trait") - frozenset(entry.get("lacks", ()))
    heavier = (*lineage, *sorted(traits))
    return Food(
        *_named(subject, entry, kinds),
        amounts=amounts_of(entry),
        traits=traits,
        homes=frozenset(entry.get("home", ())),
        role=_nearest(digest, lineage, "usualRole"),
        share=_nearest(digest, lineage, "usualShare"),
        course=_nearest(digest, lineage, "course"),
        lean=_nearest(digest, lineage, "redLean"),
        weight_shift=float(_nearest(digest, heavier, "weightShift") or 0.0),
        shift_after=bool(_nearest(digest, heavier, "shiftAfter")),
        parts=tuple(_part(value) for value in entry.get("part", ())),
        served_as=first(entry, "servedAs"),
        usual_method=first(entry, "usualMethod"),
        allergens=frozenset(entry.get("allergen", ())),
        may_contain=frozenset(entry.get("mayContain", ())),
        care=frozenset(entry.get("care", ())),
        customs=frozenset(entry.get("pouredWith", ())),
    )


def _part(value: Entry) -> Part:
    return Part(value["food"][0], value["role"][0], value["share"][0], first(value, "method"))


def wine(digest: Digest, subject: str) -> Wine:
    """The wine style or drink with this short name."""
    entry = digest[subject]
    amounts = amounts_of(entry)
    kinds = broader(digest, subject)
    return Wine(
        *_named(subject, entry, kinds),
        type="Drink" if "Drink" in entry["type"] else "Wine",
        amounts=amounts,
        colour=str(_nearest(digest, (subject, *kinds), "colour")),
        smells=frozenset(entry.get("smells", ())),
        homes=frozenset(entry.get("home", ())),
        grapes=tuple(entry.get("grape", ())),
        serve=amounts.get("serveCelsius"),
        air=amounts.get("airMinutes"),
        glass=first(entry, "glassType"),
        availability=first(entry, "availability", 2.0),
        reads_sharper=first(entry, "readsSharper", 0.0),
        reads_drier=first(entry, "readsDrier", 0.0),
        classics=_classics(digest, (subject, *kinds)),
    )


def _classics(digest: Digest, subjects: Iterable[str]) -> frozenset[str]:
    """The foods poured with a style by custom: its own, else those of the nearest kind that has any."""
    found = (digest[subject]["classicWith"] for subject in subjects if "classicWith" in digest[subject])
    return frozenset(next(found, ()))


def method(digest: Digest, subject: str) -> Method:
    """The cooking method with this short name."""
    entry = digest[subject]
    amounts = amounts_of(entry)
    return Method(
        *_named(subject, entry, broader(digest, subject)),
        adds={k: v.typical for k, v in amounts.items() if k not in _METHOD_FACTORS},
        glutamate_factor=first(entry, "glutamateFactor", 1.0),
        concentrate=first(entry, "concentrate", 1.0),
        weight=first(entry, "methodWeight", 0.0),
        traits=frozenset(entry.get("trait", ())),
        served_as=first(entry, "servedAs"),
    )


def rule(digest: Digest, subject: str) -> Rule:
    """The pairing rule with this short name."""
    entry = digest[subject]
    return Rule(
        id=subject,
        label=first(entry, "prefLabel", subject),
        family=first(entry, "family"),
        weight=first(entry, "weight", 0.0),
        because=first(entry, "because", ""),
        say=first(entry, "say", ""),
        detail=first(entry, "detail", ""),
        fix=first(entry, "fix"),
        source=first(entry, "source"),
        source_kind=first(entry, "sourceKind"),
        confidence=first(entry, "confidence", ""),
        order=first(entry, "order", 0.0),
        construct=first(entry, "construct"),
    )
