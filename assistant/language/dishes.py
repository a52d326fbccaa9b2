"""Readings -> dishes: which part is the base, what coats it, what stands beside it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from pathlib import Path

from assistant.knowledge.concepts import Food
from assistant.knowledge.store import Knowledge
from assistant.language.data import read_data
from assistant.language.drafts import Draft, coated, cook_base, mass_beside
from assistant.language.fold import key
from assistant.language.frame import Reading, Text
from assistant.language.recipes import ALIKE, another_sort, as_spice, is_spiced, without
from assistant.language.small_words import small_words
from assistant.pairing.dish import BASE, COATING, HUNDRED_GRAMS, SIDE, Dish, DishPart, single

NEXT_TO, WITH, BESIDE, OVER, WITHOUT = "next to", "with", "beside", "over", "without"
INSTEAD = "instead"
ACCOMPANIMENT, SWEETENER, SWEETENED = "kind/accompaniment", "kind/sweetener", "kind/cheese"
SAVOURY = "course/savoury"
TOPPING = "role/topping"
# What is named with one of these is on it, not beside it: who may not have it may not have the dish.
CARRIES = frozenset(("kind/pizza-kind", "kind/sandwich-kind", "kind/pasta-kind", "kind/rice-kind"))
# What lies on a dish where it is named behind something that does: `gnocchi with gorgonzola and walnuts`.
LIES_ON = frozenset(("kind/nut", "kind/vegetable", "kind/fruit"))
# A jam or chutney in a list is an item of it, if one of these stands before it or a comma on both sides.
SPREADS = frozenset(("kind/sweetener", "kind/sweet-sauce"))
ITEM_BEHIND = frozenset(("plus", "."))
FEWEST_LISTED = 3
DEFAULT_SHARE = 20.0


def read_roles(file: Path) -> dict[str, str]:
    """Connecting words by what they mean (`with`, `beside`, `over`, `without`)."""
    return read_data(
        file, lambda table: {word: meaning for meaning, words in table.items() for word in words}
    )


class DishReader:
    """Composes dishes from the food and method readings of a text."""

    def __init__(self, knowledge: Knowledge, roles: Mapping[str, str]) -> None:
        self._knowledge, self._roles = knowledge, roles
        self._with = frozenset(word for word in roles if roles[word] == WITH)

    def dishes(self, text: Text, readings: Iterable[Reading]) -> tuple[list[Dish], list[Reading]]:
        """The dishes named, in order, and what could not be left out; a side is a dish of its own."""
        drafts: list[Draft] = []
        waiting, idle = Draft(), list[Reading]()
        last: Reading | None = None
        carried: str | None = None  # the link of a method counts for the food right behind it
        found = list(readings)
        for i, reading in enumerate(found):
            link = self._link(text, last, reading)
            if last and link == BESIDE and self._goes_on(text, last, reading, drafts):
                link = WITH
            if drafts and (link == WITH or (link == BESIDE and _ends(text, found[0], reading, drafts[-1]))):
                drafts[-1].set_apart()
            if reading.kind == "method":
                waits = self._method(text, reading, found[i + 1 : i + 2], drafts, waiting)
                carried = (carried or link) if waits else None
            elif link == WITHOUT:
                self._settle(drafts, waiting)
                idle += [] if self._left_out(reading, drafts) else [reading]
            elif self._is_item(text, found, i):
                food = self._knowledge.food(reading.id)
                drafts.append(Draft([DishPart(food.served_as or food.id, BASE, HUNDRED_GRAMS)]))
            else:
                self._food(reading, carried or link, drafts, waiting)
            carried = carried if reading.kind == "method" else None
            last = reading
        return self._finished(drafts, waiting) or self._named_alone(text, found), idle

    def _named_alone(self, text: Text, found: list[Reading]) -> list[Dish]:
        """`wine for the roast` is a wine for the dinner of that name."""
        if len(found) != 1 or found[0].kind != "method" or not found[0].start:
            return []
        dish = self._knowledge.methods[found[0].id].served_as
        alone = text.stems[found[0].start - 1] in small_words()["before-a-dish"]
        return [single(dish)] if dish and alone else []

    def _goes_on(self, text: Text, last: Reading, reading: Reading, drafts: list[Draft]) -> bool:
        """Whether a small thing is named behind a part of a dish, and with it (`with lemon and garlic`)."""
        parts = drafts[-1].parts if drafts else []
        if parts and is_spiced(text, reading, parts[0], self._with, self._knowledge):
            return True
        joined = parts[1:] and parts[-1].food == last.id and parts[-1].role != BASE
        if not joined or reading.kind == "method" or "," in text.stems[last.end : reading.start]:
            return False
        food = self._knowledge.food(reading.id)
        new = all(part.food != food.id for part in parts)
        return new and food.role == TOPPING and not food.parts and bool(LIES_ON.intersection(food.kinds))

    def _left_out(self, reading: Reading, drafts: list[Draft]) -> bool:
        """Takes a food off the last dish; whether it is surely not on it now."""
        before = drafts[-1].parts if drafts else []
        if not before:
            return True
        drafts[-1].parts = without(before, reading.id, self._knowledge)
        composed = bool(self._knowledge.food(before[0].food).parts)
        return drafts[-1].parts != before or not composed

    def _link(self, text: Text, last: Reading | None, reading: Reading) -> str:
        start = last.end if last else max(0, reading.start - 2)
        between = text.stems[start : reading.start]
        meanings = [self._roles[word] for word in between if word in self._roles]
        if last is None:
            lies = small_words()["asks-length"].intersection(text.stems[:start])  # `how long can I leave it`
            return WITHOUT if meanings[-1:] == [WITHOUT] and not lies else BESIDE
        if not between or all(word in ("-", "'") for word in between):
            return NEXT_TO
        if INSTEAD in meanings and last.type != "Kind":
            return WITHOUT  # `prawns instead of the chicken`
        if meanings[-2:] == [WITHOUT, WITH]:
            return WITH  # `carbonara but with cream`
        return next((meaning for meaning in (WITHOUT, WITH, OVER) if meaning in meanings), BESIDE)

    def _method(
        self, text: Text, method: Reading, behind: list[Reading], drafts: list[Draft], waiting: Draft
    ) -> bool:
        """Cooks the food right behind it, or else the last base; whether it waits for a food."""
        waits = bool(behind) and self._link(text, method, behind[0]) == NEXT_TO
        if waits or not drafts:
            waiting.methods.append(method.id)
        else:
            cook_base(drafts[-1], (method.id,))
        return waits

    def _food(self, reading: Reading, link: str, drafts: list[Draft], waiting: Draft) -> None:
        food, current = self._knowledge.food(reading.id), drafts[-1] if drafts else None
        if current and link in (WITH, BESIDE) and self._holds(current, food):
            return
        if current is None or link == OVER:
            self._start(food, drafts, waiting)
        elif link == WITH and (spice := as_spice(food, current.base, self._knowledge)):
            current.parts.append(spice)
        elif ACCOMPANIMENT in food.kinds and self._lies_alone(food, link, drafts):
            drafts.append(Draft([DishPart(food.served_as or food.id, BASE, HUNDRED_GRAMS)]))
        elif ACCOMPANIMENT in food.kinds:
            current.parts.append(self._part(food))
        elif link == NEXT_TO and not self._alike(food, current):
            if apart := current.taken_apart():  # `brie, olives and rosemary crackers`
                drafts.append(apart)
            self._becomes_head(food, reading.text, drafts[-1], waiting)
        elif link == WITH and food.role not in (None, SIDE) and not waiting.methods:
            current.parts.append(self._part(food))
        elif link == WITH and self._tops(food, current):
            current.parts.append(self._part(food, tuple(waiting.methods)))
            waiting.methods = []
        else:
            self._start(food, drafts, waiting)

    def _holds(self, current: Draft, food: Food) -> bool:
        """Whether a small thing is in the dish as it is known (`lamb tagine and apricots`)."""
        if current.base is None or food.role != TOPPING:
            return False
        dish = self._knowledge.food(current.base.food)
        named = bool(dish.parts) and set(key(food.label)) <= set(key(dish.label))
        return named or any(part.food == food.id and part.role != BASE for part in dish.parts)

    def _lies_alone(self, food: Food, link: str, drafts: list[Draft]) -> bool:
        """Whether something sweet ends a list of savoury things: nobody means olives with quince paste."""
        base = drafts[-1].base
        if link != BESIDE or len(drafts) < 2 or SWEETENER not in food.kinds or base is None:
            return False
        savoury = self._knowledge.food(base.food)
        return SWEETENED not in savoury.kinds and savoury.course in (None, SAVOURY)

    def _is_item(self, text: Text, found: list[Reading], at: int) -> bool:
        """Whether a spread is an item of a list by itself: `Brie, Gouda. plus fig chutney, walnuts`."""
        reading, before = found[at], found[:at]
        if len(found) < FEWEST_LISTED or reading.kind == "method":
            return False
        if not SPREADS.intersection(self._knowledge.food(reading.id).kinds):
            return False
        between = text.stems[before[-1].end : reading.start] if before else (",",)
        listed = between == (",",) and len(before) != 1
        goes_on = text.stems[reading.end : reading.end + 1] == (",",)
        return not ITEM_BEHIND.isdisjoint(between) or (listed and goes_on)

    def _alike(self, food: Food, current: Draft) -> bool:
        """Two cheeses in a row are a board; a mushroom before a risotto is a part of it."""
        base = current.base
        shared = set(food.kinds) & set(self._knowledge.food(base.food).kinds) if base else set()
        return bool(shared & ALIKE)

    def _start(self, food: Food, drafts: list[Draft], waiting: Draft) -> None:
        """A new dish; what waited for a base becomes its parts."""
        if ACCOMPANIMENT in food.kinds:
            waiting.parts.append(self._part(food))
            return
        base = DishPart(food.id, BASE, HUNDRED_GRAMS, tuple(waiting.methods))
        drafts.append(Draft([base, *waiting.parts]))
        waiting.parts, waiting.methods = [], []

    def _becomes_head(self, food: Food, said: str, current: Draft, waiting: Draft) -> None:
        """`mushroom risotto`: the later name is the base, the earlier one a part of it."""
        former = current.base
        sort = another_sort(food, said, former.food, self._knowledge) if former else ()
        if sort and former:
            current.called = f"{self._knowledge.label(former.food)} {said}"
            current.parts = [*sort, *(p for p in current.parts if p is not former)]
            return
        methods = tuple(waiting.methods)
        waiting.methods = []
        if former is None:
            current.parts.insert(0, DishPart(food.id, BASE, HUNDRED_GRAMS, methods))
            return
        part = self._part(self._knowledge.food(former.food))
        others = [p for p in current.parts if p is not former]
        head = DishPart(food.id, BASE, HUNDRED_GRAMS, methods or former.methods)
        current.parts = [head, replace(part, methods=()), *others]

    def _tops(self, food: Food, current: Draft) -> bool:
        """Whether a single food named with a pizza or sandwich is on it (`pizza with anchovies`)."""
        base = current.base
        kinds = self._knowledge.food(base.food).kinds if base else ()
        return bool(CARRIES.intersection(kinds)) and food.role is None and not food.parts

    def _part(self, food: Food, methods: tuple[str, ...] = ()) -> DishPart:
        role = food.role if food.role not in (None, SIDE) else TOPPING
        share = food.share or DEFAULT_SHARE
        return DishPart(food.id, role or TOPPING, mass_beside(share), methods)

    def _finished(self, drafts: list[Draft], waiting: Draft) -> list[Dish]:
        if waiting.methods and drafts:
            cook_base(drafts[-1], tuple(waiting.methods))
        self._settle(drafts, waiting)
        made = [Dish(coated(draft, self._knowledge), called=draft.called) for draft in drafts]
        return [dish for at, dish in enumerate(made) if dish not in made[:at]]  # said twice is served once

    def _settle(self, drafts: list[Draft], waiting: Draft) -> None:
        """Sauces and seasonings that waited for a base: the first becomes one if there is none."""
        if waiting.parts and not drafts:
            lead, *rest = waiting.parts
            food = self._knowledge.food(lead.food).served_as or lead.food
            drafts.append(Draft([replace(lead, food=food, role=BASE, mass=HUNDRED_GRAMS), *rest]))
        elif waiting.parts:
            drafts[-1].parts.extend(waiting.parts)
        waiting.parts = []


def _ends(text: Text, first: Reading, reading: Reading, draft: Draft) -> bool:
    """Whether what stands before is whole: in a list, or behind a sauce (`with mint sauce and`)."""
    return "," in text.stems[first.end : reading.start] or draft.parts[-1].role in COATING
