"""What stands in the cells of the guests' sheet in a setting: the same words are measured and printed."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, replace

from assistant.answers.wording import listed, span
from assistant.evening.facts import HAIR
from assistant.handout.contents import FoodRow, GuestSheet, Meeting, WineRow
from assistant.handout.measure import POINT
from assistant.handout.settings import Setting, paper
from assistant.handout.words import data, fahrenheit, say, together

CUT = "…"
BOTH, ONE = 2, 1


@dataclass(frozen=True, slots=True)
class Said:
    """A bold word and what follows it: `Loves` `salami: why`."""

    head: str
    text: str


def clipped(sheet: GuestSheet, most: int) -> GuestSheet:
    """The sheet with every name at most so long; a name that was longer ends in dots."""
    return replace(
        sheet,
        title=cut(sheet.title, most),
        wines=tuple(_cut_wine(wine, most) for wine in sheet.wines),
        foods=tuple(replace(food, label=cut(food.label, most)) for food in sheet.foods),
        sober=tuple(cut(drink, most) for drink in sheet.sober),
    )


def cut(text: str, most: int) -> str:
    """At most so many letters."""
    return text if len(text) <= most else text[: most - 1].rstrip() + CUT


def _cut_wine(wine: WineRow, most: int) -> WineRow:
    loves, fights = (replace(m, food=cut(m.food, most)) if m else None for m in (wine.loves, wine.fights))
    name = cut(wine.name, most) if wine.name else None
    return replace(wine, label=cut(wine.label, most), name=name, loves=loves, fights=fights)


def flight_columns() -> list[float]:
    """The widths of the table of wines in mm."""
    return [share * paper().width for share in data("columns")["flight"]]


def food_columns(sheet: GuestSheet, setting: Setting) -> list[float]:
    """The widths of the table of foods in mm: food, one for each wine or the best wine, and the rest."""
    columns, wide = data("columns"), paper().width
    if not verdicts_shown(sheet, setting):
        return [share * wide for share in columns["short"]]
    one = columns["verdict"] * setting.table * POINT + 2 * columns["side"]
    food, *others = (share * (wide - one * len(sheet.wines)) for share in columns["foods"])
    return [food, *[one] * len(sheet.wines), *others]


def food_heads(sheet: GuestSheet, setting: Setting) -> list[str]:
    """The heads of the table of foods."""
    ends = [say()("guest", name) for name in ("item", "contains", "check", "keeps")]
    if not verdicts_shown(sheet, setting):
        return [ends[0], say()("guest", "best"), *ends[1:]]
    return [ends[0], *(say()("guest", "with-wine", number=wine.number) for wine in sheet.wines), *ends[1:]]


def verdicts_shown(sheet: GuestSheet, setting: Setting) -> bool:
    """Whether each wine has a column of its own: where the columns leave enough for the rest."""
    one = data("columns")["verdict"] * setting.table * POINT + 2 * data("columns")["side"]
    return setting.verdicts and not sheet.flight_sober and one * len(sheet.wines) <= paper().width / 2 + HAIR


def wine_lines(wine: WineRow, setting: Setting) -> list[str]:
    """What stands below the name on the label: the wine, its style, how warm it is served."""
    found = [*([wine.label] if wine.name else []), *([wine.style] if wine.style else [])]
    if wine.celsius:
        name = "degrees-both" if setting.fahrenheit else "degrees"
        warm = together(*(fahrenheit(degrees) for degrees in wine.celsius))
        found.append(say()("guest", name, celsius=together(*wine.celsius), fahrenheit=warm))
    return [", ".join(found)] if setting.run and found else found


def met_lines(wine: WineRow, setting: Setting) -> list[Said]:
    """A friend and a foe, with as many reasons as the setting has room for."""
    loves = _met(wine.loves, setting.why >= ONE) if wine.loves else say()("guest", "no-love")
    fights = _met(wine.fights, setting.why >= BOTH) if wine.fights else say()("guest", "no-fight")
    return [Said(say()("guest", "loves"), loves), Said(say()("guest", "fights"), fights)]


def _met(met: Meeting, why: bool) -> str:
    name = (
        ("because" if met.here else "not-here")
        if why and met.why
        else ("plain" if met.here else "not-here-plain")
    )
    return say()("guest", name, food=met.food, why=met.why)


def note_labels(setting: Setting) -> list[str]:
    """What is asked for on each line to write on."""
    usual = ("smell", "taste", "with-food")
    if setting.notes >= len(usual):
        return [say()("guest", name) for name in usual]
    few = ("smell-taste", "with-food") if setting.notes > 1 else ("all-notes",)
    return [say()("guest", name) for name in few]


def best_of(food: FoodRow, sheet: GuestSheet) -> str:
    """The best wine by name, several by number, for the table without verdicts."""
    if food.rests:
        return say()("guest", "rests")
    if len(food.best) > 1:
        return _called(food.best, len(sheet.wines) + sheet.more_wines)
    return listed(sheet.named(food.best)) or say()("guest", "best-none")


def keeps_of(food: FoodRow) -> str:
    """How many days what is left of a food keeps."""
    return span(*food.keeps) if food.keeps else say()("guest", "keeps-none")


def below_foods(sheet: GuestSheet) -> list[str]:
    """What the host adds; what the wines contain and how they keep once open; then what is sober."""
    wines = sheet.wines
    inside = _alike([(wine.number, wine.contains) for wine in wines])
    keep = _alike([(wine.number, span(*wine.keeps)) for wine in wines if wine.keeps])
    told = [
        say()("guest", "wine-contains", wines=_called(numbers, len(wines)), contains=contains)
        for contains, numbers in inside.items()
    ]
    kept = [say()("guest", "open-one", wines=_called(ns, len(wines)), days=days) for days, ns in keep.items()]
    told += [say()("guest", "open", wines="; ".join(kept))] if kept else []
    told = [*sheet.hosts, *told]
    return told + ([say()("guest", "sober", drinks=listed(sheet.sober))] if sheet.sober else [])


def _alike(places: Sequence[tuple[int, str]]) -> dict[str, list[int]]:
    """The numbers of the wines of which the same is said."""
    found: dict[str, list[int]] = defaultdict(list)
    for number, told in places:
        found[told].append(number)
    return found


def _called(numbers: Sequence[int], count: int) -> str:
    if len(numbers) == count > 1:
        return say()("guest", "all-wines")
    name = "some-wines" if len(numbers) == 1 else "some-wines-many"
    return say()("guest", name, numbers=listed([str(n) for n in numbers]))
