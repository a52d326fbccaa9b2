"""Everything on the table tasted with everything in the glass: what the rest of a plan rests on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from assistant.evening.alcohol_free import whole
from assistant.evening.choose_make import matches_of, scores_from
from assistant.evening.choose_task import Scores
from assistant.evening.main_bites import rests_palate, wanting_wine
from assistant.evening.portions import portions
from assistant.evening.records import Evening, FoodLine
from assistant.pairing.dish import Table, table_of
from assistant.pairing.engine import Engine
from assistant.pairing.glass import Glass
from assistant.pairing.match import Match
from assistant.waiting import Told, silent


@dataclass(frozen=True, slots=True)
class Tasting:
    """At least one food with at least one wine, all called by the labels of the file.

    `plates` is each food as a small table, `grams` what a guest eats of it, `matches[food][wine]` how they
    do. `every` scores all foods; `tasted` leaves out plain bread and crackers, which rest the palate, and
    counts each food by what is eaten of it. `styles` are the wines of the knowledge behind the labels.
    """

    plates: Mapping[str, Table]
    grams: Mapping[str, float]
    matches: Mapping[str, Mapping[str, Match]]
    every: Scores
    tasted: Scores
    styles: Mapping[str, str]

    @property
    def table(self) -> Table:
        """What is tasted, as one table."""
        return whole([self.plates[food] for food in self.tasted.foods], self.tasted.weights)

    def eaten(self, foods: Sequence[str]) -> list[float]:
        """Grams of these foods for one guest."""
        return [self.grams[food] for food in foods]


def taste(evening: Evening, engine: Engine, told: Told = silent) -> Tasting | None:
    """The evening tasted, or None where no food or no wine could be read; `told` hears of every food."""
    if not evening.wines or not evening.foods:
        return None
    styles = {line.label: line.wine for line in evening.wines}
    plates = {line.label: table_of(list(line.dishes)) for line in evening.foods}
    grams = {p.food: p.per_guest for p in portions(evening, engine.knowledge)}
    matches: dict[str, dict[str, Match]] = {}
    for food, plate in plates.items():
        matches[food] = matched(plate, styles, engine)
        told(len(matches), len(plates))
    wanting = wanting_wine([line.dishes for line in evening.foods], engine)
    alone = [evening.foods[i].label for i in wanting]
    every, tasted = (scored(matches, grams, foods, engine) for foods in (list(plates), alone))
    return Tasting(plates, grams, matches, every, tasted, styles)


def matched(plate: Table, styles: Mapping[str, str], engine: Engine) -> dict[str, Match]:
    """How a food does with each wine, by label."""
    (found,) = matches_of([plate], list(dict.fromkeys(styles.values())), engine)
    return {label: found[wine].named(label) for label, wine in styles.items()}


def scored(
    matches: Mapping[str, Mapping[str, Match]],
    grams: Mapping[str, float],
    foods: Sequence[str],
    engine: Engine,
) -> Scores:
    """The scores of these foods, each counting by what is eaten of it."""
    rows = [matches[food] for food in foods]
    return scores_from(rows, foods, [grams[food] for food in foods], engine)


def glasses_of(evening: Evening, engine: Engine) -> list[Glass]:
    """The wines of the evening as glasses that carry their labels."""
    return [replace(engine.glasses[line.wine], wine=line.label) for line in evening.wines]


def rests(line: FoodLine, engine: Engine) -> bool:
    """Whether it is there to be eaten between the others."""
    return all(rests_palate(dish, engine) for dish in line.dishes)
