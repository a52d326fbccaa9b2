"""A card for each food and drink: what is in it and what it goes with; nothing of what guests need."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from assistant.answers.wording import listed
from assistant.handout.hosts import told_first
from assistant.handout.words import contents, say, together
from assistant.pairing.score import LIKED

Parts = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Card:
    """A card: `below` in smaller type under the name, `facts` a bold word each with what it says."""

    name: str
    below: str
    facts: tuple[tuple[str, str], ...]


def cards(plan: Parts) -> tuple[Card, ...]:
    """The wines in pouring order, the foods in the order to eat them, then the drinks without alcohol."""
    foods = {row["food"]: row for row in plan["foods"]}
    judged = {row["food"]: _verdicts(row) for row in plan["pairings"]}
    order = [row["food"] for row in plan["food_order"]] or list(foods)
    return (
        *(_wine(number, row) for number, row in enumerate(plan["flight"], 1)),
        *(_food(foods[food], judged.get(food, [])) for food in order),
        *(_drink(row) for row in plan["alcohol_free"]),
    )


def _verdicts(row: Parts) -> list[Parts]:
    return [{"wine": wine, "verdict": verdict} for wine, verdict in told_first(row).items()]


def _wine(number: int, row: Parts) -> Card:
    name = f"{number}. {row['name'] or row['wine']}"
    warm = say()("guest", "degrees", celsius=together(*row["celsius"]))
    below = [*([row["wine"]] if row["name"] else []), row["style"], warm]
    loves = [(say()("cards", "loves"), row["loves"]["food"])] if _liked(row["loves"]) else []
    fights = [(say()("cards", "fights"), row["fights"]["food"])] if row["fights"] else []
    return Card(name, ", ".join(below), (*loves, *fights, _inside(row)))


def _liked(met: Parts | None) -> bool:
    return met is not None and met["verdict"] in LIKED


def _food(row: Parts, verdicts: list[Parts]) -> Card:
    liked = sorted((v for v in verdicts if v["verdict"] in LIKED), key=lambda v: LIKED.index(v["verdict"]))
    goes = listed([say()("cards", "with", **told) for told in liked])
    if row["rests"]:
        return Card(row["food"], say()("cards", "rests"), (_inside(row),))
    served = [(say()("cards", "goes"), goes or say()("cards", "none"))] if verdicts else []
    return Card(row["food"], "", (_inside(row), *served))


def _drink(row: Parts) -> Card:
    foods = row["foods"] or ([row["food"]] if row["verdict"] in LIKED else [])
    goes = [(say()("cards", "goes"), listed(foods))] if foods else []
    return Card(row["drink"], say()("cards", "sober"), (*goes, _inside(row)))


def _inside(row: Parts) -> tuple[str, str]:
    return say()("cards", "contains"), contents(row["allergens_present"], row["allergens_unknown"])
