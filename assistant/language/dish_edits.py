"""What a follow-up does to the dishes that stand: puts something on, takes something off, swaps."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

from assistant.knowledge.store import Knowledge
from assistant.language.dishes import TOPPING
from assistant.language.fold import key
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame, Reading, Text
from assistant.language.recipes import dishes_without
from assistant.pairing.dish import BASE, SIDE, Dish, DishPart

EATEN = ("Food", "Kind")
POURED = ("wine", "preference")
PART_ROLES = frozenset({"role/sauce", "role/dressing", "role/dip"})
DEFAULT_SHARE = 10.0

Dishes = tuple[Dish, ...]


def foods_named(text: Text) -> list[Reading]:
    """The foods and kinds of food that the text names."""
    return [r for r in text.readings if r.type in EATEN and r.kind not in ("wine", "preference")]


def adds(text: Text) -> bool:
    """Whether the foods named come onto the dish that stands."""
    words, foods = follow_words(), foods_named(text)
    if not foods:
        return False
    before = [w for w in text.stems[: foods[0].start] if w not in words.lead]
    behind = text.stems[foods[-1].end : foods[-1].end + 2]
    return bool(before and before[0] in words.adds_before) or bool(words.adds_after.intersection(behind))


def dropped(text: Text) -> list[Reading]:
    """The foods named behind a word that takes off, or before one that ends the text (`take it off`)."""
    words = follow_words()
    return [r for r in foods_named(text) if words.drops.intersection(_near(text, r))]


def _near(text: Text, reading: Reading) -> Sequence[str]:
    """The three words before a reading back to the last food or comma, and the word behind it."""
    start = max((r.end for r in text.readings if r.end <= reading.start), default=0)
    before = list(text.stems[max(start, reading.start - 3) : reading.start])
    while "," in before:
        del before[: before.index(",") + 1]
    behind = text.stems[reading.end : reading.end + 1]
    return [*before, *(w for w in behind if w == "off")]


def swapped(text: Text) -> tuple[Reading, Reading] | None:
    """What goes and what comes in `swap A for B`, `B instead of A`, `A is B now`, or None."""
    return _swapped(text, foods_named(text))


def swapped_wines(text: Text) -> tuple[str, str] | None:
    """The ids of the wine that goes and the one that comes, or None."""
    pair = _swapped(
        text, [r for r in text.readings if r.kind in POURED and r.type in ("Wine", "Drink", "Kind")]
    )
    return (pair[0].id, pair[1].id) if pair else None


def _swapped(text: Text, named: Sequence[Reading]) -> tuple[Reading, Reading] | None:
    words = follow_words()
    if len(named) != 2:
        return None
    between = text.stems[named[0].end : named[1].start]
    at = next((at for at, word in enumerate(between) if word in words.swaps), 0)  # `X is off, swap it for Y`
    swaps = at or words.swaps.intersection(text.stems[: named[0].start])
    if swaps and words.for_.intersection(between[at:]):
        return named[0], named[1]
    if any(phrase in " ".join(between) for phrase in words.instead_of):
        return named[1], named[0]
    return (named[0], named[1]) if _becomes(between, text.stems[named[1].end :]) else None


def _becomes(between: Sequence[str], behind: Sequence[str]) -> bool:
    """Whether one is told to be the other by now (`the bread is sourdough now`)."""
    words = follow_words()
    now = words.by_now.intersection((*between, *behind[:2]))
    return bool(between and now) and words.becomes.issuperset(between)


def without_foods(dishes: Dishes, foods: Sequence[Reading], knowledge: Knowledge) -> tuple[Dishes, list[str]]:
    """The dishes without these foods, and the words for what was not there to take off."""
    idle: list[str] = []
    for reading in foods:
        left = _without(dishes, reading, knowledge)
        idle += [reading.text] if left == dishes else []
        dishes = left
    return dishes, idle


def _without(dishes: Dishes, reading: Reading, knowledge: Knowledge) -> Dishes:
    left = dishes_without(dishes, reading.id, knowledge)
    if left != dishes:
        return left
    named = [p.food for d in dishes for p in d.parts if p.role != BASE and called(p.food, reading, knowledge)]
    return tuple(_less(dish, named) for dish in dishes)


def _less(dish: Dish, foods: Sequence[str]) -> Dish:
    return replace(dish, parts=tuple(p for p in dish.parts if p.food not in foods))


def called(food: str, reading: Reading, knowledge: Knowledge) -> bool:
    """`the butter` takes off the blue cheese butter."""
    return set(key(reading.text)) <= set(key(knowledge.label(food)))


def with_parts(dishes: Dishes, parts: Sequence[DishPart], knowledge: Knowledge) -> Dishes:
    """The dishes with more on the one named, else on the last; a new sauce takes the place of the old."""
    mains = [dish.main.food for dish in dishes]
    at = next((mains.index(part.food) for part in parts if part.food in mains), len(dishes) - 1)
    onto = [as_part(part, knowledge) for part in parts if part.food != mains[at]]
    roles = {part.role for part in onto} & PART_ROLES
    kept = tuple(p for p in dishes[at].parts if p.role not in roles)
    changed = replace(dishes[at], parts=(*kept, *onto))
    return (*dishes[:at], changed, *dishes[at + 1 :])


def scaled(dish: Dish, foods: Collection[str], times: float) -> Dish:
    """The dish with so many times the mass of these parts; what it is made of stays."""
    parts = tuple(
        replace(p, mass=p.mass * times) if p.food in foods and p.role != BASE else p for p in dish.parts
    )
    return replace(dish, parts=parts)


def as_part(part: DishPart, knowledge: Knowledge) -> DishPart:
    """A food named by itself as a part of the dish that stands."""
    food = knowledge.food(part.food)
    share = food.share or DEFAULT_SHARE
    role = food.role if food.role not in (None, SIDE, BASE) else TOPPING
    return replace(part, role=role or TOPPING, mass=100.0 * share / (100.0 - share))


def one_of(dishes: Dishes, frame: Frame, knowledge: Knowledge) -> int | None:
    """Which of several dishes is meant by `the garlic one`: its place, or None."""
    named = foods_named(frame.text)
    for at, dish in enumerate(dishes):
        if any(_holds(part.food, reading, knowledge) for part in dish.parts for reading in named):
            return at
    return None


def _holds(food: str, reading: Reading, knowledge: Knowledge) -> bool:
    inside = (food, *knowledge.broader(food), *(part.food for part in knowledge.food(food).parts))
    return reading.id in inside or called(food, reading, knowledge)
