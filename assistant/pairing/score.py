"""What fired -> one score per plate and wine: families are held in limits, quiet food damps, vetoes cap.

The score is signed and is the plain sum of the effects in the path: every cap, damping
and veto is an entry of its own. All scores are worked out at once, a path when it is looked at.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from types import MappingProxyType
from typing import NamedTuple

import numpy as np

from assistant.knowledge.store import Band, Knowledge
from assistant.pairing.columns import Columns, Numbers, Truths
from assistant.pairing.rule_steps import GLASS, PLATE
from assistant.pairing.rules import Fired

QUIET_FADES_OVER = 0.5
LIKED, DISLIKED = ("strong", "good", "fair"), ("poor", "clash")  # verdicts that are poured, or kept apart
TO_PLACES = 9  # beyond them sums differ by the order they are made in


class Effect(NamedTuple):
    """One entry of a rule path: points it adds, the rule (or limit) behind it, what it saw."""

    rule: str
    effect: float
    values: Mapping[str, float] = MappingProxyType({})


class Score:
    """A wine's signed score; `uncapped` is what it would be without a veto."""

    def __init__(self, wine: str, total: float, uncapped: float, sums: Sums, at: tuple[int, int]) -> None:
        self.wine, self.total, self.uncapped = wine, total, uncapped
        self._sums, self._at = sums, at

    @property
    def verdict(self) -> str:
        """The verdict of the score, by the published bands."""
        return verdict(self.total, self._sums.knowledge.bands)

    @property
    def vetoed(self) -> bool:
        """Whether a veto holds the score down."""
        return self.total < self.uncapped

    @cached_property
    def veto(self) -> Effect | None:
        """The veto that holds the score down."""
        return self._sums.veto(self._at, self.total - self.uncapped) if self.vetoed else None

    @cached_property
    def path(self) -> tuple[Effect, ...]:
        """The effects that add up to the score, strongest first."""
        effects = [*self._sums.effects(self._at), *([self.veto] if self.veto else ())]
        return tuple(sorted((e for e in effects if e.effect), key=lambda e: (-abs(e.effect), e.rule)))

    def without_veto(self) -> Score:
        """The same wine and plate, the veto left out."""
        return Score(self.wine, self.uncapped, self.uncapped, self._sums, self._at)


class Sums:
    """The scores of plates (down) with glasses (across), from what fired for them."""

    def __init__(
        self, plates: Columns, glasses: Columns, fired: Sequence[Fired], knowledge: Knowledge
    ) -> None:
        self.knowledge, self._plates, self._glasses = knowledge, plates, glasses
        self._counting = [f for f in fired if f.cap is None]
        self._vetoes = [f for f in fired if f.cap is not None]
        families = self._families()
        self._over = {name: self._beyond(name, total) for name, total in families.items()}
        plain = sum(families.values(), self._none()) - sum(self._over.values(), self._none())
        self._left = 1 - _quietness(plates.number("aroma"), knowledge.constants)
        self.uncapped: Numbers = (plain * self._left[:, None]).round(TO_PLACES)
        self.total: Numbers = np.minimum(self.uncapped, self._caps().min(axis=0))

    @property
    def wines(self) -> tuple[str, ...]:
        """The wines, in the order of their columns."""
        return self._glasses.keys

    @property
    def vetoed(self) -> Truths:
        """Where a veto holds the score down."""
        return self.total < self.uncapped

    def score(self, row: int, at: int) -> Score:
        """The score of one plate and wine."""
        total, uncapped = float(self.total[row, at]), float(self.uncapped[row, at])
        return Score(self.wines[at], total, uncapped, self, (row, at))

    def scores(self) -> dict[tuple[str, str], Score]:
        """A score for every plate and wine, by (plate key, wine)."""
        totals, uncapped = self.total.tolist(), self.uncapped.tolist()
        return {
            (key, wine): Score(wine, totals[row][at], uncapped[row][at], self, (row, at))
            for row, key in enumerate(self._plates.keys)
            for at, wine in enumerate(self._glasses.keys)
        }

    def effects(self, at: tuple[int, int]) -> Iterator[Effect]:
        """All but the veto: rules that count, what goes beyond a family's limit, what quiet food takes."""
        total = 0.0
        for fired in self._counting:
            if strength := fired.of(at):
                points = self.knowledge.rules[fired.rule].weight * strength
                total += points
                yield Effect(fired.rule, round(points, TO_PLACES), self._seen(fired, at))
        for family, over in self._over.items():
            if beyond := float(over[at]):
                total -= beyond
                yield Effect(f"limit/{family}", -beyond)
        if total:
            yield Effect("limit/quiet-food", total * (float(self._left[at[0]]) - 1))

    def veto(self, at: tuple[int, int], taken: float) -> Effect:
        """The strictest veto of a plate and wine, which takes so much away."""
        strictest = self._vetoes[int(self._caps()[:, at[0], at[1]].argmin()) - 1]
        return Effect(strictest.rule, taken, self._seen(strictest, at))

    def _seen(self, fired: Fired, at: tuple[int, int]) -> dict[str, float]:
        sides = {PLATE: (self._plates, at[0]), GLASS: (self._glasses, at[1])}
        return {f"{side}.{name}": sides[side][0].point(name, sides[side][1]) for side, name in fired.seen}

    def _none(self) -> Numbers:
        return np.zeros((len(self._plates.keys), len(self._glasses.keys)))

    def _families(self) -> dict[str, Numbers]:
        """The sum of the effects of each family."""
        found: dict[str, Numbers] = {}
        for fired in self._counting:
            rule = self.knowledge.rules[fired.rule]
            fired.add(rule.weight * fired.strength, found.setdefault(rule.family, self._none()))
        return found

    def _beyond(self, name: str, total: Numbers) -> Numbers:
        family = self.knowledge.families[name]
        beyond: Numbers = total - total.clip(family.floor, family.ceiling)
        return beyond

    def _caps(self) -> Numbers:
        """What no score may pass, veto by veto; the first of them is none."""
        caps = [np.full_like(self._none(), np.inf)]
        for fired in self._vetoes:
            caps.append(np.full_like(caps[0], np.inf))
            caps[-1][np.ix_(fired.rows, fired.across)] = np.where(fired.strength > 0, fired.capped, np.inf)
        return np.array(caps)


def verdict(total: float, bands: Sequence[Band]) -> str:
    """The verdict of a score, by the published bands."""
    for band in bands:
        if total >= band.floor:
            return band.verdict
    raise ValueError(f"no band holds {total}")


def verdicts(totals: Numbers, bands: Sequence[Band]) -> list[str]:
    """The verdicts of many scores, by the published bands."""
    rising = sorted(bands, key=lambda band: band.floor)
    places = np.searchsorted([band.floor for band in rising], totals, side="right") - 1
    return [rising[place].verdict for place in places.tolist()]


def _quietness(aroma: Numbers, constants: Mapping[str, float]) -> Numbers:
    """How much of the effects a quiet food takes away: 0 for food with a voice of its own."""
    over = (aroma - constants["quiet-aroma"]) / QUIET_FADES_OVER
    quietness: Numbers = (1 - constants["quiet-factor"]) * (1 - over.clip(0.0, 1.0))
    return quietness
