"""Who won a show of hands: the count of each wine, as it was last told."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from assistant.after.names import tonights
from assistant.after.phrases import said
from assistant.answers.context import Context
from assistant.answers.wording import capital, listed
from assistant.taught.hands import of_hands

if TYPE_CHECKING:
    from assistant.session import Session

Counts = Sequence[tuple[str, int]]


def counted(context: Context, session: Session) -> Counts:
    """Each wine or food of the table with its hands as last counted, the most first."""
    table = context.tonight
    laid = {*table.wines, *(part.food for dish in table.dishes for part in dish.parts)}
    told = [one for one in tonights(session) if of_hands(one)]
    last = {thing: int(one.value.get("votes", 1)) for one in told for thing in one.about if thing in laid}
    return sorted(last.items(), key=lambda one: -one[1])


def winners(counts: Counts) -> list[str]:
    """Those with the most hands: several where there is a tie."""
    return [thing for thing, count in counts if count == counts[0][1]]


def result(counts: Counts, context: Context) -> str:
    """Who won, or who share the first place, then the others with their hands."""
    label = context.knowledge.label
    best = winners(counts)
    kind = "hands-won" if len(best) == 1 else "hands-tie"
    names = listed([label(thing) for thing in best])
    first = capital(said("votes", kind, things=names, votes=_votes(counts[0][1])))
    rest = [
        said("votes", "hands-each", thing=label(thing), votes=_votes(n)) for thing, n in counts[len(best) :]
    ]
    return " ".join([first, *([said("votes", "hands-rest", things=listed(rest))] if rest else [])])


def _votes(count: int) -> str:
    return said("votes", "hands-one" if count == 1 else "hands-count", count=count)
