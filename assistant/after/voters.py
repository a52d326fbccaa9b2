"""`who liked the malbec`: the guests who voted on what is named, by how they liked it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from assistant.after.agree import favourite
from assistant.after.ballots import MIDDLE, VOTE, count_of
from assistant.after.by_hands import counted, result
from assistant.after.figures import points_of
from assistant.after.names import plain, tonights
from assistant.after.opened import wines_meant
from assistant.after.phrases import said
from assistant.after.telling import told
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.evening.needs import understood
from assistant.notebook import Statement

if TYPE_CHECKING:
    from assistant.session import Session


def voters(context: Context, session: Session) -> Answer:
    """Who liked what is named and who did not; where nothing is named, what was liked best."""
    foods = [part.food for dish in context.frame.dishes for part in dish.parts]
    things = list(dict.fromkeys((*wines_meant(context), *context.frame.wines, *foods)))
    if not things:
        return favourite(context, session)
    if not session.taught.keeps:
        return told(context, [said("votes", "no-notebook")], understood=False)
    name = context.knowledge.label(things[0])
    on = [one for one in tonights(session) if one.kind == VOTE and set(one.about) & set(things)]
    if not on:
        return told(context, [capital(said("votes", "voters-none", thing=name))])
    return told(context, [capital(line) for line in _lines(name, on)])


def who_likes(context: Context, session: Session) -> Answer:
    """What each guest likes and dislikes, by the votes and as it was noted; a count comes first."""
    told_ = [one for one in tonights(session) if one.kind == VOTE and "guest" in one.value]
    things = dict.fromkeys(thing for one in told_ for thing in one.about)
    label = context.knowledge.label
    lines = [capital(line) for thing in things for line in _lines(label(thing), _on(thing, told_))]
    counts = counted(context, session)
    hands = [result(counts, context)] if counts else []
    lines = [*hands, *lines, *_tastes(session)]
    return told(context, lines) if lines else favourite(context, session)


def _on(thing: str, votes: list[Statement]) -> list[Statement]:
    return [one for one in votes if thing in one.about]


def _tastes(session: Session) -> list[str]:
    """What guests keep to by taste, as it was noted; no need of health or diet."""
    noted = [one for one in session.tonight.needs if one.guest and _of_taste(one.need, session)]
    return [said("votes", "tastes", guest=one.guest, taste=one.need) for one in noted]


def _of_taste(said_: str, session: Session) -> bool:
    own = all(need.id == said_ for need in understood(said_, session))
    return own and not session.parser.parse(said_).topics


def _lines(name: str, votes: list[Statement]) -> list[str]:
    """Of who votes again the last vote counts."""
    last = {plain(str(one.value.get("guest", ""))) or one.id: one for one in votes}.values()
    bands: dict[str, list[Statement]] = {"voters-liked": [], "voters-middle": [], "voters-not": []}
    for one in last:
        points = points_of(str(one.value["verdict"]))
        kind = "liked" if points > MIDDLE else "not" if points < MIDDLE else "middle"
        bands[f"voters-{kind}"].append(one)
    return [said("votes", kind, thing=name, guests=_who(some)) for kind, some in bands.items() if some]


def _who(votes: list[Statement]) -> str:
    """Their names, and how many more voted without one."""
    names = [str(one.value["guest"]) for one in votes if "guest" in one.value]
    unnamed = sum(count_of(one) for one in votes if "guest" not in one.value)
    more = [said("votes", "voters-more" if names else "voters-some", count=unnamed)] if unnamed else []
    return listed([*names, *more])
