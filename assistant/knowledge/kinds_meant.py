"""Whole kinds of food that a guest asks out of: "which fish goes with Chablis"."""

from __future__ import annotations

from functools import lru_cache

from assistant.knowledge.store import Knowledge

NAMES = ("prefLabel", "altLabel")


@lru_cache(maxsize=256)
def kinds_meant(food: str, knowledge: Knowledge) -> tuple[str, ...]:
    """The kind itself, or those whose name the food bears too; none for another food."""
    if "Kind" in knowledge.entry(food)["type"]:
        return (food,)
    names = _names(food, knowledge)
    return tuple(kind for kind in knowledge.broader(food) if names & _names(kind, knowledge))


def _names(subject: str, knowledge: Knowledge) -> set[str]:
    entry = knowledge.entry(subject)
    return {name.casefold() for key in NAMES for name in entry.get(key, ())}
