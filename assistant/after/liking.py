"""What one guest liked, from votes in the notebook and from what is said of them now."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from assistant.after.ballots import MIDDLE, VOTE
from assistant.after.figures import points_of
from assistant.after.names import plain, tonights
from assistant.answers.context import Context
from assistant.taught.telling import Hearing
from assistant.taught.votes import votes

if TYPE_CHECKING:
    from assistant.session import Session

DRINK = "Drink"


@dataclass(frozen=True, slots=True)
class Liking:
    """A wine or food and how it was liked, in points of five."""

    thing: str
    points: float


def said_now(context: Context, session: Session, guest: str) -> tuple[Liking, ...]:
    """`she liked the off-dry`: what a text says of its guest beside asking for the message."""
    cast = votes(Hearing(context, session.taught))
    theirs = [vote for vote in cast if not vote.guest or plain(vote.guest) == plain(guest)]
    return tuple(Liking(thing, points_of(vote.verdict)) for vote in theirs for thing in vote.about)


def liking_of(guest: str, now: Sequence[Liking], context: Context, session: Session) -> list[Liking]:
    """What the guest liked, the best first, of equals the last told; without drinks that hold no wine."""
    told = [one for one in tonights(session) if one.kind == VOTE and "guest" in one.value]
    theirs = [one for one in told if plain(str(one.value["guest"])) == plain(guest)]
    cast = [Liking(thing, points_of(str(one.value["verdict"]))) for one in theirs for thing in one.about]
    last = {liking.thing: liking for liking in (*cast, *now)}  # who votes again changes the vote
    liked = [one for one in reversed(last.values()) if one.points > MIDDLE and not _drink(one.thing, context)]
    return sorted(liked, key=lambda one: -one.points)


def _drink(thing: str, context: Context) -> bool:
    wine = context.knowledge.wines.get(thing)
    return wine is not None and wine.type == DRINK
