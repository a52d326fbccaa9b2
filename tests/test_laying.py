"""An evening told wholly by talk: courses, wines chosen and taken, what is eaten up, and each step undone."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.notebook import load
from assistant.session import Session
from tests.tables import mains

MENU = "starter is burrata with tomatoes, then mushroom risotto, then roast lamb with rosemary, and tiramisu"
FOUR = ["food/burrata", "food/mushroom-risotto", "food/lamb", "food/tiramisu"]


@pytest.fixture
def prepared(conversation: Session) -> Session:
    """A supper for eight of which nothing more is known."""
    conversation.ask("8 people over Saturday at 7 for supper")
    return conversation


def test_the_day_is_told_back(prepared: Session) -> None:
    said = prepared.ask("plan it").say
    assert "8 guests and Saturday" in said
    assert "at 19:00" in said


def test_courses_come_to_the_table_as_they_are_told(prepared: Session) -> None:
    assert prepared.ask(MENU).intent == "set-table"
    assert mains(prepared) == FOUR
    prepared.ask("and for pudding a pavlova")
    assert mains(prepared) == [*FOUR, "food/pavlova"]


def test_nothing_is_laid_where_no_evening_is_prepared(conversation: Session) -> None:
    conversation.ask(MENU)
    assert conversation.tonight.dishes == ()


@pytest.mark.parametrize("asked", ["what wine for the main, roast lamb?", "which red with the roast lamb"])
def test_a_question_about_a_course_is_no_menu(prepared: Session, asked: str) -> None:
    assert prepared.ask(asked).picks
    assert prepared.tonight.dishes == ()


def test_the_wines_chosen_are_taken(prepared: Session) -> None:
    prepared.ask(MENU)
    chosen = [item.id for item in prepared.ask("which wines should I get").picks]
    assert prepared.ask("take those").intent == "set-table"
    assert list(prepared.tonight.wines) == chosen
    assert mains(prepared) == FOUR


def test_nothing_chosen_nothing_taken(prepared: Session) -> None:
    prepared.ask(MENU)
    prepared.ask("take those")
    assert prepared.tonight.wines == ()


def test_a_plan_is_of_what_stands(prepared: Session) -> None:
    prepared.ask("choose two wines for brie and dark chocolate")
    answer = prepared.ask("plan it")
    assert answer.understood
    assert mains(prepared) == ["food/brie", "food/dark-chocolate-70"]
    assert len(prepared.tonight.wines) == 2


@pytest.mark.parametrize("said", ["take the brie off", "we've run out of brie", "the brie is finished"])
def test_what_is_gone_is_off_the_table(prepared: Session, said: str) -> None:
    prepared.ask("the foods are brie, comte and olives")
    prepared.ask(said)
    assert "food/brie" not in mains(prepared)
    assert len(mains(prepared)) == 2
    prepared.ask("undo")
    assert len(mains(prepared)) == 3


def test_asked_whether_it_is_gone_it_stays(prepared: Session) -> None:
    prepared.ask("the foods are brie, comte and olives")
    prepared.ask("is the brie finished?")
    assert len(mains(prepared)) == 3


def test_steps_are_undone_one_by_one(prepared: Session) -> None:
    prepared.ask("wines: Sancerre, Malbec")
    prepared.ask("two more just turned up")
    assert prepared.tonight.guests == 10
    prepared.ask("undo")
    assert (prepared.tonight.guests, len(prepared.tonight.wines)) == (8, 2)
    prepared.ask("undo")
    assert prepared.tonight.wines == ()


def test_undo_after_a_question_is_about_the_question(prepared: Session) -> None:
    prepared.ask("wines: Sancerre, Malbec")
    prepared.ask("what goes with brie")
    prepared.ask("no oak")
    prepared.ask("undo")
    assert len(prepared.tonight.wines) == 2


@pytest.mark.parametrize("asked", ["what's on the table", "show the table", "what have I got"])
def test_the_table_is_shown_and_not_changed(prepared: Session, asked: str) -> None:
    prepared.ask("wines: Sancerre, Malbec")
    before = prepared.tonight
    assert prepared.ask(asked).say == "On the table: Sancerre and Malbec."
    assert prepared.tonight == before


@pytest.mark.parametrize(
    ("asked", "said"), [("what do I need to buy", "To buy"), ("handout", "--handout"), ("shopping", "To buy")]
)
def test_parts_of_the_plan_are_asked_for_in_a_word(prepared: Session, asked: str, said: str) -> None:
    prepared.ask("wines: Sancerre, Malbec")
    prepared.ask("the foods are brie, comte and olives")
    assert said in prepared.ask(asked).text


def test_a_wine_chosen_is_explained_by_its_dish(prepared: Session) -> None:
    prepared.ask(MENU)
    prepared.ask("which wines should I get")
    answer = prepared.ask("why the cabernet")
    assert answer.say == "Chilean Cabernet: it has grip that rich food softens."
    assert prepared.ask("take those").intent == "set-table"
    assert "wine/chilean-cabernet" in prepared.tonight.wines


@pytest.mark.parametrize(
    ("said", "hour"), [("supper for 8 on Saturday at 7", 19), ("about 10 people Friday at 8", 20)]
)
def test_a_number_of_people_is_no_time(conversation: Session, said: str, hour: int) -> None:
    conversation.ask(said)
    start = conversation.tonight.start
    assert start is not None
    assert start.hour == hour


def test_a_budget_told_is_noted_and_kept_to(prepared: Session) -> None:
    assert "at most 120" in prepared.ask("budget is 120").say
    assert prepared.tonight.budget == 120
    prepared.ask("what goes with brie for 20 people")
    assert prepared.tonight.budget == 120


def test_a_look_at_the_table_does_not_stand_between_a_change_and_its_undoing(prepared: Session) -> None:
    prepared.ask("wines: Sancerre, Malbec")
    prepared.ask("the foods are brie, comte and olives")
    prepared.ask("what's on the table")
    prepared.ask("undo")
    assert prepared.tonight.dishes == ()
    assert len(prepared.tonight.wines) == 2


def test_what_is_put_on_a_dish_is_taken_off_after_a_choice(conversation: Session) -> None:
    for said in ("wine for camembert", "and for the walnuts", "one wine for both of them"):
        conversation.ask(said)
    conversation.ask("what if I drizzle honey on the camembert")
    assert conversation.ask("take that off again").intent == "undo"
    assert conversation.tonight.wines == ()


def test_what_is_kept_is_undone_and_the_table_stays(session: Session, tmp_path: Path) -> None:
    own = Session(session.knowledge, notebook=load(tmp_path / "notebook.ttl"))
    own.ask("wines: Sancerre, Malbec")
    own.ask("my Pecorino is milder")
    own.ask("forget that")
    assert len(own.tonight.wines) == 2


def test_a_food_is_asked_about_among_the_wines_just_chosen(session: Session) -> None:
    session.new_conversation()
    chosen = session.ask("choose four wines for brie, garlic cheddar, stilton and salami")
    picks = {item.id for item in chosen.picks}
    for question in ("what about the garlic one?", "and the stilton?"):
        answer = session.ask(question)
        assert {item.id for item in answer.picks} <= picks, question
    elsewhere = session.ask("what goes with steak")
    assert not {item.id for item in elsewhere.picks} <= picks
    assert session.tonight.wines == ()


@pytest.mark.parametrize("said", ["12 guests", "we are 12 people"])
def test_guests_alone_are_taken_down(conversation: Session, said: str) -> None:
    assert "Noted: 12 guests" in conversation.ask(said).text
    assert conversation.tonight.guests == 12


def test_the_day_and_the_time_are_taken_in_words(conversation: Session) -> None:
    said = conversation.ask("dinner for six on friday at eight").say
    assert "6 guests and Friday" in said
    assert "at 20:00" in said


@pytest.mark.parametrize("said", ["put the tart away, nobody wants it", "take the tart off"])
def test_a_dish_is_meant_by_what_it_was_called(prepared: Session, said: str) -> None:
    prepared.ask("the foods are brie and a mushroom tart")
    assert mains(prepared) == ["food/brie", "food/mushroom-pie"]
    prepared.ask(said)
    assert mains(prepared) == ["food/brie"]


def test_the_first_of_one_wine_asks_for_the_order(prepared: Session) -> None:
    prepared.ask("wines: Sancerre, Amarone, tawny port")
    prepared.ask("does cheese go with red")
    assert prepared.ask("what do I pour first").intent == "pour-order"


@pytest.mark.parametrize("said", ["the amarone has run out", "has the riesling run out"])
def test_a_bottle_that_ran_out_makes_nobody_ill(prepared: Session, said: str) -> None:
    assert prepared.read(said).topics == ()


def test_a_bottle_left_in_the_car_is_no_food_left_out(prepared: Session) -> None:
    assert prepared.read("the sancerre was in the boot of the car all day").topics == ()
    assert prepared.read("the board was out all day with the red").topics == ("left-out",)
    assert prepared.read("they were in the boot of the car all day with the red").topics == ("left-out",)
    assert prepared.read("the brie was in the boot of the car all day").topics == ("left-out",)
    assert prepared.read("the brie and the sancerre were in the car all day").topics == ("left-out",)


def test_a_cuisine_lays_no_dishes(conversation: Session) -> None:
    conversation.ask("six of us on thursday, I'm cooking indian")
    assert (conversation.tonight.guests, mains(conversation)) == (6.0, [])


@pytest.mark.parametrize("said", ["Jo's coming too so 9", "nine of us now"])
def test_guests_are_counted_anew(prepared: Session, said: str) -> None:
    prepared.ask(said)
    assert prepared.tonight.guests == 9.0


def test_how_much_of_a_kind_of_wine_is_asked_in_bottles(prepared: Session) -> None:
    prepared.ask("the foods are brie and salami")
    prepared.ask("which wine for the brie")
    figures = prepared.ask("how much fizz is that").figures
    assert figures["bottles"]["value"] == 1.0
    assert "grams_cheese" not in figures


@pytest.mark.parametrize(
    "typed", ["italian supper saturday, nine of us", "a Thai evening, 9 people, saturday"]
)
def test_a_kitchen_lays_no_dishes(conversation: Session, typed: str) -> None:
    answer = conversation.ask(typed)
    assert conversation.tonight.guests == 9
    assert mains(conversation) == []
    assert "On the table" not in answer.text


@pytest.mark.parametrize(
    "typed",
    ["a cheese and wine tasting on thursday, 18 people", "cheese & wine night saturday at 7, 12 of us"],
)
def test_what_an_evening_is_called_is_no_food(conversation: Session, typed: str) -> None:
    conversation.ask(typed)
    assert conversation.tonight.guests
    assert mains(conversation) == []


LISTED = "prosciutto and melon, pasta alla norma, roast lamb with rosemary, gorgonzola, tiramisu"


@pytest.mark.parametrize("before", ["Ben is coeliac", "nine of us on saturday", "a gavi and a barolo"])
def test_a_list_told_while_an_evening_is_prepared_is_the_menu(conversation: Session, before: str) -> None:
    conversation.ask(before)
    assert conversation.ask(LISTED).intent == "set-table"
    assert len(mains(conversation)) == 5


def test_what_is_on_the_table_is_laid(conversation: Session) -> None:
    conversation.ask("lamb and brie on the table")
    assert mains(conversation) == ["food/lamb", "food/brie"]
    conversation.new_conversation()
    conversation.ask("is lamb with brie on the table nice")
    assert mains(conversation) == []


def test_a_menu_told_lays_every_food_of_it(conversation: Session) -> None:
    conversation.ask("we'll have fino, albariño and rioja")
    conversation.ask("we'll have olives, salted almonds, jamon, patatas bravas, gambas al ajillo, croquetas")
    assert len(mains(conversation)) == 6
    conversation.ask("and chorizo, squid")
    assert mains(conversation)[6:] == ["food/chorizo", "food/squid"]
    conversation.ask("put tapas on the table")
    assert len(mains(conversation)) == 8


@pytest.mark.parametrize(
    "typed",
    [
        "take the tapas off and put on olives, ham and figs",
        "put on olives, ham and figs, and take tapas off",
        "remove the tapas, put on olives, ham and figs instead",
    ],
)
@pytest.mark.parametrize("before", ["the food is tapas", "a gavi and a malbec"])
def test_what_is_put_on_comes_where_something_else_goes(
    conversation: Session, typed: str, before: str
) -> None:
    conversation.ask(before)
    conversation.ask(typed)
    assert mains(conversation) == ["food/mixed-olives", "food/cooked-ham", "food/fig"]
