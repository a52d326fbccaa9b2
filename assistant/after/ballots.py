"""Votes that guests cast beside what the book said: one ballot for each wine, food or pair voted on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from assistant.after.figures import Votes, points_of, votes_of
from assistant.after.names import plain, tonights
from assistant.answers.context import Context
from assistant.evening.main_bites import wanting_wine
from assistant.notebook import Statement
from assistant.pairing.dish import BASE, Dish, DishPart, table_of
from assistant.pairing.match import Match
from assistant.pairing.score import DISLIKED, LIKED
from assistant.taught.hands import of_hands

if TYPE_CHECKING:
    from assistant.session import Session

VOTE, NOTE = "vote", "note"
MIDDLE = 3.0
Key = tuple[str | None, str | None]


@dataclass(frozen=True, slots=True)
class Ballot:
    """What was voted on (`wine`, `food` or both), the votes in short, how many liked it, and our verdict.

    `score` and `verdict` are None where there was nothing to hold it against.
    """

    wine: str | None
    food: str | None
    votes: Votes
    liked: int
    verdict: str | None
    score: float | None

    @property
    def agrees(self) -> bool | None:
        """Whether they thought as we did; None where either side made no call."""
        if self.verdict in LIKED and self.votes.mean != MIDDLE:
            return self.votes.mean > MIDDLE
        if self.verdict in DISLIKED and self.votes.mean != MIDDLE:
            return self.votes.mean < MIDDLE
        return None


def ballots(context: Context, session: Session) -> list[Ballot]:
    """A ballot for everything that guests voted on at the evening on the table, the most votes first.

    A show of hands is counted by itself: who puts up no hand for a wine may like it all the same.
    """
    cast: dict[Key, dict[str, Statement]] = {}
    told = tonights(session)
    for one in (vote for vote in told if vote.kind == VOTE and not of_hands(vote)):
        voter = plain(str(one.value.get("guest", ""))) or one.id  # who votes again changes the vote
        for key in keys_of(one.about, context):
            cast.setdefault(key, {})[voter] = one
    found = []
    for key, votes in cast.items():
        points = [points_of(str(v.value["verdict"])) for v in votes.values() for _ in range(count_of(v))]
        found.append(_ballot(key, points, foods_then(next(iter(votes.values())), told, context), context))
    return sorted(found, key=lambda b: (-b.votes.n, b.wine or "", b.food or ""))


def keys_of(about: Sequence[str], context: Context) -> Iterator[Key]:
    """What a vote was on: every pair of its wines and foods, or else each of them."""
    wines = [one for one in about if context.knowledge.styles_of(one)]
    foods = [one for one in about if one.startswith(("food/", "kind/")) and one not in wines]
    if wines and foods:
        yield from ((wine, food) for wine in wines for food in foods)
    else:
        yield from ((wine, None) for wine in wines)
        yield from ((None, food) for food in foods)


def count_of(vote: Statement) -> int:
    """How many guests it counts for."""
    return int(vote.value.get("votes", 1))


def foods_then(vote: Statement, told: Sequence[Statement], context: Context) -> tuple[str, ...]:
    """The foods on the table when the vote was cast: those of the note it was cast in, else tonight's."""
    note = next(
        (o for o in told if o.kind == NOTE and o.said == vote.said and o.evening == vote.evening), None
    )
    noted = [one for one in note.about if one.startswith("food/")] if note else []
    now = [part.food for dish in context.tonight.dishes for part in dish.parts]
    return tuple(dict.fromkeys(noted or now))


def _ballot(key: Key, points: list[float], foods: tuple[str, ...], context: Context) -> Ballot:
    wine, food = key
    liked = sum(p > MIDDLE for p in points)
    match = judged(wine, (food,) if food else foods, context) if wine else None
    found = (match.verdict, match.score) if match else (None, None)
    return Ballot(wine, food, votes_of(points), liked, *found)


def judged(wine: str, foods: Sequence[str], context: Context) -> Match | None:
    """How a wine does over these foods, those aside that rest the palate; None where there are none."""
    dishes = [Dish((DishPart(food, BASE, 100.0),)) for food in foods]
    tasted = [dishes[i] for i in wanting_wine([[dish] for dish in dishes], context.engine)]
    return context.engine.judge(table_of(tasted), context.knowledge.style(wine)) if tasted else None
