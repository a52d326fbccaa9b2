"""What stands in for what: distance is a distance, and kin come first."""

from __future__ import annotations

import pytest

from assistant.pairing.likeness import alike_foods, alike_wines, unlike
from assistant.session import Session


def test_a_wine_is_like_itself_and_likeness_goes_both_ways(session: Session) -> None:
    one, other = (session.engine.glasses[w] for w in ("wine/chablis", "wine/barolo"))
    assert unlike(one, one, session.knowledge) == 0.0
    assert unlike(one, other, session.knowledge) == unlike(other, one, session.knowledge) > 5.0


@pytest.mark.parametrize(
    ("wine", "kin"),
    [
        ("wine/sancerre", {"grape/sauvignon-blanc"}),
        ("wine/barolo", {"grape/nebbiolo"}),
        ("wine/champagne", {"grape/chardonnay", "grape/pinot-noir"}),
    ],
)
def test_a_wine_of_the_same_grape_comes_first(session: Session, wine: str, kin: set[str]) -> None:
    styles = [w for w, known in session.knowledge.wines.items() if known.type == "Wine"]
    first = alike_wines(wine, styles, session.engine)[0]
    assert kin & set(session.knowledge.wines[first].grapes)
    assert session.knowledge.wines[first].colour == session.knowledge.wines[wine].colour


def test_a_kind_of_the_wine_is_no_stand_in(session: Session) -> None:
    """Who cannot get Champagne cannot get blanc de blancs Champagne either."""
    styles = list(session.knowledge.wines)
    assert "wine/blanc-de-blancs-champagne" not in alike_wines("wine/champagne", styles, session.engine)


@pytest.mark.parametrize(
    ("food", "kind"),
    [("food/brie", "kind/cheese"), ("food/gruyere", "kind/cheese"), ("food/salami", "kind/cured-meat")],
)
def test_a_food_of_the_same_kind_stands_in(session: Session, food: str, kind: str) -> None:
    near = alike_foods(food, session.engine)[:3]
    assert len(near) == 3
    assert all(kind in session.knowledge.broader(f) for f in near)


def test_what_is_out_of_stock_is_not_a_ban_but_the_question(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("no chablis in the shop, what can I pour with oysters instead")
    assert answer.intent == "substitute"
    assert answer.picks
    assert "wine/chablis" not in {item.id for item in answer.picks}
    assert answer.picks[0].verdict in ("strong", "good", "fair")
