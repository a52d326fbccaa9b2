"""`olives kill wine`: held against the wine that does best with the food."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wines import wines_for_food
from assistant.language.follow_lines import says
from assistant.pairing.score import LIKED

CLAIMED, PAIRS = ("wines-for-food", "judge-pair", "myth", "unclear", "why-not"), "wines-for-food"


def against_wine(context: Context) -> Answer | None:
    """Whether no wine goes with the one food named, and which does best; None where that is not claimed."""
    frame = context.frame
    named = {r.id for r in frame.text.readings if r.type == "Food"}
    poured = any(r.type in ("Wine", "Drink") for r in frame.text.readings) or len(frame.dishes) != 1
    of_food = len(named) == 1 and not (poured or frame.entries or frame.topics)
    if not of_food or frame.intent not in CLAIMED or not says(frame, "kills-wine"):
        return None
    told = wines_for_food(replace(context, frame=replace(frame, intent=PAIRS, wines=(), preferences=())))
    if not told.picks:
        return None
    best = told.picks[0]
    name = "not-against" if best.verdict in LIKED else "against"
    say = context.wording("line", name, food=context.dish_name(), wine=best.label, verdict=best.verdict)
    return replace(told, say=say, text=f"{say}\n{told.text}", intent=PAIRS)
