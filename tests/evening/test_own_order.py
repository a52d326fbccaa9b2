"""A host's own order of pouring is taken or answered in a sentence, and what is poured is poured."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from assistant.session import Session
from tests.tables import poured

POURED = ("wine/cremant", "wine/albarino", "wine/beaujolais", "wine/rioja-reserva", "wine/ruby-port")


@pytest.fixture
def table(session: Session) -> Iterator[Session]:
    """Five wines and nothing to eat."""
    with poured(session, *POURED):
        yield session


@pytest.mark.parametrize(
    ("said", "starts"),
    [
        ("crémant first not the albariño, that's how I do it", "Yes, crémant first"),
        ("port last, ok?", "Yes, ruby port last"),
        ("is that right with the bubbly second", "You can pour crémant second, but then the bubbles"),
        ("can we pour the port at the start", "You can pour ruby port first, but then the drier one"),
    ],
)
def test_the_place_a_host_gives_a_wine_is_answered_in_a_sentence(
    table: Session, said: str, starts: str
) -> None:
    answer = table.ask(said)
    assert answer.say.startswith(starts)
    assert table.talk is None or not table.talk.frame.preferences


def test_the_order_goes_on_from_what_is_poured(table: Session) -> None:
    answer = table.ask("I poured the rioja already, what's next")
    assert answer.say == "After Rioja Reserva, pour ruby port."
    assert "crémant, Albariño and Beaujolais had better gone first" in answer.text


@pytest.mark.parametrize("asked", ["which order", "what order do I pour them", "which do I pour first"])
def test_asked_for_the_order_all_steps_are_told(table: Session, asked: str) -> None:
    answer = table.ask(asked)
    assert answer.say == "Pour crémant first, ruby port last."
    assert answer.text.count("\n") >= len(POURED)


@pytest.mark.parametrize(
    ("said", "starts", "order"),
    [
        ("crémant first, port last", "Yes, just so", POURED),
        (
            "port first, crémant last",
            "You can pour them so, but then",
            ("wine/ruby-port", *POURED[1:4], "wine/cremant"),
        ),
        (
            "albariño first and the crémant second",
            "You can pour them so",
            (POURED[1], POURED[0], *POURED[2:]),
        ),
    ],
)
def test_several_places_are_taken_together(
    table: Session, said: str, starts: str, order: tuple[str, ...]
) -> None:
    answer = table.ask(said)
    assert answer.say.startswith(starts)
    named = [table.knowledge.label(wine) for wine in order]
    assert f"In that order: {', '.join(named[:-1])} and {named[-1]}." in answer.text
