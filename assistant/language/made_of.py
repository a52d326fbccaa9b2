"""Dishes of meat made of a plant or a fish: `cabbage steak`, `lentil burgers`, `seafood lasagne`.

Which words, and of what they are made, stands in corpus/language/made-of.toml.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

from assistant.knowledge.concepts import Food
from assistant.knowledge.diets import holds, lineage
from assistant.knowledge.files import corpus_dir
from assistant.knowledge.store import Knowledge
from assistant.language.data import read_data
from assistant.language.fold import key
from assistant.pairing.dish import BASE, HUNDRED_GRAMS, DishPart
from assistant.pairing.plate import recipe

STIRRED_IN = "role/stirred-in"
MEAT = frozenset(("kind/meat", "care/beef", "care/pork", "care/poultry", "care/meat-other"))


@dataclass(frozen=True, slots=True)
class Heads:
    """The words for dishes of meat, and what takes the place of the meat in them."""

    words: frozenset[str]
    made: frozenset[str]
    never: frozenset[str]
    cured: frozenset[str]
    cured_of: frozenset[str]
    adds: Mapping[str, str]

    @classmethod
    def of(cls, lists: Mapping[str, Any]) -> Heads:
        """What the file tells. Raises KeyError for a list that is missing."""
        words, cured = (frozenset(" ".join(key(word)) for word in lists[name]) for name in ("heads", "cured"))
        made = frozenset((*lists["kinds"], *lists["foods"]))
        never, cured_of = frozenset(lists["never"]), frozenset(lists["cured-of"])
        adds = {" ".join(key(word)): food for word, food in lists["adds"].items()}
        return cls(words, made, never, cured, cured_of, adds)


@lru_cache(maxsize=1)
def heads() -> Heads:
    """The lists of the file. Raises KnowledgeError for a broken one."""
    return read_data(corpus_dir() / "language" / "made-of.toml", Heads.of)


def made_of(food: Food, said: str, instead: str, knowledge: Knowledge) -> tuple[DishPart, ...]:
    """A dish of meat with all meat given way to what is named in front; empty where it stays."""
    if not _takes_place(said, instead, knowledge) or not is_meat(food.id, knowledge):
        return ()
    parts = recipe(food).parts
    gone = [part for part in parts if is_meat(part.food, knowledge)]
    cooked = (food.usual_method,) if food.usual_method else ()
    whole = DishPart(instead, BASE, HUNDRED_GRAMS, cooked)
    place = next((part for part in gone if part.role == BASE), gone[0] if gone else whole)
    kept = [p for p in parts if p is place or (p not in gone and p.food != instead)] or [whole]
    added = heads().adds.get(" ".join(key(said)))
    share = knowledge.constants["binding-share"]
    binds = [DishPart(added, STIRRED_IN, share * sum(p.mass for p in kept))] if added else []
    return tuple([replace(p, food=instead) if p is place else p for p in kept] + binds)


def _takes_place(said: str, instead: str, knowledge: Knowledge) -> bool:
    known, words = heads(), " ".join(key(said))
    kinds = {instead, *knowledge.broader(instead)}
    made = (
        known.made if words in known.words else known.cured_of if words in known.cured else frozenset[str]()
    )
    return bool(kinds & made) and not kinds & known.never


def is_meat(food: str, knowledge: Knowledge) -> bool:
    """Whether a food is meat, or holds any."""
    return bool(MEAT & (lineage(food, knowledge) | holds(food, knowledge)[0]))
