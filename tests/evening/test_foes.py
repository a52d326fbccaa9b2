"""A food off the table that fights a wine, for what nothing on the table does."""

from __future__ import annotations

import pytest

from assistant.evening.foes import foes, usual_foes
from assistant.evening.plan import plan
from assistant.pairing.engine import Engine
from assistant.pairing.score import DISLIKED
from assistant.session import Session
from tests.evening import made

WINES = ("off-dry Riesling", "brut sparkling", "Pinot Noir", "Malbec", "Sauternes", "fino sherry")


def test_every_usual_foe_is_a_food(engine: Engine) -> None:
    foods = engine.knowledge.of_type("Food")
    assert [food for food in usual_foes() if food not in foods] == []


@pytest.mark.parametrize("wine", WINES)
def test_a_foe_hurts_its_wine(session: Session, wine: str) -> None:
    (line,) = made.evening(session, wines=[wine]).wines
    food, match = foes([line], session.engine)[wine]
    assert food in usual_foes()
    assert match.verdict in DISLIKED


def test_each_wine_has_a_foe_of_its_own(session: Session) -> None:
    found = foes(made.evening(session, wines=WINES).wines, session.engine)
    assert len({food for food, _ in found.values()}) == len(WINES)


def test_named_only_where_nothing_on_the_table_fights(session: Session) -> None:
    evening = made.evening(session, wines=("Malbec", "off-dry Riesling"), foods=("oysters", "brie"))
    rows = plan(evening, session)["flight"]
    assert {bool(row["fights"]) for row in rows} == {True, False}
    for row in rows:
        assert bool(row["fights"]) != bool(row["would_fight"])
