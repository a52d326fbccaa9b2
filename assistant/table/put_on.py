"""What is put on the table: a whole menu, foods in place of those taken off, and a word for many foods."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.knowledge.store import Knowledge
from assistant.language.cautioned import FEWEST_LISTED, MOST_BESIDE
from assistant.language.dish_edits import POURED
from assistant.language.fold import key
from assistant.language.follow_lines import ends_of, follow_lines, opens, says
from assistant.language.frame import Frame, Reading
from assistant.language.small_words import small_words
from assistant.language.sorting import EDIBLE, words_beside
from assistant.pairing.dish import Dish, single

# What a list of bottles behind a heading is taken for by its words alone.
LISTED = ("pour-order", "choose-wines", "compare", "foods-for-wine", "describe", "unclear", "set-table")


def has_menu(frame: Frame) -> bool:
    """Whether several foods are told that there will be to eat (`we'll have olives, ham and figs`)."""
    return len(frame.dishes) >= FEWEST_LISTED and not frame.wines and says(frame, "menu-laid")


def has_headings(frame: Frame) -> bool:
    """Whether what is there is listed behind headings (`wines: Rioja. foods: Brie`), and nothing asked."""
    if "?" in frame.text.typed or frame.topics:
        return False
    heads = follow_lines()["headed"].find(frame.text.stems)
    poured = [reading for reading in frame.text.readings if reading.kind in POURED]
    lists = frame.intent in LISTED and len(poured) > 1 and not says(frame, "menu-asks-what")
    return len(ends_of(frame, "headed")) > 1 or (lists and any(places[0] == 0 for places in heads))


def goes_on_listing(frame: Frame) -> bool:
    """Whether a list of foods goes on (`and patatas bravas, croquetas`), and nothing else is said."""
    return (
        words_beside(frame.text) <= MOST_BESIDE
        and len(frame.dishes) > 1
        and opens(frame, "and-more")
        and not says(frame, "menu-asks")
    )


def is_spread(reading: Reading) -> bool:
    """Whether a name is only a word for many foods (`tapas`)."""
    return " ".join(key(reading.text)) in small_words()["spread"]


def only_spreads(frame: Frame) -> bool:
    """Whether no other food is named than by a word for many."""
    spreads = {reading.id for reading in frame.text.readings if is_spread(reading)}
    return bool(frame.dishes) and all(d.main.food in spreads and len(d.parts) == 1 for d in frame.dishes)


def foods_coming(frame: Frame) -> list[Reading]:
    """The foods behind a word that puts them on (`take the ham off and put on figs`)."""
    named = (reading for reading in frame.text.readings if reading.kind in EDIBLE)
    spans = _spans(frame.text.stems)
    return [one for one in named if any(start < one.start < end for start, end in spans)]


def _spans(stems: Sequence[str]) -> list[tuple[int, int]]:
    """From each word that puts something on to the next that does so or takes something off."""
    puts, takes, off = (
        {places[0] for places in follow_lines()[name].find(stems)}
        for name in ("puts-on", "takes-off", "goes-off")
    )
    turns = sorted({*puts, *takes, *off, len(stems)})
    ends = ((at, next(turn for turn in turns if turn > at)) for at in sorted(puts))
    return [(at, end) for at, end in ends if end not in off]  # `put the ham away`


def dishes_coming(frame: Frame, there: Sequence[Dish], knowledge: Knowledge) -> tuple[Dish, ...]:
    """The dishes that are put on and are not there yet."""
    laid, named = {dish.main.food for dish in there}, {dish.main.food: dish for dish in frame.dishes}
    ids = dict.fromkeys(reading.id for reading in foods_coming(frame))
    served = (named.get(one) or single(knowledge.food(one).served_as or one) for one in ids)
    return tuple(dish for dish in served if dish.main.food not in laid)
