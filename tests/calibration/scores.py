"""Published facts scored again under other rule weights, without reading words or running rules again.

A firing does not depend on any weight. So each food is read and the rules are run on it once; what
follows a change is the engine's own scoring of the wines that the changed rules concern.
"""

from __future__ import annotations

import copy
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from statistics import fmean
from typing import NamedTuple

from assistant.knowledge.store import Knowledge
from assistant.pairing import choose
from assistant.pairing.columns import Columns, glass_columns, plate_columns
from assistant.pairing.match import Match, Tasted
from assistant.pairing.rules import Fired
from assistant.pairing.score import Sums
from tests import w3c_courses as w3c
from tests.pairing_facts import Fact, Judge
from tests.test_w3c_courses import DEFENDED
from tests.w3c_courses import COLOUR, PLACES, SUGAR, Course, Place

Moves = tuple[tuple[str, float], ...]  # rule and multiplier of its shipped weight, in order of rule
RANKINGS_KEPT = 200
W3C = "W3C OWL Guide and Test Cases, 10 February 2004"


class Figures(NamedTuple):
    """Shares and mean places from 0 to 1; `bad` is the share of bad pairs that are liked."""

    fair: float
    any_style: float
    place: float
    in_class: float
    bad: float
    colour: float
    sugar: float


class Row(NamedTuple):
    """One fact as judged under some weights."""

    fair: float
    any_style: float
    place: float
    in_class: float


Judged = list[tuple[Fact, Row]]


class Right(NamedTuple):
    """Places of one course that count, and those of them that are right, by aspect."""

    colours: int
    colour: int
    sugars: int
    sugar: int


@dataclass(frozen=True)
class Tasting:
    """A food on the table with every firing, by wine; `touched` are the wines a rule concerns."""

    plates: Columns
    shares: list[float]
    fired: list[Fired]
    touched: Mapping[str, frozenset[str]]


def reweighed(knowledge: Knowledge, moves: Moves) -> Knowledge:
    """The same knowledge with some weights multiplied; the one given stays as it is."""
    rules, changed = dict(knowledge.rules), copy.copy(knowledge)
    for rule, factor in moves:
        rules[rule] = replace(rules[rule], weight=rules[rule].weight * factor)
    changed.rules = rules
    return changed


class Scores:
    """All facts and courses under any weights; what was judged once is kept."""

    def __init__(self, judge: Judge | None = None) -> None:
        self.judge = judge or Judge()
        self.engine = self.judge.session.engine
        self._tastings: dict[str, Tasting] = {}
        self._shipped: dict[str, dict[str, Match]] = {}
        self._rows: dict[tuple[int, Moves], Row] = {}
        self._right: dict[tuple[str, Moves], Right] = {}
        self._judged_facts: dict[Moves, tuple[Judged, Judged]] = {}
        self._judged_courses: dict[Moves, list[Right]] = {}
        self._recent: dict[tuple[str, Moves], list[Match]] = {}

    def facts(self, relation: str) -> list[Fact]:
        """Facts of a relation that can be asked for and that nothing contradicts."""
        names = self.judge.names
        skipped = {*names.untested, *names.contested}
        return [f for f in self.judge.facts if f.relation == relation and f.key not in skipped]

    @cached_property
    def courses(self) -> list[Course]:
        """The courses of the W3C example."""
        return w3c.read_courses()

    @cached_property
    def rules(self) -> list[str]:
        """Rules with a weight that fire for any of the foods, in order of name."""
        foods = {w for fact in self.judge.facts for w in self.judge.names.foods.get(fact.food, ())}
        tables = [self.tasting(w) for w in sorted(foods)] + [self.tasting(_words(c)) for c in self.courses]
        fired = {rule for table in tables for rule in table.touched}
        return sorted(rule for rule in fired if self.engine.knowledge.rules[rule].weight)

    def tasting(self, words: str) -> Tasting:
        """What the rules find for a food in these words."""
        if words not in self._tastings:
            self._tastings[words] = self._taste(words)
        return self._tastings[words]

    def _taste(self, words: str) -> Tasting:
        engine = self.engine
        bites = engine._as_bites(self.judge.context(words).table())
        plates = plate_columns({f"bite-{i}": engine.plate(bite.dish) for i, bite in enumerate(bites)})
        fired = engine._runner.run(plates, self.cellar)
        wines = {f.rule: self._touched(f) for f in fired}
        return Tasting(plates, [bite.share for bite in bites], fired, wines)

    @cached_property
    def cellar(self) -> Columns:
        """All wine styles."""
        return glass_columns(self.engine.cellar)

    def _touched(self, fired: Fired) -> frozenset[str]:
        at = fired.across[(fired.strength > 0).any(axis=0)]
        return frozenset(self.cellar.keys[i] for i in at.tolist())

    def ranking(self, words: str, moves: Moves = ()) -> list[Match]:
        """All wines with a food under these weights, best first, as the engine would rank them."""
        tasting = self.tasting(words)
        if words not in self._shipped:
            self._shipped[words] = self._matches(tasting, self.engine.knowledge)
        moved = {wine for rule, _ in moves for wine in tasting.touched.get(rule, ())}
        changed = self._matches(tasting, reweighed(self.engine.knowledge, moves)) if moved else {}
        return sorted(({**self._shipped[words], **changed}).values(), key=lambda m: (-m.score, m.wine))

    def _matches(self, tasting: Tasting, knowledge: Knowledge) -> dict[str, Match]:
        sums = Sums(tasting.plates, self.cellar, tasting.fired, knowledge)
        return Tasted(sums, slice(0, len(tasting.shares)), tasting.shares).matches()

    def row(self, fact: Fact, moves: Moves) -> Row:
        """A fact under these weights."""
        foods = self.judge.names.foods[fact.food]
        key = fact.line, self._concern(foods, moves)
        if key not in self._rows:
            rankings = {words: self._recently(words, key[1]) for words in foods}
            judge = Judge(self.judge.session, self.judge.names, [fact], rankings)
            found = judge.outcome(fact)
            self._rows[key] = Row(found.fair, found.any_style, found.percentile, found.within_class)
        return self._rows[key]

    def _recently(self, words: str, moves: Moves) -> list[Match]:
        """A ranking that several facts ask for one after another; only a few are kept."""
        key = words, self._concern([words], moves)
        if key not in self._recent:
            if len(self._recent) >= RANKINGS_KEPT:
                self._recent.pop(next(iter(self._recent)))
            self._recent[key] = self.ranking(*key)
        return self._recent[key]

    def _concern(self, foods: Iterable[str], moves: Moves) -> Moves:
        fired = [self.tasting(words).touched for words in foods]
        return tuple(move for move in moves if any(move[0] in touched for touched in fired))

    def right(self, course: Course, moves: Moves) -> Right:
        """The places of a course under these weights."""
        words = _words(course)
        key = words, self._concern([words], moves)
        if key not in self._right:
            self._right[key] = self._judged(course, self._recently(*key))
        return self._right[key]

    def _judged(self, course: Course, ranking: list[Match]) -> Right:
        context = self.judge.context(_words(course))
        chosen = choose.picks(ranking, PLACES, self.engine.knowledge)  # of the rules alone, without customs
        answered = [w3c.Answered(course, tuple(w3c._place(course, context.item(m)) for m in chosen), ())]
        places = {aspect: w3c.counted(answered, aspect, DEFENDED[aspect]) for aspect in (COLOUR, SUGAR)}
        return Right(*(n for aspect in (COLOUR, SUGAR) for n in _count(places[aspect], aspect)))

    def figures(self, moves: Moves = (), without: str = "") -> Figures:
        """The figures under these weights; a source left out does not count."""
        good, bad = self._all(moves)
        kept = [row for fact, row in good if fact.source != without]
        liked = [row.fair for fact, row in bad if fact.source != without]
        return Figures(*means(kept), fmean(liked), *self.w3c(moves))

    def _all(self, moves: Moves) -> tuple[Judged, Judged]:
        if moves not in self._judged_facts:
            good, bad = (
                [(f, self.row(f, moves)) for f in self.facts(relation)] for relation in ("good", "bad")
            )
            self._judged_facts[moves] = good, bad
        return self._judged_facts[moves]

    def w3c(self, moves: Moves = ()) -> tuple[float, float]:
        """Shares of the places that have the colour and the sugar a course asks for."""
        found = self._courses(moves)
        colours, colour, sugars, sugar = (sum(column) for column in zip(*found, strict=True))
        return colour / colours, sugar / sugars

    def _courses(self, moves: Moves) -> list[Right]:
        if moves not in self._judged_courses:
            self._judged_courses[moves] = [self.right(course, moves) for course in self.courses]
        return self._judged_courses[moves]


def means(rows: list[Row]) -> Row:
    """Mean of each column; rows must not be empty."""
    return Row(*(fmean(column) for column in zip(*rows, strict=True)))


def _count(places: list[Place], aspect: str) -> tuple[int, int]:
    return len(places), sum(place.right(aspect) for place in places)


def _words(course: Course) -> str:
    return w3c.WORDS.get(course.food, course.food)
