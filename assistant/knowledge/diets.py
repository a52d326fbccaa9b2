"""Whether a food or drink fits a diet: yes, no or unknown, and unknown counts as no at the table."""

from __future__ import annotations

from collections.abc import Iterable, Set
from enum import Enum
from functools import lru_cache

from assistant.knowledge import names
from assistant.knowledge.store import Knowledge

DEPENDS = "-depends"
KIND = "kind/"
MARKS, TRAIT = ("allergen/", "care/"), "trait/"
KEPT_FOODS = 4096


class Fit(Enum):
    """How a food stands to a diet."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"


def fit(food: str, diet: str, knowledge: Knowledge) -> Fit:
    """The fit of a food or drink, parts of a composed dish included.

    NO where something the diet leaves out is known to be in it, UNKNOWN where that depends on
    the maker, or, of a kind, on which of its members is meant. Raises KeyError for a food or diet that is
    not known.
    """
    members = knowledge.members(food) if food.startswith(KIND) else []
    if members:
        found = {_fit(member, diet, knowledge) for member in members}
        return found.pop() if len(found) == 1 else Fit.UNKNOWN
    return _fit(food, diet, knowledge)


def _fit(food: str, diet: str, knowledge: Knowledge) -> Fit:
    rules = knowledge.entry(diet)
    left_out = set(rules.get("leavesOut", ()))
    has, may = holds(food, knowledge)
    if has & left_out or lineage(food, knowledge) & set(rules.get("leavesOutKind", ())):
        return Fit.NO
    return Fit.UNKNOWN if may & left_out else Fit.YES


def against(food: str, diet: str, knowledge: Knowledge) -> list[str]:
    """What in a food, or in some food of a kind, is or may be against a diet: labels of marks, else kinds."""
    rules = knowledge.entry(diet)
    foods = (knowledge.members(food) if food.startswith(KIND) else []) or [food]
    held = [holds(member, knowledge) for member in foods]
    marks = set().union(*(has | may for has, may in held)) & set(rules.get("leavesOut", ()))
    lines = set().union(*(lineage(member, knowledge) for member in foods))
    return sorted(knowledge.label(found) for found in marks or lines & set(rules.get("leavesOutKind", ())))


@lru_cache(maxsize=KEPT_FOODS)
def holds(food: str, knowledge: Knowledge) -> tuple[frozenset[str], frozenset[str]]:
    """The allergens and care marks of a food and all its parts: known to be in it, and possibly so."""
    marks = [_marks(subject, knowledge) for subject in contents(food, knowledge)]
    has = frozenset[str]().union(*(has for has, _ in marks))
    return has, frozenset[str]().union(*(may for _, may in marks)) - has


def allergens(food: str, knowledge: Knowledge) -> tuple[list[str], list[str]]:
    """The labels of the allergens a food contains and may contain, its parts included."""
    has, may = (sorted(m for m in marks if m.startswith("allergen/")) for marks in holds(food, knowledge))
    return [knowledge.label(a) for a in has], [knowledge.label(a) for a in may]


@lru_cache(maxsize=KEPT_FOODS)
def lineage(food: str, knowledge: Knowledge) -> frozenset[str]:
    """The food, its parts and all their kinds."""
    found = contents(food, knowledge)
    return frozenset((*found, *(kind for subject in found for kind in knowledge.broader(subject))))


def contents(food: str, knowledge: Knowledge) -> list[str]:
    """The food and, at any depth, the parts it is made of."""
    found = [food]
    for subject in found:
        found += [p["food"][0] for p in knowledge.entry(subject).get("part", ()) if p["food"][0] not in found]
    return found


def only_in(food: str, marks: Set[str], kinds: Set[str], knowledge: Knowledge) -> bool:
    """Whether these marks stand, or may stand, in the food by parts of these kinds alone."""
    parts = [part for part in contents(food, knowledge) if not knowledge.entry(part).get("part")]
    held = [part for part in parts if marks & frozenset[str]().union(*holds(part, knowledge))]
    return bool(held) and all(lineage(part, knowledge) & kinds for part in held)


def _marks(subject: str, knowledge: Knowledge) -> tuple[set[str], set[str]]:
    entry = knowledge.entry(subject)
    care = set(entry.get("care", ()))
    may = {mark.removesuffix(DEPENDS) for mark in care if mark.endswith(DEPENDS)}
    has = {mark for mark in care if not mark.endswith(DEPENDS)} | set(entry.get("allergen", ()))
    return has, may | set(entry.get("mayContain", ()))


def suits(food: str, barred: frozenset[str], diets: Iterable[str], knowledge: Knowledge) -> bool:
    """Whether a food surely holds nothing barred (foods, kinds, marks, at any depth) and fits all diets."""
    if barred:
        has, may = holds(food, knowledge)
        if barred & (lineage(food, knowledge) | has | may | _tastes(food, knowledge)):
            return False
    return all(fit(food, diet, knowledge) is Fit.YES for diet in diets)


@lru_cache(maxsize=KEPT_FOODS)
def _tastes(food: str, knowledge: Knowledge) -> frozenset[str]:
    """The traits of a food and all its parts: a mousse has that of chocolate."""
    return frozenset().union(*(knowledge.food(subject).traits for subject in contents(food, knowledge)))


def marks_called(foods: Iterable[str], knowledge: Knowledge) -> frozenset[str]:
    """These foods and kinds with the allergens, marks and traits that go by their names (`pork`, `fish`).

    A trait goes by its own name alone: what tastes of nuts need not hold any.
    """
    wanted = frozenset(foods)
    called = {knowledge.label(food).casefold() for food in wanted}
    found = {m for m in knowledge.digest if m.startswith((*MARKS, TRAIT))} if wanted else set[str]()
    of_label = {m for m in found if not m.startswith(TRAIT) and knowledge.label(m).casefold() in called}
    return wanted | of_label | {m for m in found if names.local(m) in called}
