"""A popular claim that can be tried, taken up with what stands."""

from __future__ import annotations

from dataclasses import replace

from assistant.knowledge.diets import lineage
from assistant.knowledge.store import Knowledge
from assistant.language.fold import key
from assistant.language.frame import Frame
from assistant.language.standing import Talk


def saying(frame: Frame, talk: Talk, knowledge: Knowledge) -> Frame | None:
    """A popular claim that can be tried is tried on what stands; trouble is told as it is."""
    if not frame.entries:
        return None
    tried = "shownBy" in knowledge.entry(frame.entries[0])
    if not tried or not _of_what_stands(frame, talk, knowledge):
        return frame
    return replace(frame, dishes=talk.frame.dishes)


def _of_what_stands(frame: Frame, talk: Talk, knowledge: Knowledge) -> bool:
    """Whether no food is named but what stands, its kinds (`cheese`: Brie stands) and the saying's own."""
    standing = {kind for food in _foods(talk.frame) for kind in (food, *lineage(food, knowledge))}
    others = _foods(frame) - standing
    return all(_in_saying(food, frame, standing, knowledge) for food in others)


def _in_saying(food: str, frame: Frame, standing: set[str], knowledge: Knowledge) -> bool:
    """Whether a food is only the saying's word for what stands (`white with fish`: salmon stands)."""
    claim = frame.entries[0]
    words = set(key(knowledge.label(claim)))
    named = any(r.id == food and words.issuperset(key(r.text)) for r in frame.text.readings)
    ways = (set(way.get("about", ())) for way in knowledge.entry(claim).get("shownBy", ()))
    return named and any(way & lineage(food, knowledge) and way & standing for way in ways)


def _foods(frame: Frame) -> set[str]:
    return {part.food for dish in frame.dishes for part in dish.parts}
