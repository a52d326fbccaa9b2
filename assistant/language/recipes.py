"""Recipes edited: parts left off, and a dish made of another sort."""

from __future__ import annotations

from collections.abc import Sequence, Set
from dataclasses import replace

from assistant.knowledge.concepts import Food
from assistant.knowledge.store import Knowledge
from assistant.language.fold import key
from assistant.language.frame import Reading, Text
from assistant.language.made_of import made_of
from assistant.pairing.dish import BASE, Dish, DishPart
from assistant.pairing.plate import recipe

ALIKE = frozenset(("kind/cheese", "kind/meat", "kind/seafood", "kind/nut", "kind/fruit", "kind/sweet-food"))

STEWED = frozenset(("kind/stew", "kind/curry", "kind/pulse"))
CHOCOLATE, SPOONED = "kind/chocolate-kind", "role/stirred-in"


def another_sort(food: Food, said: str, instead: str, knowledge: Knowledge) -> tuple[DishPart, ...]:
    """The recipe of a dish whose short name stands for one sort (`risotto`: with mushrooms), of another sort.

    What the sort is named for, or else a base of the same kind, gives way to `instead`; empty where
    nothing does.
    """
    if made := made_of(food, said, instead, knowledge):
        return made
    short, whole = key(said), key(food.label)
    named = set(whole[: -len(short)]) if whole[-len(short) :] == short else set()
    gone = _named_for(food, named, instead, knowledge) if named else []
    if not gone:
        return ()
    kept = [p for p in recipe(food).parts if p not in gone[1:]]
    return tuple(replace(p, food=instead) if p == gone[0] else p for p in kept)


def as_spice(food: Food, base: DishPart | None, knowledge: Knowledge) -> DishPart | None:
    """Chocolate in a savoury stew (`chilli with dark chocolate`): a spoon of it, and no pudding."""
    savoury = base is not None and STEWED.intersection(knowledge.broader(base.food))
    spoon = knowledge.constants["spice-spoon"]
    return DishPart(food.id, SPOONED, spoon) if savoury and CHOCOLATE in food.kinds else None


def is_spiced(text: Text, reading: Reading, base: DishPart, linked: Set[str], knowledge: Knowledge) -> bool:
    """Whether it ends what a stew is told to be made with (`with black beans and dark chocolate`)."""
    start = max((r.end for r in text.readings if r.id == base.food), default=reading.start)
    between = text.stems[start : reading.start]
    told = not linked.isdisjoint(between) and between[-1] != "," and reading.kind != "method"
    return told and as_spice(knowledge.food(reading.id), base, knowledge) is not None


def _named_for(food: Food, named: set[str], instead: str, knowledge: Knowledge) -> list[DishPart]:
    """The parts that a dish is named for, or its bases of the same kind as what comes instead."""
    parts = recipe(food).parts
    by_name = [p for p in parts if named.intersection(key(knowledge.label(p.food)))]
    kinds = ALIKE.intersection(knowledge.food(instead).kinds)
    return by_name or [
        p for p in parts if p.role == BASE and kinds.intersection(knowledge.food(p.food).kinds)
    ]


def without(parts: Sequence[DishPart], food: str, knowledge: Knowledge) -> list[DishPart]:
    """The parts without this food, the recipe of the base opened where it stands in there."""
    left = [p for p in parts if not _is(p.food, food, knowledge) or p.role == BASE]
    if len(left) < len(parts):
        return left
    base = next((p for p in left if p.role == BASE), None)
    inner = recipe(knowledge.food(base.food)).parts if base else ()
    for alike in (_is, _is_kin):
        kept = [p for p in inner if not alike(p.food, food, knowledge)]
        opened = [part for p in kept for part in _opened(p, food, knowledge)]
        if opened and opened != list(inner):
            return [*opened, *(p for p in left if p is not base)]
    return left


def _opened(part: DishPart, food: str, knowledge: Knowledge) -> list[DishPart]:
    """A part of a dish by what it is made of without this food; itself where that is not in it."""
    inner = recipe(knowledge.food(part.food)).parts
    kept = [p for p in inner if not _is(p.food, food, knowledge)]
    if not 0 < len(kept) < len(inner):
        return [part]
    whole = sum(p.mass for p in inner)
    return [
        replace(
            p,
            mass=part.mass * p.mass / whole,
            role=part.role if p.role == BASE else p.role,
            methods=(*p.methods, *part.methods),
        )
        for p in kept
    ]


def dishes_without(dishes: Sequence[Dish], food: str, knowledge: Knowledge) -> tuple[Dish, ...]:
    """The dishes without this food: as a part, or as one of several dishes."""
    others = [d for d in dishes if not _is(d.main.food, food, knowledge)]
    return tuple(replace(d, parts=tuple(without(d.parts, food, knowledge))) for d in others or dishes)


def _is(food: str, wanted: str, knowledge: Knowledge) -> bool:
    return food == wanted or wanted in knowledge.broader(food)


def _is_kin(food: str, wanted: str, knowledge: Knowledge) -> bool:
    """Of the same nearest kind: who leaves out the bacon means the guanciale."""
    return bool(set(knowledge.broader(food)[:1]) & set(knowledge.broader(wanted)[:1]))
