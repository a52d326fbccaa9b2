"""`jen loved 2, hated 4`: a note is kept as said, with the votes it plainly holds; nothing else is told."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.notebook import Stated, stated
from assistant.notebook.statement import Value
from assistant.pairing.score import DISLIKED, LIKED
from assistant.taught.hands import hands
from assistant.taught.keeper import AUTHOR
from assistant.taught.parking import about_of, parked_value
from assistant.taught.telling import Hearing, no_notebook, not_kept, plain, wine_ids, words
from assistant.taught.votes import Vote, votes
from assistant.taught.words import taught_words

MOST_ABOUT = 20
PARKED, BAND = "parked", "band/"


def noted(heard: Hearing) -> Answer:
    """Keeps the words, whether they are a note or a question put aside."""
    if not heard.keeper.keeps:
        return no_notebook(heard.context)
    kind = PARKED if taught_words().lines["parks"].stand_in(heard.stems) else "note"
    counted = hands(heard)
    cast = counted or votes(heard)
    problems = heard.keeper.keep(as_note(heard, kind), *_cast(heard, cast))
    if problems:
        return not_kept(heard.context, problems)
    if counted:
        return plain(heard.context, _read_hands(heard, counted))
    return plain(heard.context, words(heard.context, "noted"), [_read_back(heard, vote) for vote in cast])


def _read_hands(heard: Hearing, cast: Sequence[Vote]) -> str:
    """How many hands each wine has."""
    label = heard.context.knowledge.label
    told = [words(heard.context, "hands-each", thing=label(v.about[0]), count=v.votes) for v in cast]
    return words(heard.context, "noted-hands", things=listed(told))


def _read_back(heard: Hearing, vote: Vote) -> str:
    """Who thought what of which wine, so that a slip of the ear is seen at once."""
    things = listed([heard.context.knowledge.label(thing) for thing in vote.about])
    some = "noted-all" if vote.by_all else "noted-some" if vote.votes > 1 else "noted-one"
    guest = vote.guest or words(heard.context, some, count=vote.votes)
    verdict = vote.verdict.removeprefix(BAND)
    kind = "noted-liked" if verdict in LIKED else "noted-not" if verdict in DISLIKED else "noted-so"
    return words(heard.context, kind, guest=guest, things=things)


def as_note(heard: Hearing, kind: str = "note") -> Stated:
    """The words as they are, about what is named in them and what is on the table."""
    frame, tonight = heard.context.frame, heard.context.tonight
    foods = [part.food for dish in (*frame.dishes, *tonight.dishes) for part in dish.parts]
    about = tuple(dict.fromkeys((*wine_ids(heard.context), *foods, *tonight.wines)))[:MOST_ABOUT]
    if kind != PARKED:
        return stated(kind, heard.said, AUTHOR, about=about, evening=heard.evening)
    stood = about_of(heard)[:MOST_ABOUT] or about
    return stated(kind, heard.said, AUTHOR, about=stood, value=parked_value(heard), evening=heard.evening)


def _cast(heard: Hearing, cast: Sequence[Vote]) -> list[Stated]:
    return [
        stated(
            "vote", heard.said, AUTHOR, about=vote.about, value=_value(vote), evening=heard.evening
        )
        for vote in cast
    ]  # fmt: skip


def _value(vote: Vote) -> dict[str, Value | float]:
    counted: dict[str, Value | float] = {"verdict": vote.verdict, "votes": vote.votes}
    return {**counted, "guest": vote.guest} if vote.guest else counted
