"""`she` is who it can be said of, as far as is known; where somebody else may be meant, that is told."""

from __future__ import annotations

import pytest

from assistant.session import Session


def told(session: Session, *turns: str) -> Session:
    """A conversation in which these were said."""
    session.new_conversation()
    for turn in turns:
        session.ask(turn)
    return session


@pytest.mark.parametrize(
    ("turns", "asked", "guest"),
    [
        (("my sister is pregnant", "Tom is vegan"), "can she have brie", "my sister"),
        (("my sister is pregnant", "Tom is vegan"), "can he have brie", "Tom"),
        (("Jo is pregnant", "Tom is vegan", "can he have brie"), "can she have the brie", "Jo"),
        (("my husband is vegan", "Kim is vegan"), "can he have brie", "my husband"),
        (("Jo is vegan", "Tom is vegan", "can Jo have honey"), "can she have brie", "Jo"),
    ],
)
def test_what_is_known_decides(session: Session, turns: tuple[str, ...], asked: str, guest: str) -> None:
    assert told(session, *turns).ask(asked).say == f"Not for {guest}: Brie."


def test_in_doubt_it_is_told_whom_it_was_taken_for(session: Session) -> None:
    answer = told(session, "Jo is vegan", "Tom is vegan").ask("can she have brie")
    assert answer.text.endswith("I took “she” to be Tom; name the guest if it is Jo.")


def test_without_doubt_nothing_is_told_of_it(session: Session) -> None:
    answer = told(session, "my sister is pregnant", "my brother is vegan").ask("can she have brie")
    assert "I took" not in answer.text
    assert answer.say == "Not for my sister: Brie."


def test_of_whom_it_was_said_once_it_is_not_said_otherwise(session: Session) -> None:
    known = told(session, "my sister is pregnant", "Tom is vegan", "can he have brie")
    assert known.ask("can she have the gouda").say.endswith("for my sister: Gouda.")


def test_it_is_nobody_of_whom_it_cannot_be_said(session: Session) -> None:
    assert "brother" not in told(session, "my brother is vegan").ask("can she have brie").text


@pytest.mark.parametrize(
    "asked",
    [
        ("oh and Pete doesnt like bubbles, what does he get instead of the cava for croquetas",),
        ("ok they're here! dave says sherry is for grannies, what do i tell him",),
        ("what do i pour for Pete, he hates sherry",),
        ("Pete doesn't like bubbles", "what does he get instead of the cava"),
    ],
)
def test_who_is_named_and_has_no_need_is_not_the_driver(session: Session, asked: tuple[str, ...]) -> None:
    answers = told(
        session, "foods: olives, croquetas", "wines: fino, rioja, cava", "Lucy is vegan", "Joe is driving"
    )
    texts = [answers.ask(line).text for line in asked]
    assert not any(name in text for name in ("Joe", "Lucy", "fit to drive") for text in texts)


def test_the_driver_is_still_meant_where_he_is_named(session: Session) -> None:
    answers = told(session, "wines: fino, rioja, cava", "Lucy is vegan", "Joe is driving")
    assert answers.ask("joe says he wants a glass of rioja, can he").say == "Not for Joe: Rioja."
