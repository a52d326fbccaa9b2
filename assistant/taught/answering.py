"""Where a conversation hands over to what was taught: how a text is heard, and what answers it."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.language.clean import clean
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame
from assistant.language.guests import all_asked
from assistant.language.party import needs_told
from assistant.language.passed_on import as_asked, kept_for_later
from assistant.language.phrases import Phrases
from assistant.language.standing import Talk
from assistant.rehearse.rolling import roll_back, rolls
from assistant.table.overrun import overspends, runs_late
from assistant.taught.alias import untailed
from assistant.taught.first import chooses
from assistant.taught.keeper import Keeper
from assistant.taught.listing import listing, whose
from assistant.taught.note import noted
from assistant.taught.profile import has_amounts
from assistant.taught.take_back import meant_back, take_back
from assistant.taught.teach import taught
from assistant.taught.telling import Hearing
from assistant.taught.voice import in_order, with_voices
from assistant.taught.words import taught_words

TEACH, NOTE, UNDO, TABLE, PLAN = "teach", "note", "undo", "set-table", "plan"
OWN = (TEACH, NOTE)
UNASKED = (*OWN, UNDO, TABLE, "unclear", "smalltalk", "help")
OVER = ("plan-behind", "plan-over", "plan-overspent")
ASKING = (
    "help",
    "unclear",
    "teach",
    "note",
    "undo",
    "smalltalk",
    "why",
    "wines-for-food",
    "describe",
    "myth",
)
SAFETY, UNCLEAR = "safety", "unclear"
STATING = ("unclear", "wines-for-food", "describe", "smalltalk")


def heard_anew(typed: str, keeper: Keeper, talk: Talk | None, bottles: Phrases) -> Frame:
    """The frame of a text in which the host's own names, and those of bottles, stand for what they mean."""
    standing = talk is not None
    meant = bottles.replaced(keeper.overlay.meant(_asked(typed, keeper, standing)))
    frame = keeper.parser.parse(meant, standing=standing)
    if meant == typed:
        return frame
    if frame.intent == UNDO or (frame.intent == TEACH and _names(typed)):  # the name stands for itself
        return keeper.parser.parse(typed, standing=standing)
    frame = keeper.overlay.named(frame, typed)
    return replace(frame, text=replace(frame.text, typed=clean(typed).text))


def _asked(typed: str, keeper: Keeper, standing: bool) -> str:
    """The question that a text passes on; what touches health, or is kept for later, stays whole."""
    asked = as_asked(typed)
    if asked == typed:
        return typed
    whole = keeper.parser.parse(typed, standing=standing)
    bodily = whole.text.topics or (whole.intent == SAFETY and not whole.diets)  # a diet is no illness
    stays = bodily or kept_for_later(typed)
    sure = whole.intent in (*UNASKED, SAFETY) or asked.endswith("?")
    return asked if sure and not stays else typed


def spoken_of(frame: Frame, keeper: Keeper) -> Frame:
    """The frame as one that teaches, takes back or asks for what was taught, where it does."""
    if frame.intent == NOTE and opens(frame, "save"):  # an evening is saved, nothing is noted
        return replace(frame, intent=TABLE)
    if frame.intent == NOTE and _asks(frame):
        return replace(frame, intent=UNCLEAR)
    over = runs_late(frame) or overspends(frame)
    if frame.intent == NOTE and over and any(opens(frame, line) for line in OVER):
        return replace(frame, intent=PLAN)
    if not keeper.keeps:
        return frame
    if _line(frame) and frame.intent in ASKING:
        return replace(frame, intent=TEACH, dishes=(), wines=(), again="")
    if chooses(frame):
        return replace(frame, intent=TEACH, again="")
    if rolls(frame, keeper):
        return replace(frame, intent=UNDO, dishes=(), wines=(), again="")
    if frame.intent in STATING and _states(frame):
        return replace(frame, intent=TEACH)
    if frame.intent == UNDO and meant_back(frame, keeper) is not None:
        return replace(frame, dishes=(), wines=(), again="")
    return frame


def _asks(frame: Frame) -> bool:
    """Whether a text asks something and neither tells to keep it nor puts it aside; it is not noted."""
    stems, said = frame.text.stems, taught_words()
    asks = (stems[:1] and stems[0] in said.sets["asks_first"]) or says(frame, "asked-ok")
    keeps = any(said.lines[name].stand_in(stems) for name in ("keeps", "parks", "kept"))
    return bool(asks or stems[-1:] == ("?",)) and not (keeps or kept_for_later(frame.text.typed))


def _names(typed: str) -> bool:
    """Whether a text may give a name to something."""
    text = untailed(typed)
    return any(pattern.search(text) for pattern in (*taught_words().named, *taught_words().new))


def is_own(frame: Frame, keeper: Keeper) -> bool:
    """Whether a frame is told or taken back and asks nothing of what stands."""
    taken = rolls(frame, keeper) or meant_back(frame, keeper) is not None
    back = frame.intent == UNDO and not frame.again and taken
    return keeper.keeps and (frame.intent in OWN or back)


def _line(frame: Frame) -> str | None:
    """Whether what was taught is asked for, or whose word something is."""
    lines = taught_words().lines
    return next((name for name in ("lists", "whose") if lines[name].stand_in(frame.text.stems)), None)


def _states(frame: Frame) -> bool:
    """`that one's mild`, `call it cab`: what the host has is like or called, said and not asked."""
    text, lines = frame.text, taught_words().lines
    states = lines["states"].stand_in(text.stems) and has_amounts(text)
    names = frame.intent == "unclear" and lines["names"].stand_in(text.stems)
    return (states or names) and "?" not in text.typed


def answered(context: Context, keeper: Keeper, talk: Talk | None) -> Answer | None:
    """The answer where the notebook gives it, or None."""
    frame = context.frame
    line = _line(frame) if keeper.keeps and frame.intent == TEACH else None
    if line:
        return (listing if line == "lists" else whose)(context, keeper)
    if frame.intent == UNDO and rolls(frame, keeper):
        return roll_back(context, keeper)
    if frame.intent == UNDO:
        back = None if frame.again else meant_back(frame, keeper)
        return take_back(context, keeper, back) if back is not None else None
    if frame.intent in OWN and needs_told(frame).asked and all_asked(frame.text.typed):
        return None  # what a guest must not have goes to the table too, with its caution
    before = talk.frame if talk else None
    asked = keeper.last.question if keeper.last else ""
    dishes, wines = (before.dishes, before.wines) if before else ((), ())
    heard = Hearing(context, keeper, dishes, wines, asked)
    return {TEACH: taught, NOTE: noted}[frame.intent](heard) if frame.intent in OWN else None


def heeded_in(answer: Answer, context: Context, keeper: Keeper) -> Answer:
    """The answer with the host's voice beside the book's; what was kept last is no longer just kept."""
    if not keeper.keeps:
        return answer
    if context.frame.intent in (*OWN, UNDO):
        return answer
    told = with_voices(answer, context.frame, keeper, context)
    keeper.asked(told)
    return in_order(told, context)
