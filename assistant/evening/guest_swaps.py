"""`swap the walnuts for something Tom can eat`: the foods most like one that no guest is kept from."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.substitute import for_food
from assistant.evening.care import stands
from assistant.evening.needs import Need, understood
from assistant.knowledge.diets import Fit
from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.session import Session

REPLACES = "substitute"


def guest_swaps(frame: Frame, guests: Sequence[str], session: Session) -> Callable[..., Answer | None] | None:
    """What answers what stands in for a food where guests have needs; None for any other text.

    `guests`: those named in the text; without one all count.
    """
    foods = [r.id for r in frame.text.readings if r.type == "Food"]
    instead = frame.intent == REPLACES and says(frame, "table-instead")
    asked = instead or says(frame, "guest-swap")
    if not asked or len(foods) != 1 or frame.wines:
        return None
    told = [one for one in session.tonight.needs if one.guest in guests or not guests]
    needs = [need for one in told for need in understood(one.need, session)]
    return lambda context, session: _told(foods[0], needs, context, session)


def _told(food: str, needs: Sequence[Need], context: Context, session: Session) -> Answer | None:
    """The foods most alike that all of these needs allow."""
    known = context.knowledge
    kept = {f for f in known.of_type("Food") if any(stands(f, n, known) is not Fit.YES for n in needs)}
    answer = for_food(context, food, kept)
    label = context.wording("plan", "guest-label")
    text = f"{answer.text}\n{label}" if any(need.allergy for need in needs) else answer.text
    return replace(answer, text=text, intent=REPLACES)
