"""Matches -> the items of an answer, with every entry of the rule path explained."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from assistant.answers.record import Item, PathEntry
from assistant.answers.wording import Wording
from assistant.knowledge import names
from assistant.knowledge.concepts import Wine
from assistant.knowledge.store import Knowledge
from assistant.pairing.glass import Glass
from assistant.pairing.score import Effect
from assistant.pairing.sweetness import colour_word, sweetness_word

WINE_POINTS = ("acid", "tannin", "body", "oak", "bubbles")
_FIELD = {"acid": "acidity"}
SPARKLING_FROM = 2.5


def path_entries(path: Iterable[Effect], knowledge: Knowledge, wording: Wording) -> tuple[PathEntry, ...]:
    """The rule path in words, in the order given."""
    return tuple(_entry(effect, knowledge, wording) for effect in path)


def total(entries: Iterable[PathEntry]) -> float:
    """The plain sum of the effects of a path."""
    return round(sum(entry.effect for entry in entries), 4)


def food_item(food: str, knowledge: Knowledge) -> Item:
    """A food that is named with no wine to judge it by."""
    groups = groups_of(knowledge.broader(food), knowledge)
    return Item(food, knowledge.label(food), "food", groups, 0.0, "neutral", ())


def _entry(effect: Effect, knowledge: Knowledge, wording: Wording) -> PathEntry:
    values = {name: round(value, 2) for name, value in effect.values.items()}
    rule = knowledge.rules.get(effect.rule)
    if rule is None:
        label, because = _limit(effect.rule, knowledge, wording)
        kind = "common practice"
        return PathEntry(effect.rule, label, round(effect.effect, 4), because, kind, kind, values)
    return PathEntry(
        rule.id,
        rule.label,
        round(effect.effect, 4),
        rule.because,
        source_text(rule.source, knowledge),
        knowledge.label(rule.source_kind),
        values,
    )


def _limit(name: str, knowledge: Knowledge, wording: Wording) -> tuple[str, str]:
    family = knowledge.families.get(name.removeprefix("limit/"))
    if family is None:
        return "quiet food", wording("reason", "limit-quiet")
    return f"limit of {family.label}", wording("reason", "limit-family", family=family.label)


def source_text(source: str, knowledge: Knowledge) -> str:
    """How a source is cited: its citation, else its title."""
    entry = knowledge.digest.get(source, {})
    for name in ("bibliographicCitation", "title"):
        if entry.get(name):
            return str(entry[name][0])
    return names.local(source).replace("-", " ")


def groups_of(kinds: Iterable[str], knowledge: Knowledge) -> tuple[str, ...]:
    """Labels of the broader concepts, nearest first."""
    return tuple(knowledge.label(kind) for kind in kinds)


def wine_item(
    wine: Wine,
    glass: Glass,
    verdict: str,
    path: Iterable[Effect],
    knowledge: Knowledge,
    wording: Wording,
) -> Item:
    """The item of a wine or drink; the score is the sum of the effects as printed."""
    entries = path_entries(path, knowledge, wording)
    return Item(
        id=wine.id,
        label=wine.label,
        kind="drink" if wine.type == "Drink" else "wine",
        groups=groups_of(wine.kinds, knowledge),
        score=total(entries),
        verdict=verdict,
        path=entries,
        wine=wine_facts(wine, glass, knowledge),
    )


def wine_facts(wine: Wine, glass: Glass, knowledge: Knowledge) -> dict[str, Any]:
    """The structure of a wine: points 0-5 unless a unit is named."""
    facts: dict[str, Any] = {
        "colour": colour_word(wine.colour),
        "sweetness": sweetness_word(wine, glass.points["sweetness"], knowledge.constants),
        "sugar_g_l": wine.amounts["residualSugar"].typical,
        "alcohol_percent": wine.amounts["alcohol"].typical,
        "sparkling": glass.points["bubbles"] >= SPARKLING_FROM,
        "fortified": "kind/fortified-wine" in wine.kinds,
    }
    return facts | {_FIELD.get(n, n): round(glass.points[n], 2) for n in WINE_POINTS}
