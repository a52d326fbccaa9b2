"""Conversation: what stands from the turn before, and how a follow-up edits it.

A follow-up is taken up by the first edit of `EDITS` that recognises it; a new question stays new.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from assistant.knowledge.store import Knowledge
from assistant.language import dish_edits as edit
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame, Preference, Reading
from assistant.language.refer import WINES, placed, refers
from assistant.pairing.dish import BASE, Dish, DishPart

DEEPEST = 3
JUDGING = ("judge-pair", "compare", "why", "why-not")
PLAIN = ("wines-for-food", "foods-for-wine", "unclear", "judge-pair", "describe", "define", "substitute")
WHOLE_TABLE = ("one-bottle", "choose-wines", "check-board", "compare", "pour-order", "what-if", "judge-pair")


@dataclass(frozen=True, slots=True)
class Talk:
    """The turn that stands: its frame, the ids it picked and advised against, and what was asked.

    `asked` is the intent behind a chain of whys; `before` is what stood earlier, to go back to.
    """

    frame: Frame
    picks: tuple[str, ...]
    avoid: tuple[str, ...]
    asked: str
    before: Talk | None = None


Edit = Callable[[Frame, Talk, Knowledge], Frame | None]


def stands(frame: Frame, picks: tuple[str, ...], avoid: tuple[str, ...], before: Talk | None) -> Talk:
    """What stands after a turn."""
    if frame.again and before is not None and before.before is not None:  # gone back
        return before.before
    explains = frame.intent in ("why", "why-not") and before is not None
    return Talk(frame, picks, avoid, before.asked if explains and before else frame.intent, before)


def follow(frame: Frame, talk: Talk | None, knowledge: Knowledge) -> Frame:
    """The frame completed from the turn before, where it follows on; a new question stays new."""
    if talk is None:
        return frame
    frame = placed(frame, talk.picks)
    for step in EDITS:
        edited = step(frame, talk, knowledge)
        if edited is not None:
            return edited
    return frame


def _numbers(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`why?` or `the numbers` after a description shows each value with its source."""
    asks = frame.intent == "why" or "deeper" in frame.text.cues
    if talk.frame.intent != "describe" or not asks or frame.wines or frame.dishes:
        return None
    return replace(talk.frame, text=frame.text, depth=DEEPEST)


def _back(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`go back` answers the turn before this one again."""
    if frame.intent != "undo" or frame.wines or frame.dishes or talk.before is None:
        return None
    earlier = talk.before.frame
    return replace(earlier, text=frame.text, intent="undo", again=earlier.again or earlier.intent)


def _what_if(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`what if I put honey on it`, `can I fix it`: changes the dish that stands."""
    old = talk.frame.dishes
    if frame.intent != "what-if" or not old:
        return None
    wines = frame.wines or talk.frame.wines or (_wines(talk.picks[:1]) if "fix" in frame.text.cues else ())
    frame = replace(frame, wines=wines, before=old, preferences=talk.frame.preferences)
    if "left-off" in frame.text.cues:
        return _taken_off(frame, old, edit.foods_named(frame.text), knowledge)
    pair = edit.swapped(frame.text)
    if pair is not None:
        return _exchanged(frame, old, pair, knowledge)
    if not frame.dishes:
        return replace(frame, dishes=_cooked(old, frame))
    if edit.adds(frame.text) or all(knowledge.food(d.main.food).role for d in frame.dishes):
        parts = [p for d in frame.dishes for p in d.parts]
        return replace(frame, dishes=edit.with_parts(old, parts, knowledge))
    return frame


def _cooked(dishes: tuple[Dish, ...], frame: Frame) -> tuple[Dish, ...]:
    """`what if I roast it` cooks the base of the dish that stands."""
    methods = tuple(r.id for r in frame.text.readings if r.kind == "method")
    if not methods:
        return dishes
    base = dishes[-1].main
    parts = tuple(replace(p, methods=methods) if p is base else p for p in dishes[-1].parts)
    return (*dishes[:-1], replace(dishes[-1], parts=parts))


def _why(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`why?` explains the first pick, and again deeper."""
    if frame.intent != "why":
        return None
    deeper = talk.frame.depth + 1 if talk.frame.intent in ("why", "why-not") else frame.depth
    wines = frame.wines or (talk.frame.wines if talk.frame.wines else _wines(talk.picks[:1]))
    dishes = frame.dishes or talk.frame.dishes or _dishes(talk.picks[:1])
    depth = min(DEEPEST, max(frame.depth, deeper))
    return replace(frame, wines=wines, dishes=dishes, depth=depth)


def _why_not(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    if frame.intent != "why-not":
        return None
    named = frame.wines or tuple(p.wanted for p in frame.preferences if p.wanted)
    wines = named or _wines(talk.avoid[:1]) or talk.frame.wines
    return replace(frame, wines=wines, dishes=frame.dishes or talk.frame.dishes, preferences=())


def _more(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`anything else?` goes on down the same list."""
    more = frame.another or (_short(frame) and follow_words().more.intersection(frame.text.stems))
    if not more or frame.dishes or frame.wines:
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


def _off(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`without the butter`, `drop the onions`: takes a part or a dish off; what comes instead comes on."""
    old, gone = talk.frame.dishes, edit.dropped(frame.text)
    pair = edit.swapped(frame.text)
    if frame.wines or not old or frame.intent not in PLAIN:
        return None
    if pair is not None:
        return _exchanged(_anew(frame, talk), old, pair, knowledge)
    if not gone:
        return None
    left = _taken_off(_anew(frame, talk), old, gone, knowledge)
    if left.dishes == old:
        return None
    coming = [p for d in frame.dishes for p in d.parts if p.food not in {r.id for r in gone}]
    return replace(left, dishes=edit.with_parts(left.dishes, coming, knowledge)) if coming else left


def _on(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`with parmesan`, `bacon on`, `the garlic one`: something more on the dish that stands."""
    old = talk.frame.dishes
    if frame.wines or not old or not frame.dishes or frame.intent not in PLAIN:
        return None
    one = bool(follow_words().one.intersection(frame.text.stems)) and _short(frame)
    at = edit.one_of(old, frame, knowledge) if one and len(old) > 1 else None
    if at is not None:
        return replace(_anew(frame, talk), dishes=(old[at],))
    if not (one or edit.adds(frame.text)) or _another(frame, knowledge):
        return None
    parts = [p for d in frame.dishes for p in d.parts]
    return replace(_anew(frame, talk), dishes=edit.with_parts(old, parts, knowledge))


def _another(frame: Frame, knowledge: Knowledge) -> bool:
    """`and with crab?` asks of another food; `with prawns`, `and with lemon` put it on the dish."""
    words = follow_words()
    also = bool(words.another_before.intersection(frame.text.stems[:1]))
    on = words.adds_after.intersection(frame.text.stems) or refers(frame.text)
    return also and not on and all(knowledge.food(d.main.food).role is None for d in frame.dishes)


def _limit(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`what about a red?` keeps the dish and adds the limit."""
    if not frame.preferences or frame.dishes or frame.wines or not talk.frame.dishes:
        return None
    if frame.intent not in PLAIN:
        return None
    limits = _joined(talk.frame.preferences, frame.preferences)
    return replace(frame, intent="wines-for-food", dishes=talk.frame.dishes, preferences=limits)


def _same(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`same but cheaper`: what stands, with the word that no style answers to told."""
    asked = follow_words().cheaper.intersection(frame.text.stems)
    if not asked or frame.wines or frame.dishes or not talk.frame.dishes:
        return None
    told = tuple(w for w, s in zip(frame.text.words, frame.text.stems, strict=True) if s in asked)
    text = replace(frame.text, left_out=tuple(dict.fromkeys((*frame.text.left_out, *told))))
    return replace(talk.frame, text=text, preferences=_joined(talk.frame.preferences, frame.preferences))


def _swap_part(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`no, the vinaigrette` changes the sauce or dressing of the dish that stands."""
    if len(frame.dishes) != 1 or frame.wines or not talk.frame.dishes or not _short(frame):
        return None
    new = frame.dishes[0]
    if len(new.parts) != 1 or knowledge.food(new.main.food).role not in edit.PART_ROLES:
        return None
    old = talk.frame.dishes
    kept = tuple(p for p in old[-1].parts if p.role not in edit.PART_ROLES)
    dishes = (*old[:-1], replace(old[-1], parts=kept))
    dishes = edit.with_parts(dishes, new.parts, knowledge)
    return replace(talk.frame, text=frame.text, dishes=dishes, named_before=())


def _swap_dish(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`and the brie?` asks the same of another food."""
    if not frame.dishes or frame.wines or frame.intent not in ("wines-for-food", "unclear"):
        return None
    if not (frame.follows or _short(frame)):
        return None
    if talk.asked in (*JUDGING, "foods-for-wine") and talk.frame.wines:
        intent = "compare" if talk.asked == "compare" else "judge-pair"
        return replace(frame, intent=intent, wines=talk.frame.wines)
    return replace(frame, preferences=_joined(talk.frame.preferences, frame.preferences))


def _swap_wine(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`what about the pinot?`, `does Merlot go with that`: another wine with the dish that stands."""
    if not frame.wines or frame.dishes or not talk.frame.dishes:
        return None
    if frame.intent == "compare":
        return replace(frame, dishes=talk.frame.dishes)
    if frame.intent not in PLAIN or not (frame.follows or _short(frame) or refers(frame.text)):
        return None
    if frame.intent == "describe":
        return None
    return replace(frame, intent="judge-pair", dishes=talk.frame.dishes)


def _context(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """What is asked of that which stands: `one bottle for the lot`, `how cold do I serve that`."""
    if frame.dishes or frame.intent in ("unclear", "define", "help", "smalltalk", "safety"):
        return None
    if frame.wines:
        return replace(frame, dishes=talk.frame.dishes) if frame.intent in WHOLE_TABLE else None
    if frame.intent == "wines-for-food":  # `so what can I drink with it`
        return replace(_anew(frame, talk), intent=frame.intent, wines=(), dishes=talk.frame.dishes)
    many = frame.intent in ("pour-order", "compare")
    wines = talk.frame.wines or _wines(talk.picks if many else talk.picks[:1])
    wines = () if frame.intent in ("one-bottle", "choose-wines", "check-board") else wines
    return replace(frame, wines=wines, dishes=talk.frame.dishes)


EDITS: tuple[Edit, ...] = (
    _numbers, _back, _what_if, _why, _why_not, _more, _off, _on, _limit, _same,
    _swap_part, _swap_dish, _swap_wine, _context,
)  # fmt: skip


def _anew(frame: Frame, talk: Talk) -> Frame:
    """What was asked, asked again, with old limits and new ones."""
    judging = talk.asked in (*JUDGING, "foods-for-wine") and bool(talk.frame.wines)
    intent = "compare" if talk.asked == "compare" else "judge-pair" if judging else "wines-for-food"
    limits = _joined(talk.frame.preferences, frame.preferences)
    return replace(frame, intent=intent, wines=talk.frame.wines if judging else (), preferences=limits)


def _taken_off(frame: Frame, old: tuple[Dish, ...], gone: list[Reading], knowledge: Knowledge) -> Frame:
    dishes, idle = edit.without_foods(old, gone, knowledge)
    text = replace(frame.text, left_out=tuple(dict.fromkeys((*frame.text.left_out, *idle))))
    return replace(frame, text=text, dishes=dishes)


def _exchanged(
    frame: Frame, old: tuple[Dish, ...], pair: tuple[Reading, Reading], knowledge: Knowledge
) -> Frame:
    goes, comes = pair
    part = DishPart(comes.id, BASE, 100.0)
    left = _taken_off(frame, old, [goes], knowledge)
    return replace(left, dishes=edit.with_parts(left.dishes, [part], knowledge))


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
    return tuple(i for i in ids if i.startswith(WINES))


def _dishes(ids: tuple[str, ...]) -> tuple[Dish, ...]:
    foods = [i for i in ids if i.startswith("food/")]
    return tuple(Dish((DishPart(food, BASE, 100.0),)) for food in foods)
