"""What comes to the next table in place of each food that was there: new, in season, at home in a country."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from assistant.after.phrases import FOLDER
from assistant.answers.context import Context
from assistant.evening.care import care
from assistant.evening.portions import class_of
from assistant.evening.records import Evening, FoodLine
from assistant.knowledge.files import corpus_dir
from assistant.language.cues import Lines
from assistant.language.data import read_data
from assistant.pairing.dish import single

if TYPE_CHECKING:
    from assistant.session import Session

ALWAYS, FOOD = "any", "food/"


@dataclass(frozen=True, slots=True)
class NextFoods:
    """Foods by season in the order of choice, and the words of each season."""

    foods: dict[str, tuple[str, ...]]
    seasons: dict[str, Lines]


@lru_cache(maxsize=1)
def next_foods() -> NextFoods:
    """The shipped lists. Raises KnowledgeError for a broken file."""
    return read_data(
        corpus_dir() / "planning" / FOLDER / "next.toml",
        lambda tables: NextFoods(
            {name: tuple(FOOD + one for one in foods) for name, foods in tables["foods"].items()},
            {name: Lines(words) for name, words in tables["seasons"].items()},
        ),
    )


def season_said(stems: tuple[str, ...]) -> str | None:
    """The season that is asked for."""
    return next((name for name, lines in next_foods().seasons.items() if lines.stand_in(stems)), None)


@dataclass(frozen=True, slots=True)
class Swap:
    """A food of the evening before and what stands in its place; the same where none was found."""

    old: FoodLine
    new: FoodLine
    home: bool = False

    @property
    def kept(self) -> bool:
        """Whether nothing was found in its place."""
        return self.old is self.new


def swapped(
    evening: Evening, season: str | None, country: str | None, context: Context, session: Session
) -> list[Swap]:
    """Every food of the evening with another of its class, none of which was there before."""
    taken = {line.food for line in evening.foods}
    swaps: list[Swap] = []
    for line in evening.foods:
        found = _instead(line, taken, season, country, evening, context, session)
        taken |= {found.food} if found else set()
        home = found is not None and country is not None and country in _countries(found.food, context)
        swaps.append(Swap(line, found or line, home))
    return swaps


def _instead(
    line: FoodLine, taken: set[str], season: str | None, country: str | None,
    evening: Evening, context: Context, session: Session,
) -> FoodLine | None:  # fmt: skip
    """The first new food of the class, fit for most guests with needs; at home in the country if one is."""
    wanted = class_of(line.food, context.knowledge)["id"]
    names = next_foods().foods[season or ALWAYS]
    free = [f for f in names if f not in taken and class_of(f, context.knowledge)["id"] == wanted]
    if not season:
        free = free or [f for f in _alike(line.food, context) if f not in taken]
    if not free:
        return None
    fits = _fitting(free, evening, context, session)
    best = min(free, key=lambda f: (-fits[f], country not in _countries(f, context), free.index(f)))
    return FoodLine(context.knowledge.label(best), (single(best),))


def _alike(food: str, context: Context) -> Sequence[str]:
    from assistant.pairing.likeness import alike_foods

    return alike_foods(food, context.engine)


def _fitting(foods: Sequence[str], evening: Evening, context: Context, session: Session) -> dict[str, int]:
    """How many of the guests with needs surely may have each."""
    labels = {context.knowledge.label(food): food for food in foods}
    lines = tuple(FoodLine(label, (single(food),)) for label, food in labels.items())
    guests = care(replace(evening, foods=lines, wines=()), session) if evening.needs else []
    return {food: sum(label in guest.may_have for guest in guests) for label, food in labels.items()}


def _countries(food: str, context: Context) -> frozenset[str]:
    return context.knowledge.countries(context.knowledge.food(food).homes)
