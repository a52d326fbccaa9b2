"""A kind of food is never cleared as a whole: what of it is for a guest is told, and what is not."""

from __future__ import annotations

import pytest

from assistant.session import Session


@pytest.mark.parametrize(
    ("needs", "before", "asked", "no", "yes"),
    [
        ("Lia is pregnant", "wine for tiramisu", "what dessert can lia have", "tiramisu", "apple pie"),
        ("Ben is coeliac", "tiramisu and moscato", "so what dessert for ben", "tiramisu", "fruit salad"),
        ("Lucia is pregnant", "hello", "can lucia have fish", "smoked salmon", "sea bass"),
        ("Mo is vegan", "hello", "can mo have dessert", "pecan pie", "poached pear"),
    ],
)  # fmt: skip
def test_some_of_a_kind_are_named_with_their_verdict(
    conversation: Session, needs: str, before: str, asked: str, no: str, yes: str
) -> None:
    for line in (needs, before, asked):
        answer = conversation.ask(line)
    away, may = (next(x for x in answer.text.splitlines() if word in x) for word in ("Not for", "may have"))
    assert no in away
    assert yes in may
    assert "name yours" in answer.text


def test_of_a_kind_the_foods_of_the_table_are_looked_at(conversation: Session) -> None:
    for line in ("Jo is pregnant", "the board is brie, gouda and ham", "which cheeses are ok for jo"):
        answer = conversation.ask(line)
    assert answer.say == "Not for Jo: Brie."
    assert "for Jo: Gouda." in answer.text
    assert "ham" not in answer.text


def test_a_kind_named_is_not_what_was_asked_before(conversation: Session) -> None:
    for line in ("Lucia is pregnant", "can lucia have bread", "what cheese is ok for lucia"):
        answer = conversation.ask(line)
    assert "Camembert" in answer.text
    assert "bread" not in answer.text


def test_a_kind_whose_members_are_all_alike_is_told_as_a_whole(conversation: Session) -> None:
    conversation.ask("Tom has a nut allergy")
    assert conversation.ask("can tom have nuts").say == "Not for Tom: nut."


ITALIAN = (
    "Lucia is pregnant",
    "the board is gorgonzola, taleggio, pecorino, parmesan, bresaola and tiramisu",
)


def test_the_other_cheeses_are_those_not_asked_about(conversation: Session) -> None:
    asked = (
        "can lucia have the pecorino",
        "and the parmesan on the bresaola?",
        "what about the other two cheeses",
    )
    for line in (*ITALIAN, *asked):
        answer = conversation.ask(line)
    assert answer.say == "Not for Lucia: Gorgonzola and Taleggio."


@pytest.mark.parametrize("cheese", ["Parmesan", "Pecorino", "Gruyère", "Comté"])
def test_hard_cheeses_are_all_asked_about_and_none_is_called_raw_milk_to_leave(
    conversation: Session, cheese: str
) -> None:
    conversation.ask("Lucia is pregnant")
    answer = conversation.ask(f"can lucia have {cheese}")
    assert answer.say == f"Ask or read the label first for Lucia: {cheese}."
    assert "hard cheese" in answer.text
    assert "nothing made from it" not in answer.text


@pytest.mark.parametrize("food", ["Brie de Meaux", "Parmesan with Brie de Meaux", "Roquefort"])
def test_a_soft_raw_milk_cheese_is_still_ruled_out(conversation: Session, food: str) -> None:
    conversation.ask("Lucia is pregnant")
    answer = conversation.ask(f"can lucia have {food}")
    assert answer.say.startswith("Not for Lucia")
    assert "nothing made from it" in answer.text


def test_the_first_answer_is_short_and_why_tells_all(conversation: Session) -> None:
    for line in (*ITALIAN, "what can lucia have"):
        answer = conversation.ask(line)
    assert len(answer.text.splitlines()) < 12
    assert "Tiramisu: contains alcohol and raw or lightly cooked egg." in answer.text
    whole = conversation.ask("why")
    assert all(caution["text"] in whole.text for caution in answer.cautions)


def test_vegan_cheeses_are_named_and_none_comes_to_the_table(conversation: Session) -> None:
    conversation.ask("priya is vegan")
    answer = conversation.ask("what vegan cheese could i get priya")
    assert "cashew cheese" in answer.text
    assert "Not for Priya" not in answer.text
    assert not conversation.tonight.dishes


@pytest.mark.parametrize(
    "asked", ["swap the walnuts for something tom can eat", "what can i put out instead of the walnuts"]
)
def test_what_stands_in_is_for_the_guest(conversation: Session, asked: str) -> None:
    for line in ("tom has a nut allergy", "the board is brie and walnuts", asked):
        answer = conversation.ask(line)
    assert "comes nearest to walnut" in answer.text
    for pick in answer.picks:
        assert conversation.ask(f"can tom have {pick.label}").say.startswith("Tom may have")
