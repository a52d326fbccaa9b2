"""What each wine of a choice is there for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from assistant.evening.choose_task import Scores
from assistant.evening.coverage import Covered, coverage
from assistant.pairing.score import LIKED

FOODS, ALSO, VARIETY = "foods", "also", "variety"


@dataclass(frozen=True, slots=True)
class Why:
    """`foods`: those the wine is the best of the choice for; `own`: the food it does best with itself.

    `kind`: it is there for foods, does well with one that another serves better (also), or is there for
    variety.
    """

    wine: str
    foods: tuple[str, ...]
    own: Covered

    @property
    def kind(self) -> str:
        """Which of the three holds."""
        if self.foods:
            return FOODS
        return ALSO if self.own.verdict in LIKED else VARIETY


def whys(scores: Scores, ordered: Sequence[str]) -> list[Why]:
    """Each wine of a choice of at least one, in the order given."""
    found = coverage(scores, ordered)
    own = {wine: max(coverage(scores, [wine]).best, key=lambda c: c.score) for wine in ordered}
    return [Why(wine, found.served_by(wine), own[wine]) for wine in ordered]
