"""Answers that need no pairing: a term, help, a friendly word, and what was not understood."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.instead import instead
from assistant.answers.record import Answer
from assistant.answers.safety import caution
from assistant.answers.tasted import tasted
from assistant.answers.wording import capital, listed, price_told
from assistant.language.clean import MAX_CHARACTERS
from assistant.language.follow_lines import says
from assistant.language.quantities import counts, numbers
from assistant.table.at_home import brings_food, recounts
from assistant.table.bare_bottles import style_of_kind
from assistant.table.brought import bottle_told, kinds_poured
from assistant.table.prices_told import prices_told
from assistant.table.taken_off import CONTACT, has_cleared, not_there

CAUTION = "caution/cross-contact"
EMPTY = ("unclear", "set-table", "help", "define")
OF_PAIRS = ("judge-pair", "why", "why-not", "what-if")


def smalltalk(context: Context) -> Answer:
    """A friendly word back; who asks whom they talk to is told, who comes back where the talk stood."""
    if (told_back := tasted(context)) is not None:
        return told_back
    if says(context.frame, "who-asked"):
        told = [context.wording("smalltalk", line) for line in ("who", "what")]
    elif says(context.frame, "waits"):
        told = [context.wording("smalltalk", "waits"), *_stands(context)]
    elif says(context.frame, "points"):
        told = [context.wording("smalltalk", "points")]
    elif says(context.frame, "lets-be"):
        told = [context.wording("smalltalk", "lets-be"), *_stands(context)]
    elif says(context.frame, "leaves"):
        told = [context.wording("smalltalk", "bye")]
    elif says(context.frame, "recap"):
        told = _stands(context) or [context.wording("smalltalk", "nothing")]
    else:
        told = [context.wording("smalltalk", "say")]
    return replace(compose(context.all_used(), told[0], told), dish=None)


def _stands(context: Context) -> list[str]:
    """The dish that was spoken of and the wines of tonight, as far as there are any."""
    wines = [context.knowledge.label(wine) for wine in context.tonight.wines]
    dish = [context.wording("smalltalk", "stands", dish=context.dish_name())] if context.frame.dishes else []
    return [*dish, *([context.wording("smalltalk", "tonight", wines=listed(wines))] if wines else [])]


def outside(context: Context) -> Answer:
    """The question was recognised, but answering it is not built yet."""
    say = context.wording("say", "outside")
    return replace(compose(context, say, [say]), understood=False)


def _puzzled(context: Context) -> str:
    """What was not known; or else what was known though nothing could be made of it."""
    text = context.frame.text
    if text.left_out:
        return context.wording("say", "unknown", words=listed([f"“{w}”" for w in text.left_out[:5]]))
    if text.readings:
        labels = list(dict.fromkeys(reading.label for reading in text.readings))
        return context.wording("say", "unclear-read", names=listed(labels[:5]))
    return context.wording("say", "unclear")


def unclear(context: Context, name: str = "text") -> Answer:
    """Says that nothing was understood, and names the words that were not known."""
    say = _puzzled(context)
    left, read = context.frame.text.left_out, context.frame.text.readings
    kind = name if name != "text" else "unknown" if left else "read" if read else name
    lines = [say, context.wording("unclear", kind)]
    if left and read:
        labels = ", ".join(dict.fromkeys(r.label for r in read))
        lines.append(context.wording("line", "read", readings=labels))
    clarify = context.wording("line", "clarify-more")
    notes = [context.wording("line", note, limit=MAX_CHARACTERS) for note in context.frame.text.notes]
    text = "\n".join([*lines, *notes])
    return replace(compose(context, say, lines), text=text, clarify=clarify, understood=False)


def missing(context: Context) -> Answer:
    """Asks for what the question needs and does not name; words that were not known come first."""
    frame = context.frame
    if frame.text.left_out or frame.intent not in context.wording.names("missing"):
        return unclear(context)
    named = [context.knowledge.label(wine) for wine in frame.wines]
    named = named or ([context.dish_name()] if frame.dishes else [])
    half = "food-missing" if frame.wines else "wine-missing" if named else None
    template = half if half and frame.intent in OF_PAIRS else frame.intent
    ask = context.wording("missing", template, named=listed(named))
    return replace(compose(context, ask, [ask]), clarify=ask, understood=False)


def set_table(context: Context) -> Answer:
    """What is on the table is taken in, and stands for the questions that follow."""
    wines = [context.knowledge.label(w) for w in context.frame.wines]
    foods = [context.dish_name()] if context.frame.dishes else []
    if not (wines or foods):
        return _nothing_laid(context)
    say = context.wording("say", "table", things=listed([*foods, *wines]))
    lines = [*_prices(context), *instead(context), *_off(context), say, *taken_as(context)]
    lines += [*_there_already(context), *_brought(context), *_lay_beside(context)]
    return compose(context, lines[0], [*lines, context.wording("line", "table-next")])


def _there_already(context: Context) -> list[str]:
    """The bottles that are there already, where that is told."""
    owned = [f"{count} {context.knowledge.label(wine)}" for wine, count in context.tonight.owned]
    told = owned and (says(context.frame, "owns") or recounts(context.frame, context.tonight))
    return [context.wording("line", "there-already", things=listed(owned))] if told else []


def _brought(context: Context) -> list[str]:
    """That the food is not bought, where that is told."""
    return [context.wording("plan", "food-brought")] if brings_food(context.frame) else []


def _lay_beside(context: Context) -> list[str]:
    """What lay there may have touched the rest, which matters where a guest's need is told of."""
    touches = CONTACT in context.frame.text.topics and bool(context.tonight.needs)
    return [caution(context, CAUTION)["text"]] if touches else []


def _prices(context: Context) -> list[str]:
    """What the wines cost, where that is told now, and all of them together, where all is known."""
    label, tonight = context.knowledge.label, context.tonight
    told = [
        f"{label(wine)} {price_told(price)}" for wine, price in prices_told(context.frame, tonight).items()
    ]
    whole = len(tonight.prices) == len(tonight.wines) > 1
    name, total = "prices-all" if whole else "prices", sum(price for _, price in tonight.prices)
    line = context.wording("line", name, things=listed(told), total=price_told(total))
    return [line, *_fits(context, total, whole)] if told else []


def _fits(context: Context, total: float, whole: bool) -> list[str]:
    """Whether one bottle of each is within another number told beside the prices (`does that fit 90`)."""
    prices = prices_told(context.frame, context.tonight).values()
    stems = context.frame.text.stems
    counted = {one.start for one in counts(stems)}  # `four bottles: a Soave £11, ...`
    others = [value for at, _, value in numbers(stems) if value not in prices and at not in counted]
    if len(others) != 1:
        return []
    kind = "prices-open" if not whole else "prices-fit" if total <= others[0] else "prices-over"
    return [context.wording("line", kind, money=price_told(others[0]), over=price_told(total - others[0]))]


def _nothing_laid(context: Context) -> Answer:
    """Nothing is on the table: all of it was cleared, or only a kitchen was named."""
    frame = context.frame
    kitchens = [reading.label for reading in frame.text.readings if reading.kind == "cuisine"]
    if kitchens:
        ask = context.wording("line", "dishes-of", kitchen=listed(kitchens))
        return replace(compose(context, ask, [ask]), clarify=ask)
    off = [*_off(context), *_brought(context)]
    lines = [*off, context.wording("plan", "nothing")]
    return compose(context.of_evening(), lines[0], lines) if off or has_cleared(frame) else unclear(context)


def _off(context: Context) -> list[str]:
    """What came off the table, or does not lie there."""
    frame = context.frame
    if frame.before:
        gone = listed([context.one_dish(dish) for dish in frame.before])
        return [context.wording("line", "off-table", things=gone)]
    missed = not_there(frame, context.tonight, context.knowledge)
    named = listed(list(dict.fromkeys(reading.label for reading in missed)))
    return [context.wording("line", "not-on-table", things=named)] if missed else []


def taken_as(context: Context) -> list[str]:
    """For which style a bottle was taken that is called by its kind alone."""
    known, frame = context.knowledge, context.frame
    told = dict(bottle_told(frame, r) for r in kinds_poured(frame) if known.styles_of(r.id))
    pairs = ((name, one if one in known.wines else style_of_kind(one, known)) for name, one in told.items())
    return [
        capital(context.wording("line", "kind-as", kind=name, wine=known.label(wine)))
        for name, wine in pairs
        if wine in context.frame.wines
    ]


def shown(context: Context) -> Answer | None:
    """What is on the table, as it stands; None where nothing is and something else may be meant."""
    tonight, label = context.tonight, context.knowledge.label
    foods, wines = (context.one_dish(dish) for dish in tonight.dishes), (label(w) for w in tonight.wines)
    things = [*foods, *wines]
    if not things:
        return replace(cleared(context), intent="set-table") if context.frame.intent in EMPTY else None
    say = context.wording("say", "table", things=listed(things))
    guests = [context.wording("plan", "counted", guests=f"{tonight.guests:g}")] if tonight.guests else []
    return replace(compose(context.of_evening(), say, [say, *guests]), dish=None, intent="set-table")


def cleared(context: Context) -> Answer:
    """Nothing is on the table."""
    say = context.wording("plan", "nothing")
    return replace(compose(context.of_evening(), say, [say]), dish=None)


def nothing_back(context: Context) -> Answer:
    """There is no turn to go back to."""
    say = context.wording("say", "nothing-back")
    return replace(compose(context, say, [say]), understood=False)
