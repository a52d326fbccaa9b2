"""The one change that helps a board most: something swapped for something better, or something added."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import chain
from typing import NamedTuple

from assistant.evening.board import (
    FLAVOURED,
    MILK,
    SUPPORT,
    TEXTURE,
    BoardItem,
    board_food,
    board_places,
)
from assistant.evening.board_faults import faults_of
from assistant.knowledge.diets import Fit, fit
from assistant.knowledge.store import Knowledge
from assistant.pairing.dish import single, table_of
from assistant.pairing.engine import Engine

MENDING = (MILK, TEXTURE, SUPPORT)
DISH = "kind/dish"
TRIED = 6  # foods of one sort that are tasted with the wines


@dataclass(frozen=True, slots=True)
class Change:
    """A food put on the board, in place of `out` or (None) beside the rest, and the faults it mends."""

    out: BoardItem | None
    into: BoardItem
    mended: float


class Tied(NamedTuple):
    """How much is mended by a food in place of the thing at `out`, or beside the rest."""

    mended: float
    out: int | None
    into: BoardItem


Way = tuple[int | None, list[BoardItem]]


def best_changes(
    items: Sequence[BoardItem],
    engine: Engine,
    wines: Sequence[str],
    diets: Sequence[str] = (),
    suits: Callable[[str], bool] = lambda food: True,
) -> list[Change]:
    """The best swap and the best addition, where they mend anything; a food that is both, once.

    Cheese is swapped for cheese, and anything else for something else; of equals the food that does best
    with the wines. Within diets only what surely fits is offered, and never what does not suit (`suits`).
    """
    tied = _both_tied(items, engine, diets, suits)
    liking = _liking(_foods(chain.from_iterable(tied), items), engine, wines)
    changes = [_best(each, items, liking) for each in tied if each]
    return changes[: len({change.into.food for change in changes})]


def _both_tied(
    items: Sequence[BoardItem], engine: Engine, diets: Sequence[str], suits: Callable[[str], bool]
) -> list[list[Tied]]:
    """Of the swaps, then of the additions."""
    groups = _groups(items, engine, diets, suits)
    return [_tied(groups, items, engine.knowledge, swap) for swap in (True, False)]


def _tied(
    groups: Sequence[list[BoardItem]], items: Sequence[BoardItem], known: Knowledge, swap: bool
) -> list[Tied]:
    """The changes that mend most, a few foods for each; none where nothing mends anything."""
    before = faults_of(items, known)
    changes = [
        (round(before - faults_of(after, known), 6), out, group)
        for group in groups
        for out, after in _ways(items, group[0], swap)
    ]
    most = max((mended for mended, _, _ in changes), default=0.0)
    best = [(out, group) for mended, out, group in changes if mended == most > 0]
    return [Tied(most, out, item) for out, group in best for item in _plainest(group)]


def _foods(tied: Iterable[Tied], items: Sequence[BoardItem]) -> list[str]:
    """What would come in and what would go out."""
    pairs = [(items[t.out].food, t.into.food) if t.out is not None else (t.into.food,) for t in tied]
    return sorted(set(chain.from_iterable(pairs)))


def _ways(items: Sequence[BoardItem], new: BoardItem, swap: bool) -> Iterator[Way]:
    """The boards with the new thing: in place of each of its like in turn, or added."""
    if not swap:
        yield None, [*items, new]
        return
    for i, old in enumerate(items):
        if old.cheese == new.cheese:
            yield i, [*items[:i], new, *items[i + 1 :]]


def _groups(
    items: Sequence[BoardItem], engine: Engine, diets: Sequence[str], suits: Callable[[str], bool]
) -> list[list[BoardItem]]:
    """What could be put on, grouped by what it does for a balance: one of each group speaks for all."""
    known, there = engine.knowledge, {item.food for item in items}
    groups: dict[object, list[BoardItem]] = {}
    for food in _offered(known, bool(diets)):
        if food not in there and suits(food) and all(fit(food, diet, known) is Fit.YES for diet in diets):
            item = board_food(food, engine)
            groups.setdefault(_signature(item, known), []).append(item)
    return list(groups.values())


@lru_cache(maxsize=4)
def _offered(knowledge: Knowledge, diets: bool) -> list[str]:
    """Foods that take a place by which a board is mended; no composed dish, no flavoured cheese."""
    places = board_places(knowledge)
    kinds = chain.from_iterable(sorted(p.kinds) for p in places if p.aspect in MENDING)
    foods = dict.fromkeys(chain.from_iterable(knowledge.members(kind) for kind in kinds))
    unwanted = (p for p in places if p.aspect == FLAVOURED or not (p.offered or diets))
    barred = {DISH}.union(*(place.kinds for place in unwanted))
    return [food for food in foods if barred.isdisjoint(knowledge.broader(food))]


@lru_cache(maxsize=2048)
def _signature(item: BoardItem, knowledge: Knowledge) -> object:
    """What an item does for a balance, as far as a board looks."""
    c = knowledge.constants
    mild, loud = item.aroma <= c["board-mild"], item.aroma >= c["board-loud"]
    return tuple(sorted(item.places.items())), item.cheese, mild, loud, round(item.sodium, -2)


def _best(tied: Sequence[Tied], items: Sequence[BoardItem], liking: Mapping[str, float]) -> Change:
    """Of changes that mend as much: the new food that gets on best with the wines, for the worst old one."""

    def gained(one: Tied) -> tuple[float, str]:
        lost = 0.0 if one.out is None else liking[items[one.out].food]
        return liking[one.into.food] - lost, one.into.label

    best = max(tied, key=gained)
    return Change(None if best.out is None else items[best.out], best.into, best.mended)


def _plainest(group: Sequence[BoardItem]) -> list[BoardItem]:
    """A few of a group, those with the shortest names: what every shop sells."""
    return sorted(group, key=lambda item: (len(item.label), item.label))[:TRIED]


def _liking(foods: Sequence[str], engine: Engine, wines: Sequence[str]) -> dict[str, float]:
    """The mean score of each food with the wines (0 without wines)."""
    if not wines:
        return dict.fromkeys(foods, 0.0)
    matches = engine.each({food: table_of([single(food)]) for food in foods}, wines)
    return {food: sum(match.score for match in found) / len(found) for food, found in matches.items()}
