"""How alike two wines or two foods are: for a bottle or a cheese that is not to be had."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping

from assistant.knowledge.store import Knowledge
from assistant.pairing.dish import Dish
from assistant.pairing.engine import Engine
from assistant.pairing.glass import Glass

COMPARED = ("sweetness", "acid", "tannin", "body", "oak", "bubbles", "aroma")
TASTES = ("fat", "sugar", "acid", "salt", "umami", "heat", "bitter", "smoke", "aroma", "weight")
ENOUGH = 3
ALL, NIBBLED = "kind/food", ("kind/dried-fruit-kind", "kind/snack")


def unlike(one: Glass, other: Glass, knowledge: Knowledge) -> float:
    """How far two wines are apart, in weighed points; 0 for the same taste, colour and smells."""
    c = knowledge.constants
    apart = sum(c[f"unlike-{n}"] * abs(one.points[n] - other.points[n]) for n in COMPARED)
    every = one.smells | other.smells
    shared = len(one.smells & other.smells) / len(every) if every else 1.0
    colour = c["unlike-colour"] if one.colour != other.colour else 0.0
    return apart + colour + c["unlike-smells"] * (1.0 - shared) + _unrelated(one, other, knowledge)


def _unrelated(one: Glass, other: Glass, knowledge: Knowledge) -> float:
    """What wines without a grape in common lose."""
    grapes = set(knowledge.wines[one.wine].grapes), set(knowledge.wines[other.wine].grapes)
    return 0.0 if grapes[0] & grapes[1] else knowledge.constants["unlike-grapes"]


def alike_wines(wine: str, among: Iterable[str], engine: Engine) -> list[str]:
    """Other wines by likeness, the most alike first; of equals the easier to buy.

    Blanc de blancs is no stand-in for Champagne, which it is; Tempranillo is one for Rioja.
    """
    known, glasses = engine.knowledge, engine.glasses
    others = [w for w in among if w != wine and wine not in known.wines[w].kinds]
    apart = {w: round(unlike(glasses[wine], glasses[w], known), 1) for w in others}
    return sorted(others, key=lambda w: (apart[w], -known.wines[w].availability, w))


def alike_foods(food: str, engine: Engine, leave_out: Collection[str] = ()) -> list[str]:
    """Other foods of the nearest kind that has enough of them, by taste, the most alike first.

    Where some are left out and too few are left of its kinds, what is nibbled as well stands in.
    """
    known = engine.knowledge
    kinds = known.broader(food)
    kinds = (*(kind for kind in kinds if kind != ALL), *NIBBLED) if leave_out else kinds
    here = engine.plate_of_food(food).points
    for kind in kinds:
        members = (f for f in known.members(kind) if f not in leave_out)
        others = [f for f in members if not _named_in(food, f, known)]
        if len(others) >= ENOUGH:
            return sorted(others, key=lambda f: (_apart(here, engine.plate_of_food(f).points), f))
    return []


def nearest_foods(dish: Dish, engine: Engine) -> list[str]:
    """The foods of the kind a dish is made of, nearest in taste first; none where it is a food by name."""
    here = engine.plate(dish).points
    found = engine.knowledge.members(dish.main.food)
    return sorted(found, key=lambda f: (_apart(here, engine.plate_of_food(f).points), f))


def _named_in(food: str, other: str, knowledge: Knowledge) -> bool:
    """`truffle Brie` is no stand-in for Brie: who has none of the one has none of the other."""
    return set(knowledge.label(food).lower().split()) <= set(knowledge.label(other).lower().split())


def _apart(one: Mapping[str, float], other: Mapping[str, float]) -> float:
    return round(sum(abs(one[n] - other[n]) for n in TASTES), 1)
