"""The guests' sheet out of a plan: nothing of prices, of what guests need, or of problems."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Any

from assistant import __version__
from assistant.handout.contents import FoodRow, GuestSheet, Meeting, WineRow
from assistant.handout.hosts import host_lines, told_first
from assistant.handout.words import contents, moment, say, short
from assistant.pairing.score import DISLIKED, LIKED

Parts = Mapping[str, Any]
BEST_FIRST = (*LIKED, "neutral", *DISLIKED)


def guest_sheet(plan: Parts, now: datetime) -> GuestSheet:
    """What a guest reads and writes on. Where no wine is poured, drinks without alcohol are the flight."""
    wines = tuple(_wine(number, row) for number, row in enumerate(plan["flight"], 1))
    drinks = tuple(_drink(number, row) for number, row in enumerate(plan["alcohol_free"], 1))
    labels = tuple(row["drink"] for row in plan["alcohol_free"])
    return GuestSheet(
        title=plan["title"] or say()("page", "untitled"),
        when=moment(plan["start"]),
        wines=wines or drinks,
        foods=tuple(_foods(plan)),
        sober=labels if wines else (),
        flight_sober=not wines,
        hosts=host_lines(plan),
        version=say()("guest", "version", date=moment(now.isoformat(), "day"), version=__version__),
    )


def _wine(number: int, row: Parts) -> WineRow:
    return WineRow(
        number,
        row["wine"],
        row["name"],
        row["style"],
        _pair(row["celsius"]),
        _pair(row["keeps_open_range"]),
        _met(row["loves"], LIKED),
        _met(row["fights"], DISLIKED) or _met(row["would_fight"], DISLIKED, here=False),
        contents(row["allergens_present"], row["allergens_unknown"]),
        row["profile"]["body"],
        row["profile"]["sweetness"],
    )


def _drink(number: int, row: Parts) -> WineRow:
    """A drink without alcohol in the place of a wine."""
    loves = _met({"food": row["food"], "verdict": row["verdict"], "why": ""}, LIKED)
    inside = contents(row["allergens_present"], row["allergens_unknown"])
    return WineRow(number, row["drink"], None, None, None, None, loves, None, inside)


def _met(found: Parts | None, verdicts: Sequence[str], here: bool = True) -> Meeting | None:
    """A friend or foe, where its verdict is one of these."""
    if not found or found["verdict"] not in verdicts:
        return None
    return Meeting(found["food"], found["why"], here)


def _foods(plan: Parts) -> list[FoodRow]:
    """The foods in the order to eat them; without a wine they have no verdicts."""
    rows = {row["food"]: row for row in plan["foods"]}
    judged = {row["food"]: _verdicts(row, plan["chosen"]) for row in plan["pairings"]}
    order = [row["food"] for row in plan["food_order"]] or list(rows)
    return [_food(rows[food], judged.get(food, ())) for food in order]


def _verdicts(row: Parts, wines: Sequence[str]) -> tuple[str, ...]:
    found = told_first(row)
    return tuple(found[wine] for wine in wines)


def _food(row: Parts, verdicts: tuple[str, ...]) -> FoodRow:
    inside = ", ".join(short(row["allergens_present"])) or say()("guest", "none")
    check = ", ".join(short(row["allergens_unknown"])) or say()("guest", "no-check")
    keeps = _pair(row["keeps_days"])
    return FoodRow(row["food"], verdicts, _best(verdicts), inside, check, keeps, row["rests"])


def _best(verdicts: Sequence[str]) -> tuple[int, ...]:
    """The numbers of the wines that do best; none where that is less than fair."""
    best = min(verdicts, key=BEST_FIRST.index, default="")
    return tuple(n for n, verdict in enumerate(verdicts, 1) if verdict == best) if best in LIKED else ()


def _pair(span: Sequence[float] | None) -> tuple[float, float] | None:
    return (span[0], span[1]) if span else None
