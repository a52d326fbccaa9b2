"""Wines with a whole table: the scores of its bites averaged by share, small vetoes told and not counted."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from assistant.pairing.score import Effect, Score, Sums, verdicts


class Match:
    """How one wine does with a table: `score` averages the bites; the reasons are worked out when asked."""

    __slots__ = ("_at", "_of", "score", "verdict", "wine")

    def __init__(self, wine: str, score: float, verdict: str, of: Tasted | None = None, at: int = 0) -> None:
        self.wine, self.score, self.verdict = wine, score, verdict
        self._of, self._at = of, at

    def named(self, wine: str) -> Match:
        """The same under another name."""
        return Match(wine, self.score, self.verdict, self._of, self._at)

    @property
    def bites(self) -> tuple[Score, ...]:
        """The score of each bite, in table order."""
        return self._of.bites(self._at) if self._of else ()

    @property
    def path(self) -> tuple[Effect, ...]:
        """The effects over the whole table, strongest first; they add up to `score`."""
        return _blend(self._of.shares, self._of.counted(self._at)) if self._of else ()

    @property
    def warnings(self) -> tuple[Effect, ...]:
        """The vetoes of so few bites that they are only told."""
        return self._of.warnings(self._at) if self._of else ()


class Tasted:
    """The bites of a table, as rows of sums, with the share of each."""

    def __init__(self, sums: Sums, rows: slice, shares: Sequence[float]) -> None:
        self.shares = tuple(shares)
        self._sums, self._rows = sums, rows
        few = np.array(shares) < sums.knowledge.constants["warning-share"]
        self._lifted = (few & (len(shares) > 1))[:, None] & sums.vetoed[rows]

    def matches(self) -> dict[str, Match]:
        """The match of every wine, by wine."""
        counted = np.where(self._lifted, self._sums.uncapped[self._rows], self._sums.total[self._rows])
        scores = np.array(self.shares) @ counted
        told = verdicts(scores, self._sums.knowledge.bands)
        named = enumerate(zip(self._sums.wines, scores.tolist(), told, strict=True))
        return {wine: Match(wine, score, verdict, self, at) for at, (wine, score, verdict) in named}

    def bites(self, at: int) -> tuple[Score, ...]:
        """The score of each bite with one wine."""
        rows = range(self._rows.start, self._rows.stop)
        return tuple(self._sums.score(row, at) for row in rows)

    def counted(self, at: int) -> tuple[Score, ...]:
        """The same, vetoes that are only told left out."""
        lifted = self._lifted[:, at].tolist()
        pairs = zip(self.bites(at), lifted, strict=True)
        return tuple(bite.without_veto() if told else bite for bite, told in pairs)

    def warnings(self, at: int) -> tuple[Effect, ...]:
        """The vetoes that are only told."""
        told = zip(self.bites(at), self._lifted[:, at].tolist(), strict=True)
        return tuple(bite.veto for bite, lifted in told if lifted and bite.veto)


def _blend(shares: Sequence[float], bites: Sequence[Score]) -> tuple[Effect, ...]:
    if len(bites) == 1:
        return bites[0].path
    effects: dict[str, float] = {}
    values: dict[str, dict[str, float]] = {}
    for share, bite in zip(shares, bites, strict=True):
        for effect in bite.path:
            effects[effect.rule] = effects.get(effect.rule, 0.0) + share * effect.effect
            values.setdefault(effect.rule, dict(effect.values))
    blended = [Effect(rule, e, values[rule]) for rule, e in effects.items() if e]
    return tuple(sorted(blended, key=lambda e: (-abs(e.effect), e.rule)))
