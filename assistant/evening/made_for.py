"""`a mushroom lasagne for the vegetarians`, `I'll use vegetarian Parmesan in it`: a dish made for them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.knowledge.diets import holds
from assistant.language.fold import key
from assistant.language.follow_lines import ends_of, says
from assistant.language.frame import Frame
from assistant.pairing.dish import Dish

if TYPE_CHECKING:
    from assistant.session import Session

RENNET = frozenset(("care/animal-rennet",))
SAFETY = "safety"
FEWEST = 2  # parts of a dish that is cooked; a cheese alone is what its label says


def heard(frame: Frame, context: Context, session: Session) -> tuple[Dish, ...]:
    """The dishes of the table that are now told to be for vegetarians, their cheese not spoken of."""
    found = [_dish_before(at, frame, context) for at in ends_of(frame, "for-vegetarians")]
    dishes = tuple(dish for dish in found if dish and foods_of(dish) not in session.spoken.made)
    session.spoken.made.update({foods_of(dish): False for dish in dishes})
    return dishes


def made_told(frame: Frame, session: Session) -> Callable[[Context, Session], Answer | None] | None:
    """What answers that the cheese in a dish is vegetarian, and keeps it; None for any other text."""
    return _noted if says(frame, "vegetarian-cheese") and _meant(frame, session) else None


def foods_of(dish: Dish) -> frozenset[str]:
    """By what a dish is known."""
    return frozenset(part.food for part in dish.parts)


def _dish_before(at: int, frame: Frame, context: Context) -> Dish | None:
    """The dish with rennet in its cheese whose name ends last before a place in the text."""
    before = frame.text.stems[:at]
    named: dict[tuple[int, int], Dish] = {}
    for dish in _cheesy(context.tonight.dishes, context):
        name = tuple(key(context.one_dish(dish)))
        ends = [i + len(name) for i in range(len(before)) if tuple(before[i : i + len(name)]) == name]
        named |= {(max(ends), len(name)): dish} if ends else {}
    return named[max(named)] if named else None


def _cheesy(dishes: Sequence[Dish], context: Context | Session) -> list[Dish]:
    """The cooked dishes that hold animal rennet."""
    cooked = (dish for dish in dishes if len(dish.parts) >= FEWEST)
    return [d for d in cooked if any(holds(food, context.knowledge)[0] & RENNET for food in foods_of(d))]


def _meant(frame: Frame, session: Session) -> Dish | None:
    """The cooked dish of the table that is named in part (`the mushroom one`), else the only one."""
    dishes = _cheesy(session.tonight.dishes, session)
    said = set(frame.text.stems)
    label = session.knowledge.label
    named = [dish for dish in dishes if said.intersection(key(label(dish.main.food)))]
    told = named or dishes
    return told[0] if len(told) == 1 else None


def _noted(context: Context, session: Session) -> Answer | None:
    """That the dish is fine then by its label, for whom, and that this is kept."""
    from assistant.evening.by_talk import evening_of  # loaded late: a plan needs so much
    from assistant.evening.care import care

    dish = _meant(context.frame, session)
    if dish is None:
        return None
    session.spoken.made[foods_of(dish)] = True
    label = context.one_dish(dish)
    rows = [row for row in care(evening_of(context), session) if _keeps_to_it(row.needs, session)]
    lines = [context.wording("plan", "made-with", thing=label)]
    for name, part in (("guest-no", "keep_away"), ("guest-yes", "may_have")):
        guests = [row.guest for row in rows if label in getattr(row, part)]
        lines += [context.wording("plan", name, guest=listed(guests), things=label)] if guests else []
    lines.append(context.wording("plan", "guest-label"))
    return replace(compose(context.all_used(), " ".join(lines[:2]), lines), dish=None, intent=SAFETY)


def _keeps_to_it(needs: Sequence[str], session: Session) -> bool:
    """Whether rennet is against one of these needs."""
    from assistant.evening.needs import understood

    return any(need.marks & RENNET for said in needs for need in understood(said, session))
