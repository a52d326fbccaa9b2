"""Plates and glasses to try the rules on: shipped ones, and copies in which one thing differs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from functools import lru_cache
from itertools import count

from assistant.knowledge.concepts import Amount
from assistant.knowledge.store import shipped
from assistant.pairing.dish import Dish, DishPart, single
from assistant.pairing.engine import Engine
from assistant.pairing.glass import Glass, glass_of
from assistant.pairing.plate import Plate
from assistant.pairing.rules import RuleRunner
from assistant.pairing.score import Score
from tests.pairing.firings import Firing, ran, scored

KNOWLEDGE = shipped()
RUNNER = RuleRunner(KNOWLEDGE.rules)
_TRIALS = count()


@lru_cache(maxsize=1)
def engine() -> Engine:
    """One engine for all tests."""
    return Engine(KNOWLEDGE)


def dish(base: str, *parts: tuple[str, str, float], methods: Iterable[str] = ()) -> Dish:
    """100 g of a base with parts given as (food, role, grams), all by local names."""
    first = DishPart(f"food/{base}", "role/base", 100.0, tuple(f"method/{m}" for m in methods))
    rest = (DishPart(f"food/{food}", f"role/{role}", grams) for food, role, grams in parts)
    return Dish((first, *rest))


def plate(food: str, added: Mapping[str, float] | None = None) -> Plate:
    """A shipped food eaten by itself, with amounts added on top in physical units."""
    return engine().plate(replace(single(f"food/{food}"), added=dict(added or {})))


def glass(wine: str) -> Glass:
    """A shipped wine by its local name."""
    return engine().glasses[f"wine/{wine}"]


def poured(wine: str, **amounts: float) -> Glass:
    """A shipped wine with these physical amounts in its place: body and sweetness follow."""
    found = KNOWLEDGE.wines[f"wine/{wine}"]
    stated = {n: Amount(v, v, v, "judged", "source/judged") for n, v in amounts.items()}
    return _renamed(glass_of(replace(found, amounts={**found.amounts, **stated}), KNOWLEDGE))


def _renamed(found: Glass) -> Glass:
    """A trial glass has a name of its own, so that it cannot be taken for the shipped wine."""
    return replace(found, wine=f"wine/trial-{next(_TRIALS)}")


def plate_with(food: str | Plate, *, trait: str | None = None, **points: float) -> Plate:
    """The plate with these points and one more trait, all else alike."""
    found = plate(food) if isinstance(food, str) else food
    traits = found.traits | ({f"trait/{trait}"} if trait else set())
    return replace(found, points={**found.points, **points}, traits=traits)


def glass_with(wine: str | Glass, *, smell: str | None = None, **points: float) -> Glass:
    """The glass with these points and one more smell, all else alike."""
    found = glass(wine) if isinstance(wine, str) else wine
    smells = found.smells | ({f"aroma/{smell}"} if smell else set())
    return _renamed(replace(found, points={**found.points, **points}, smells=smells))


def fired(food: Plate, wine: Glass) -> list[Firing]:
    """All firings of one plate with one glass."""
    return ran(RUNNER, {"plate": food}, [wine])


def score(food: Plate, wine: Glass) -> Score:
    """The score of one plate with one glass."""
    return scored({"plate": food}, [wine.wine], fired(food, wine), KNOWLEDGE)["plate", wine.wine]


def total(food: Plate, wine: Glass) -> float:
    """The total of one plate with one glass."""
    return score(food, wine).total


def family(food: Plate, wine: Glass, *names: str) -> float:
    """The plain sum of the effects of these families, before limits."""
    wanted = {f"family/{name}" for name in names}
    rules = KNOWLEDGE.rules
    return sum(
        rules[f.rule].weight * f.strength
        for f in fired(food, wine)
        if rules[f.rule].family in wanted and f.cap is None
    )
