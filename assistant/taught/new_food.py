"""`new cheese: fenwold, like brie but sharper`: a food that is not known, tasted as what it is like."""

from __future__ import annotations

import re

from assistant.language.fold import key
from assistant.taught.alias import LONGEST_NAME, SHORTEST, bare, untailed
from assistant.taught.lesson import Lesson
from assistant.taught.profile import amounts_in, as_new
from assistant.taught.telling import Hearing
from assistant.taught.words import taught_words

LIKE = "like"
LONGEST_IN_WORDS = 3
_LIKE = re.compile(rf"\b{LIKE} (?P<thing>[^,;.]+?)(?: but\b|[,;.]|$)", re.IGNORECASE)


def new_food(heard: Hearing) -> Lesson | None:
    """The name, what it is like and how it differs, or None where the words give no such food."""
    text = untailed(heard.said)
    found = next((m for m in (pattern.search(text) for pattern in taught_words().new) if m), None)
    found = found or _named_is(heard, text)
    if found is None:
        return None
    name, like = bare(found["name"]), _nearest(heard, found[0], found["rest"])
    if like is None or not SHORTEST <= len(name) <= LONGEST_NAME:
        return None
    amounts, _ = amounts_in(heard.keeper.parser.parse(found["rest"]).text)
    _, used = amounts_in(heard.context.frame.text)
    return as_new(heard, name, like, amounts, used)


def _named_is(heard: Hearing, text: str) -> re.Match[str] | None:
    """`bredlow is a smoked cheese`, where the name is nothing that is read."""
    found = taught_words().is_a.search(text)
    name = found["name"] if found else ""
    stems, lexicon = key(name), heard.keeper.parser.lexicon
    unread = not any(lexicon.longest(stems, at) for at in range(len(stems)))
    little = taught_words().sets["no_name"].issuperset(stems)
    return found if unread and not little and len(name.split()) <= LONGEST_IN_WORDS else None


def _nearest(heard: Hearing, whole: str, rest: str) -> str | None:
    """What it is said to be like; else the food or kind named that is of the sort said, else that sort."""
    parse, broader = heard.keeper.parser.parse, heard.context.knowledge.broader
    like = _LIKE.search(rest)
    if like:
        dishes = parse(like["thing"]).dishes
        return dishes[0].main.food if dishes else None
    sort = next((word for word in taught_words().sorts if word in key(whole)), "")
    kinds = [dish.main.food for dish in parse(sort).dishes] if sort else []
    frame = parse(rest)
    named = {r.id for r in frame.text.readings}
    foods = [dish.main.food for dish in frame.dishes if dish.main.food in named]
    of_sort = [food for food in foods if not kinds or any(kind in broader(food) for kind in kinds)]
    return next(iter([*of_sort, *kinds]), None)
