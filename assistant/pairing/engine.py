"""The pairing engine: tables of bites and wines in, ranked matches out."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import cached_property
from itertools import accumulate
from typing import Any, TypeVar

from assistant.knowledge.store import Knowledge
from assistant.language.frame import Preference
from assistant.pairing.columns import Columns, glass_columns, plate_columns
from assistant.pairing.dish import Bite, Dish, Table, single, table_of, with_amounts
from assistant.pairing.glass import Glass, glass_of
from assistant.pairing.larder import larder_plates
from assistant.pairing.match import Match, Tasted
from assistant.pairing.plate import Plate, bites_of, plate_of
from assistant.pairing.rules import RuleRunner
from assistant.pairing.score import Score, Sums
from assistant.pairing.select import by_country, within_limits
from assistant.pairing.shelf import Shelf, glass_quads

FEW = 12  # up to so many wines are scored by themselves
KEPT_TABLES = 8
Made = TypeVar("Made")
TableKey = tuple[tuple[object, ...], ...]


class Engine:
    """Scores dishes against wines. Same input, same output, always."""

    def __init__(self, knowledge: Knowledge) -> None:
        self.knowledge = knowledge
        self._plates: dict[str, Plate] = {}
        self._ranked: dict[TableKey, Mapping[str, Match]] = {}
        self._few: dict[tuple[str, ...], Columns] = {}
        self._made: dict[tuple[str, str], Any] = {}
        self._within: dict[tuple[Preference, ...], frozenset[str]] = {}
        self._heeded: Mapping[str, Mapping[str, float]] = {}

    @cached_property
    def _runner(self) -> RuleRunner:
        return RuleRunner(self.knowledge.rules)

    @cached_property
    def glasses(self) -> dict[str, Glass]:
        """Every wine and drink as a glass."""
        return {w.id: glass_of(w, self.knowledge) for w in self.knowledge.wines.values()}

    @cached_property
    def cellar(self) -> tuple[Glass, ...]:
        """The glasses of all wine styles."""
        wines = self.knowledge.wines
        return tuple(g for g in self.glasses.values() if wines[g.wine].type == "Wine")

    @cached_property
    def larder(self) -> dict[str, Plate]:
        """The plates of all foods and kinds of food by themselves, by key."""
        plain = {food: plate for food, plate in self._as_shipped.items() if food not in self._heeded}
        self._plates = plain | self._plates
        return {key_of(food): self.plate_of_food(food) for food in self._as_shipped}

    @cached_property
    def _as_shipped(self) -> dict[str, Plate]:
        return larder_plates(self.knowledge)

    @cached_property
    def _poured(self) -> Columns:
        return glass_columns(self.glasses.values())

    @cached_property
    def _laid(self) -> Columns:
        return plate_columns(self.larder)

    @cached_property
    def _shelf(self) -> Shelf:
        return Shelf(glass_quads(self.glasses.values()))

    def lay(self) -> None:
        """Works out now what many foods at once would wait for: worth it while nobody waits."""
        self._runner.run(self._laid.picked(()), self._poured.picked(()))

    def forget(self) -> None:
        """Drops the rankings that are kept for follow-ups."""
        self._ranked.clear()

    def heed(self, amounts: Mapping[str, Mapping[str, float]]) -> None:
        """Tastes these foods with amounts added, per 100 g in the unit of each quantity, from now on."""
        if amounts == self._heeded:
            return
        self._heeded = amounts
        self._plates.clear()
        self._made.clear()
        self.forget()
        for kept in ("larder", "_laid"):
            self.__dict__.pop(kept, None)

    def plate(self, dish: Dish) -> Plate:
        """The dish as eaten, with what is heeded of its foods added."""
        if dish == single(dish.main.food):
            return self.plate_of_food(dish.main.food)
        return plate_of(with_amounts(dish, self._heeded), self.knowledge)

    def plate_of_food(self, food: str) -> Plate:
        """The plate of a food eaten by itself (kept once composed)."""
        if food not in self._plates:
            self._plates[food] = plate_of(with_amounts(single(food), self._heeded), self.knowledge)
        return self._plates[food]

    def worked_out(self, what: str, name: str, make: Callable[[str], Made]) -> Made:
        """What is made of plates or glasses, kept as long as they are; `what` is the kind of thing."""
        if (what, name) not in self._made:
            self._made[what, name] = make(name)
        found: Made = self._made[what, name]
        return found

    def within(self, wines: Sequence[str], limits: Sequence[Preference]) -> list[str]:
        """Those of the wines that keep to all limits, in the order given."""
        if not limits:
            return list(wines)
        if tuple(limits) not in self._within:
            self._within = dict(list(self._within.items())[1 - KEPT_TABLES :])
            told = [one for limit in limits for one in by_country(limit, self.knowledge)]
            self._within[tuple(limits)] = within_limits(self._shelf, told)
        return [wine for wine in wines if wine in self._within[tuple(limits)]]

    def rank(self, table: Table, wines: Iterable[str]) -> list[Match]:
        """Matches for the wines, best first; equal scores in order of name.

        Wines do not influence one another, so many are scored at once with all others and kept.
        """
        return self.rank_each([table], list(wines))[0]

    def rank_each(self, tables: Sequence[Table], wines: Sequence[str]) -> list[list[Match]]:
        """The same for each of the tables; a few wines alone where a table is not kept."""
        kept = all(_table_key(table) in self._ranked for table in tables)
        few = len(wines) <= FEW and not kept
        found = self._matches(tables, self._glasses(tuple(wines))) if few else self.matches(tables)
        return [sorted((of[w] for w in wines), key=lambda m: (-m.score, m.wine)) for of in found]

    def matches(self, tables: Sequence[Table]) -> Sequence[Mapping[str, Match]]:
        """Every wine and drink with each of the tables, by wine: one run for all that are not kept."""
        keys = [_table_key(table) for table in tables]
        new = {key: table for key, table in zip(keys, tables, strict=True) if key not in self._ranked}
        found = self._ranked | dict(zip(new, self._matches(list(new.values()), self._poured), strict=True))
        self._ranked = dict(list(found.items())[-KEPT_TABLES:])
        return [found[key] for key in keys]

    def each(self, tables: Mapping[str, Table], wines: Sequence[str]) -> dict[str, list[Match]]:
        """The wines with each of many tables, by its name and in their order: one run for all."""
        found = self._matches(list(tables.values()), self._glasses(tuple(wines)))
        return {name: [matches[w] for w in wines] for name, matches in zip(tables, found, strict=True)}

    def _glasses(self, wines: tuple[str, ...]) -> Columns:
        """The columns of these wines, kept for a while."""
        if wines not in self._few:
            self._few = dict(list(self._few.items())[1 - KEPT_TABLES :])
            self._few[wines] = self._poured.picked(wines)
        return self._few[wines]

    def _matches(self, tables: Sequence[Table], glasses: Columns) -> list[dict[str, Match]]:
        if not tables:
            return []
        bites = [bite for table in tables for bite in self._as_bites(table)]
        sums = self._sums(self._columns([bite.dish for bite in bites]), glasses)
        ends = list(accumulate(len(self._as_bites(table)) for table in tables))
        rows = [slice(start, end) for start, end in zip([0, *ends], ends, strict=False)]
        return [Tasted(sums, of, [bite.share for bite in bites[of]]).matches() for of in rows]

    def _columns(self, dishes: Sequence[Dish]) -> Columns:
        """The columns of their plates; picked from the larder where that is laid and holds them all."""
        foods = [dish.main.food for dish in dishes]
        plain = all(dish == single(food) for dish, food in zip(dishes, foods, strict=True))
        if plain and "_laid" in self.__dict__ and all(key_of(food) in self.larder for food in foods):
            return self._laid.picked([key_of(food) for food in foods])
        return plate_columns({f"bite-{i}": self.plate(dish) for i, dish in enumerate(dishes)})

    def _sums(self, plates: Columns, glasses: Columns) -> Sums:
        return Sums(plates, glasses, self._runner.run(plates, glasses), self.knowledge)

    def _as_bites(self, table: Table) -> Table:
        return tuple(
            Bite(dish, bite.share * share)
            for bite in table
            for dish, share in bites_of(bite.dish, self.knowledge)
        )

    def judge(self, table: Table, wine: str) -> Match:
        """How one wine does with a table."""
        return self.rank(table, [wine])[0]

    def judge_each(self, table: Table, wines: Sequence[str]) -> list[Match]:
        """How each of the wines does with a table, in their order."""
        matches = {match.wine: match for match in self.rank(table, wines)}
        return [matches[wine] for wine in wines]

    def rank_foods(self, wine: str, foods: Sequence[str]) -> list[tuple[str, Score]]:
        """Foods eaten by themselves, best with this wine first."""
        sums = self._sums(self._laid, self._glasses((wine,)))
        ranked = ((food, sums.score(self._laid.row(key_of(food)), 0)) for food in foods)
        return sorted(ranked, key=lambda pair: (-pair[1].total, pair[0]))

    def score_plates(self, wine: str, plates: Mapping[str, Plate]) -> dict[str, Score]:
        """How these plates (by key) do with one wine, without the cellar or the larder being looked at."""
        scores = self._sums(plate_columns(plates), self._glasses((wine,))).scores()
        return {key: scores[key, wine] for key in plates}


def _table_key(table: Table) -> TableKey:
    return tuple((b.dish.parts, tuple(sorted(b.dish.added.items())), b.share) for b in table)


def key_of(food: str) -> str:
    """The key of a food's plate, fit for the tail of an IRI."""
    return food.replace("/", "--")


def board(foods: Sequence[str]) -> Table:
    """Foods side by side, each an equal share of the bites."""
    return table_of([single(food) for food in foods])
