"""Rules that a glass rules out are left out of the run: nothing that would fire is lost by it."""

from __future__ import annotations

import pytest

from assistant.pairing.engine import Engine
from assistant.pairing.glass_asks import glass_ask
from assistant.pairing.shelf import glass_quads
from assistant.session import Session

EVERY = 9


def test_only_what_speaks_of_the_glass_alone_is_asked() -> None:
    where = """{
  ?plate a gw:Plate ; plate:salt ?salt .
  FILTER(?salt > 2.0)
  $this glass:tannin ?tannin ; glass:oak ?oak .
  FILTER(?tannin > 1.2)
  FILTER(?tannin > ?salt)
  FILTER NOT EXISTS { $this glass:smells aroma:lees }
}"""
    asked = glass_ask(where)
    assert "FILTER(?tannin > 1.2)" in asked
    assert "?salt" not in asked
    assert "lees" not in asked


def test_every_ninth_wine_fires_the_same_rules_with_and_without(session: Session) -> None:
    engine: Engine = session.engine
    for wine in sorted(engine.glasses)[::EVERY]:
        glass = engine.glasses[wine]
        whole = engine._runner.run_on(engine._larder_shelf, glass_quads([glass]), engine.larder)
        pruned = engine._runner.run_for(glass, engine._larder_shelf, engine.larder)
        assert [f[:5] for f in pruned] == [f[:5] for f in whole], wine


@pytest.mark.parametrize("wine", ["wine/chablis", "wine/ruby-port", "wine/barolo"])
def test_some_rules_are_ruled_out(session: Session, wine: str) -> None:
    session.engine.rank_foods(wine, ["food/brie"])
    possible = session.engine._runner._possible[wine]
    assert 20 < len(possible) < len(session.engine._runner._queries)
