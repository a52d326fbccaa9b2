"""The guests' sheet on one page: the most generous setting in which everything fits, measured first."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial

from assistant.handout import cells
from assistant.handout.contents import FoodRow, GuestSheet, WineRow
from assistant.handout.figure import Figure, figure
from assistant.handout.measure import POINT, height, lines, width
from assistant.handout.settings import Setting, paper, settings
from assistant.handout.words import data, principles, say

RULE = 2.2  # lines of body type for the guest's own rule
BORDER = 0.4  # mm, the lines of a table
HEAD = 0.3  # mm, the thicker line below heads
BULLET = 6.0  # mm, the numbers before the principles
MOST_LINE = 11.0  # mm: higher lines to write on look empty
HAIR = 0.05
SMALL = 9.0  # pt, of the date of the sheet
NAMES = 2  # the figure with names


@dataclass(frozen=True, slots=True)
class Fitted:
    """The sheet as it is printed: `high` is its least height in mm.

    `line` and `tall` are the heights of a line to write on, on the lower and on the taller paper.
    """

    sheet: GuestSheet
    setting: Setting
    line: float
    tall: float
    high: float


def fitted(sheet: GuestSheet) -> Fitted:
    """The sheet in the first setting that holds all of it; else in the last, with less and that told."""
    for setting in settings():
        found = _in(cells.clipped(sheet, setting.most), setting)
        if found.high <= paper().height:
            return found
    return _shortened(cells.clipped(sheet, settings()[-1].most), settings()[-1])


def _in(sheet: GuestSheet, setting: Setting) -> Fitted:
    """Spare room goes to the lines to write on."""
    high = sheet_height(sheet, setting)
    line, tall = (_line(sheet, setting, room - high) for room in (paper().height, paper().tall))
    return Fitted(sheet, setting, line, tall, high)


def _line(sheet: GuestSheet, setting: Setting, spare: float) -> float:
    """The height of a line to write on, with its share of the room to spare."""
    each = max(spare, 0.0) / max(setting.notes * len(sheet.wines), 1)
    return max(setting.line, round(min(MOST_LINE, setting.line + each) - HAIR, 1))


def _shortened(sheet: GuestSheet, setting: Setting) -> Fitted:
    """Foods that find no room are left to their cards, then wines to the host."""
    foods, wines = len(sheet.foods), len(sheet.wines)
    sheet = _with_foods(sheet, _most(foods, 0, partial(_with_foods, sheet), setting))
    if sheet_height(sheet, setting) > paper().height:
        sheet = _with_wines(sheet, _most(wines, 1, partial(_with_wines, sheet), setting))
    return _in(sheet, setting)


def _most(count: int, least: int, kept: Callable[[int], GuestSheet], setting: Setting) -> int:
    """How many of so many find room on the sheet that keeps them, at least so few."""
    fewer, room = range(count - least + 1), paper().height  # how many are left away
    away = bisect_left(fewer, True, key=lambda n: sheet_height(kept(count - n), setting) <= room)
    return count - min(away, max(count - least, 0))


def _with_foods(sheet: GuestSheet, count: int) -> GuestSheet:
    away = len(sheet.foods) - count
    return replace(sheet, foods=sheet.foods[:count], more_foods=sheet.more_foods + away)


def _with_wines(sheet: GuestSheet, count: int) -> GuestSheet:
    away = len(sheet.wines) - count
    return replace(sheet, wines=sheet.wines[:count], more_wines=sheet.more_wines + away)


def sheet_height(sheet: GuestSheet, setting: Setting) -> float:
    """The height of all parts and of the gaps between them, in mm, rather too high than too low."""
    parts = [
        _head(sheet, setting),
        flight_height(sheet, setting),
        _middle(sheet, setting),
        foods_height(sheet, setting),
        _foot(sheet, setting),
    ]
    return sum(parts) + setting.gap * (len(parts) - 1)


def _head(sheet: GuestSheet, setting: Setting) -> float:
    """The title, and beside it or below it the date."""
    beside = width(sheet.when, setting.body) + setting.body * POINT
    if width(sheet.title, setting.title, bold=True) + beside <= paper().width:
        return _high(1, setting.title, setting)
    title = _high(lines(sheet.title, paper().width, setting.title, bold=True), setting.title, setting)
    return title + _high(1, setting.body, setting)


def flight_height(sheet: GuestSheet, setting: Setting) -> float:
    """The table of wines with its caption and its heads."""
    rows = [_wine_height(wine, setting) for wine in sheet.wines]
    more = _row(1, setting) if sheet.more_wines else 0.0
    return _caption(setting) + _row(1, setting) + HEAD + sum(rows) + more


def _wine_height(wine: WineRow, setting: Setting) -> float:
    rooms = [column - 2 * data("columns")["side"] for column in cells.flight_columns()]
    named = lines(f"{wine.number} {wine.name or wine.label}", rooms[0], setting.body, bold=True)
    below = sum(lines(text, rooms[0], setting.table) for text in cells.wine_lines(wine, setting))
    left = _high(named, setting.body, setting) + _high(below, setting.table, setting)
    said = (f"{met.head} {met.text}" for met in cells.met_lines(wine, setting))
    middle = _high(
        sum(lines(text, rooms[1], setting.table, bold=True) for text in said), setting.table, setting
    )
    return max(left, middle, setting.notes * setting.line) + 2 * setting.pad + BORDER


def foods_height(sheet: GuestSheet, setting: Setting) -> float:
    """The table of foods with its caption and heads, and what stands below it."""
    rooms = [column - 2 * data("columns")["side"] for column in cells.food_columns(sheet, setting)]
    rows = [_food_height(food, sheet, setting, rooms) for food in sheet.foods]
    below = (lines(text, paper().width, setting.table) for text in cells.below_foods(sheet))
    under = _high(sum(below), setting.table, setting)
    more = _row(1, setting) if sheet.more_foods else 0.0
    found = zip(cells.food_heads(sheet, setting), rooms, strict=True)
    head = _row(max(lines(text, room, setting.table) for text, room in found), setting) + HEAD
    heads = _caption(setting) + head if sheet.foods or sheet.more_foods else 0.0
    return heads + sum(rows) + more + under + setting.gap / 2


def _food_height(food: FoodRow, sheet: GuestSheet, setting: Setting, rooms: list[float]) -> float:
    texts = [food.label, *food_cells(food, sheet, setting)]
    bold = [True, *[False] * (len(texts) - 1)]
    found = [lines(t, r, setting.table, b) for t, r, b in zip(texts, rooms, bold, strict=True)]
    return _row(max(found), setting)


def food_cells(food: FoodRow, sheet: GuestSheet, setting: Setting) -> list[str]:
    """What stands behind the name of a food: verdicts or the best wine, what is in it, how it keeps."""
    inside = (food.contains, food.check, cells.keeps_of(food))
    if not cells.verdicts_shown(sheet, setting):
        return [cells.best_of(food, sheet), *inside]
    verdicts = food.verdicts or ("",) * len(sheet.wines)
    return [*verdicts[: len(sheet.wines)], *inside]


def _middle(sheet: GuestSheet, setting: Setting) -> float:
    """The figure; beside it the principles; the guest's own rule below the lower of the two."""
    rule = _high(RULE, setting.body, setting) + setting.gap / 2
    said, drawn = _beside(sheet, setting)
    return max(said, drawn + rule) if rule_left(sheet, setting) else max(said + rule, drawn)


def rule_left(sheet: GuestSheet, setting: Setting) -> bool:
    """Whether the guest's own rule stands below the figure, where that is the lower of the two."""
    said, drawn = _beside(sheet, setting)
    return 0.0 < drawn < said


def _beside(sheet: GuestSheet, setting: Setting) -> tuple[float, float]:
    """The heights of the principles and of the figure."""
    drawn = drawing(sheet, setting)
    room = paper().width - (figure_width() + data("columns")["between"] if drawn else 0.0) - BULLET
    texts = principles() if setting.principles else ()
    said = _high(sum(lines(text, room, setting.body) for text in texts), setting.body, setting)
    return (_caption(setting) + said if texts else 0.0), (drawn.height if drawn else 0.0)


def drawing(sheet: GuestSheet, setting: Setting) -> Figure | None:
    """The figure of the setting, where it has one."""
    if not setting.figure or sheet.flight_sober:
        return None
    return figure(sheet.wines, figure_width(), setting.table, setting.figure == NAMES)


def figure_width() -> float:
    """How wide the figure is, in mm."""
    return float(paper().width * data("columns")["figure"] - data("columns")["between"] / 2)


def _foot(sheet: GuestSheet, setting: Setting) -> float:
    care = lines(say()("guest", "care"), paper().width, setting.body)
    return _high(care, setting.body, setting) + _high(
        lines(sheet.version, paper().width, SMALL), SMALL, setting
    )


def _high(count: float, points: float, setting: Setting) -> float:
    return height(count, points, setting.leading)


def _caption(setting: Setting) -> float:
    return _high(1, setting.body, setting) + POINT


def _row(count: float, setting: Setting) -> float:
    return _high(count, setting.table, setting) + 2 * setting.pad + BORDER
