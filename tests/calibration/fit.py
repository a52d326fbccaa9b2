"""A small, bounded search for better rule weights, and the same with one source left out.

Everything is tried in a fixed order and ties go to the first, so a fit always ends alike.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import log
from statistics import fmean

from tests.calibration.bounds import Settings
from tests.calibration.scores import W3C, Figures, Moves, Row, Scores, means

SHIPPED: Moves = ()


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A fit without a source (none where empty): what moves, and the figures of all facts with it.

    `before` and `own` are the good facts of that source, as shipped and as fitted.
    """

    source: str
    moves: Moves
    figures: Figures
    before: Row | None
    own: Row | None


class Fit:
    """Fits weights to all facts but those of one source."""

    def __init__(self, scores: Scores, settings: Settings) -> None:
        self.scores, self.settings = scores, settings
        self.shipped = scores.engine.knowledge.rules

    def objective(self, moves: Moves, without: str) -> float:
        """How well the facts are met, less the price of the moves; higher is better."""
        price = self.settings.search.price * sum(abs(log(factor)) for _, factor in moves)
        return self.worth(moves, without) - price

    def worth(self, moves: Moves, without: str) -> float:
        """The figures as the settings count them; a left out W3C example has no picks."""
        f = self.scores.figures(moves, without)
        parts = {"lift": f.fair - f.any_style, "place": f.place, "in_class": f.in_class, "bad": -f.bad}
        if without != W3C:
            parts["picks"] = (f.colour + f.sugar) / 2
        return sum(self.settings.objective[name] * part for name, part in parts.items())

    def moves(self, without: str = "", rules: Iterable[str] | None = None) -> Moves:
        """The moves of a fit; with `rules`, only these are tried instead of a short list."""
        tried = self.short_list(without) if rules is None else sorted(rules)
        moves = SHIPPED
        for _ in range(self.settings.search.rounds):
            better = self._best(moves, tried, without)
            gain = self.objective(better, without) - self.objective(moves, without)
            if gain < self.settings.search.least_gain:
                break
            moves = better
        return moves

    def _best(self, moves: Moves, rules: Sequence[str], without: str) -> Moves:
        candidates = list(self._neighbours(moves, rules, self.settings.search.multipliers))
        return max(candidates, key=lambda found: self.objective(found, without), default=moves)

    def _neighbours(self, moves: Moves, rules: Sequence[str], factors: Sequence[float]) -> Iterator[Moves]:
        for rule in rules:
            for factor in factors:
                if self.settings.allows(self.shipped[rule], factor):
                    yield changed(moves, rule, factor)

    def short_list(self, without: str) -> list[str]:
        """The rules that gain most when they alone are moved as far as a fit may move them."""
        start = self.objective(SHIPPED, without)
        gains = {rule: self._gain(rule, without) - start for rule in self.scores.rules}
        best = sorted(gains, key=lambda rule: (-gains[rule], rule))
        return sorted(rule for rule in best[: self.settings.search.short_list] if gains[rule] > 0)

    def _gain(self, rule: str, without: str) -> float:
        allowed = [m for m in self.settings.search.multipliers if self.settings.allows(self.shipped[rule], m)]
        ends = self._neighbours(SHIPPED, [rule], (min(allowed), max(allowed)))
        return max(self.objective(moves, without) for moves in ends)

    def left_out(self, source: str, moves: Moves) -> LeftOut:
        """A fit without this source, with the figures of all facts and of its own."""
        own = self.own(source, moves)
        return LeftOut(source, moves, self.scores.figures(moves), self.own(source, SHIPPED), own)

    def own(self, source: str, moves: Moves) -> Row | None:
        """The good facts of one source under these weights, or None where it has none."""
        rows = [self.scores.row(f, moves) for f in self.scores.facts("good") if f.source == source]
        return means(rows) if rows else None


def changed(moves: Moves, rule: str, factor: float) -> Moves:
    """The moves with one rule at another multiplier; a multiplier of one is no move."""
    table = {**dict(moves), rule: factor}
    return tuple(sorted((name, by) for name, by in table.items() if by != 1.0))


def sources(scores: Scores) -> list[str]:
    """Every source with a fact that is asked for, in file order, and the W3C example."""
    facts = [*scores.facts("good"), *scores.facts("bad")]
    named = dict.fromkeys(f.source for f in sorted(facts, key=lambda fact: fact.line))
    return [*named, W3C]


def unseen(scores: Scores, found: Iterable[LeftOut]) -> Figures:
    """Figures where each fact is judged under weights that were fitted without its source."""
    moves = {each.source: each.moves for each in found}
    good = [scores.row(fact, moves[fact.source]) for fact in scores.facts("good")]
    bad = [scores.row(fact, moves[fact.source]).fair for fact in scores.facts("bad")]
    return Figures(*means(good), fmean(bad), *scores.w3c(moves[W3C]))


def furthest(figures: Figures, other: Figures) -> float:
    """The largest difference of any figure."""
    return max(abs(a - b) for a, b in zip(figures, other, strict=True))
