"""Conversation: how a follow-up takes up the turn before.

It is taken up by the first edit of `EDITS` that recognises it; a new question stays new.
"""

from __future__ import annotations

from dataclasses import replace

from assistant.knowledge.store import Knowledge
from assistant.language import follow_asks as asks
from assistant.language import follow_dishes as dishes
from assistant.language import follow_lists as lists
from assistant.language import follow_sayings as sayings
from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.language.refer import placed, same_food
from assistant.language.standing import Edit, Talk, wines_of

EDITS: tuple[Edit, ...] = (
    asks.cautious,
    sayings.saying,
    asks.numbers,
    asks.beside,
    asks.too_much,
    lists.order_asked,
    lists.freed,
    asks.back,
    dishes.what_if,
    asks.order_why,
    asks.partner,
    asks.why,
    asks.why_not,
    lists.eaten,
    dishes.amount,
    lists.of_another,
    asks.more_foods,
    asks.more,
    lists.described,
    dishes.off,
    dishes.on,
    dishes.limit,
    asks.kept_to,
    asks.same,
    asks.still,
    lists.in_order,
    lists.together,
    lists.between,
    lists.otherwise,
    dishes.swap_part,
    dishes.swap_dish,
    dishes.swap_wine,
    asks.context,
)


def follow(frame: Frame, talk: Talk | None, knowledge: Knowledge) -> Frame:
    """The frame completed from the turn before, where it follows on; a new question stays new."""
    if talk is None:
        return frame
    listed = talk.asked != "choose-wines" and len(wines_of(talk.picks)) > 1
    of_order = frame.intent == "pour-order" and not listed  # `which goes first`
    if not of_order and not says(frame, "order-asked"):
        frame = _kept(placed(frame, talk.picks), frame, talk)
    if talk.asked != "foods-for-wine":
        frame = same_food(frame, talk, knowledge)
    for step in EDITS:
        edited = step(frame, talk, knowledge)
        if edited is not None:
            return edited
    return frame


def _kept(meant: Frame, frame: Frame, talk: Talk) -> Frame:
    """A wine meant by its place is one for the dish that stands, which stays."""
    if meant is frame or meant.dishes:
        return meant
    return replace(meant, dishes=talk.frame.dishes, preferences=talk.frame.preferences)
