"""Whether a food or drink fits a diet: yes, no or unknown, and unknown counts as no at the table."""

from __future__ import annotations

from enum import Enum

from assistant.knowledge.store import Knowledge

DEPENDS = "-depends"


class Fit(Enum):
    """How a food stands to a diet."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"


def fit(food: str, diet: str, knowledge: Knowledge) -> Fit:
    """The fit of a food or drink, parts of a composed dish included.

    NO where something the diet leaves out is known to be in it, UNKNOWN where that depends on
    the maker. Raises KeyError for a food or diet that is not known.
    """
    rules = knowledge.entry(diet)
    kinds, left_out = set(rules.get("leavesOutKind", ())), set(rules.get("leavesOut", ()))
    marks = [_marks(subject, knowledge) for subject in contents(food, knowledge)]
    if any(has & left_out or lineage & kinds for has, _, lineage in marks):
        return Fit.NO
    return Fit.UNKNOWN if any(may & left_out for _, may, _ in marks) else Fit.YES


def contents(food: str, knowledge: Knowledge) -> list[str]:
    """The food and, at any depth, the parts it is made of."""
    found = [food]
    for subject in found:
        found += [p["food"][0] for p in knowledge.entry(subject).get("part", ()) if p["food"][0] not in found]
    return found


def _marks(subject: str, knowledge: Knowledge) -> tuple[set[str], set[str], set[str]]:
    """What is in it, what may be in it, and what it is."""
    entry = knowledge.entry(subject)
    care = set(entry.get("care", ()))
    may = {mark.removesuffix(DEPENDS) for mark in care if mark.endswith(DEPENDS)}
    has = {mark for mark in care if not mark.endswith(DEPENDS)} | set(entry.get("allergen", ()))
    return has, may | set(entry.get("mayContain", ())), {subject, *knowledge.broader(subject)}
