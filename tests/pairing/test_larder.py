"""Plates of the larder: kept in a file, the same as composed anew; picked columns hold the same as all."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from assistant.knowledge.store import load
from assistant.pairing.dish import single, table_of
from assistant.pairing.engine import Engine, key_of
from assistant.pairing.larder import larder_plates
from assistant.pairing.plate import plate_of

WINES = ("wine/ruby-port", "wine/chablis", "wine/barolo")


def test_a_plate_from_the_file_is_the_one_composed(tmp_path: Path) -> None:
    knowledge = load(cache=tmp_path)
    written, read = larder_plates(knowledge), larder_plates(knowledge)
    assert [file.name for file in tmp_path.glob("larder-*.json")]
    assert list(read) == list(written) == list(knowledge.of_type("Food", "Kind"))
    for food, plate in read.items():
        assert plate == plate_of(single(food), knowledge), food


def test_a_damaged_file_is_made_anew(tmp_path: Path) -> None:
    knowledge = load(cache=tmp_path)
    whole = larder_plates(knowledge)
    file = next(tmp_path.glob("larder-*.json"))
    file.write_bytes(file.read_bytes()[:-9])
    assert larder_plates(knowledge) == whole


def test_foods_score_the_same_before_and_after_the_larder_is_laid() -> None:
    foods = list(load().of_type("Food", "Kind"))[::40]
    tables = {food: table_of([single(food)]) for food in foods}
    engine = Engine(load())
    before = engine.each(tables, WINES)
    engine.rank_foods(WINES[0], foods)
    after = engine.each(tables, WINES)
    for food in foods:
        assert [(m.wine, m.score, m.path) for m in after[food]] == [
            (m.wine, m.score, m.path) for m in before[food]
        ]


def test_picked_columns_keep_the_order_asked_for() -> None:
    engine = Engine(load())
    engine.rank_foods(WINES[0], ["food/brie"])
    keys = [key_of(food) for food in ("food/salami", "food/brie", "food/salami")]
    picked = engine._laid.picked(keys)
    assert picked.keys == tuple(keys)
    fat = [engine.larder[key].points["fat"] for key in keys]
    assert np.allclose(picked.number("fat"), np.round(fat, 4))
    assert picked.truth("kind", ("kind/cheese",)).tolist() == [False, True, False]
    with pytest.raises(KeyError):
        engine._laid.picked(["food--nothing"])
