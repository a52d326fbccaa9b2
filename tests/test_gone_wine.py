"""A wine that came off the table: what does best in its place is named, of the table or of the list."""

from __future__ import annotations

import pytest

from assistant.evening.table import set_table
from assistant.knowledge.files import corpus_dir
from assistant.pairing.dish import table_of
from assistant.session import Session
from assistant.stock.opening import open_list

DEMO = corpus_dir() / "evenings" / "quay-house.toml"
BOTTLES = corpus_dir() / "evenings" / "quay-house-bottles.csv"


@pytest.fixture
def evening(session: Session) -> Session:
    """A conversation of its own with the demo evening on the table."""
    own = Session(session.knowledge)
    set_table(own, DEMO)
    return own


@pytest.mark.parametrize(
    ("said", "gone"),
    [
        ("the malbec is corked, what do I pour instead", "wine/malbec"),
        ("we ran out of the bubbly, what now", "wine/brut-sparkling"),
        ("the riesling is empty, what can I serve now", "wine/off-dry-riesling"),
    ],
)
def test_what_does_best_in_its_place_is_named(evening: Session, said: str, gone: str) -> None:
    before = evening.tonight
    answer = evening.ask(said)
    stay = [wine for wine in before.wines if wine != gone]
    assert evening.tonight.wines == tuple(stay)
    each = [evening.engine.rank(table_of([dish], [1.0]), before.wines)[0].wine for dish in before.dishes]
    its = [dish for dish, best in zip(before.dishes, each, strict=True) if best == gone] or before.dishes
    named = next(wine for wine in stay if f"pour {evening.knowledge.label(wine)} in its place" in answer.say)
    best = evening.engine.rank(table_of(list(its), [1.0] * len(its)), stay)
    verdicts = {match.wine: match.verdict for match in best}
    assert verdicts[named] == best[0].verdict
    assert "the best the table has" in answer.text


def test_of_a_list_what_does_better_and_another_of_the_same_are_told(evening: Session) -> None:
    open_list(evening, BOTTLES)
    corked = evening.ask("the malbec is corked, what do I pour instead").text
    assert "Better still, open" in corked
    assert "Another of the same: Three Lanterns" in corked
    assert "Another of the same" not in evening.ask("we ran out of the bubbly, what now").text


def test_where_nothing_is_asked_only_the_table_is_told(evening: Session) -> None:
    assert evening.ask("the riesling is finished").say.startswith("On the table")


SPOILT = "the chianti is corked I think, it smells of wet cardboard"


@pytest.fixture
def supper(session: Session) -> Session:
    """A conversation with three bottles on the table."""
    own = Session(session.knowledge)
    own.ask("wines: Gavi, Barbera d'Asti and Chianti Classico")
    return own


def test_a_corked_bottle_is_not_poured_again(supper: Session) -> None:
    assert "Off the table: Chianti Classico" in supper.ask(SPOILT).text
    answer = supper.ask("so what do we pour with the lamb instead")
    assert answer.picks[0].id == "wine/barbera-d-asti"
    assert "wine/chianti-classico" not in {item.id for item in answer.picks}


def test_another_bottle_of_it_comes_back_to_the_table(supper: Session) -> None:
    supper.ask(SPOILT)
    supper.ask("another bottle of Chianti Classico")
    assert "wine/chianti-classico" in supper.tonight.wines


@pytest.mark.parametrize("asked", ["is the chianti corked?", "how do I tell if the chianti is corked"])
def test_a_bottle_that_is_only_asked_about_stays(supper: Session, asked: str) -> None:
    supper.ask(asked)
    assert "wine/chianti-classico" in supper.tonight.wines


def test_a_bottle_that_may_still_be_poured_stays(supper: Session) -> None:
    supper.ask("the gavi smells of vinegar")
    assert "wine/gavi" in supper.tonight.wines
