"""What the host says of a pair, whose word of it comes first, and how far it lies from the book's."""

from __future__ import annotations

from collections.abc import Collection

from assistant.knowledge.store import Knowledge
from assistant.notebook import Statement
from assistant.pairing.dish import Dish
from assistant.taught.keeper import Keeper

HOST, BOOK = "host", "book"


def said_of(dish: Dish, wine: str, keeper: Keeper) -> Statement | None:
    """The newest verdict of a host on this dish with this wine (a style or a word for several), or None."""
    eaten, styles = eaten_as(dish, keeper), set(keeper.knowledge.styles_of(wine))
    for one in reversed(keeper.overlay.pairings):
        wines, foods = halves(one, keeper.knowledge)
        if foods == eaten and styles & _styles(wines, keeper.knowledge):
            return one
    return None


def halves(one: Statement, knowledge: Knowledge) -> tuple[list[str], set[str]]:
    """The wines and the foods that a statement is about."""
    wines = [name for name in one.about if knowledge.styles_of(name)]
    return wines, {name for name in one.about if name not in wines}


def _styles(wines: Collection[str], knowledge: Knowledge) -> set[str]:
    return {style for wine in wines for style in knowledge.styles_of(wine)}


def eaten_as(dish: Dish, keeper: Keeper) -> set[str]:
    """What a dish is made of, or the name of the host's own food that it is."""
    own = keeper.own_food(dish)
    return {own} if own else {part.food for part in dish.parts}


def first_of(about: Collection[str], keeper: Keeper) -> str:
    """Who speaks first of these things, `host` or `book`: as said last of them or of everything."""
    for one in reversed(keeper.overlay.firsts):
        if not one.about or not set(about).isdisjoint(one.about):
            return str(one.value["first"])
    return BOOK


def verdict_of(one: Statement) -> str:
    """The verdict of a statement, as verdicts of scores are called."""
    return str(one.value["verdict"]).removeprefix("band/")


def apart(host: str, book: str, knowledge: Knowledge) -> int:
    """By how many steps the host's verdict lies above the book's (below: negative)."""
    bands = [band.verdict for band in knowledge.bands]
    return bands.index(book) - bands.index(host)


def heard(dish: Dish, wine: str, book: str, keeper: Keeper) -> str:
    """The verdict that is told first of a pair: the host's where the host speaks first, else the book's."""
    one = said_of(dish, wine, keeper)
    return verdict_of(one) if one and first_of(one.about, keeper) == HOST else book
