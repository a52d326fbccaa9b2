"""What is eaten hot: when it goes in the oven or on the stove, and when it is on the table."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import groupby

from assistant.answers.wording import listed
from assistant.evening.facts import Row, amount, fact, rows, tables, wording
from assistant.evening.outside import late, limit_minutes
from assistant.evening.records import Evening, FoodLine
from assistant.knowledge.store import Knowledge
from assistant.pairing.dish import Dish

ROAST = "roast"
Told = tuple[datetime, str, dict[str, str]]


@dataclass(frozen=True, slots=True)
class Hot:
    """A hot dish, how it is made hot (a row of clock.toml) and when it is on the table."""

    label: str
    row: Row
    at: datetime

    @property
    def lead(self) -> float:
        """Minutes before it is on the table in which it is warmed or baked, and rests."""
        return amount(self.row["minutes"]).typical + amount(self.row["rest"]).typical


def hot_row(dish: Dish, knowledge: Knowledge) -> Row | None:
    """How a dish is made hot; None for what is eaten cold, or made at once on the stove."""
    foods = {part.food.removeprefix("food/") for part in dish.parts}
    kinds = {kind.removeprefix("kind/") for kind in knowledge.broader(dish.main.food)}
    methods = set(dish.main.methods)
    for row in rows("clock", "hot"):
        cooked = "methods" not in row or methods & {f"method/{name}" for name in row["methods"]}
        if foods.intersection(row["foods"]) or (kinds.intersection(row["kinds"]) and cooked):
            return row
    return None


def is_main(line: FoodLine, knowledge: Knowledge) -> bool:
    """Whether a food of the evening is the meal and no bite."""
    return any((row := hot_row(dish, knowledge)) and "main" in row for dish in line.dishes)


def hot_dishes(evening: Evening, pours: Sequence[datetime], knowledge: Knowledge) -> list[Hot]:
    """The hot dishes of an evening whose wines are poured then, those first that are first on the table."""
    found = []
    for line in evening.foods if evening.start else ():
        row = next((row for dish in line.dishes if (row := hot_row(dish, knowledge))), None)
        if row:
            found.append(Hot(line.label, row, _served(line, row, evening, pours, knowledge)))
    return sorted(found, key=lambda hot: (hot.at, -hot.lead))


def _served(
    line: FoodLine, row: Row, evening: Evening, pours: Sequence[datetime], knowledge: Knowledge
) -> datetime:
    """When a dish is on the table: as told, else with the last wine that goes with such a dish."""
    start = evening.start or datetime.min
    if line.served:
        return datetime.combine(start.date(), line.served)
    sweet = {f"kind/{kind}" for kind in tables("clock")["meal"]["after"]}
    dry = [
        at
        for wine, at in zip(evening.wines, pours, strict=True)
        if not sweet & set(knowledge.broader(wine.wine))
    ]
    fitting = pours if "sweet" in row else dry or pours
    return late(max(fitting, default=start))


def ends(hot: Sequence[Hot], last: datetime) -> datetime:
    """When the last wine is poured and the last hot dish is eaten."""
    eaten = timedelta(minutes=fact("clock", "meal", "eaten").typical)
    return max([last, *(one.at + eaten for one in hot)])


def hot_moments(hot: Sequence[Hot], room: float) -> Iterator[Told]:
    """When hot dishes go in, rest, are on the table and must be gone: moment, template, its fields."""
    for (at, lead, _), together in groupby(hot, key=lambda one: (one.at, one.lead, one.row["id"])):
        some = list(together)
        foods, row, limit = listed([one.label for one in some]), some[0].row, limit_minutes(room)
        yield at - timedelta(minutes=lead), *heating(foods, row)
        if rest := amount(row["rest"]).typical:
            yield at - timedelta(minutes=rest), "hot-out", {"foods": foods, "minutes": f"{rest:g}"}
        yield at, "hot-on", {"foods": foods}
        yield at + timedelta(minutes=limit), "hot-away", {"foods": foods, "minutes": f"{limit:g}"}


def heating(foods: str, row: Row) -> tuple[str, dict[str, str]]:
    """The template that tells how foods are made hot, and its fields."""
    minutes = amount(row["minutes"])
    told = {"low": f"{minutes.low:g}", "minutes": f"{minutes.typical:g}", "high": f"{minutes.high:g}"}
    name = "hot-in-roast" if row["id"] == ROAST else "hot-in"
    return name, {"foods": foods, "place": wording()("hot-place", row["where"]), **told}
