"""`what dessert can Lia have`: of a kind of food, what is for a guest and what is not, laid or known."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence, Set
from dataclasses import replace

from assistant.answers.context import Context
from assistant.answers.wording import capital, listed
from assistant.evening.care import GuestCare, care
from assistant.evening.records import Evening, FoodLine
from assistant.knowledge.store import Knowledge
from assistant.language.fold import key
from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.pairing.dish import BASE, Dish, DishPart
from assistant.session import Session
from assistant.table.table_set import once

KIND, SHARE, EXAMPLES = "kind/", 100.0, 4
PARTS = ("keep_away", "check_label", "may_have")


def of_kinds(dishes: Sequence[Dish], context: Context) -> tuple[Dish, ...]:
    """The dishes, a kind of food among them as what of it is on the table, else as the kind it is."""
    found: list[Dish] = []
    laid = {dish.main.food for dish in context.tonight.dishes}
    for dish in dishes:
        kind = _kind(dish, laid, context.frame, context.knowledge)
        of_it = [one for one in context.tonight.dishes if kind and _is_of(one, kind, context.knowledge)]
        found += of_it or [Dish((DishPart(kind, BASE, SHARE),)) if kind else dish]
    return once(found)


def _kind(dish: Dish, laid: Set[str], frame: Frame, knowledge: Knowledge) -> str:
    """The kind that a dish of one part was called by (`fish`); empty for a food of its own, or one laid."""
    food = dish.main.food
    if len(dish.parts) > 1 or food in laid:
        return ""
    if food.startswith(KIND):
        return food
    said = {key(r.text) for r in frame.text.readings if r.id == food} or {key(knowledge.label(food))}
    kinds = (kind for kind in knowledge.broader(food) if said & _names(kind, knowledge))
    return next(kinds, "")


def _names(kind: str, knowledge: Knowledge) -> set[tuple[str, ...]]:
    return {key(name) for name in (knowledge.label(kind), *knowledge.entry(kind).get("altLabel", ()))}


def _is_of(dish: Dish, kind: str, knowledge: Knowledge) -> bool:
    """Whether a dish of the table is of the kind, and is no mere word for it."""
    return kind in knowledge.broader(dish.main.food) and dish.main.food != kind


def with_examples(
    rows: Sequence[GuestCare], evening: Evening, context: Context, session: Session
) -> list[GuestCare]:
    """The rows, a kind told by some of its members instead of as a whole.

    So it is where they differ for a guest, and where it is asked what there is (`what vegan cheese`).
    """
    kinds, least = _asked(evening), 0 if says(context.frame, "guest-what") else 1
    return [_row(row, kinds, least, evening, session) for row in rows] if kinds else list(rows)


def kinds_told(rows: Sequence[GuestCare], evening: Evening, context: Context) -> list[str]:
    """That only some of the kinds were told, and that the one that is there should be named."""
    whole = {thing for row in rows for part in PARTS for thing in getattr(row, part)}
    kinds = [label for label in _asked(evening) if label not in whole]
    return [context.wording("plan", "guest-kind", kinds=capital(listed(kinds)))] if kinds and rows else []


def _asked(evening: Evening) -> dict[str, str]:
    """The kinds of food asked of, by label."""
    alone = (line for line in evening.foods if len(line.dishes) == 1 and len(line.dishes[0].parts) == 1)
    return {line.label: food for line in alone if (food := line.dishes[0].main.food).startswith(KIND)}


def _row(
    row: GuestCare, kinds: Mapping[str, str], least: int, evening: Evening, session: Session
) -> GuestCare:
    for label, kind in kinds.items():
        members = _members(kind, row, evening, session)
        if members and sum(bool(getattr(members, part)) for part in PARTS) > least:
            away, check, may = (_told(part, label, row, members) for part in PARTS)
            row = replace(row, keep_away=away, check_label=check, may_have=may)
    return row


def _told(part: str, label: str, row: GuestCare, members: GuestCare) -> tuple[str, ...]:
    """One list of a guest with examples in place of the kind."""
    others = (thing for thing in getattr(row, part) if thing != label)
    return (*others, *getattr(members, part)[:EXAMPLES])


def _members(kind: str, row: GuestCare, evening: Evening, session: Session) -> GuestCare | None:
    """What the members of a kind are for a guest, those first that were just spoken of or are well known."""
    foods = _known_first(session.knowledge.members(kind), session)
    lines = tuple(FoodLine(session.knowledge.label(f), (Dish((DishPart(f, BASE, SHARE),)),)) for f in foods)
    needs = tuple(need for need in evening.needs if (need.guest, need.needs) == (row.guest, row.needs))
    found = care(replace(evening, foods=lines, wines=(), needs=needs), session)
    return found[0] if found else None


def _known_first(foods: Iterable[str], session: Session) -> list[str]:
    """What stands, then what the trade pours a wine with by custom, then what food tables have a row for."""
    knowledge, talk = session.knowledge, session.talk
    standing = {dish.main.food for dish in talk.frame.dishes} if talk else set()
    classics = Counter(food for wine in knowledge.wines.values() for food in wine.classics)

    def place(food: str) -> tuple[bool, int, bool]:
        return food not in standing, -classics[food], "fdcRow" not in knowledge.entry(food)

    return sorted((food for food in foods if not _is_word(food, knowledge)), key=place)


def _is_word(food: str, knowledge: Knowledge) -> bool:
    """Whether a food is only a word for one of its kinds (`dessert`)."""
    label = key(knowledge.label(food))
    return any(label in _names(kind, knowledge) for kind in knowledge.broader(food))
