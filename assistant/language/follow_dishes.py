"""Follow-ups that change what stands: the dish, a part of it, the wine, a limit."""

from __future__ import annotations

from dataclasses import replace

from assistant.knowledge.store import Knowledge
from assistant.language import dish_edits as edit
from assistant.language.follow_lines import says
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame, Preference, Reading
from assistant.language.recipes import ALIKE
from assistant.language.refer import refers
from assistant.language.sorting import words_beside
from assistant.language.standing import (
    FOR_ALL,
    JUDGING,
    PLAIN,
    TABLE,
    Talk,
    anew,
    joined,
    of_table,
    short,
    wines_of,
)
from assistant.pairing.dish import BASE, Dish, DishPart


def what_if(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`what if I put honey on it`, `can I fix it`: changes the dish that stands."""
    old = talk.frame.dishes
    helps = bool(frame.dishes) and not frame.wines and says(frame, "would-help")
    if not (frame.intent == "what-if" or helps) or not old:
        return None
    frame = replace(frame, intent="what-if")
    wines = frame.wines or talk.frame.wines or (wines_of(talk.picks[:1]) if "fix" in frame.text.cues else ())
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


def off(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`without the butter`, `drop the onions`: takes a part or a dish off; what comes instead comes on."""
    old, gone = talk.frame.dishes, edit.dropped(frame.text)
    pair = edit.swapped(frame.text)
    if frame.wines or not old or frame.intent not in (*PLAIN, *TABLE):
        return None
    if pair is not None:
        return _exchanged(anew(frame, talk), old, pair, knowledge)
    if not gone:
        return None
    left = _taken_off(anew(frame, talk), old, gone, knowledge)
    # What comes is named: a kind that goes stands for all dishes of it, and nothing of those comes back.
    named = {r.id for r in edit.foods_named(frame.text)} - {r.id for r in gone}
    coming = [p for d in frame.dishes for p in d.parts if named & {p.food, d.main.food}]
    coming = [p for p in coming if p.food not in {r.id for r in gone}]
    return replace(left, dishes=edit.with_parts(left.dishes, coming, knowledge)) if coming else left


def on(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`with parmesan`, `bacon on`, `the garlic one`: something more on the dish that stands."""
    old = talk.frame.dishes
    if frame.wines or not old or not frame.dishes or frame.intent not in (*PLAIN, *TABLE):
        return None
    one = bool(follow_words().one.intersection(frame.text.stems)) and short(frame)
    at = edit.one_of(old, frame, knowledge) if one and len(old) > 1 else None
    if at is not None:
        return replace(anew(frame, talk), dishes=(old[at],))
    if not (one or edit.adds(frame.text)) or _another(frame, knowledge) or _alike(frame, old, knowledge):
        return None
    parts = [p for d in frame.dishes for p in d.parts]
    return replace(anew(frame, talk), dishes=edit.with_parts(old, parts, knowledge))


def amount(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`more honey`, `less garlic`: so much of a part that is on the dish already."""
    times = follow_words().amounts.get(frame.text.stems[0]) if frame.text.stems else None
    named = {part.food for dish in frame.dishes for part in dish.parts}
    if times is None or frame.wines or not short(frame):
        return None
    dishes = tuple(edit.scaled(dish, named, times) for dish in talk.frame.dishes)
    return replace(anew(frame, talk), dishes=dishes) if dishes != talk.frame.dishes else None


def _another(frame: Frame, knowledge: Knowledge) -> bool:
    """`and with crab?` asks of another food; `with prawns`, `and with lemon` put it on the dish."""
    words = follow_words()
    also = bool(words.another_before.intersection(frame.text.stems[:1]))
    on = words.adds_after.intersection(frame.text.stems) or refers(frame.text)
    return also and not on and all(knowledge.food(d.main.food).role is None for d in frame.dishes)


def _alike(frame: Frame, old: tuple[Dish, ...], knowledge: Knowledge) -> bool:
    """`with Cheddar?` after Stilton asks of the other cheese; nothing else is said."""
    both = [set(knowledge.food(dish.main.food).kinds) for dish in (old[-1], frame.dishes[0])]
    return words_beside(frame.text) <= 1 and bool(both[0] & both[1] & ALIKE)


def limit(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`what about a red?` keeps the dish and adds the limit; a choice of bottles is made again."""
    frame = _also_banned(_allowed(frame, knowledge), talk)
    if not frame.preferences or frame.dishes or frame.wines or not talk.frame.dishes:
        return None
    if frame.intent not in (*PLAIN, *TABLE):
        return None
    limits = joined(talk.frame.preferences, frame.preferences)
    intent = of_table(frame, talk) or (talk.asked if talk.asked in FOR_ALL else "wines-for-food")
    numbers = {**talk.frame.numbers, **frame.numbers}
    return replace(frame, intent=intent, dishes=talk.frame.dishes, preferences=limits, numbers=numbers)


def _allowed(frame: Frame, knowledge: Knowledge) -> Frame:
    """`she is fine with pink`: a kind of wine that will do limits the wine; nothing is asked about it."""
    kinds = all(wine.startswith("kind/") for wine in frame.wines)
    if not (frame.wines and kinds and says(frame, "will-do")):
        return frame
    wanted = tuple(Preference(knowledge.label(wine), "kind", wanted=wine) for wine in frame.wines)
    return replace(frame, intent="wines-for-food", wines=(), preferences=(*frame.preferences, *wanted))


def _also_banned(frame: Frame, talk: Talk) -> Frame:
    """`and white`, said after `no red`, bans white as well; `and white?` asks for it."""
    also = frame.text.stems[:1] and frame.text.stems[0] in follow_words().also_before
    banned = talk.frame.preferences and talk.frame.preferences[-1].banned
    if not (also and banned and words_beside(frame.text) <= 1) or "?" in frame.text.stems:
        return frame
    return replace(frame, preferences=tuple(map(_ban, frame.preferences)))


def _ban(limit: Preference) -> Preference:
    kind = limit.property == "kind" and not limit.banned
    return replace(limit, label=f"no {limit.label}", banned=True) if kind else limit


def swap_part(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`no, the vinaigrette` changes the sauce or dressing of the dish that stands."""
    if len(frame.dishes) != 1 or frame.wines or not talk.frame.dishes or not short(frame):
        return None
    new = frame.dishes[0]
    if len(new.parts) != 1 or knowledge.food(new.main.food).role not in edit.PART_ROLES:
        return None
    old = talk.frame.dishes
    kept = tuple(p for p in old[-1].parts if p.role not in edit.PART_ROLES)
    dishes = (*old[:-1], replace(old[-1], parts=kept))
    dishes = edit.with_parts(dishes, new.parts, knowledge)
    return replace(talk.frame, text=frame.text, dishes=dishes, named_before=())


def swap_dish(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`and the brie?` asks the same of another food."""
    if "wines-for-food" in frame.text.cues and says(frame, "asks-best") and not refers(frame.text):
        return None  # `what goes best with the chorizo`, after another wine was judged
    judged = frame.intent == "judge-pair" or (
        frame.intent != "safety"
        and refers(frame.text)
        and ("judge" in frame.text.cues or talk.asked == "describe")
    )
    if frame.dishes and judged and not frame.wines and talk.frame.wines:
        return replace(frame, intent="judge-pair", wines=talk.frame.wines)  # `does it go with the brie?`
    if frame.dishes and not frame.wines and _of_both(frame, talk):
        return replace(frame, intent="compare", wines=talk.frame.wines)
    if not frame.dishes or frame.wines or frame.intent not in ("wines-for-food", "unclear"):
        return None
    if not (frame.follows or (short(frame) and len(frame.dishes) == 1)):
        return None
    if says(frame, "pours-what"):
        return None
    if talk.asked in (*JUDGING, "foods-for-wine") and talk.frame.wines:
        if any(limit.wanted and not limit.banned for limit in frame.preferences):
            return None  # `a good red for lamb`, after another wine was judged
        intent = "compare" if talk.asked == "compare" else "judge-pair"
        return replace(frame, intent=intent, wines=talk.frame.wines)
    return replace(frame, preferences=joined(talk.frame.preferences, frame.preferences))


def _of_both(frame: Frame, talk: Talk) -> bool:
    """`do blinis go with either`: another food with the wines that were compared."""
    several = follow_words().several.intersection(frame.text.stems)
    return bool(several) and talk.asked == "compare" and len(talk.frame.wines) > 1 and frame.intent in PLAIN


def swap_wine(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """`what about the pinot?`, `does Merlot go with that`: another wine with the dish that stands."""
    if not frame.wines or frame.dishes or not talk.frame.dishes:
        return None
    if frame.intent == "compare":
        return replace(frame, dishes=talk.frame.dishes)
    if frame.intent not in PLAIN or not (frame.follows or short(frame) or refers(frame.text)):
        return None
    asks = frame.another or frame.barred or frame.diets or says(frame, "foods-asked")
    lists = frame.intent == "foods-for-wine" and bool(asks)
    if frame.intent == "describe" or lists:
        return None
    listed = talk.asked == "foods-for-wine" and "judge" not in frame.text.cues  # `which cheese with Rioja`
    return replace(frame, intent=talk.asked if listed else "judge-pair", dishes=talk.frame.dishes)


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
