"""The guests' sheet takes one page, whatever the evening holds."""

from __future__ import annotations

import re
import shutil
import subprocess
from itertools import product
from pathlib import Path
from random import Random
from typing import Any

import pytest

from assistant.handout.figure import figure
from assistant.handout.fit import fitted, sheet_height
from assistant.handout.guest import guest_sheet
from assistant.handout.measure import lines, width
from assistant.handout.page import sheets
from assistant.handout.settings import paper, settings
from tests.handout import browser, made
from tests.handout.made import NOW
from tests.handout.reading import sheet

Plan = dict[str, Any]
WINES, FOODS, LENGTHS = (0, 1, 2, 4, 6, 8, 12, 40), (0, 1, 5, 12, 20, 100), (0, 30, 200)
SEEDS = range(10)


def some(seed: int) -> Plan:
    """A plan of any size."""
    random = Random(seed)
    return made.plan(random, random.choice(WINES), random.choice(FOODS), random.choice(LENGTHS))


@pytest.mark.parametrize(("wines", "foods"), list(product(WINES, FOODS)))
def test_the_reckoned_height_keeps_to_the_page(wines: int, foods: int) -> None:
    for longest in LENGTHS:
        found = fitted(guest_sheet(made.plan(Random(wines + foods), wines, foods, longest), NOW))
        assert sheet_height(found.sheet, found.setting) <= paper().height


def test_what_finds_no_room_is_told() -> None:
    plan = made.plan(Random(3), wines=40, foods=100)
    guest = sheet(sheets(plan, NOW), "guest")
    rows = [len(table.all("tbody")[0].all("b", "name")) for table in guest.all("table")][:1]
    assert f"and {40 - rows[0]} more: ask the host" in guest.text
    assert "and 100 more: see their cards" in guest.text


def test_six_wines_and_twenty_foods_are_all_there() -> None:
    for seed in SEEDS:
        found = fitted(guest_sheet(made.plan(Random(seed), wines=6, foods=20), NOW))
        assert (found.sheet.more_wines, found.sheet.more_foods) == (0, 0)


def test_settings_go_from_generous_to_close() -> None:
    for before, after in zip(settings(), settings()[1:], strict=False):
        assert after.body <= before.body
        assert after.table <= before.table
        assert after.why <= before.why
        assert after.figure <= before.figure


def test_a_small_evening_is_set_larger_than_a_full_one() -> None:
    small, full = (fitted(guest_sheet(made.plan(Random(5), *n), NOW)) for n in ((2, 3), (6, 20)))
    assert small.setting.table > full.setting.table
    assert small.line > full.line


def test_lines_to_write_on_are_high_enough_to_write_on() -> None:
    assert min(setting.line for setting in settings()) >= 5.0


@pytest.mark.parametrize(
    ("text", "room", "count"), [("", 10.0, 1), ("a b", 100.0, 1), ("aaaa aaaa", 12.0, 2)]
)
def test_lines_of_text(text: str, room: float, count: int) -> None:
    assert lines(text, room, 12.0) == count


def test_a_long_word_is_broken() -> None:
    assert lines("m" * 100, 50.0, 12.0) >= width("m" * 100, 12.0) / 50.0


def test_poles_never_run_through_a_name() -> None:
    for seed in range(40):
        wines = guest_sheet(made.plan(Random(seed), 6, 3), NOW).wines
        drawn = figure(wines, 92.0, 11.0, named=True)
        assert drawn is not None
        for line in drawn.lines:
            for flag, other in product(line.flags, line.flags):
                if other is flag or other.y < flag.y or (other.x, other.y) == (flag.x, flag.y):
                    continue
                end = flag.x + width(f"{flag.number} {flag.name}", 11.0, bold=True)
                assert not flag.x < other.x <= end


@browser.needs_browser
def test_heights_as_a_browser_measures_them(demo: Plan, tmp_path: Path) -> None:
    plans = [demo, *map(some, SEEDS), *(made.plan(Random(seed), 6, 20) for seed in SEEDS)]
    told = browser.measured([sheets(plan, NOW) for plan in plans], tmp_path)
    assert [round(row["height"], 1) for row in told if row["height"] > paper().height] == []
    assert [row["wide"] for row in told if row["wide"]] == []
    assert min(row["height"] for row in told) > paper().height / 3


@browser.needs_browser
@pytest.mark.parametrize("size", list(browser.PAPERS))
@pytest.mark.parametrize("many", [False, True])
def test_printed_on_paper(demo: Plan, size: str, many: bool, tmp_path: Path) -> None:
    """The first page is the guests' and theirs alone; the host's sheet begins on the second."""
    plan = made.plan(Random(8), 6, 20) if many else demo
    pages = _printed(browser.pdf(sheets(plan, NOW), size, tmp_path))
    assert "My rule of tonight" in pages[0]
    assert "Advice, not law" in pages[0]
    assert "For the host only" in pages[1]
    assert [n for n, page in enumerate(pages) if "My rule of tonight" in page] == [0]
    for row in plan["foods"] if many else ():
        assert row["food"].split()[0] in pages[0]


def _printed(pdf: Path) -> list[str]:
    """The text of each page, as poppler finds it; its size is checked on the way."""
    program = shutil.which("pdftotext")
    if program is None:
        pytest.skip("no pdftotext is installed to read the print with")
    done = subprocess.run([program, "-layout", pdf, "-"], capture_output=True, encoding="utf-8", timeout=60)
    assert done.returncode == 0
    return [re.sub(r"[ \u00a0]+", " ", page) for page in done.stdout.split("\f")]
