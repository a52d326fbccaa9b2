"""`who is vegan`: the guests told of tonight who ask for it, listed; never a pairing."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.evening.by_talk import each_guest
from assistant.evening.needs import Need, named_needs
from assistant.language.fold import fold
from assistant.language.follow_lines import behind, opens, says, says_only
from assistant.language.frame import Frame
from assistant.language.guest_named import has_name
from assistant.language.guests import Asked
from assistant.language.same_guests import diet_of
from assistant.language.sober import plainly_driving
from assistant.session import Session

ALLERGY, SAFETY = "allergy", "safety"


def who_needs(frame: Frame, session: Session) -> Callable[[Context, Session], Answer | None] | None:
    """What answers who of the guests asks for what is said; None for any other text."""
    if says(frame, "guests-listed") and set(frame.topics) <= {ALLERGY} and not frame.text.readings:
        return _all_listed
    if asks_who_drinks(frame):
        return drinkers_told
    need = _asked_of(frame)
    meant = named_needs(need, session) if need else ()
    return (lambda context, session: _listed(need, meant, context, session)) if meant else None


def asks_who_drinks(frame: Frame) -> bool:
    """Whether it is asked who, or how many, of the guests drink wine."""
    named = any(reading.type in ("Wine", "Drink", "Food") for reading in frame.text.readings)
    return says_only(frame, "drinkers-asked") and not named


def drinkers_told(context: Context, session: Session) -> Answer | None:
    """How many of the guests drink wine, and who does not; None where nothing of it was told."""
    tonight = session.tonight
    sober = [one for one in tonight.needs if any(n.sober for n in named_needs(one.need, session))]
    if not (sober or tonight.guests):
        return None
    names = list(
        dict.fromkeys(_named(one, one.need if has_name(one.guest) else "", context) for one in sober)
    )
    drinks = f"{(tonight.guests or 0) - tonight.non_drinkers:g}"
    lines = (
        [context.wording("plan", "who-drinks", count=drinks, guests=f"{tonight.guests:g}")]
        if tonight.guests
        else []
    )
    sure = bool(names or tonight.non_drinkers)
    lines += [context.wording("plan", "who-sober", guests=listed(names))] if names else []
    lines += [] if sure else [context.wording("plan", "who-drinks-all")]
    return replace(compose(context.of_evening(), " ".join(lines), lines), dish=None, intent=SAFETY)


def _asked_of(frame: Frame) -> str:
    """What is asked of the guests, in the words said; empty where nothing is."""
    if opens(frame, "guest-drives"):
        return " ".join(word for word in frame.text.words[1:] if word[:1].isalnum())
    return behind(frame, "guest-is") if opens(frame, "guest-is") else ""


def _all_listed(context: Context, session: Session) -> Answer:
    """Every guest with a need, each with all that was told, and how many guests there are."""
    rows = [
        context.wording("plan", "who-row", guest=one.guest, need=listed(list(one.needs)))
        for one in each_guest(session.tonight.needs, context)
    ]
    guests = session.tonight.guests
    counted = [context.wording("plan", "who-all", count=f"{guests:g}")] if guests else []
    lines = [capital(line) for line in rows] or [context.wording("plan", "who-nobody")]
    bare = replace(context, frame=replace(context.frame, dishes=(), wines=()))
    answer = compose(bare.all_used(), " ".join(lines), [*lines, *counted])
    return replace(answer, dish=None, intent=SAFETY)


def _listed(need: str, meant: Sequence[Need], context: Context, session: Session) -> Answer:
    """The guests with the need, or with one that leaves out all that it does, each in the words told."""
    found = [one for one in session.tonight.needs if _asks_for(one, meant, session)]
    named = [_named(one, need, context) for one in found]
    if not found and any(one.sober and not one.itself for one in meant) and session.tonight.non_drinkers:
        named = [context.wording("plan", "who-counted", count=f"{session.tonight.non_drinkers:g}")]
    kind = "who-is" if named else "who-none"
    say = context.wording("plan", kind, need=capital(need), guests=listed(list(dict.fromkeys(named))))
    return compose(context.of_evening(), say, [say])


def _asks_for(asked: Asked, meant: Sequence[Need], session: Session) -> bool:
    own = named_needs(asked.need, session)
    return any(_covers(one, wanted) for one in own for wanted in meant)


def _covers(own: Need, wanted: Need) -> bool:
    """Whether who has the one need has the other too: a vegan eats no meat; an allergy is only itself."""
    if own.id == wanted.id or own.allergy or wanted.allergy or wanted.itself:
        return own.id == wanted.id
    left_out = wanted.marks | wanted.kinds
    return bool(left_out) and left_out <= own.marks | own.kinds


def _named(asked: Asked, need: str, context: Context) -> str:
    guest = asked.guest or context.wording("plan", "guest")
    same = plainly_driving(fold(asked.need)) == plainly_driving(fold(need))
    same = same or bool(diet_of(need) and diet_of(asked.need) == diet_of(need))
    return guest if same else context.wording("plan", "who-other", guest=guest, need=asked.need)
