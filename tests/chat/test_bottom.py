"""The bottom line: what stands, as much as the terminal is wide."""

from __future__ import annotations

from pathlib import Path

import pytest
from prompt_toolkit.utils import get_cwidth

from assistant.chat.bottom import Standing, bottom_line, standing
from assistant.chat.words import chat_words
from assistant.evening.table import set_table
from assistant.knowledge.files import corpus_dir
from assistant.session import Session
from assistant.table.tonight import Tonight

WINES = ("brut sparkling", "off-dry Riesling", "Pinot Noir", "Malbec")
ALL = Standing(WINES, ("Brie",), "garlic cheddar", ("white wine",))
KEY = chat_words()("bottom", "key")


def line(width: int, now: Standing = ALL) -> str:
    return bottom_line(now, chat_words(), width)


@pytest.mark.parametrize("now", [ALL, Standing(WINES), Standing(dish="Käsespätzle 奶酪" * 4)])
def test_it_is_never_wider_than_the_terminal(now: Standing) -> None:
    assert all(0 < get_cwidth(line(width, now)) <= width for width in range(1, 201))


def test_wide_it_says_all_and_tells_of_the_key() -> None:
    assert all(part in line(200) for part in (*WINES, "garlic cheddar", "white wine", KEY))


def test_the_narrower_the_less_and_the_dish_longest() -> None:
    assert KEY not in line(105)
    assert "Malbec" in line(105)
    assert "Malbec" not in line(85)
    assert "+3" in line(85)
    assert line(30) == "With garlic cheddar"
    assert line(10) == "With garl…"


def test_where_nothing_stands_there_is_none() -> None:
    assert line(80, Standing()) == ""
    assert line(80, Standing(foods=("Brie",))) == ""


def test_it_follows_the_talk(conversation: Session) -> None:
    assert standing(conversation) == Standing()
    conversation.ask("what goes with garlic cheddar, nothing oaky")
    now = standing(conversation)
    assert now.dish == "garlic cheddar"
    assert len(now.limits) == 1
    conversation.new_conversation()
    assert standing(conversation) == Standing()


def test_it_names_the_evening_on_the_table(conversation: Session) -> None:
    set_table(conversation, Path(corpus_dir() / "evenings" / "quay-house.toml"))
    try:
        now = standing(conversation)
    finally:
        conversation.lay(Tonight())
    assert now.wines == WINES
    assert "garlic cheddar" in now.foods


FOODS = ("garlic cheddar", "Brie", "salami", "almond", "plain cracker")
BOARD = Standing(WINES, FOODS, "garlic cheddar, Brie, salami, almond and plain cracker", (), FOODS)


@pytest.mark.parametrize("width", range(80, 181))
def test_a_full_board_is_shortened_so_that_tonight_and_the_key_stay(width: int) -> None:
    found = line(width, BOARD)
    assert get_cwidth(found) <= width
    assert found.startswith("With garlic cheddar")
    assert "Tonight: brut sparkling" in found
    assert found.endswith(KEY)


def test_of_a_board_foods_go_before_wines() -> None:
    assert "With garlic cheddar +4" in line(105, BOARD)
    assert "Malbec" in line(105, BOARD)
    assert "plain cracker" in line(180, BOARD)


def test_a_board_that_stands_is_told_food_by_food(conversation: Session) -> None:
    conversation.new_conversation()
    conversation.ask("wines for brie, salami and almonds")
    now = standing(conversation)
    assert len(now.dishes) == 3
    assert all(name in now.dish for name in now.dishes)
    conversation.new_conversation()
