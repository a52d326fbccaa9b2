"""The smallest thing on the plate that lifts a pair: edits in grams, each judged by the rules again."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from assistant.knowledge.store import Knowledge
from assistant.pairing.dish import BASE, Dish, DishPart, Table, table_of
from assistant.pairing.engine import Engine
from assistant.pairing.match import Match


@dataclass(frozen=True, slots=True)
class Edit:
    """A change to a dish: what is put on it, or the food that is left off."""

    label: str
    part: DishPart | None = None
    left_off: str | None = None


@dataclass(frozen=True, slots=True)
class Fix:
    """An edit with the match before and after."""

    edit: Edit
    before: Match
    after: Match


def edits(dish: Dish, knowledge: Knowledge) -> Iterator[Edit]:
    """What could be done: leaving off a part the guest named, then the shipped edits, smallest first."""
    for part in dish.parts:
        if part.role != BASE and part.food != dish.main.food:
            yield Edit(knowledge.label(part.food), left_off=part.food)
    for subject in sorted(knowledge.of_type("Edit"), key=lambda s: float(knowledge.entry(s)["order"][0])):
        entry = knowledge.entry(subject)
        part = DishPart(entry["food"][0], entry["role"][0], entry["grams"][0])
        yield Edit(knowledge.label(subject), part=part)


def edited(dish: Dish, edit: Edit) -> Dish:
    """The dish after an edit."""
    if edit.left_off:
        return dish.without(edit.left_off)
    return replace(dish, parts=(*dish.parts, edit.part)) if edit.part else dish


def smallest_fix(dishes: Sequence[Dish], wine: str, engine: Engine) -> Fix | None:
    """The first edit of the first dish that lifts the verdict by at least one band, or None."""
    before = engine.judge(table_of(list(dishes)), wine)
    floors = [band.verdict for band in engine.knowledge.bands]
    tried = list(edits(dishes[0], engine.knowledge))
    tables = {str(i): _with(dishes, edited(dishes[0], edit)) for i, edit in enumerate(tried)}
    for edit, (after,) in zip(tried, engine.each(tables, [wine]).values(), strict=True):
        if floors.index(after.verdict) < floors.index(before.verdict):
            return Fix(edit, before, after)
    return None


def _with(dishes: Sequence[Dish], first: Dish) -> Table:
    return table_of([first, *dishes[1:]])
