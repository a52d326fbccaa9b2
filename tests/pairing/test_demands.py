"""Rules that a plate rules out are not run: nothing that would fire is lost by it."""

from __future__ import annotations

from dataclasses import replace

from assistant.pairing.demands import Bound, demands_of, offer_of
from assistant.pairing.rules import _firings, _table
from assistant.pairing.shelf import plate_quads
from assistant.session import Session
from tests.pairing.made import plate

WHERE = """{
  ?plate a gw:Plate ; plate:trait trait:tomato ; plate:salt ?salt ; plate:heat ?heat .
  FILTER(?salt > 2.0)
  $this glass:tannin ?tannin .
  FILTER(?tannin > 1.2)
  BIND(?heat - ?salt AS ?over)
  FILTER(?over > 0.5)
  FILTER NOT EXISTS { ?plate plate:trait trait:cream ; plate:fat ?fat . FILTER(?fat < 3.0) }
}"""
EVERY = 23


def test_links_and_bounds_of_the_outermost_pattern_are_asked_and_nothing_else() -> None:
    demands = demands_of(WHERE)
    assert demands.links == {"trait/tomato"}
    assert demands.bounds == (Bound("salt", ">", 2.0),)


def test_a_plate_offers_its_traits_kinds_and_course_together() -> None:
    made = replace(plate(["trait/tomato"], salt=2.34567), kinds=("kind/cheese", "kind/food"))
    offer = offer_of(made)
    assert offer.links == {"trait/tomato", "kind/cheese", "kind/food", "course/savoury"}
    assert offer.points["salt"] == 2.3457


def test_bounds_hold_as_the_store_compares() -> None:
    assert not Bound("salt", ">", 2.0).holds({"salt": 2.0})
    assert Bound("salt", ">=", 2.0).holds({"salt": 2.0})
    assert Bound("salt", "<", 2.0).holds({"salt": 1.9999})
    assert not Bound("salt", "<=", 2.0).holds({"salt": 2.0001})
    assert Bound("salt", ">", 2.0).holds({})


def test_every_so_many_foods_fire_the_same_rules_with_and_without(session: Session) -> None:
    engine = session.engine
    for key in sorted(engine.larder)[::EVERY]:
        plate = engine.larder[key]
        with engine._cellar_shelf.with_facts(plate_quads({key: plate})) as store:
            for query in engine._runner._queries:
                if not query.demands.met_by(offer_of(plate)):
                    assert not list(_firings(query, _table(query, store))), (key, query.rule)


def test_bounds_rule_out_a_good_part_of_the_rules(session: Session) -> None:
    engine = session.engine
    offer = offer_of(engine.plate_of_food("food/brie"))
    asked = [q for q in engine._runner._queries if q.demands.met_by(offer)]
    assert 15 < len(asked) < len(engine._runner._queries) / 2
