"""What of a table wine is chosen for: the main bites, not what is eaten beside or between them."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.evening.board import NEUTRAL, SUPPORT, board_item, board_places
from assistant.pairing.dish import Dish
from assistant.pairing.engine import Engine
from assistant.pairing.score import QUIET_FADES_OVER


def rests_palate(dish: Dish, engine: Engine) -> bool:
    """Whether a dish is plain bread or crackers: quiet, and there to be eaten between the others."""
    c, item = engine.knowledge.constants, board_item("", dish, engine)
    return NEUTRAL in item.places.get(SUPPORT, ()) and item.aroma < c["quiet-aroma"] + QUIET_FADES_OVER


def wanting_wine(things: Sequence[Sequence[Dish]], engine: Engine) -> list[int]:
    """Positions of the things that wine is chosen for: the main bites, not what is eaten beside them.

    Where nothing else is there, fruit and nuts count, and plain bread where that is all.
    """
    every = range(len(things))
    main = [i for i in every if not all(stands_beside(dish, engine) for dish in things[i])]
    fed = [i for i in every if not all(rests_palate(dish, engine) for dish in things[i])]
    return main or fed or list(every)


def stands_beside(dish: Dish, engine: Engine) -> bool:
    """Whether a dish is fruit, nuts, pickles, bread or the like, which go with cheese and meat."""
    item = board_item("", dish, engine)
    beside = {place.id for place in board_places(engine.knowledge) if place.beside}
    taken = {place for places in item.places.values() for place in places}
    return bool(taken) and not item.cheese and taken <= beside
