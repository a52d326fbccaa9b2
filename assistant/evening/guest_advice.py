"""What is told behind `not for Lia: brie`: reasons and one line first, the whole of the advice on why."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.context import Context
from assistant.evening.care import GuestCare
from assistant.evening.guest_drinks import is_drunk
from assistant.evening.guest_things import Before, names_thing
from assistant.evening.needs import WINE, understood
from assistant.evening.records import Evening
from assistant.language.frame import Frame
from assistant.language.guest_named import needs_named
from assistant.language.standing import WHYS
from assistant.session import Session

EMERGENCY, PREGNANT, EATEN, SIPPED = "emergency", "pregnancy", "pregnancy-eaten", "pregnancy-sipped"
MOST_TOLD = 4  # cautions that can be read out at a table


def asks_whole(frame: Frame, before: Before) -> bool:
    """Whether it is asked why a guest may not have what was just asked about."""
    return before.asked and before.things is not None and frame.intent in WHYS and not names_thing(frame)


def advised(told: Sequence[dict[str, str]], context: Context) -> list[str]:
    """The cautions as they stand; of more than can be read out only how to have them told."""
    if len(told) <= MOST_TOLD or context.frame.intent in WHYS:
        return [one["text"] for one in told]
    return [context.wording("plan", "guest-more")]


def reasons_told(told: Sequence[dict[str, str]], context: Context) -> bool:
    """Whether what is in each thing is told: where something is named, or stands in place of the advice."""
    return bool(context.frame.text.readings) or len(told) > MOST_TOLD


def asks_first(rows: Sequence[GuestCare], context: Context, session: Session) -> bool:
    """Whether something is named, drunk or looked after for guests who ask about every wine first.

    Tablets and diets that only a pharmacist, a doctor or a label can settle come before any pairing.
    """
    frame = context.frame
    needs = (need for row in rows for said in row.needs for need in understood(said, session))
    spoken = names_thing(frame) or is_drunk(frame)
    return spoken and any(WINE in need.ask for need in needs)


def general(context: Context, evening: Evening) -> list[str]:
    """What is said of drinking in general, where wine is asked about."""
    return [name for name in context.frame.text.topics if context.topics[name].general and evening.wines]


def apart(context: Context) -> list[str]:
    """What of health is asked for itself, beside the needs of the guests."""
    return [name for name in context.frame.text.topics if not context.topics[name].general]


def had_already(rows: Sequence[GuestCare], evening: Evening) -> dict[str, None]:
    """The topics first told where somebody already had what a need keeps from that guest."""
    kept = [row for row in rows if row.keep_away]
    harmed = {EMERGENCY: None} if any(row.allergy for row in kept) else {}
    things = {thing for row in kept if PREGNANT in row.topics for thing in row.keep_away}
    drunk = things <= {line.label for line in evening.wines}
    return harmed | ({SIPPED if drunk else EATEN: None} if things else {})


def is_asked(row: GuestCare, guests: Sequence[str], context: Context) -> bool:
    """Whether a guest is asked about: by name, or without one by the need that is named, else with all."""
    if row.guest != context.wording("plan", "guest"):
        return row.guest in guests
    named = needs_named(context.frame.text.typed, context.tonight.needs)
    return bool(set(named) & set(row.needs)) if named else "" in guests
