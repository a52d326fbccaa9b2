"""Firings -> one score per wine: families are held in their limits, quiet food damps, vetoes cap.

The score is signed and is the plain sum of the effects in the path: every cap, damping
and veto is an entry of its own.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import NamedTuple

from assistant.knowledge.store import Band, Family, Knowledge
from assistant.pairing.plate import Plate
from assistant.pairing.rules import Firing

QUIET_FADES_OVER = 0.5
LIKED, DISLIKED = ("strong", "good", "fair"), ("poor", "clash")  # verdicts that are poured, or kept apart


class Effect(NamedTuple):
    """One entry of a rule path: points it adds, the rule (or limit) behind it, what it saw."""

    rule: str
    effect: float
    values: Mapping[str, float] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Score:
    """A wine's signed score with its path, strongest effect first."""

    wine: str
    total: float
    verdict: str
    path: tuple[Effect, ...]
    vetoed: bool = False


Scores = dict[tuple[str, str], Score]


def score_all(
    plates: Mapping[str, Plate],
    wines: Iterable[str],
    firings: Sequence[Firing],
    knowledge: Knowledge,
) -> Scores:
    """A score for every plate and wine, by (plate key, wine)."""
    fired: dict[tuple[str, str], list[Firing]] = {(key, wine): [] for wine in wines for key in plates}
    for firing in firings:
        fired[firing.plate, firing.wine].append(firing)
    left = {key: 1 - _quietness(plate, knowledge) for key, plate in plates.items()}
    return {(key, wine): _score(wine, found, left[key], knowledge) for (key, wine), found in fired.items()}


def verdict(total: float, bands: Sequence[Band]) -> str:
    """The verdict of a score, by the published bands."""
    return next(band.verdict for band in bands if total >= band.floor)


def _quietness(plate: Plate, knowledge: Knowledge) -> float:
    """How much of the effects a quiet food takes away: 0 for food with a voice of its own."""
    c = knowledge.constants
    over = (plate.points["aroma"] - c["quiet-aroma"]) / QUIET_FADES_OVER
    return (1 - c["quiet-factor"]) * (1 - min(1.0, max(0.0, over)))


def _score(wine: str, fired: list[Firing], left: float, knowledge: Knowledge) -> Score:
    path = [_effect(f, knowledge) for f in fired if f.cap is None]
    path += _family_limits(path, knowledge)
    total = sum(e.effect for e in path)
    if left < 1 and total:
        path.append(Effect("limit/quiet-food", total * (left - 1)))
        total *= left
    vetoes = sorted((f for f in fired if f.cap is not None), key=lambda f: f.cap or 0.0)
    vetoed = bool(vetoes) and total > (vetoes[0].cap or 0.0)
    if vetoed:
        cap = vetoes[0].cap or 0.0
        path.append(Effect(vetoes[0].rule, cap - total, vetoes[0].values))
        total = cap
    path = sorted((e for e in path if e.effect), key=lambda e: (-abs(e.effect), e.rule))
    return Score(wine, total, verdict(total, knowledge.bands), tuple(path), vetoed)


def _effect(firing: Firing, knowledge: Knowledge) -> Effect:
    weight = knowledge.rules[firing.rule].weight
    return Effect(firing.rule, weight * firing.strength, firing.values)


def _family_limits(path: list[Effect], knowledge: Knowledge) -> list[Effect]:
    sums: dict[str, float] = {}
    for effect in path:
        family = knowledge.rules[effect.rule].family
        sums[family] = sums.get(family, 0.0) + effect.effect
    limits = []
    for family, total in sums.items():
        over = _over(total, knowledge.families[family])
        if over:
            limits.append(Effect(f"limit/{family}", -over))
    return limits


def _over(total: float, family: Family) -> float:
    return total - min(family.ceiling, max(family.floor, total))
