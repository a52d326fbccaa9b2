"""How many guests there are: a number said is that of all, of some more or fewer, or of a part."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.after.heat import counts_degrees
from assistant.language.eating import WITHOUT_ALCOHOL, diets_of, somebody_abstains
from assistant.language.follow_lines import opens, says, says_only
from assistant.language.frame import Frame
from assistant.language.guests import Asked, guest_words
from assistant.language.party import needs_told, opening_total, party_counts
from assistant.language.quantities import Counted, asked_for, counts, numbers, quantity_words

if TYPE_CHECKING:
    from assistant.session import Session
    from assistant.spoken import Spoken
    from assistant.table.tonight import Tonight

REACH_BACK, REACH_ON, MOST_ONLY, MOST_COUNTING = 3, 6, 5, 10
DESCRIBES = "describe"
PEOPLE, DRINKLESS, FOR, FOLLOWS = "people", "non_drinkers", "for", (",", "so")
REACH_PLACE, CLAUSE_ENDS = 4, (",", ".", "?", "!", ";", ":")
KINDS = ("behind", "absent", "more", "fewer", "drinkless", "part")  # the first that stands beside counts
Heads = tuple[float | None, float]


def counted(tonight: Tonight, frame: Frame) -> Tonight:
    """The table with the guests a frame speaks of, but not with what it only supposes of those known."""
    votes = frame.intent == "note" and says(frame, "guest-votes")  # `jen voted for two`
    others = votes or shared(frame) or counts_degrees(frame)
    return tonight if (tonight.guests and supposes(frame)) or others else _told(tonight, frame)


def supposed(tonight: Tonight, frame: Frame) -> Tonight:
    """The table with the guests that a frame supposes, for its own answer only."""
    if not supposes(frame):
        return tonight
    some = _told(tonight, frame)
    return some if says(frame, "supposing") else replace(some, non_drinkers=0.0)


def shared(frame: Frame) -> bool:
    """Whether so many bottles are shared by so many who want of them, whoever else is there."""
    named = {one.name for one in counts(frame.text.stems)}
    return {PEOPLE, "bottles"} <= named and says(frame, "share-asked")


def supposes(frame: Frame) -> bool:
    """Whether guests are only supposed, or it is asked of so many (`is one enough for seven`)."""
    stems = frame.text.stems
    led = any(stems[c.start - 1 : c.start] == (FOR,) for c in counts(stems) if c.name == PEOPLE)
    return says(frame, "supposing") or (led and opens(frame, "yes-no"))


def with_the_sober(tonight: Tonight, session: Session) -> Tonight:
    """The table, the guests counted anew, with no fewer without wine than needs told before tell of."""
    told = tonight.guests != session.tonight.guests or tonight.needs != session.tonight.needs
    if not (tonight.needs and tonight.guests and told):
        return tonight
    from assistant.evening.needs import with_sober  # loaded late: a plan needs so much

    return with_sober(tonight, session)


def only_heads(frame: Frame) -> bool:
    """Whether nothing is said but how many guests there are (`12 guests`, `we are six people`)."""
    text = frame.text
    asks = guest_words().asks.intersection(text.stems)
    more = text.readings or text.left_out or len(text.stems) > MOST_ONLY or asks or asked_for(text)
    return not more and any(found.name == PEOPLE for found in counts(text.stems))


def only_counts(frame: Frame) -> bool:
    """Whether guests are counted anew and nothing is named or planned (`someone dropped out, seven now`)."""
    asks = says(frame, "plan-it") or says(frame, "budget-is") or says(frame, "money-there")
    few = len(frame.text.stems) <= MOST_COUNTING and not frame.text.readings
    anew = (_counted_again(frame.text.stems) or _in_places(frame.text.stems)) is not None
    heads_said = any(found.name == PEOPLE for found in counts(frame.text.stems))
    sober = counts_drinkless(frame.text.stems) and "?" not in frame.text.typed
    return few and not asks and (anew or heads_said or sober)


def counts_drinkless(stems: Sequence[str]) -> bool:
    """Whether guests who drink no wine are counted (`two of them drive`)."""
    return any(c.name in (PEOPLE, DRINKLESS) and _kind(stems, c) == "drinkless" for c in counts(stems))


def speaks_of_guests(frame: Frame, spoken: Spoken) -> bool:
    """Whether a text may ask of guests by a need or a diet, or of those who drink no wine or reacted."""
    stems = frame.text.stems
    asks = opens(frame, "guest-is") or opens(frame, "guest-drives") or says(frame, "guests-listed")
    sober = spoken.sober or bool(somebody_abstains(stems)) or counts_drinkless(stems)
    asks = asks or says_only(frame, "drinkers-asked")
    return asks or sober or spoken.reacted or bool(diets_of(frame))


def of_everybody(frame: Frame, spoken: Spoken, needs: Sequence[Asked]) -> Frame:
    """The frame as it stands for the next question: drinks without alcohol were for some guests only.

    What a wine was asked to be like (`is the Riesling sweet`) limits no other question, and what one guest
    drinks limits nobody else, where it was noted among the `needs`.
    """
    told, noted = needs_told(frame), {one.need for one in needs}
    of_one = not told.unread and any(one.need in noted for one in told.asked)
    if frame.intent == DESCRIBES or of_one:
        return replace(frame, preferences=())
    limits = tuple(limit for limit in frame.preferences if limit.wanted != WITHOUT_ALCOHOL)
    return replace(frame, preferences=limits) if spoken.sober or spoken.asked else frame


def _told(tonight: Tonight, frame: Frame) -> Tonight:
    before = tonight.guests
    if (fewer := after_leaving(tonight, frame)) is not None:
        return replace(tonight, guests=fewer, guests_before=None)
    guests, drinkless = heads(frame.text.stems, (before, tonight.non_drinkers))
    came = before is not None and guests is not None and guests > before
    known = before if came else tonight.guests_before if guests == before else None
    return replace(tonight, guests=guests, non_drinkers=drinkless, guests_before=known)


def after_leaving(tonight: Tonight, frame: Frame) -> float | None:
    """How many guests there are once those who came last have left again; None where nobody did."""
    named = frame.text.readings or numbers(frame.text.stems) or "?" in frame.text.typed
    return tonight.guests_before if says_only(frame, "left-again") and not named else None


def heads(stems: Sequence[str], before: Heads) -> Heads:
    """All guests and those who drink no wine, after these words; of several totals the first counts."""
    some, opened = party_counts(stems), opening_total(stems)
    here, drinking = _in_places(stems), _drinking(stems)
    now, total = (opened or here or before[0], before[1]), bool(opened or here)
    for found in counts(stems):
        if drinking and found.start == drinking.start:
            continue
        if found.name not in (PEOPLE, DRINKLESS) or found.number in some or _of_time(stems, found):
            continue
        kind = _kind(stems, found)
        if here and kind != "drinkless":
            continue  # `14 on a call plus 4 in the room` are all of them
        if kind != "total":
            now = _changed(now, kind, found)
        elif not total and not _one_of_them(found, before):
            now, total = (found.number, now[1]), True
    known = before[0] is not None or quantity_words().party["stays"].stand_in(stems)
    if now == before and known and (anew := _counted_again(stems)) is not None:
        now = (anew, before[1])
    if drinking and now[0] is not None and drinking.number <= now[0]:
        return now[0], now[0] - drinking.number
    halved = now[0] is not None and quantity_words().half.stand_in(stems)
    return (now[0], now[0] / 2) if halved and now[0] else _kept(now)


def _drinking(stems: Sequence[str]) -> Counted | None:
    """How many of the guests drink wine (`we're nine, seven drinking`), where that is told."""
    words = quantity_words().party
    for start, end, number in numbers(stems):
        behind = _behind(stems, end)
        if behind and any(words["drinking"].at(behind, 0)) and not words["part"].stand_in(behind):
            return Counted(DRINKLESS, start, end, number)
    return None


def _in_places(stems: Sequence[str]) -> float | None:
    """All guests where some are told to be there and some elsewhere (`14 on a call, 4 in the room`)."""
    words = quantity_words().party
    found: dict[str, float] = {}
    for _, end, number in numbers(stems):
        behind = _behind(stems, end)
        for place in ("elsewhere", "at-hand"):
            if words[place].stand_in(behind[:REACH_PLACE]):
                found.setdefault(place, number)
    return sum(found.values()) if len(found) > 1 else None


def _clause(stems: Sequence[str]) -> Sequence[str]:
    """The words up to the end of what is told before anything is asked (`that's ten now, do we ...`)."""
    found = numbers(stems)
    ends = (at for at in range(found[0][1] if found else 0, len(stems)) if stems[at] in CLAUSE_ENDS)
    return stems[: next(ends, len(stems))]


def _counted_again(stems: Sequence[str]) -> float | None:
    """The number of all guests where one alone is told anew (`seven now`, `make it ten`), or None."""
    stems = _clause(stems)
    words, found = quantity_words().party, numbers(stems)
    if len(found) != 1 or words["not-again"].stand_in(stems):
        return None
    start, end, number = found[0]
    if len(stems) > MOST_COUNTING and tuple(stems[start - 2 : start]) != FOLLOWS:  # `..., so ten now`
        return None
    behind, led = stems[end : end + 2], stems[max(0, start - 3) : start]
    opens_part = not start or words["again-before"].stand_in(stems[start - 1 : start])
    made = words["make-it"].stand_in(led) and end == len(stems)
    changed = any(words[kind].stand_in(stems[:start]) for kind in ("fewer", "absent", "more"))
    closes = opens_part and changed and end == len(stems)  # `Nick's dropped out, so 15`
    told = made or closes or (opens_part and behind and any(words["again"].at(behind, 0)))
    return number if told and number > 1 else None


def _of_time(stems: Sequence[str], found: Counted) -> bool:
    """Whether a number counts months or minutes: `8 months pregnant` are no eight guests."""
    return not quantity_words().not_people.isdisjoint(stems[found.end : found.end + 1]) and (
        found.name == DRINKLESS
    )


def _one_of_them(found: Counted, before: Heads) -> bool:
    """Whether a single one is one of the guests known (`one guest just sat down`), and not all of them."""
    return found.number == 1 and (before[0] or 0) > 1


def _changed(now: Heads, kind: str, found: Counted) -> Heads:
    """The guests after a number that is not that of all; nothing follows from it where all are not known."""
    guests, drinkless = now
    if guests is None:
        return (found.number, drinkless) if kind == "part" and found.number > 1 else now
    if kind == "more":
        return guests + found.number, drinkless + (found.number if found.name == DRINKLESS else 0.0)
    if kind in ("fewer", "absent"):
        return (guests - found.number if found.number < guests else guests), drinkless
    return (guests, found.number) if kind == "drinkless" and found.number <= guests else now


def _kept(now: Heads) -> Heads:
    return now if now[0] is None else (now[0], min(now[1], now[0]))


def _kind(stems: Sequence[str], found: Counted) -> str:
    """What a number of people is: `total`, or one of `KINDS`."""
    words = quantity_words().party
    before, behind = stems[max(0, found.start - REACH_BACK) : found.start], _behind(stems, found.end)
    for kind in KINDS:
        led = before[-1:] if kind == "part" else before
        if words[kind].stand_in(behind) or words[f"{kind}-before"].stand_in(led):
            return kind
    return "drinkless" if found.name == DRINKLESS else "total"


def _behind(stems: Sequence[str], end: int) -> list[str]:
    """The words behind a number, up to the next number, question or stop."""
    stops, counted_at = quantity_words().party["stops"], {found.start for found in counts(stems)}
    near: list[str] = []
    for at in range(end, min(end + REACH_ON, len(stems))):
        if stops.stand_in(stems[at : at + 1]) or at in counted_at:
            break
        near.append(stems[at])
    return near
