"""The pairing engine: tables of bites and wines in, ranked matches out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from assistant.knowledge.store import Knowledge
from assistant.language.frame import Preference
from assistant.pairing.dish import Bite, Dish, DishPart, Table, table_of, with_amounts
from assistant.pairing.glass import Glass, glass_of
from assistant.pairing.plate import Plate, bites_of, plate_of
from assistant.pairing.rules import RuleRunner
from assistant.pairing.score import Effect, Score, score_all, verdict
from assistant.pairing.select import within_limits
from assistant.pairing.shelf import Shelf, glass_quads, plate_quads

HUNDRED_GRAMS = 100.0
FEW = 12  # up to so many wines are scored by themselves
KEPT_TABLES = 8
TABLE_KINDS = (
    "kind/cheese", "kind/meat", "kind/seafood", "kind/nut", "kind/olive-kind", "kind/pate-food", "kind/dish",
    "kind/sweet-food", "kind/egg-dish",
)  # fmt: skip
TableKey = tuple[tuple[object, ...], ...]


@dataclass(frozen=True, slots=True)
class Match:
    """How one wine does with a table: `score` averages the bites, `warnings` are small vetoes.

    `shared` holds the share and the effects of each bite, vetoes that became warnings left out;
    `bites` the score of each bite, in table order.
    """

    wine: str
    score: float
    verdict: str
    shared: tuple[tuple[float, tuple[Effect, ...]], ...]
    bites: tuple[Score, ...]
    warnings: tuple[Effect, ...] = ()

    @property
    def path(self) -> tuple[Effect, ...]:
        """The effects over the whole table, strongest first; they add up to `score`."""
        return self.shared[0][1] if len(self.shared) == 1 else _blend(self.shared)


class Engine:
    """Scores dishes against wines. Same input, same output, always."""

    def __init__(self, knowledge: Knowledge) -> None:
        self.knowledge = knowledge
        self._runner = RuleRunner(knowledge.rules)
        self._plates: dict[str, Plate] = {}
        self._ranked: dict[TableKey, dict[str, Match]] = {}
        self._heeded: Mapping[str, Mapping[str, float]] = {}

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
        """The plates of all foods that can stand on a table by themselves, by key."""
        foods = dict.fromkeys(food for kind in TABLE_KINDS for food in self.knowledge.members(kind))
        return {key_of(food): self.plate_of_food(food) for food in foods}

    @cached_property
    def _cellar_shelf(self) -> Shelf:
        return Shelf(glass_quads(self.cellar))

    @cached_property
    def _larder_shelf(self) -> Shelf:
        return Shelf(plate_quads(self.larder))

    def forget(self) -> None:
        """Drops the rankings that are kept for follow-ups."""
        self._ranked.clear()

    def heed(self, amounts: Mapping[str, Mapping[str, float]]) -> None:
        """Tastes these foods with amounts added, per 100 g in the unit of each quantity, from now on."""
        if amounts == self._heeded:
            return
        self._heeded = amounts
        self._plates.clear()
        self.forget()
        for kept in ("larder", "_larder_shelf"):
            self.__dict__.pop(kept, None)

    def plate(self, dish: Dish) -> Plate:
        """The dish as eaten, with what is heeded of its foods added."""
        return plate_of(with_amounts(dish, self._heeded), self.knowledge)

    def plate_of_food(self, food: str) -> Plate:
        """The plate of a food eaten by itself (kept once composed)."""
        if food not in self._plates:
            self._plates[food] = self.plate(single(food))
        return self._plates[food]

    def within(self, wines: Sequence[str], limits: Sequence[Preference]) -> list[str]:
        """Those of the wines that keep to all limits, in the order given."""
        if not limits:
            return list(wines)
        if self._stocked(wines):
            return within_limits(self._cellar_shelf, wines, limits)
        return within_limits(Shelf(glass_quads(self.glasses[w] for w in wines)), wines, limits)

    def rank(self, table: Table, wines: Iterable[str]) -> list[Match]:
        """Matches for the wines, best first; equal scores in order of name.

        Wines do not influence one another, so a whole cellar is scored once and kept.
        """
        names = list(wines)
        found = (
            self._all(table)
            if len(names) > FEW and self._stocked(names)
            else self._matches(table, [self.glasses[n] for n in names])
        )
        return sorted((found[w] for w in names), key=lambda m: (-m.score, m.wine))

    def _stocked(self, names: Sequence[str]) -> bool:
        return all(self.knowledge.wines[name].type == "Wine" for name in names)

    def _all(self, table: Table) -> dict[str, Match]:
        key = tuple((b.dish.parts, tuple(sorted(b.dish.added.items())), b.share) for b in table)
        if key not in self._ranked:
            if len(self._ranked) >= KEPT_TABLES:
                self._ranked.pop(next(iter(self._ranked)))
            self._ranked[key] = self._matches(table, self.cellar)
        return self._ranked[key]

    def _matches(self, table: Table, glasses: Sequence[Glass]) -> dict[str, Match]:
        return self._each([table], glasses)[0]

    def each(self, tables: Mapping[str, Table], wines: Sequence[str]) -> dict[str, list[Match]]:
        """The wines with each of many tables, by its name and in their order: one run for all."""
        found = self._each(list(tables.values()), [self.glasses[wine] for wine in wines])
        return {name: [matches[w] for w in wines] for name, matches in zip(tables, found, strict=True)}

    def _each(self, tables: Sequence[Table], glasses: Sequence[Glass]) -> list[dict[str, Match]]:
        bites = [self._as_bites(table) for table in tables]
        named = [{f"bite-{t}-{i}": bite for i, bite in enumerate(of)} for t, of in enumerate(bites)]
        plates = {key: self.plate(bite.dish) for of in named for key, bite in of.items()}
        if glasses is self.cellar:
            firings = self._runner.run_on(self._cellar_shelf, plate_quads(plates), plates)
        else:
            firings = self._runner.run(plates, glasses)
        scores = score_all(plates, [glass.wine for glass in glasses], firings, self.knowledge)

        def matched(of: Mapping[str, Bite], wine: str) -> Match:
            return self._match(wine, [scores[key, wine] for key in of], [bite.share for bite in of.values()])

        return [{g.wine: matched(of, g.wine) for g in glasses} for of in named]

    def _as_bites(self, table: Table) -> Table:
        return tuple(
            Bite(dish, bite.share * share)
            for bite in table
            for dish, share in bites_of(bite.dish, self.knowledge)
        )

    def judge(self, table: Table, wine: str) -> Match:
        """How one wine does with a table."""
        return self.rank(table, [wine])[0]

    def rank_foods(self, wine: str, foods: Sequence[str]) -> list[tuple[str, Score]]:
        """Foods of the larder eaten by themselves, best with this wine first."""
        firings = self._runner.run_for(self.glasses[wine], self._larder_shelf, self.larder)
        scores = score_all(self.larder, [wine], firings, self.knowledge)
        ranked = ((food, scores[key_of(food), wine]) for food in foods)
        return sorted(ranked, key=lambda pair: (-pair[1].total, pair[0]))

    def score_plates(self, wine: str, plates: Mapping[str, Plate]) -> dict[str, Score]:
        """How these plates (by key) do with one wine, without the cellar or the larder being looked at."""
        firings = self._runner.run(plates, [self.glasses[wine]])
        scores = score_all(plates, [wine], firings, self.knowledge)
        return {key: scores[key, wine] for key in plates}

    def _match(self, wine: str, scores: list[Score], shares: list[float]) -> Match:
        if len(scores) == 1:
            only = scores[0]
            return Match(wine, only.total, only.verdict, ((1.0, only.path),), (only,))
        lifted = [self._lift(score, share) for score, share in zip(scores, shares, strict=True)]
        total = sum(share * score.total for (score, _), share in zip(lifted, shares, strict=True))
        shared = tuple((share, score.path) for (score, _), share in zip(lifted, shares, strict=True))
        warnings = tuple(veto for _, veto in lifted if veto)
        return Match(wine, total, verdict(total, self.knowledge.bands), shared, tuple(scores), warnings)

    def _lift(self, score: Score, share: float) -> tuple[Score, Effect | None]:
        """A veto that touches few bites becomes a spoken warning."""
        if not score.vetoed or share >= self.knowledge.constants["warning-share"]:
            return score, None
        rules = self.knowledge.rules
        vetoes = [e for e in score.path if e.rule in rules and rules[e.rule].weight == 0]
        path = tuple(e for e in score.path if e not in vetoes)
        total = sum(e.effect for e in path)
        lifted = Score(score.wine, total, verdict(total, self.knowledge.bands), path)
        return lifted, vetoes[0]


def key_of(food: str) -> str:
    """The key of a food's plate, fit for the tail of an IRI."""
    return food.replace("/", "--")


def single(food: str) -> Dish:
    """A food eaten by itself."""
    return Dish((DishPart(food, "role/base", HUNDRED_GRAMS),))


def board(foods: Sequence[str]) -> Table:
    """Foods side by side, each an equal share of the bites."""
    return table_of([single(food) for food in foods])


def _blend(shared: Sequence[tuple[float, tuple[Effect, ...]]]) -> tuple[Effect, ...]:
    effects: dict[str, float] = {}
    values: dict[str, dict[str, float]] = {}
    for share, path in shared:
        for effect in path:
            effects[effect.rule] = effects.get(effect.rule, 0.0) + share * effect.effect
            values.setdefault(effect.rule, dict(effect.values))
    blended = [Effect(rule, e, values[rule]) for rule, e in effects.items() if e]
    return tuple(sorted(blended, key=lambda e: (-abs(e.effect), e.rule)))
