"""`we're down to half the Soave`: how many pours that gives in the middle of an evening."""

from __future__ import annotations

from math import floor
from typing import TYPE_CHECKING

from assistant.after.amounts import BOTTLES, amount_said
from assistant.after.opened import wines_meant
from assistant.after.phrases import said
from assistant.after.telling import told
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.evening.facts import fact

if TYPE_CHECKING:
    from assistant.session import Session


def level(context: Context, session: Session) -> Answer | None:
    """How many pours are left in a bottle, one of them for whoever comes late; None without a wine."""
    amount, wines = amount_said(context.frame), wines_meant(context)
    if amount is None or amount.unit != BOTTLES or not wines:
        return None
    evening = context.tonight.evening
    pour = evening.pour_ml if evening else fact("amounts", "bottle", "pour_ml").typical
    ml = amount.left * fact("amounts", "bottle", "typical_ml").typical
    pours = floor(ml / pour)
    thing = capital(context.knowledge.label(wines[0]))
    fields = {"ml": f"{round(ml, -1):g}", "pours": pours, "pour": f"{pour:g}", "thing": thing}
    lines = [said("amounts", "level" if pours > 1 else "level-one", **fields)]
    late = [guest for guest, _ in context.tonight.late]
    lines += [said("amounts", "level-for", guests=listed(late))] if late else []
    return told(context, [*lines, said("amounts", "level-not-kept")])
