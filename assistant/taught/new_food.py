"""`new cheese: fenwold, like brie but sharper`: a food that the knowledge lacks, tasted as what it is like."""

from __future__ import annotations

import re

from assistant.language.fold import key
from assistant.language.frame import Frame
from assistant.taught.alias import LONGEST_NAME, SHORTEST, bare, untailed
from assistant.taught.lesson import Lesson, told
from assistant.taught.profile import amounts_in, how, statements, unused
from assistant.taught.telling import Hearing, words
from assistant.taught.words import taught_words

LIKE = "like"
_LIKE = re.compile(rf"\b{LIKE} (?P<thing>[^,;.]+?)(?: but\b|[,;.]|$)", re.IGNORECASE)


def new_food(heard: Hearing) -> Lesson | None:
    """The name, what it is like and how it differs, or None where the words give no such food."""
    text = untailed(heard.said)
    found = next((m for m in (pattern.search(text) for pattern in taught_words().new) if m), None)
    if found is None:
        return None
    name, like = bare(found["name"]), _nearest(heard, found[0], found["rest"])
    if like is None or not SHORTEST <= len(name) <= LONGEST_NAME:
        return None
    rest = heard.keeper.parser.parse(found["rest"])
    return _lesson(heard, name, like, rest)


def _lesson(heard: Hearing, name: str, like: str, rest: Frame) -> Lesson:
    amounts, _ = amounts_in(rest.text)
    context = heard.context
    fields = {"name": f"“{name}”", "like": context.knowledge.label(like), "how": how(amounts)}
    say = words(context, "new-food-but" if fields["how"] else "new-food", **fields)
    made = (told(heard, "new-food", (name,), {"like": like}), *statements(heard, name, amounts))
    _, used = amounts_in(context.frame.text)
    line = words(context, "new-food-line", name=name)
    return Lesson(made, say, (line, *unused(context, used, name)))


def _nearest(heard: Hearing, whole: str, rest: str) -> str | None:
    """What it is said to be like; else the food or kind named that is of the sort said, else that sort."""
    parse, broader = heard.keeper.parser.parse, heard.context.knowledge.broader
    like = _LIKE.search(rest)
    if like:
        dishes = parse(like["thing"]).dishes
        return dishes[0].main.food if dishes else None
    sort = next((word for word in taught_words().sorts if word in key(whole)), "")
    kinds = [dish.main.food for dish in parse(sort).dishes] if sort else []
    foods = [dish.main.food for dish in parse(rest).dishes]
    of_sort = [food for food in foods if any(kind in broader(food) for kind in kinds)]
    return next(iter([*of_sort, *kinds]), None)
