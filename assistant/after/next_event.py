"""`same but autumn`, `theme: one country`, `nothing repeated`: the next evening, from the one before.

Without being asked to, no wine style and no food comes back; what is kept and what changed is told.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from assistant.after.cheaper import cheaper
from assistant.after.evening import evening_after
from assistant.after.next_foods import Swap, season_said, swapped
from assistant.after.next_wines import NextWines, chosen_wines, new_wines, of_one_country
from assistant.after.opened import wines_meant
from assistant.after.phrases import one_of, said
from assistant.after.telling import told
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.evening.care import care
from assistant.evening.records import Evening, FoodLine
from assistant.evening.why_chosen import whys
from assistant.language.guests import Asked
from assistant.language.turning import negated
from assistant.table.tonight import Tonight

if TYPE_CHECKING:
    from assistant.session import Session

REGION = "region/"
FEW = 4


@dataclass(frozen=True, slots=True)
class Wish:
    """What is asked of the next evening: a season, a country (or any one), wines that stay, what is gone."""

    season: str | None
    country: str | None
    one_country: bool
    must: tuple[str, ...]
    gone: frozenset[str]


def next_event(context: Context, session: Session) -> Answer:
    """The next evening in short: its wines and foods, what was kept, what changed and why."""
    evening = evening_after(context)
    if evening is None or not evening.wines or not evening.foods:
        return told(context, [said("next", "no-evening")], understood=False)
    if one_of(context.frame.text.stems, "cheaper"):
        return cheaper(evening, context, session)
    wish = wish_of(context)
    found, swaps = _found(evening, wish, context, session)
    if found is None or len(found.ordered) < 1:
        return told(context, [said("next", "no-country")], understood=False)
    session.proposed = proposal(evening, found.ordered, [swap.new for swap in swaps])
    return told(context, _lines(evening, found, swaps, wish, context, session))


def _found(
    evening: Evening, wish: Wish, context: Context, session: Session
) -> tuple[NextWines | None, list[Swap]]:
    """The next wines and foods; of a theme, once its country is known, the foods at home there come first."""
    swaps = swapped(evening, wish.season, wish.country, context, session)
    found = _wines(evening, swaps, wish, context)
    if found is None or not (wish.one_country and found.country):
        return found, swaps
    swaps = swapped(evening, wish.season, found.country, context, session)
    at_home = _wines(evening, swaps, replace(wish, country=found.country), context)
    return replace(at_home or found, countries=found.countries), swaps


def _lines(
    evening: Evening,
    found: NextWines,
    swaps: Sequence[Swap],
    wish: Wish,
    context: Context,
    session: Session,
) -> list[str]:
    foods = tuple(swap.new for swap in swaps)
    board = said("next", "with", foods=listed([line.label for line in foods]))
    head = [_say(found.ordered, context), board, _kept(evening, _count(evening))]
    why = [*_why_foods(swaps, wish, found, context), *_why_wines(found, wish, context)]
    return [
        *head,
        *why,
        *_steps(found, context),
        *_needs(replace(evening, foods=foods), session),
        said("next", "take"),
    ]


def _count(evening: Evening) -> int:
    """How many wines are poured."""
    return evening.choose or len(evening.wines)


def take_next(context: Context, session: Session) -> Answer:
    """Puts the evening last proposed on the table."""
    proposed = session.proposed or Tonight()
    session.tonight, session.proposed = proposed, None
    things = [*map(context.knowledge.label, proposed.wines), *(context.one_dish(d) for d in proposed.dishes)]
    return told(context, [said("next", "taken", things=listed(things))])


def wish_of(context: Context) -> Wish:
    """What the words ask of the next evening."""
    stems = context.frame.text.stems
    named = [r.id for r in context.frame.text.readings] + [p.wanted or "" for p in context.frame.preferences]
    regions = [name for name in named if name.startswith(REGION)]
    countries = sorted(context.knowledge.countries(regions)) if regions else []
    meant, gone = wines_meant(context) if one_of(stems, "keep") else [], _gone(context)
    stays = [w for w in meant if w in context.tonight.wines and not gone & names_of(w, context)]
    one = one_of(stems, "country") and not countries
    return Wish(season_said(stems), countries[0] if countries else None, one, tuple(stays), gone)


def _gone(context: Context) -> frozenset[str]:
    """What is named to be left out (`same again but no port`), with what else a name may mean."""
    text = context.frame.text
    return frozenset(i for r in text.readings if negated(text, r.start) for i in (r.id, *r.others))


def names_of(wine: str, context: Context) -> set[str]:
    """The wine, the kinds that it is of and its grapes."""
    known = context.knowledge
    return {wine, *known.broader(wine), *known.wines[wine].grapes}


def proposal(evening: Evening, wines: Sequence[str], foods: Sequence[FoodLine]) -> Tonight:
    """The next evening as a table."""
    needs = tuple(Asked(guest.guest, need) for guest in evening.needs for need in guest.needs)
    dishes = tuple(dish for line in foods for dish in line.dishes)
    return Tonight(
        tuple(wines), dishes, float(evening.guests) or None, float(evening.non_drinkers), None, needs
    )


def _wines(evening: Evening, swaps: Sequence[Swap], wish: Wish, context: Context) -> NextWines | None:
    foods, count = [swap.new for swap in swaps], _count(evening)
    poured = [line.wine for line in evening.wines]
    if wish.must:  # what is named only says what stays
        context = replace(context, frame=replace(context.frame, preferences=()))
    free = [wine for wine in new_wines(poured, context) if not wish.gone & names_of(wine, context)]
    if wish.country:
        known = context.knowledge
        free = [wine for wine in free if wish.country in known.countries(known.wines[wine].homes)]
    elif wish.one_country:
        return of_one_country(foods, free, count, context)
    found = chosen_wines(foods, free, count, wish.must, context)
    return replace(found, country=wish.country) if found else None


def _say(wines: Sequence[str], context: Context) -> str:
    labels = [context.knowledge.label(wine) for wine in wines]
    fields = {"wines": listed(labels), "count": len(labels), "first": labels[0], "last": labels[-1]}
    return said("next", "say" if len(labels) <= FEW else "say-many", **fields)


def _kept(evening: Evening, count: int) -> str:
    parts = [said("next", "guests", count=evening.guests)] if evening.guests else []
    parts += [said("next", "wines", count=count), said("next", "foods", count=len(evening.foods))]
    return said("next", "kept", kept=listed([*parts, said("next", "pour", ml=f"{evening.pour_ml:g}")]))


def _why_foods(swaps: Sequence[Swap], wish: Wish, found: NextWines, context: Context) -> list[str]:
    lines = []
    for swap in swaps:
        if swap.kept:
            lines.append(said("next", "few", things=swap.old.label))
            continue
        why = "country" if swap.home else "season" if wish.season else "new"
        country = context.knowledge.label(found.country) if found.country else ""
        told_ = {"season": wish.season or "", "country": country}
        fields = {"new": swap.new.label, "old": swap.old.label, "why": said("next", f"why-{why}", **told_)}
        lines.append(capital(said("next", "new-food", **fields)))
    return lines


def _why_wines(found: NextWines, wish: Wish, context: Context) -> list[str]:
    label = context.knowledge.label
    lines = [said("next", "kept-wine", wine=label(wine)) for wine in wish.must]
    if found.country:
        kind = "theme" if wish.one_country else "theme-said"
        lines.append(said("next", kind, country=label(found.country), count=found.countries))
    return [*lines, *([] if wish.must else [said("next", "new-wines")])]


def _steps(found: NextWines, context: Context) -> list[str]:
    """Each wine with what it is there for."""
    lines = []
    for number, why in enumerate(whys(found.chosen.task.scores, found.ordered), 1):
        fields = {"number": number, "wine": context.knowledge.label(why.wine), "foods": listed(why.foods)}
        told_ = {"food": why.own.food, "verdict": why.own.verdict, **fields}
        lines.append(context.wording("line", f"choose-step-{why.kind}", **told_))
    return lines


def _needs(evening: Evening, session: Session) -> list[str]:
    """What of the new board is not for whom; where all of it may be eaten, that this was looked to."""
    if not evening.needs:
        return []
    away = [row for row in care(replace(evening, wines=()), session) if row.keep_away]
    lines = [said("next", "not-for", guest=row.guest, things=listed(row.keep_away)) for row in away]
    return lines or [said("next", "needs")]
