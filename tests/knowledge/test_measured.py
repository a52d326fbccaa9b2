"""How much of what is said of foods was measured, and that it is what the named row of the table says."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from assistant.knowledge.concepts import Amount
from assistant.knowledge.digest import Digest
from assistant.knowledge.files import ontology_dir
from assistant.knowledge.measure import COLUMNS, main, read_table, spreads
from assistant.knowledge.store import shipped

REFERENCE = Path(__file__).parents[1] / "reference"
TABLES = (REFERENCE / "usda_fooddata_central.csv", REFERENCE / "food_ph.csv")
ROWS = read_table(TABLES[0])
DIGEST = shipped().digest
FOODS = shipped().of_type("Food")
FLOOR = 0.60
TRACE = 1.0
"""Parts of at most this many grams in 100 g are passed over when a dish is counted."""


def measured(food: str, digest: Digest) -> bool:
    """Whether fat, sugar, sodium and protein are all measured: its own, or those of all its parts."""
    entry = digest[food]
    own = [entry[name][0].basis == "measured" for name in COLUMNS if name in entry]
    if own or not entry.get("part"):
        return len(own) == len(COLUMNS) and all(own)
    parts = [part["food"][0] for part in entry["part"] if part["share"][0] > TRACE]
    return all(measured(part, digest) for part in parts)


def measured_lines() -> list[tuple[str, str, Amount]]:
    """Every amount of the four that names a composition row: food, quantity, amount."""
    said = [(food, name) for food in FOODS for name in COLUMNS if name in DIGEST[food]]
    amounts = [(food, name, DIGEST[food][name][0]) for food, name in said]
    return [(food, name, found) for food, name, found in amounts if found.basis == "measured"]


def test_three_foods_in_five_are_measured() -> None:
    counted = [food for food in FOODS if measured(food, DIGEST)]
    assert len(counted) / len(FOODS) >= FLOOR


def test_a_dish_counts_only_when_its_parts_do() -> None:
    assert measured("food/vinaigrette", DIGEST)
    oil = {k: v for k, v in DIGEST["food/olive-oil"].items() if k != "sodium"}
    assert not measured("food/vinaigrette", DIGEST | {"food/olive-oil": oil})


def test_own_words_beside_a_recipe_do_not_count() -> None:
    judged = DIGEST["food/vinaigrette"] | {"fat": DIGEST["food/mascarpone"]["fat"]}
    assert not measured("food/vinaigrette", DIGEST | {"food/vinaigrette": judged})


def test_every_measured_line_is_what_its_row_says() -> None:
    lines = measured_lines()
    assert len(lines) > 2500
    wrong = [
        (food, name, found.row)
        for food, name, found in lines
        if found.typical != pytest.approx(float(ROWS[found.row or ""][COLUMNS[name]]), abs=0.0006)
    ]
    assert not wrong


def test_a_line_names_the_row_of_its_food() -> None:
    lines = measured_lines()
    assert not [(food, name) for food, name, found in lines if DIGEST[food]["fdcRow"] != [found.row]]


def test_the_importer_finds_nothing_to_change(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    copies = [shutil.copy(file, tmp_path) for file in sorted((ontology_dir() / "data").glob("*.ttl"))]
    before = [Path(copy).read_text("utf-8") for copy in copies]
    assert main([*map(str, TABLES), "--write", *map(str, copies)]) == 0
    assert [Path(copy).read_text("utf-8") for copy in copies] == before
    assert "differs from the table" not in capsys.readouterr().out


def test_the_importer_mends_a_wrong_number(tmp_path: Path) -> None:
    file = Path(shutil.copy(ontology_dir() / "data" / "dressings.ttl", tmp_path))
    right = file.read_text("utf-8")
    wrong = right.replace("gw:typical 57.85 ;", "gw:typical 75.85 ;", 1)
    assert wrong != right
    file.write_text(wrong, "utf-8")
    main([*map(str, TABLES), "--write", str(file)])
    assert file.read_text("utf-8") == right


def test_the_ranges_around_a_measured_value_are_judged_in_the_ontology() -> None:
    known = shipped().constants
    assert spreads() == {name: known[f"spread-{name}"] for name in COLUMNS}
    assert {tuple(shipped().entry(f"constant/spread-{name}")["source"]) for name in COLUMNS} == {
        ("source/judged",)
    }
