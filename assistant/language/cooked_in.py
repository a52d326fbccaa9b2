"""Wine that a food is cooked in: `beef cheek in red wine`, `kidneys in sherry`, `braised in Barolo`."""

from __future__ import annotations

from dataclasses import replace

from assistant.knowledge.store import Knowledge
from assistant.language.frame import Reading, Text
from assistant.language.small_words import small_words
from assistant.language.turning import FOODS

COOKED = frozenset(("kind/meat", "kind/seafood"))


def cooked_in(text: Text, reading: Reading, knowledge: Knowledge) -> Reading | None:
    """What a wine becomes that a food is cooked in; None where nothing is."""
    words, start = text.stems, reading.start
    start -= start > 1 and words[start - 1] in small_words()["articles"]
    if start < 2 or words[start - 1] not in small_words()["cooked-in"]:
        return None
    asked = words[start - 3] in small_words()["asks-inside"] if start > 2 else False
    done = words[start - 2] in small_words()["cooked"]
    before = (r for r in text.readings if r.end == start - 1)
    if asked or not (done or any(_is_cooked(r, reading, knowledge) for r in before)):
        return None
    return _sauce(reading, knowledge)


def _is_cooked(food: Reading, wine: Reading, knowledge: Knowledge) -> bool:
    """Whether this is cooked in the wine that it is in, and no scent of it (`cherry in Barolo`)."""
    if food.kind == "method":
        return True
    return food.kind in FOODS and (wine.type == "Kind" or not COOKED.isdisjoint(knowledge.broader(food.id)))


def _sauce(reading: Reading, knowledge: Knowledge) -> Reading | None:
    kinds = (reading.id, *knowledge.broader(reading.id))
    food = next((f for kind in kinds for f in knowledge.entry(kind).get("cooksTo", ())), None)
    if food is None:
        return None
    return replace(reading, id=food, others=(), kind="sauce", type="Food", label=knowledge.label(food))
