"""What is made for a need is that guest's if its label says so; a wine with it is a wine."""

from __future__ import annotations

import pytest

from assistant.session import Session

GLUTEN_FREE = "Yes for Ben, if the label says gluten-free"


@pytest.mark.parametrize(
    ("need", "asked", "said"),
    [
        ("ben is coeliac", "ive gf penne for ben, same sauce, ok?", f"{GLUTEN_FREE}: penne."),
        ("ben is coeliac", "can ben have gluten-free pasta", f"{GLUTEN_FREE}: plain pasta."),
        ("mo is vegan", "can mo have vegan brownies", "Yes for Mo, if the label says vegan: brownie."),
        ("ben is coeliac", "can ben have vegan brownies", "Not for Ben: brownie."),
        ("ben is coeliac", "can ben have the penne", "Not for Ben: penne."),
    ],
)  # fmt: skip
def test_the_label_decides(conversation: Session, need: str, asked: str, said: str) -> None:
    conversation.ask(need)
    answer = conversation.ask(asked)
    assert answer.say == said
    assert answer.intent == "safety"


def test_what_touches_it_is_told_of(conversation: Session) -> None:
    conversation.ask("ben is coeliac")
    text = conversation.ask("ive gf penne for ben, same sauce, ok?").text
    assert "own pot, water and spoon" in text
    assert "sauce" in text
    assert "only food labelled gluten-free counts" in text


def test_a_wine_is_chosen_with_what_was_asked_about(conversation: Session) -> None:
    for line in ("ben is coeliac", "can ben have the lamb", "and whats he drink w it"):
        answer = conversation.ask(line)
    assert answer.intent == "wines-for-food"
    assert answer.picks


def test_a_girlfriend_is_no_flour(conversation: Session) -> None:
    conversation.ask("my gf is vegan")
    assert conversation.tonight.needs[0].need == "vegan"
