"""What hosts say in between: waiting, where the talk stood, what comes next, guests counted anew."""

from __future__ import annotations

import pytest

from assistant.session import Session

CREMANT, GRUNER, BEAUJOLAIS = "wine/cremant", "wine/gruner-veltliner", "wine/beaujolais"


@pytest.fixture
def table(conversation: Session) -> Session:
    """Eight guests on Friday, three wines, three foods; the Brie was just asked about."""
    conversation.ask("we are eight on friday at seven")
    conversation.ask("the wines are crémant, Grüner Veltliner, Beaujolais")
    conversation.ask("the board: smoked salmon, brie, ham")
    conversation.ask("what goes with the brie")
    return conversation


@pytest.mark.parametrize("typed", ["hang on, phone", "one second", "wait", "stop"])
def test_who_waits_is_waited_for(table: Session, typed: str) -> None:
    assert table.ask(typed).say == "I wait."
    assert [dish.main.food for dish in table.talk.frame.dishes] == ["food/brie"] if table.talk else False


@pytest.mark.parametrize("typed", ["where were we", "what were we talking about"])
def test_where_the_talk_stood_is_told(table: Session, typed: str) -> None:
    answer = table.ask(typed)
    assert answer.say == "We were at Brie."
    assert "Tonight: crémant, Grüner Veltliner and Beaujolais." in answer.text


@pytest.mark.parametrize(
    "typed", ["what's pouring next", "which one next", "what do we pour next", "what comes next"]
)
def test_what_is_poured_next_is_told_by_the_order(table: Session, typed: str) -> None:
    assert table.ask(typed).say == "Pour crémant first, Beaujolais last."


@pytest.mark.parametrize("typed", ["why is the crémant first", "why's the beaujolais last"])
def test_why_a_wine_stands_there_is_no_pairing(table: Session, typed: str) -> None:
    assert "by custom bubbles open" in table.ask(typed).say


@pytest.mark.parametrize(
    "typed", ["what do I say about the grüner", "what can I tell people about the grüner"]
)
def test_what_to_tell_of_a_wine_is_what_it_is_like(table: Session, typed: str) -> None:
    assert table.ask(typed).say == "Grüner Veltliner: dry, light, acidity fresh."


@pytest.mark.parametrize("typed", ["what do I buy", "what should I get in", "shopping list"])
def test_what_to_buy_for_a_table_is_the_list(table: Session, typed: str) -> None:
    assert table.ask(typed).text.startswith("To buy")


def test_what_to_buy_without_a_table_is_a_wine(conversation: Session) -> None:
    conversation.ask("we're having duck")
    assert conversation.ask("what should I buy").picks


@pytest.mark.parametrize(
    ("typed", "guests"),
    [
        ("someone dropped out, seven now", 7),
        ("make it ten", 10),
        ("we're nine now", 9),
        ("brie out since 7, 10 now", 8),
        ("60 euros now", 8),
        ("one more then", 8),
    ],
)
def test_guests_are_counted_anew(table: Session, typed: str, guests: int) -> None:
    answer = table.ask(typed)
    assert table.tonight.guests == guests
    assert len(answer.text.splitlines()) < 20


def test_how_a_name_is_said_is_not_known(table: Session) -> None:
    answer = table.ask("how do you pronounce Grüner Veltliner")
    assert not answer.understood
    assert "cannot tell" in answer.say


def test_when_all_wines_were_named_no_limit_is_blamed(table: Session) -> None:
    assert table.ask("anything else").say != "No wine I know keeps to that limit."


@pytest.mark.parametrize(
    "typed",
    [
        "what with the ham, no the brie",
        "what with the ham, sorry, the brie",
        "which for the ham, i mean the brie",
    ],
)
def test_the_last_named_counts_in_a_slip_of_the_tongue(table: Session, typed: str) -> None:
    answer = table.ask(typed)
    assert answer.text == table.ask("what goes with the brie").text


def test_what_is_left_off_is_no_slip(table: Session) -> None:
    assert "cooked ham" in table.ask("and ham, no cheese").text


def test_what_goes_with_it_is_asked_of_what_stands(table: Session) -> None:
    table.ask("tell me about the crémant")
    assert table.ask("what does it go with").intent == "foods-for-wine"
    table.ask("which wine with the ham")
    assert table.ask("what does it go with").picks[0].id.startswith("wine/")


def test_how_much_of_it_is_asked_of_the_wine_that_stands(table: Session) -> None:
    table.ask("tell me about the crémant")
    assert table.ask("how sweet").say.startswith("Crémant: dry")


def test_who_comes_and_when_is_noted(conversation: Session) -> None:
    answer = conversation.ask("bbq in the garden saturday at six, six neighbours")
    assert answer.intent == "plan"
    assert conversation.tonight.guests == 6
    assert conversation.tonight.start is not None
