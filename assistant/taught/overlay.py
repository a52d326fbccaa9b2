"""What stands in the notebook, in the form that answers use: names, foods, amounts and pairings."""

from __future__ import annotations

from collections.abc import Container, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from assistant.knowledge.store import Knowledge
from assistant.language.clean import MOST_LOOKED_AT
from assistant.language.frame import Frame
from assistant.language.phrases import Phrases
from assistant.notebook import Statement
from assistant.notebook.carrying import HOST
from assistant.pairing.dish import Dish
from assistant.taught.words import taught_words

SCHEMA = "schema#"
Amounts = Mapping[str, float]


@dataclass(frozen=True, slots=True)
class NewFood:
    """A food of the host's own: its name, the id of what it is like, the amounts put on that."""

    name: str
    like: str
    amounts: Amounts


@dataclass(frozen=True, slots=True)
class Overlay:
    """Labels by the host's names, foods of the host's own, amounts by food id, pairings newest last.

    `firsts`: whose word is told first, newest last.
    """

    names: Mapping[str, str] = field(default_factory=dict)
    foods: tuple[NewFood, ...] = ()
    amounts: Mapping[str, Amounts] = field(default_factory=dict)
    pairings: tuple[Statement, ...] = ()
    firsts: tuple[Statement, ...] = ()
    phrases: Phrases = field(default_factory=lambda: Phrases({}))

    def meant(self, typed: str) -> str:
        """The text with the host's names as the knowledge has them."""
        looked_at = typed[:MOST_LOOKED_AT]
        return self.phrases.replaced(looked_at) + typed[MOST_LOOKED_AT:]

    def amounts_of(self, name: str) -> Amounts:
        """The amounts put on a food, by its id or by the host's own name for it."""
        own = {food.name: food.amounts for food in self.foods}
        return self.amounts.get(name) or own.get(name) or {}

    def named(self, frame: Frame, typed: str) -> Frame:
        """The frame with the foods of the host's own, named in the text, called and tasted as taught."""
        for food in self.foods:
            if Phrases({food.name: ""}).replaced(typed) != typed:
                frame = replace(frame, dishes=_called(frame.dishes, food))
        return frame


def overlay_of(statements: Sequence[Statement], knowledge: Knowledge) -> Overlay:
    """What these statements add; those about what the knowledge lacks add nothing.

    Of what contradicts each other the last one counts, and the host before anybody else.
    """
    statements = sorted(statements, key=lambda one: one.author == HOST)
    known = knowledge.digest
    names = {str(s.value["alias"]): knowledge.label(s.about[0]) for s in _kind(statements, "alias", known)}
    amounts = _amounts(_kind(statements, "profile"))
    foods = tuple(
        NewFood(s.about[0], str(s.value["like"]), amounts.get(s.about[0], {}))
        for s in _kind(statements, "new-food")
        if s.value.get("like") in known
    )
    new = {food.name: knowledge.label(food.like) for food in foods}
    pairings = tuple(_kind(statements, "pairing", {*known, *new}))
    own = {food: added for food, added in amounts.items() if food in known}
    firsts = tuple(_kind(statements, "first-voice"))
    return Overlay(names, foods, own, pairings, firsts, Phrases({**names, **new}))


def _kind(statements: Iterable[Statement], kind: str, known: Container[str] | None = None) -> list[Statement]:
    """The statements of a kind; with `known`, those that are about nothing else."""
    found = (s for s in statements if s.kind == kind)
    return [s for s in found if known is None or all(one in known for one in s.about)]


def _amounts(profiles: Iterable[Statement]) -> dict[str, dict[str, float]]:
    """Amounts by food and quantity; what is said later of the same quantity takes its place."""
    found: dict[str, dict[str, float]] = {}
    for one in profiles:
        dimension = str(one.value["dimension"])
        quantity = dimension.removeprefix(SCHEMA)
        if quantity in taught_words().directions and "unit" not in one.value:
            found.setdefault(one.about[0], {})[quantity] = float(one.value["amount"])
    return found


def _called(dishes: tuple[Dish, ...], food: NewFood) -> tuple[Dish, ...]:
    """The dishes with the first one that stands for the food called and tasted as it."""
    at = next((i for i, d in enumerate(dishes) if d.main.food == food.like and not d.called), None)
    if at is None:
        return dishes
    own = replace(dishes[at], called=food.name, added={**dishes[at].added, **food.amounts})
    return (*dishes[:at], own, *dishes[at + 1 :])
