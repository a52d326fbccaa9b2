"""What to pack, scaled to the evening."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import ceil

from assistant.evening.bottles import Bottles
from assistant.evening.facts import HAIR, Row, fact, rows
from assistant.evening.portions import class_of
from assistant.evening.records import Evening
from assistant.evening.temperatures import Temperature, air_minutes
from assistant.knowledge.store import Knowledge


@dataclass(frozen=True, slots=True)
class Item:
    """Something to pack; `need` is must or nice."""

    item: str
    count: int
    need: str


def kit(measures: Mapping[str, float]) -> list[Item]:
    """The items of kit.toml that come to something, musts first."""
    items = [Item(row["item"], _count(row, measures), row["need"]) for row in rows("kit", "item")]
    return sorted((item for item in items if item.count), key=lambda item: item.need)


def _count(row: Row, measures: Mapping[str, float]) -> int:
    count: int = ceil(row["each"] * measures[row["per"]] - HAIR)
    return min(count, int(row.get("at_most", count)))


def measures(
    evening: Evening,
    wines: Sequence[Bottles],
    temperature: Sequence[Temperature],
    allergies: int,
    knowledge: Knowledge,
    nuts: bool = True,
) -> dict[str, float]:
    """What the items of the kit are counted by, by name; `nuts`: whether they are for all guests."""
    counts = {bottle.wine: bottle.needed for bottle in wines}
    sparkling = sum(counts[t.wine] for t in temperature if t.sparkling)
    cold = sum(counts[t.wine] for t in temperature if t.iced)
    glasses = min(len(evening.wines), fact("kit", "limits", "glasses_per_guest").typical)
    return {
        "evening": 1.0,
        "guest": evening.guests,
        "glass": evening.guests * glasses,
        "wine": len(evening.wines),
        "bottle": sum(counts.values()),
        "still": sum(counts.values()) - sparkling,
        "sparkling": sparkling,
        "cold": cold,
        "ice": ice_kg(cold),
        "decant": sum(1 for line in evening.wines if air_minutes(line, knowledge)),
        "cheese": sum(1 for f in evening.foods if class_of(f.food, knowledge)["id"] == "cheese"),
        "food": len(evening.foods),
        "allergy": allergies,
        "nuts": float(nuts),
        "no-nuts": float(not nuts),
    }


def ice_kg(cold: int) -> int:
    """Whole kilograms of ice for so many bottles."""
    return ceil(cold / fact("amounts", "ice", "bottles_per_kg").typical - HAIR)
