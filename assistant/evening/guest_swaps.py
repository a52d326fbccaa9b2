"""`swap the walnuts for something Tom can eat`: the foods most like one that no guest is kept from."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.safety import cautions
from assistant.answers.substitute import for_food, substitute
from assistant.answers.wines import wines_for_food
from assistant.answers.wording import listed
from assistant.evening.by_talk import evening_of
from assistant.evening.care import care, stands
from assistant.evening.guest_advice import advised
from assistant.evening.guest_drinks import drinks_told
from assistant.evening.guest_meant import spoken_of
from assistant.evening.needs import Need, understood
from assistant.knowledge.diets import Fit
from assistant.language.dish_edits import POURED
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame
from assistant.pairing.dish import Dish
from assistant.session import Session

REPLACES, SAFETY = "substitute", "safety"


def guest_swaps(frame: Frame, guests: Sequence[str], session: Session) -> Callable[..., Answer | None] | None:
    """What answers what stands in for a food where guests have needs; None for any other text.

    `guests`: those named in the text; without one all count.
    """
    guests = guests or spoken_of(frame, session)
    foods = [r.id for r in frame.text.readings if r.type == "Food"]
    if says(frame, "plate-and-glass") and not (foods or frame.wines) and _of_any_wine(guests, session):
        return lambda context, session: _plate(guests, context, session)
    instead = frame.intent == REPLACES and says(frame, "table-instead")
    asked = instead or says(frame, "guest-swap")
    needs = _needs_of(guests, session)
    if asked and guests and not foods and _one_wine(frame):
        sober = any(need.sober for need in needs)
        return partial(_drink_told, guests) if sober else partial(_wine_told, needs)
    if not asked or len(foods) != 1 or any(r.kind in POURED for r in frame.text.readings):
        return None
    if not guests:
        return partial(_met_told, foods[0], needs)
    theirs = guests if opens(frame, "guest-may") else ()  # `swap it for` brings something new
    return lambda context, session: (
        _of_table(foods[0], theirs, context, session) or _told(foods[0], needs, context)
    )


def _one_wine(frame: Frame) -> bool:
    """Whether one wine is named, and no other."""
    return len({r.id for r in frame.text.readings if r.type == "Wine"}) == 1 and len(frame.wines) == 1


def _drink_told(guests: Sequence[str], context: Context, session: Session) -> Answer | None:
    """Drinks without alcohol in the place of a wine, for guests who may have none."""
    rows = [row for row in care(evening_of(context), session) if row.guest in guests]
    asked = replace(context, frame=replace(context.frame, wines=(), dishes=()))
    return drinks_told(asked, rows, session) if rows else None


def _met_told(food: str, needs: Sequence[Need], context: Context, session: Session) -> Answer | None:
    """The foods most like one, where no guest is named: a diet that it is against itself asks nothing."""
    known = context.knowledge
    kept = [n for n in needs if n.allergy or n.topics or stands(food, n, known) is not Fit.NO]
    return _told(food, kept, context, sure=False)


def _wine_told(needs: Sequence[Need], context: Context, session: Session) -> Answer | None:
    """The wines most like one that these guests drink; `swap it for` looks beyond the table."""
    known, frame = context.knowledge, context.frame
    tastes = tuple(dict.fromkeys(taste for need in needs for taste in need.tastes))
    away = (w for w in known.wines if any(stands(w, need, known) is Fit.NO for need in needs))
    anywhere = frame.anywhere or opens(frame, "guest-swaps")
    frame = replace(frame, dishes=(), preferences=tastes, named_before=tuple(away), anywhere=anywhere)
    answer = substitute(replace(context, frame=frame))
    label = context.wording("plan", "guest-label")
    text = answer.text if all(need.of_taste for need in needs) else f"{answer.text}\n{label}"
    return replace(answer, text=text, intent=REPLACES)


def _needs_of(guests: Sequence[str], session: Session) -> list[Need]:
    """The needs of these guests; without one those of all."""
    told = [one for one in session.tonight.needs if one.guest in guests or not guests]
    return [need for one in told for need in understood(one.need, session)]


def _of_any_wine(guests: Sequence[str], session: Session) -> bool:
    """Whether one guest with needs is meant, who drinks wine."""
    needs = _needs_of(guests, session) if guests else []
    laid = session.tonight.dishes and session.tonight.wines
    return len(guests) == 1 and bool(laid and needs) and not any(n.sober for n in needs)


def _plate(guests: Sequence[str], context: Context, session: Session) -> Answer | None:
    """What of the table is not for a guest, what is and one wine with it, and the cautions of the needs."""
    answer = _of_table("", guests, context, session)
    row = next((one for one in care(evening_of(context), session) if one.guest in guests), None)
    if answer is None or row is None:
        return None
    away = listed(list(row.keep_away))
    first = (
        [context.wording("plan", "guest-no", guest=row.guest, things=away)] if away and row.allergy else []
    )
    told = cautions(replace(context, frame=replace(context.frame, topics=row.topics, dishes=())))
    label = [context.wording("plan", "guest-label")] if row.check_label or row.allergy else []
    text = "\n".join([*first, answer.text, *advised(told, context), *label])
    say = " ".join([*first, answer.say])
    return replace(answer, say=say, text=text, cautions=told, intent=SAFETY)


def _of_table(food: str, guests: Sequence[str], context: Context, session: Session) -> Answer | None:
    """What else on the table is for a guest asked about, and what to pour with it; None for nothing."""
    rows = care(replace(evening_of(context), wines=()), session)
    row = next((one for one in rows if one.guest in guests), None)
    laid = {context.one_dish(dish): dish for dish in context.tonight.dishes if dish.main.food != food}
    parts = [("guest-yes", row.may_have), ("guest-ask", row.check_label)] if row else []
    found = [(name, [thing for thing in things if thing in laid]) for name, things in parts]
    lines = [
        context.wording("plan", name, guest=row.guest, things=listed(things))
        for name, things in found
        if things and row
    ]
    dishes = tuple(laid[thing] for _, things in found for thing in things)
    return _with_wine(lines, dishes, bool(row and row.sober), context) if lines else None


def _with_wine(lines: Sequence[str], dishes: tuple[Dish, ...], sober: bool, context: Context) -> Answer:
    """These lines, and a wine with the dishes for whoever drinks wine."""
    say, whole = " ".join(lines), "\n".join(lines)
    if sober:
        return replace(compose(context, say, list(lines)), intent=REPLACES)
    poured = wines_for_food(replace(context, frame=replace(context.frame, dishes=dishes)))
    return replace(poured, say=f"{say} {poured.say}", text=f"{whole}\n{poured.text}", intent=REPLACES)


def _told(food: str, needs: Sequence[Need], context: Context, sure: bool = True) -> Answer | None:
    """The foods most alike that all of these needs allow; unless `sure`, those to be asked about as well."""
    known, against = context.knowledge, (Fit.NO, Fit.UNKNOWN) if sure else (Fit.NO,)
    kept = {f for f in known.of_type("Food") if any(stands(f, n, known) in against for n in needs)}
    answer = for_food(context, food, kept)
    label = context.wording("plan", "guest-label")
    asks = any(need.allergy or (need.topics and not sure) for need in needs)
    text = f"{answer.text}\n{label}" if asks else answer.text
    return replace(answer, text=text, intent=REPLACES)
