"""What a choice of bottles does for a board: who covers what, what is left out, what one more would buy."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from assistant.evening.choose_task import CLOSE, Scores, Task, allowed, value

SATURATED, BETTER, LITTLE = "saturated", "better", "little"
Constants = Mapping[str, float]


@dataclass(frozen=True, slots=True)
class Covered:
    """A food with a wine of the choice, their score and verdict."""

    food: str
    wine: str
    score: float
    verdict: str


@dataclass(frozen=True, slots=True)
class Coverage:
    """What a choice does: best and worst wine of each food, the mean score, and the foods nobody serves."""

    best: tuple[Covered, ...]
    worst: tuple[Covered, ...]
    mean: float
    gaps: tuple[str, ...]

    @property
    def weakest(self) -> Covered:
        """The food that is served worst."""
        return min(self.best, key=lambda c: c.score)

    def served_by(self, wine: str) -> tuple[str, ...]:
        """The foods for which a wine is the best of the choice."""
        return tuple(c.food for c in self.best if c.wine == wine)


def coverage(scores: Scores, chosen: Sequence[str]) -> Coverage:
    """The coverage of a choice of at least one wine; of equals the wine named first."""
    best = tuple(_covered(scores, i, max(chosen, key=lambda w: scores.of[w][i])) for i in _places(scores))
    worst = tuple(_covered(scores, i, min(chosen, key=lambda w: scores.of[w][i])) for i in _places(scores))
    gaps = tuple(c.food for c in best if c.score < scores.floor("fair"))
    return Coverage(best, worst, scores.mean(chosen), gaps)


def _places(scores: Scores) -> range:
    return range(len(scores.foods))


def _covered(scores: Scores, food: int, wine: str) -> Covered:
    score = scores.of[wine][food]
    return Covered(scores.foods[food], wine, score, scores.verdict(score))


def friends(scores: Scores, wine: str) -> tuple[str, ...]:
    """The foods that a wine is good with."""
    good = scores.floor("good")
    return tuple(f for f, score in zip(scores.foods, scores.of[wine], strict=True) if score >= good)


def bridges(scores: Scores, chosen: Collection[str], c: Constants) -> tuple[str, ...]:
    """The foods that are good with so many of the wines that any guest can take them."""
    needed = min(int(c["board-bridge-wines"]), len(chosen))
    liked = [food for wine in chosen for food in friends(scores, wine)]
    return tuple(food for food in scores.foods if liked.count(food) >= needed)


@dataclass(frozen=True, slots=True)
class OneMore:
    """The further bottle that would do most for the food.

    `gain` are points of mean it adds, `lifts` the foods that get another verdict,
    `closes` the gaps it closes; `saturated` tells that no further bottle, this one included, adds
    enough to the food to be bought for it.
    """

    wine: str
    gain: float
    lifts: tuple[str, ...]
    closes: tuple[str, ...]
    saturated: bool

    @property
    def foods(self) -> list[str]:
        """The foods that are better served, gaps first."""
        return list(dict.fromkeys((*self.closes, *self.lifts)))

    @property
    def kind(self) -> str:
        """Whether it is saturated, better for some foods, or adds a little."""
        return SATURATED if self.saturated else BETTER if self.foods else LITTLE


def one_more(task: Task, chosen: Sequence[str], c: Constants) -> OneMore | None:
    """What one more bottle would buy, or None where none may be added."""
    scores = task.scores
    larger = replace(task, count=len(chosen) + 1)
    adds = [w for w in task.wines if w not in chosen and allowed(larger, (*chosen, w))]
    if not adds:
        return None
    gains = {wine: _adds(scores, chosen, wine) for wine in adds}
    best = max(adds, key=lambda w: (round(gains[w], 6), value(larger, (*chosen, w))))
    closing = {wine: _closes(scores, chosen, wine) for wine in adds}
    saturated = max(gains.values()) < c["choice-saturated"] and not any(closing.values())
    return OneMore(best, gains[best], _lifts(scores, chosen, best), closing[best], saturated)


def _adds(scores: Scores, chosen: Sequence[str], wine: str) -> float:
    return scores.mean((*chosen, wine)) - scores.mean(chosen)


def _closes(scores: Scores, chosen: Sequence[str], wine: str) -> tuple[str, ...]:
    before, after = coverage(scores, chosen).gaps, coverage(scores, (*chosen, wine)).gaps
    return tuple(food for food in before if food not in after)


def _lifts(scores: Scores, chosen: Sequence[str], wine: str) -> tuple[str, ...]:
    before, after = coverage(scores, chosen).best, coverage(scores, (*chosen, wine)).best
    return tuple(b.food for b, a in zip(before, after, strict=True) if a.verdict != b.verdict)


@dataclass(frozen=True, slots=True)
class Swap:
    """One wine of the choice for another: the money it saves and the points of worth it loses."""

    out: str
    into: str
    saved: float
    lost: float


def cheapest_swap(task: Task, chosen: Sequence[str], needed: float = 0.0) -> Swap | None:
    """The swap that loses least for the money.

    With money `needed`, the one that saves at least so much and loses least; otherwise the one that loses
    least for each unit of money saved. None where no swap saves anything (or enough).
    """
    swaps = [s for s in _swaps(task, chosen) if s.saved > CLOSE and s.saved >= needed - CLOSE]
    if needed > 0:
        return min(swaps, key=lambda s: (s.lost, -s.saved, s.out, s.into), default=None)
    return min(swaps, key=lambda s: (_dearness(s), s.out, s.into), default=None)


def _dearness(swap: Swap) -> float:
    """Points lost for the money; of swaps that gain, those first that gain most."""
    return swap.lost / swap.saved if swap.lost > 0 else swap.lost


def _swaps(task: Task, chosen: Sequence[str]) -> Iterator[Swap]:
    """Every swap that keeps to all limits but the budget, which may have been passed before."""
    free = replace(task, budget=None)
    now = value(free, chosen)
    for out in (wine for wine in chosen if wine not in task.must):
        for into in (wine for wine in task.wines if wine not in chosen):
            after = tuple(into if wine == out else wine for wine in chosen)
            if allowed(free, after):
                yield Swap(out, into, task.cost(chosen) - task.cost(after), now - value(free, after))
