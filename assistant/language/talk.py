"""Conversation: what stands from the turn before, and how a follow-up edits it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from assistant.knowledge.store import Knowledge
from assistant.language.dishes import dishes_without
from assistant.language.frame import Frame, Preference
from assistant.pairing.dish import BASE, Dish, DishPart

_PART_ROLES = frozenset({"role/sauce", "role/dressing", "role/dip"})
_DEEPEST = 3


@dataclass(frozen=True, slots=True)
class Talk:
    """The turn that stands: its frame, the ids it picked and advised against, and what was asked.

    `asked` is the intent behind a chain of whys.
    """

    frame: Frame
    picks: tuple[str, ...]
    avoid: tuple[str, ...]
    asked: str


def stands(frame: Frame, picks: tuple[str, ...], avoid: tuple[str, ...], before: Talk | None) -> Talk:
    """What stands after a turn."""
    explains = frame.intent in ("why", "why-not") and before is not None
    return Talk(frame, picks, avoid, before.asked if explains and before else frame.intent)


def follow(frame: Frame, talk: Talk | None, knowledge: Knowledge) -> Frame:
    """The frame completed from the turn before, where it follows on; a new question stays new."""
    if talk is None:
        return frame
    for step in (_numbers, _what_if, _why, _why_not, _more, _limit, _swap_part, _swap_dish, _swap_wine):
        edited = step(frame, talk, knowledge)
        if edited is not None:
            return edited
    return frame


def _numbers(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`why?` or `the numbers` after a description shows each value with its source."""
    asks = frame.intent == "why" or "deeper" in frame.text.cues
    if talk.frame.intent != "describe" or not asks or frame.wines or frame.dishes:
        return None
    return replace(talk.frame, text=frame.text, depth=_DEEPEST)


def _what_if(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`what if I put honey on it`, `can I fix it`: changes the dish that stands."""
    if frame.intent != "what-if" or not talk.frame.dishes:
        return None
    wines = frame.wines or talk.frame.wines or (_wines(talk.picks[:1]) if "fix" in frame.text.cues else ())
    old = talk.frame.dishes
    if "left-off" in frame.text.cues:
        return replace(frame, wines=wines, dishes=_left_off(old, frame, knowledge), before=old)
    if not frame.dishes:
        return replace(frame, wines=wines, dishes=old, before=old)
    if all(knowledge.food(d.main.food).role for d in frame.dishes):
        extra = tuple(_as_part(p, knowledge) for d in frame.dishes for p in d.parts)
        gone = {p.role for p in extra} & _PART_ROLES if "swap" in frame.text.cues else set()
        stays = tuple(p for p in old[0].parts if p.role not in gone)
        changed = (Dish((*stays, *extra), old[0].added), *old[1:])
        return replace(frame, wines=wines, dishes=changed, before=old)
    return replace(frame, wines=wines, before=old)


def _left_off(dishes: tuple[Dish, ...], frame: Frame, knowledge: Knowledge) -> tuple[Dish, ...]:
    """The dishes without the foods or kinds of food named."""
    for reading in frame.text.readings:
        if reading.type in ("Food", "Kind"):
            dishes = dishes_without(dishes, reading.id, knowledge)
    return dishes


def _as_part(part: DishPart, knowledge: Knowledge) -> DishPart:
    """A food named by itself as a part of the dish that stands."""
    food = knowledge.food(part.food)
    share = food.share or 10.0
    role = food.role if food.role not in (None, "role/side") else "role/topping"
    return replace(part, role=role or "role/topping", mass=100.0 * share / (100.0 - share))


def _why(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`why?` explains the first pick, and again deeper."""
    if frame.intent != "why":
        return None
    deeper = talk.frame.depth + 1 if talk.frame.intent in ("why", "why-not") else frame.depth
    wines = frame.wines or (talk.frame.wines if talk.frame.wines else _wines(talk.picks[:1]))
    dishes = frame.dishes or talk.frame.dishes or _dishes(talk.picks[:1])
    depth = min(_DEEPEST, max(frame.depth, deeper))
    return replace(frame, wines=wines, dishes=dishes, depth=depth)


def _why_not(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    if frame.intent != "why-not":
        return None
    named = frame.wines or tuple(p.wanted for p in frame.preferences if p.wanted)
    wines = named or _wines(talk.avoid[:1]) or talk.frame.wines
    return replace(frame, wines=wines, dishes=frame.dishes or talk.frame.dishes, preferences=())


def _more(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`anything else?` goes on down the same list."""
    if not frame.another or frame.dishes or frame.wines:
        return None
    limits = _joined(talk.frame.preferences, frame.preferences)
    before = (*talk.frame.named_before, *talk.picks)
    if talk.frame.intent == "foods-for-wine":
        return replace(talk.frame, text=frame.text, named_before=before)
    if not talk.frame.dishes:
        return None
    intent = "wines-for-food"
    return replace(
        talk.frame, text=frame.text, intent=intent, wines=(), preferences=limits, named_before=before
    )


def _limit(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`what about a red?` keeps the dish and adds the limit."""
    if not frame.preferences or frame.dishes or frame.wines or not talk.frame.dishes:
        return None
    limits = _joined(talk.frame.preferences, frame.preferences)
    return replace(frame, intent="wines-for-food", dishes=talk.frame.dishes, preferences=limits)


def _swap_part(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`no, the vinaigrette` changes the sauce or dressing of the dish that stands."""
    if len(frame.dishes) != 1 or frame.wines or not talk.frame.dishes or not _short(frame):
        return None
    new = frame.dishes[0]
    role = knowledge.food(new.main.food).role
    if len(new.parts) != 1 or role not in _PART_ROLES:
        return None
    old = talk.frame.dishes[-1]
    kept = tuple(p for p in old.parts if p.role not in _PART_ROLES)
    share = knowledge.food(new.main.food).share or 20.0
    part = DishPart(new.main.food, role, 100.0 * share / (100.0 - share))
    dishes = (*talk.frame.dishes[:-1], Dish((*kept, part)))
    return replace(talk.frame, text=frame.text, dishes=dishes, named_before=())


def _swap_dish(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`and the brie?` asks the same of another food."""
    if not frame.dishes or frame.wines or frame.intent not in ("wines-for-food", "unclear"):
        return None
    if not (frame.follows or _short(frame)):
        return None
    if talk.asked in ("judge-pair", "compare", "why", "why-not") and talk.frame.wines:
        intent = "compare" if talk.asked == "compare" else "judge-pair"
        return replace(frame, intent=intent, wines=talk.frame.wines)
    limits = _joined(talk.frame.preferences, frame.preferences)
    return replace(frame, preferences=limits)


def _swap_wine(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`what about the pinot?` judges another wine with the dish that stands."""
    if not frame.wines or frame.dishes or not talk.frame.dishes:
        return None
    if frame.intent == "compare":
        return replace(frame, dishes=talk.frame.dishes)
    if frame.intent != "foods-for-wine" or not (frame.follows or _short(frame)):
        return None
    return replace(frame, intent="judge-pair", dishes=talk.frame.dishes)


def _short(frame: Frame) -> bool:
    """A bare fragment (`the brie?`), which only makes sense as a follow-up."""
    used = sum(r.end - r.start for r in frame.text.readings)
    words = [w for w in frame.text.words if any(c.isalnum() for c in w)]
    return len(words) - used <= 3 and "wines-for-food" not in frame.text.cues


def _joined(old: tuple[Preference, ...], new: tuple[Preference, ...]) -> tuple[Preference, ...]:
    """Old limits and new ones; a new limit on the same thing replaces the old."""
    replaced = {p.property for p in new}
    return (*(p for p in old if p.property not in replaced), *new)


def _wines(ids: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(i for i in ids if i.startswith(("wine/", "drink/")))


def _dishes(ids: tuple[str, ...]) -> tuple[Dish, ...]:
    foods = [i for i in ids if i.startswith("food/")]
    return tuple(Dish((DishPart(food, BASE, 100.0),)) for food in foods)
