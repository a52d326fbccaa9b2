"""What stands from the turn before, and the small questions that every follow-up asks of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from assistant.knowledge.store import Knowledge
from assistant.language.frame import Frame, Preference
from assistant.language.refer import WINES
from assistant.language.sorting import words_beside
from assistant.pairing.dish import BASE, Dish, DishPart

FEW_WORDS = 3
WHYS = ("why", "why-not")
JUDGING = ("judge-pair", "compare", "why", "why-not")
OF_ONE = ("service",)
FOR_ALL = ("choose-wines", "one-bottle")
TABLE = ("choose-wines", "one-bottle", "check-board", "compare", "set-table", "what-if")
PLAIN = ("wines-for-food", "foods-for-wine", "unclear", "judge-pair", "describe", "define", "substitute")


@dataclass(frozen=True, slots=True)
class Talk:
    """The turn that stands: its frame, the ids it picked and advised against, and what was asked.

    `asked` is the intent behind a chain of whys; `before` is what stood earlier, to go back to.
    """

    frame: Frame
    picks: tuple[str, ...]
    avoid: tuple[str, ...]
    asked: str
    before: Talk | None = None


Edit = Callable[[Frame, Talk, Knowledge], Frame | None]


def stands(frame: Frame, picks: tuple[str, ...], avoid: tuple[str, ...], before: Talk | None) -> Talk:
    """What stands after a turn."""
    if frame.again and before is not None and frame.intent in WHYS:  # the same, explained
        return before
    if frame.again and before is not None and before.before is not None:  # gone back
        return before.before
    if before and frame.intent in OF_ONE and len(picks) == 1 and picks[0] in before.picks:
        picks = before.picks  # what is asked of one of a list leaves the list standing
    explains = frame.intent in WHYS and before is not None
    return Talk(frame, picks, avoid, before.asked if explains and before else frame.intent, before)


def of_table(frame: Frame, talk: Talk) -> str | None:
    """What is asked of the whole table, as it was asked before where it was; None for other questions."""
    if frame.intent not in TABLE:
        return None
    return talk.asked if talk.asked in ("one-bottle", "choose-wines", "check-board") else frame.intent


def anew(frame: Frame, talk: Talk) -> Frame:
    """What was asked, asked again, with old limits and new ones; what is asked of a whole table stays so."""
    judging = talk.asked in (*JUDGING, "foods-for-wine") and bool(talk.frame.wines)
    intent = "compare" if talk.asked == "compare" else "judge-pair" if judging else "wines-for-food"
    intent = of_table(frame, talk) or intent
    limits = joined(talk.frame.preferences, frame.preferences)
    wines = talk.frame.wines if judging or frame.intent in TABLE else ()
    numbers = {**talk.frame.numbers, **frame.numbers}
    return replace(frame, intent=intent, wines=wines, preferences=limits, numbers=numbers)


def short(frame: Frame) -> bool:
    """A bare fragment (`the brie?`), which only makes sense as a follow-up."""
    return words_beside(frame.text) <= FEW_WORDS and "wines-for-food" not in frame.text.cues


def only_kinds(dishes: tuple[Dish, ...]) -> bool:
    """Whether no food is named but kinds of food (`how much cheese`)."""
    return all(dish.main.food.startswith("kind/") for dish in dishes)


def joined(old: tuple[Preference, ...], new: tuple[Preference, ...]) -> tuple[Preference, ...]:
    """Old limits and new ones; a new limit on the same thing replaces the old, and bans add up."""
    return (*(p for p in old if not any(_replaces(n, p) for n in new)), *new)


def _replaces(new: Preference, old: Preference) -> bool:
    """`red` takes the place of `white` and of `no red`; `no Chardonnay` leaves `white` as it is."""
    same = new.property == old.property
    return same and (not (new.banned or old.banned) or (old.wanted is not None and new.wanted == old.wanted))


def wines_of(ids: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(i for i in ids if i.startswith(WINES))


def last_wine(talk: Talk | None) -> tuple[str, ...]:
    """The wine last spoken of, else the first of the last answer; none where none is."""
    return (talk.frame.wines[-1:] or wines_of(talk.picks[:1])) if talk else ()


def dishes_of(ids: tuple[str, ...]) -> tuple[Dish, ...]:
    foods = [i for i in ids if i.startswith("food/")]
    return tuple(Dish((DishPart(food, BASE, 100.0),)) for food in foods)
