"""Asked for a kind of food ("which fish goes with Chablis"), the answer stays within that kind."""

from __future__ import annotations

import pytest

from assistant.session import Session

WITHIN = (
    ("which fish goes with chablis", "kind/fish-food"),
    ("what dessert goes with sauternes", "kind/dessert"),
    ("which nuts go with fino", "kind/nut"),
    ("what meat should i cook for a barolo", "kind/meat"),
    ("which salad goes with sauvignon blanc", "kind/salad-kind"),
    ("which sausage for a riesling", "kind/cooked-sausage"),
    ("which bread goes with champagne", "kind/bread"),
    ("which cheese goes with rioja", "kind/cheese"),
)


@pytest.mark.parametrize(("question", "kind"), WITHIN)
def test_what_is_named_is_of_the_kind_asked_for(session: Session, question: str, kind: str) -> None:
    session.new_conversation()
    answer = session.ask(question)
    assert len(answer.picks) == 3
    for pick in answer.picks:
        assert kind in session.knowledge.broader(pick.id), pick.label


def test_without_a_kind_nothing_is_named_that_does_not_stand_on_a_table_alone(session: Session) -> None:
    session.new_conversation()
    named = session.ask("what food goes with malbec").picks
    beside = [session.knowledge.members(f"kind/{kind}") for kind in ("sauce", "herb-kind", "spice-kind")]
    assert named
    assert {pick.id for pick in named}.isdisjoint(food for members in beside for food in members)
