"""What a host said a food tastes of is tasted from then on, wherever the food is kept ready."""

from __future__ import annotations

import pytest

from assistant.knowledge.store import shipped
from assistant.pairing.dish import single, table_of
from assistant.pairing.engine import Engine, key_of

BRIE, WINE = "food/brie", "wine/sauternes"


@pytest.fixture
def engine() -> Engine:
    """An engine of its own, whose larder and rankings have been looked at."""
    made = Engine(shipped())
    assert made.larder[key_of(BRIE)].points["sugar"] < 1.0
    made.rank_foods(WINE, [BRIE])
    return made


def test_the_larder_follows_what_is_heeded_and_forgets_it_again(engine: Engine) -> None:
    plain = engine.larder[key_of(BRIE)].points
    engine.heed({BRIE: {"sugar": 30.0}})
    assert engine.larder[key_of(BRIE)].points["sugar"] > plain["sugar"] + 2.0
    assert engine.plate(single(BRIE)).points["sugar"] == engine.larder[key_of(BRIE)].points["sugar"]
    engine.heed({})
    assert engine.larder[key_of(BRIE)].points == plain


def test_foods_for_a_wine_are_ranked_by_what_is_heeded(engine: Engine) -> None:
    ((_, before),) = engine.rank_foods(WINE, [BRIE])
    engine.heed({BRIE: {"sugar": 30.0}})
    ((_, after),) = engine.rank_foods(WINE, [BRIE])
    assert after.total != before.total
    assert after.total == pytest.approx(engine.judge(table_of([single(BRIE)]), WINE).score)
