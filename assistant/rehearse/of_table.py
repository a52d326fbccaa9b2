"""What is asked of the table as a whole: popular claims, the order, what guests may have, what goes wrong."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from assistant.answers.context import Context
from assistant.answers.trial import trials
from assistant.answers.wording import listed
from assistant.evening.by_talk import evening_of
from assistant.evening.care import GuestCare, care
from assistant.evening.flight_reasons import reason, swapped
from assistant.knowledge.concepts import first
from assistant.language.guests import Asked
from assistant.pairing.dish import Dish
from assistant.pairing.flight import pour_order
from assistant.rehearse.expected import Expected, say, spoken
from assistant.rehearse.words import rehearse_words
from assistant.session import Session

MYTH = "Myth"
CARE = (("keep-away", "keep_away"), ("label-first", "check_label"), ("may-have", "may_have"))


def myths_asked(context: Context) -> Iterator[Expected]:
    """Claims that can be tried on tonight's foods; those that the foods decide most clearly first."""
    known, found = context.knowledge, []
    for claim in known.of_type(MYTH):
        tried = trials(replace(context, frame=replace(context.frame, dishes=_about(claim, context))), claim)
        found += [(max(abs(one.lead) for one in tried), claim, tried[0])] if tried else []
    for _, claim, trial in sorted(found, key=lambda row: (-row[0], row[1])):
        entry = known.entry(claim)
        told = [str(first(entry, name)) for name in ("say", "fails", "holds")]
        flag = say(context, "flag-myth", truth=first(entry, "truth"), food=context.one_dish(trial.dish))
        yield Expected("myth", say(context, "ask-myth", claim=known.label(claim)), spoken(told), (flag,))


def _about(claim: str, context: Context) -> tuple[Dish, ...]:
    """Tonight's dishes that a claim may be tried on; none for one that speaks of any food at all."""
    known, traits = context.knowledge, rehearse_words().narrower.get(claim, frozenset())
    if not any(way.get("about") for way in known.entry(claim).get("shownBy", ())):
        return ()
    return tuple(
        dish
        for dish in context.tonight.dishes
        if not traits or any(traits & known.food(part.food).traits for part in dish.parts)
    )


def order_asked(context: Context) -> Iterator[Expected]:
    """Why the first wine is first, and what a swap would break."""
    constants, label = context.knowledge.constants, context.knowledge.label
    ordered = pour_order([context.engine.glasses[wine] for wine in context.tonight.wines], constants)
    if len(ordered) < 2:
        return
    ends = {"first": label(ordered[0].wine), "last": label(ordered[-1].wine)}
    told = [say(context, "order", **ends)]
    for at in (0, len(ordered) - 1):
        why = context.wording("order", reason(ordered, at, constants))
        told.append(say(context, "order-why", wine=label(ordered[at].wine), why=why))
    worst = max(swapped(ordered, constants), key=lambda one: one.cost)
    if worst.cost > 0:
        what = context.wording("swapped", worst.mechanism)
        pair = {"first": label(worst.first), "second": label(worst.second)}
        told.append(context.wording("line", "swapped", what=what, **pair))
    yield Expected("order", say(context, "ask-order", **ends), spoken(told))


def diets_asked(context: Context, session: Session) -> Iterator[Expected]:
    """What each guest with a need may have; where none is known, what is asked for oftenest."""
    for row in _cared_for(context, session):
        told = [
            context.wording("plan", name, things=listed(list(getattr(row, field))))
            for name, field in CARE
            if getattr(row, field)
        ]
        name = "ask-diet-of" if context.tonight.needs else "ask-diet"
        question = say(context, name, guest=row.guest, need=listed(list(row.needs)))
        yield Expected("diet", question, spoken([*told, say(context, "ask-them")]))


def _cared_for(context: Context, session: Session) -> list[GuestCare]:
    """The guests with needs; without any, one guest for each need that is asked for oftenest."""
    asked = context.tonight.needs or tuple(Asked("", need) for need in rehearse_words().diets)
    table = replace(context.tonight, needs=asked)
    return care(evening_of(replace(context, tonight=table)), session)


def trouble_asked(context: Context) -> Iterator[Expected]:
    """What goes wrong oftenest with the wines poured, and what to do at once."""
    known, names = context.knowledge, rehearse_words().trouble
    kinds = {kind for wine in context.tonight.wines for kind in known.wines[wine].kinds}
    for name in dict.fromkeys(found for kind, found in names.items() if kind in kinds or kind == "any"):
        entry = known.entry(name)
        fault = known.entry(str(first(entry, "likeliest")))
        told = [str(first(entry, "say")), say(context, "sign", sign=first(fault, "sign"))]
        told.append(say(context, "remedy", remedy=first(fault, "remedy")))
        yield Expected("trouble", say(context, "ask-trouble", trouble=known.label(name)), spoken(told))


def parked_asked(context: Context, session: Session) -> Iterator[Expected]:
    """Questions that were put aside, the newest first: whoever asked will ask again."""
    for one in reversed(session.taught.told()):
        if one.kind == "parked":
            told = say(context, "parked", date=context.wording.date(one.when))
            yield Expected("parked", one.said, told)
