"""What is asked of wines chosen together, and of the dishes on the table by their short names."""

from __future__ import annotations

import pytest

from assistant.session import Session

BOARD = "the board is brie, manchego, stilton, prosciutto, salami, cornichons, grapes and walnuts"
MENU = "the menu is thai green curry with prawns, sea bass in beurre blanc and chocolate fondant"


def said(session: Session, *turns: str) -> list[str]:
    """The wines picked at the last of some turns."""
    for turn in turns[:-1]:
        session.ask(turn)
    return [item.id for item in session.ask(turns[-1]).picks]


def mains(session: Session) -> list[str]:
    assert session.talk is not None
    return [dish.main.food for dish in session.talk.frame.dishes]


def test_a_question_of_amounts_leaves_the_board_as_it_is(conversation: Session) -> None:
    board = ["food/brie", "food/manchego", "food/salami", "food/walnut"]
    turns = ["8 guests on saturday at 7", "the board is brie, manchego, salami and walnuts"]
    said(conversation, *turns, "how much cheese per person", "choose three wines for the board")
    assert mains(conversation) == board
    conversation.ask("take those")
    assert [dish.main.food for dish in conversation.tonight.dishes] == board
    assert len(conversation.tonight.wines) == 3
    conversation.ask("plan it")
    assert [dish.main.food for dish in conversation.tonight.dishes] == board


def test_the_board_is_what_is_on_the_table(conversation: Session) -> None:
    said(conversation, BOARD, "what goes with the brie", "choose three wines for the board")
    assert len(mains(conversation)) == 8


def test_a_wine_is_explained_for_what_it_was_chosen_for(conversation: Session) -> None:
    conversation.ask(BOARD)
    chosen = conversation.ask("choose four wines for it")
    line = next(line for line in chosen.text.splitlines() if line.startswith("1."))
    conversation.ask("why the first one")
    named = [conversation.knowledge.label(food) for food in mains(conversation)]
    assert all(name in line for name in named)
    assert "Brie" in named


def test_the_second_one_is_explained_for_no_side(conversation: Session) -> None:
    said(conversation, BOARD, "choose four wines for it", "why the second one")
    assert mains(conversation) == ["food/stilton"]


def test_the_order_is_that_of_all_wines_chosen(conversation: Session) -> None:
    chosen = said(conversation, BOARD, "choose four wines for it")
    conversation.ask("why the second one")
    assert conversation.read("in what order do I pour").wines == tuple(chosen)


@pytest.mark.parametrize(
    ("asked", "food", "parts"),
    [
        ("which wine with the curry", "food/shrimp", 2),
        ("which wine with the fish", "food/sea-bass", 2),
        ("and the dessert?", "food/chocolate-fondant", 1),
        ("what goes with the fondant", "food/chocolate-fondant", 1),
    ],
)
def test_a_dish_of_the_menu_is_meant_by_its_name_or_kind(
    conversation: Session, asked: str, food: str, parts: int
) -> None:
    assert said(conversation, MENU, "which wine with the sea bass", asked)
    assert conversation.talk is not None
    (dish,) = conversation.talk.frame.dishes
    assert (dish.main.food, len(dish.parts)) == (food, parts)


def test_what_is_not_on_the_menu_is_itself(conversation: Session) -> None:
    said(conversation, MENU, "which wine with the lamb")
    assert mains(conversation) == ["food/lamb"]


def test_why_that_one_is_of_the_wine_chosen_for_the_dish(conversation: Session) -> None:
    chosen = said(conversation, "courses: cod with lemon butter and chocolate mousse", "choose two wines")
    assert said(conversation, "why that one with the cod") == chosen[:1]
    assert conversation.talk is not None
    assert len(conversation.talk.frame.dishes[0].parts) == 2
    assert said(conversation, "why that one with the mousse") == chosen[1:]
    assert mains(conversation) == ["food/chocolate-mousse"]


@pytest.mark.parametrize(
    ("asked", "left"),
    [
        ("what if I leave out the second wine", [0, 2]),
        ("what if I leave out the last one", [0, 1]),
        ("what if I leave out the Barbera", [0, 2]),
    ],
)
def test_one_wine_is_left_out_of_a_choice(conversation: Session, asked: str, left: list[int]) -> None:
    board = "the board is brie, manchego, stilton, prosciutto"
    chosen = said(conversation, board, "choose three wines for it")
    assert "barbera" in chosen[1]
    assert said(conversation, asked) == [chosen[at] for at in left]


def test_fewer_wines_are_chosen_again(conversation: Session) -> None:
    said(conversation, "choose three wines for brie, salami and dark chocolate", "what if we only had two")
    assert len(mains(conversation)) == 3
    assert conversation.talk is not None
    assert len(conversation.talk.picks) == 2
