"""Which builder answers which intent, and what answers for the evening as a whole."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.afresh import afresh, begins_anew, names_evening, names_kept
from assistant.answers import (
    board,
    choose,
    compare,
    describe,
    extremes,
    first,
    foods,
    help,
    judge,
    meaning,
    myth,
    one_bottle,
    order,
    quantity,
    safety,
    service,
    small,
    stories,
    substitute,
    trouble,
    whatif,
    why,
    wines,
)
from assistant.answers.against_wine import against_wine
from assistant.answers.context import Context
from assistant.answers.degrees import degrees_said, held_against
from assistant.answers.explained import explained
from assistant.answers.record import Answer
from assistant.answers.taken_down import budget_told, heads_told
from assistant.language.entries import is_explained
from assistant.language.follow_lines import opens, says, says_only
from assistant.language.frame import Frame
from assistant.language.own_needs import own_told
from assistant.language.party import needs_told
from assistant.table.overrun import begins, buys, food_late, overspends, runs_late

if TYPE_CHECKING:
    from assistant.session import Session

Builder = Callable[[Context], Answer]
BUILDERS: dict[str, Builder] = {
    "wines-for-food": wines.wines_for_food,
    "foods-for-wine": foods.foods_for_wine,
    "judge-pair": judge.judge_pair,
    "what-if": whatif.what_if,
    "why": why.why,
    "why-not": why.why,
    "one-bottle": one_bottle.one_bottle,
    "compare": compare.compare,
    "describe": describe.describe,
    "define": meaning.meaning,
    "pour-order": order.order,
    "choose-wines": choose.choose_wines,
    "check-board": board.check_board,
    "service": service.service,
    "quantity": quantity.quantity,
    "substitute": substitute.substitute,
    "myth": myth.myth,
    "trouble": trouble.trouble,
    "set-table": small.set_table,
    "undo": small.nothing_back,
    "safety": safety.safety,
    "help": help.help_,
    "smalltalk": small.smalltalk,
    "unclear": small.unclear,
}

SOUNDS = (
    "service", "unclear", "describe", "define", "foods-for-wine", "wines-for-food",
    "smalltalk", "help", "judge-pair",
)  # fmt: skip
WHYS, PLAN, ORDERS = ("why", "why-not"), "plan", "pour-order"
# Parts of the plan of tonight's table that may be asked for by themselves, and what that is taken for else.
SHOPS = "shopping"
PARTS = ("late", "savings", "handout", "shopping", "kit", "cost", "chill", "clock", "needs", "temperatures")
ASKS_FOR_PARTS = ("unclear", "plan", "quantity", "help", "note", "service", "undo", "trouble", "one-bottle")
ASKS_FOR_TABLE = (
    "unclear", "define", "help", "set-table", "wines-for-food", "plan",
    "choose-wines", "check-board", "smalltalk",
)  # fmt: skip


def of_evening(frame: Frame) -> Callable[[Context, Session], Answer | None] | None:
    """What answers for the evening as a whole; loaded only then, because a plan needs so much."""
    if begins_anew(frame):
        return afresh
    if names_evening(frame):
        return _kept(saves=True)
    if names_kept(frame):
        return _kept(saves=False)
    from assistant.rehearse.asking import by_talk

    rehearses = by_talk(frame)
    if rehearses:
        return rehearses
    if stories.story_asked(frame) and not is_explained(frame):
        return lambda context, _: stories.outside_story(context)
    if (says(frame, "pronounce") and frame.intent in SOUNDS) or stories.sound_asked(frame):
        return lambda context, _: stories.outside_sound(context)
    if extremes.extremes_asked(frame):
        return lambda context, _: extremes.extreme(context)
    if extremes.of_taste_asked(frame):
        return lambda context, _: extremes.of_taste(context)
    told, own = needs_told(frame), own_told(frame)
    if told.asked or own.asked:
        from assistant.evening.needs_by_talk import needs_by_talk, own_by_talk

        return own_by_talk(own, told) if own.asked else needs_by_talk(told)
    named = any(reading.type in ("Wine", "Drink", "Food") for reading in frame.text.readings)
    asked = not named and frame.intent in ASKS_FOR_TABLE and says(frame, "table-asked")
    if asked or (says(frame, "table-lost") and not (frame.topics or frame.intent == ORDERS)):
        return _table
    if not named and says(frame, "budget-asked"):
        return lambda context, _: budget_told(context)
    if not named and says_only(frame, "heads-asked"):
        return lambda context, _: heads_told(context)
    if not named and says_only(frame, "start-asked"):
        return lambda context, _: first.start_told(context)
    if not named and (says_only(frame, "first-asked") or first.asks_while_waiting(frame)):
        return _first
    if food_late(frame):
        return _late()
    if not named and buys(frame):
        return _bought
    part = None if named or says(frame, "plan-it") else _part(frame)
    if part is not None:
        return part
    saves = opens(frame, "save") and frame.intent != "what-if"  # `save it` may be asked of a pair
    if not named and (saves or opens(frame, "load")):
        return _kept(saves)
    if frame.intent == PLAN or (not named and begins(frame)):
        from assistant.evening.by_talk import plan_by_talk

        planned = replace(frame, intent=PLAN)
        return lambda context, session: plan_by_talk(replace(context, frame=planned), session)
    return None


def _kept(saves: bool) -> Callable[[Context, Session], Answer]:
    """What keeps the evening, or takes one up again."""
    from assistant.evening.keep_by_talk import load_by_talk, save_by_talk

    return save_by_talk if saves else load_by_talk


def _table(context: Context, session: Session) -> Answer | None:
    """What is on the table, and nothing changed; None where nothing is."""
    return small.shown(context)


def _first(context: Context, session: Session) -> Answer | None:
    """What comes first on the table that is laid; None where no wine is poured."""
    return first.first_told(context) if context.tonight.wines else None


def _bought(context: Context, session: Session) -> Answer | None:
    """What the money buys, or the list of what to buy; loaded only then."""
    from assistant.evening.money_by_talk import bought

    other = _part(context.frame)
    return bought(context) or (other(context, session) if other else None)


def _part(frame: Frame) -> Callable[[Context, Session], Answer | None] | None:
    """What answers where one part of the plan is asked for, or where time is said to be over."""
    part = next((name for name in PARTS if says(frame, f"plan-{name}")), None)
    if part == SHOPS and frame.intent == "wines-for-food":
        return _shopping  # `what do I buy` is no wine where a table is laid
    if part is None or not (frame.intent in ASKS_FOR_PARTS or says_only(frame, f"plan-{part}")):
        part = "late" if runs_late(frame) else "savings" if overspends(frame) else None
    if part is None:
        return None
    if part == "late":
        return _late()
    if part == "chill":
        from assistant.evening.chill_by_talk import chill_by_talk

        return chill_by_talk
    from assistant.evening.by_talk import section_by_talk

    return section_by_talk(part)


def _late() -> Callable[[Context, Session], Answer | None]:
    """What answers where time is over; loaded only then."""
    from assistant.evening.late import late_by_talk

    return late_by_talk


def _shopping(context: Context, session: Session) -> Answer | None:
    """What to buy for the table that is laid; None where none is."""
    from assistant.evening.by_talk import section_by_talk

    laid = context.tonight.wines and context.tonight.dishes and context.tonight.guests
    return section_by_talk(SHOPS)(context, session) if laid else None


def built(context: Context) -> Answer:
    """The answer of the builder of the intent; what is asked of health is answered as that.

    Why wine gives a headache is no question of a pairing, and a food that is not named is not waited for.
    """
    frame = context.frame
    if is_explained(frame):
        return explained(context)
    degrees = degrees_said(frame)
    told = held_against(context, degrees) if degrees is not None else against_wine(context)
    if told is not None:
        return told
    builder = BUILDERS.get(frame.intent)
    if builder is None:
        return small.outside(context)
    if frame.text.topics and (frame.intent in WHYS or not enough(frame)):
        return replace(safety.safety(context), intent="safety")
    return builder(context) if enough(frame) else small.missing(context)


def enough(frame: Frame) -> bool:
    """Whether the frame holds what its intent needs."""
    needs = {
        "wines-for-food": frame.dishes or frame.preferences,
        "foods-for-wine": frame.wines,
        "judge-pair": frame.wines and frame.dishes,
        "why": frame.wines and frame.dishes,
        "why-not": frame.wines and frame.dishes,
        "what-if": frame.dishes,
        "compare": len(frame.wines) > 1 or len(frame.dishes) > 1,
        "describe": frame.wines or frame.dishes,
        "define": meaning.has_meaning(frame),
        "pour-order": frame.wines or len(frame.dishes) > 1,
        "one-bottle": frame.dishes,
    }
    return bool(needs.get(frame.intent, True))
