"""What was left at earlier evenings corrects what is counted: new = 0.7 old + 0.3 used / guests.

Kept as quantities of the notebook: what was left, and what was eaten and planned for each guest; the factor
of a class of amounts.toml (or of a pour) is its share of the book's amount. The shares and their bound:
ontology/evening/after.toml.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

from assistant.evening.facts import fact
from assistant.evening.portions import class_of
from assistant.knowledge.store import Knowledge
from assistant.notebook import Statement

if TYPE_CHECKING:
    from assistant.session import Session

QUANTITY, WINE, ALL_WINES = "quantity", "wine", "kind/wine"
LEFT, USED, PLANNED = "left", "used a head", "planned a head"


def unit(sort: str, of: str) -> str:
    """How a quantity of this sort is written down: `g used a head`."""
    return f"{of} {sort}"


def new_factor(old: float, used: float, guests: float) -> float:
    """The amount for each guest after an evening at which `used` was eaten by so many."""
    share = fact("after", "amounts", "old").typical
    return share * old + (1 - share) * used / guests


def corrections_of(session: Session) -> dict[str, float]:
    """The factor of every class about which something was told; within bounds."""
    return {name: factor_of(found) for name, found in shares_of(session).items()}


def factor_of(shares: Sequence[float]) -> float:
    """The factor after evenings at which these shares of what was planned were eaten, the oldest first."""
    factor, least = 1.0, fact("after", "amounts", "bound").typical
    for share in shares:
        factor = new_factor(factor, share, 1.0)
    return min(max(factor, least), 1 / least)


def shares_of(session: Session) -> dict[str, list[float]]:
    """By class, for every evening in turn, the share of what was planned that was eaten."""
    by_evening: dict[tuple[str, str], dict[str, float]] = {}
    for thing, one, share in _told(session.taught.told()):
        day = one.evening or f"{one.when:%Y-%m-%d}"
        name = class_name(thing, session.knowledge)
        by_evening.setdefault((name, day), {})[thing] = share  # what is told again of a food counts
    found: dict[str, list[float]] = {}
    for (name, _), shares in by_evening.items():
        found.setdefault(name, []).append(sum(shares.values()) / len(shares))
    return found


def class_name(thing: str, knowledge: Knowledge) -> str:
    """The class of amounts.toml of a food; `wine` for any wine."""
    poured = thing == ALL_WINES or bool(knowledge.styles_of(thing))
    return WINE if poured else str(class_of(thing, knowledge)["id"])


def _told(told: Sequence[Statement]) -> Iterator[tuple[str, Statement, float]]:
    """Each thing with the share of its plan that was eaten, where both were noted."""
    used: dict[str, float] = {}
    for one in told:
        if one.kind != QUANTITY or len(one.about) != 1:
            continue
        thing, sort = one.about[0], _sort(one.value)
        if sort == USED:
            used[thing] = float(one.value["amount"])
        elif sort == PLANNED and thing in used and float(one.value["amount"]) > 0:
            yield thing, one, used.pop(thing) / float(one.value["amount"])


def _sort(value: Mapping[str, object]) -> str:
    return str(value["unit"]).partition(" ")[2]
