"""Whether something is asked for a guest, or told of one, or asked of the evening."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.evening.guest_things import asks_little, takes_up
from assistant.language.follow_asks import doubt_told
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame
from assistant.language.party import needs_told

COUNTS, MYTH, DESCRIBES, SAFETY = "quantity", "myth", "describe", "safety"
# What else may be said of a guest than that something is asked for that guest.
OTHER = ("undo", "plan", "pour-order", "quantity", "trouble", "smalltalk", "help")
PAIRS = ("wines-for-food", "judge-pair", "foods-for-wine", "one-bottle")
SETS = "set-table"
SAID = ("note", "teach", SETS)


def asks_for_guest(frame: Frame, named: Sequence[str]) -> bool:
    """Whether something is asked for a guest, and not told of one nor asked of the evening."""
    if frame.intent == SETS and opens(frame, "fetches"):
        return False  # `get a Moscato for Carol`
    has, drank = has_asked(frame), says(frame, "guest-drank")  # `she has had some` is no need of hers
    return has or not (_told(frame) or _other(frame, named) or (needs_told(frame).asked and not drank))


def goes_on(frame: Frame) -> bool:
    """Whether it is asked on of the guests last asked about (`and the Brie?`, `surely one bite is fine`)."""
    little = asks_little(frame) and takes_up(frame)
    return little or (opens(frame, "guest-on") and frame.intent in (*PAIRS, SAFETY, "unclear"))


def has_asked(frame: Frame) -> bool:
    """`can Tom have the port`, whatever a line is taken for; behind what was told before too.

    So does `what do I tell Tom`, and `what if she has a little`.
    """
    little = asks_little(frame) and (opens(frame, "guest-supposes") or takes_up(frame))
    asks = opens(frame, "guest-told") or little
    return asks or (opens(frame, "guest-may") and says(frame, "guest-has")) or says(frame, "guest-has-behind")


def _told(frame: Frame) -> bool:
    """`Ana rated the port`, `Tom is vegan`: what is said and not asked."""
    drank = says(frame, "guest-drank")
    said = frame.intent in SAID or says(frame, "guest-votes")
    return said and not drank and not (opens(frame, "guest-may") or opens(frame, "guest-who"))


def _other(frame: Frame, named: Sequence[str]) -> bool:
    """What is asked of the evening, claimed, or doubted; `and for Tom?` takes up what was asked."""
    may, further = opens(frame, "guest-may"), bool(named) and takes_up(frame)
    counts = frame.intent == COUNTS and (may or opens(frame, "guest-what"))
    claimed = frame.intent == MYTH and not (named or frame.topics)  # `he says screw caps are cheap`
    asked = counts or says(frame, "guest-drank") or further
    tastes = frame.intent == DESCRIBES and says(frame, "oak-asked")
    return (frame.intent in OTHER and not asked) or claimed or tastes or doubt_told(frame)
