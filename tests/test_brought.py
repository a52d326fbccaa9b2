"""Bottles and dishes that come to the table unannounced: some named by their kind alone."""

from __future__ import annotations

import pytest

from assistant.session import Session
from assistant.table.bare_bottles import style_of_kind
from tests.tables import mains

ZINFANDEL, SAUVIGNON, ROSE = "wine/zinfandel", "wine/sauvignon-blanc", "wine/provence-rose"
WHITES = ["late-harvest-riesling", "gruner-veltliner"]
LAID = ["food/sausage", "food/chicken", "food/halloumi", "food/potato-salad"]


@pytest.fixture
def table(conversation: Session) -> Session:
    """Four dishes and two wines."""
    conversation.ask("food is sausages, grilled chicken, halloumi, potato salad")
    conversation.ask("the wines are zinfandel and sauvignon blanc")
    return conversation


@pytest.mark.parametrize(
    ("typed", "wine"),
    [
        ("Karin brought a rosé", ROSE),
        ("someone brought a red", "wine/merlot"),
        ("Karin brought a white", "wine/pinot-grigio"),
        ("someone turned up with a bottle of red", "wine/merlot"),
        ("and Rolf comes with a bottle of orange wine", "wine/macerated-white"),
        ("they brought two bottles of white", "wine/pinot-grigio"),
        ("here's a cava from Tom", "wine/cava"),
        ("there's also a malbec now", "wine/malbec"),
    ],
)
def test_a_bottle_that_is_brought_is_poured(table: Session, typed: str, wine: str) -> None:
    answer = table.ask(typed)
    assert answer.intent == "set-table"
    assert table.tonight.wines == (ZINFANDEL, SAUVIGNON, wine)
    assert "can't use" not in answer.text
    assert mains(table) == LAID


def test_for_what_a_bare_bottle_is_taken_is_told(table: Session) -> None:
    assert "Rosé: taken as Provence rosé" in table.ask("Karin brought a rosé").text
    table.ask("swap the Provence rosé for a Tavel")
    assert table.tonight.wines == (ZINFANDEL, SAUVIGNON, "wine/tavel")
    assert "taken as" not in table.ask("Karin brought a malbec").text


def test_bottles_called_by_kind_are_laid_with_the_others(conversation: Session) -> None:
    conversation.ask("tonight I pour a rosé, a zinfandel and a sauvignon blanc")
    assert conversation.tonight.wines == (ROSE, ZINFANDEL, SAUVIGNON)


@pytest.mark.parametrize(
    "typed",
    [
        "and a white with it",
        "also a white with the chicken",
        "I'd like a red with the sausage",
        "a rosé for the chicken?",
    ],
)
def test_a_kind_that_is_wished_for_is_no_bottle(table: Session, typed: str) -> None:
    table.ask(typed)
    assert table.tonight.wines == (ZINFANDEL, SAUVIGNON)


@pytest.mark.parametrize("kind", ["kind/rose-wine", "kind/red-wine", "kind/sparkling-wine"])
def test_a_kind_is_taken_for_one_of_its_styles(session: Session, kind: str) -> None:
    assert style_of_kind(kind, session.knowledge) in session.knowledge.styles_of(kind)


@pytest.mark.parametrize(
    ("typed", "dishes"),
    [
        ("no halloumi, the shop was out, I got feta", [*LAID[:2], "food/feta", LAID[3]]),
        ("the halloumi is gone, feta instead", [*LAID[:2], "food/feta", LAID[3]]),
        ("feta instead of halloumi", [*LAID[:2], "food/feta", LAID[3]]),
        ("swap the halloumi for feta", [*LAID[:2], "food/feta", LAID[3]]),
        ("forget the halloumi, we got feta", [*LAID[:2], "food/feta", LAID[3]]),
        ("put tofu skewers on for Ines", [*LAID, "food/tofu"]),
        ("there's also coleslaw now", [*LAID, "food/coleslaw"]),
        ("Ines brings a lentil salad", [*LAID, "food/bean-salad"]),
    ],
)
def test_dishes_come_and_go(table: Session, typed: str, dishes: list[str]) -> None:
    answer = table.ask(typed)
    assert mains(table) == dishes
    assert not table.tonight.needs
    assert answer.intent == "set-table"


@pytest.mark.parametrize(
    "typed", ["what if I do feta instead of the halloumi", "is feta better than halloumi"]
)
def test_what_is_asked_changes_no_table(table: Session, typed: str) -> None:
    table.ask(typed)
    assert mains(table) == LAID


def test_who_has_a_food_has_no_need(conversation: Session) -> None:
    conversation.ask("I got feta")
    conversation.ask("Mo has a nut allergy")
    assert [one.guest for one in conversation.tonight.needs] == ["Mo"]


@pytest.mark.parametrize(
    ("typed", "foods", "wines"),
    [
        ("the chicken is lamb now", ["food/sausage", "food/lamb", *LAID[2:]], (ZINFANDEL, SAUVIGNON)),
        ("the sausages will be burgers instead", ["food/hamburger", *LAID[1:]], (ZINFANDEL, SAUVIGNON)),
        ("the halloumi turned into feta", [*LAID[:2], "food/feta", LAID[3]], (ZINFANDEL, SAUVIGNON)),
        ("the zinfandel is a malbec now", LAID, ("wine/malbec", SAUVIGNON)),
    ],
)
def test_what_has_become_something_else_stands_in_its_place(
    table: Session, typed: str, foods: list[str], wines: tuple[str, ...]
) -> None:
    table.ask(typed)
    assert (mains(table), table.tonight.wines) == (foods, wines)


COURSES = "on the table: burrata with tomatoes, prawns with chilli, koftas with tzatziki, lemon tart, cava"


@pytest.mark.parametrize(
    "typed",
    [
        "the baker let us down, no lemon tart, it's a chocolate mousse now",
        "no lemon tart after all, it's a chocolate mousse now",
        "there's no lemon tart, so chocolate mousse it is",
    ],
)
def test_only_the_course_that_fell_through_goes(conversation: Session, typed: str) -> None:
    conversation.ask(COURSES)
    before = conversation.tonight.dishes[:3]
    conversation.ask(typed)
    assert conversation.tonight.dishes[:3] == before
    assert conversation.tonight.dishes[3].main.food == "food/chocolate-mousse"
    conversation.ask("the burrata, prawns and koftas are still on, only the tart changed")
    assert conversation.tonight.dishes[:3] == before
    assert len(conversation.tonight.dishes) == 4


def test_what_goes_on_a_line_that_added_wines_is_added(conversation: Session) -> None:
    for line in (COURSES, "add a prosecco and a gruner veltliner", "and a moscato d'asti for the tart"):
        conversation.ask(line)
    assert conversation.tonight.wines[-1] == "wine/moscato-d-asti"
    assert len(conversation.tonight.wines) == len(conversation.tonight.dishes) == 4
    conversation.ask("and a rioja?")
    assert len(conversation.tonight.wines) == 4


@pytest.mark.parametrize(
    ("typed", "wines"),
    [
        ("wines: cava, merlot, dry rose, zinfandel", ["cava", "merlot", "provence-rose", "zinfandel"]),
        ("tonight we have cava, dry rosé and zinfandel", ["cava", "provence-rose", "zinfandel"]),
        ("tonight we have cava, zinfandel and dry rosé with brie", ["cava", "zinfandel", "provence-rose"]),
        ("the wines are merlot, sweet white and dry white", ["merlot", *WHITES]),
        ("wines: oaky white, a spicy red, a nice rosé", ["oaked-chardonnay", "syrah", "provence-rose"]),
        ("tonight red, white and rosé", ["merlot", "pinot-grigio", "provence-rose"]),
    ],
)
def test_a_bottle_of_a_list_told_by_its_taste_or_colour_is_laid(
    conversation: Session, typed: str, wines: list[str]
) -> None:
    answer = conversation.ask(typed)
    assert conversation.tonight.wines == tuple(f"wine/{wine}" for wine in wines)
    assert "taken as" in answer.text


def test_a_bottle_told_by_its_taste_is_counted_among_those_there(conversation: Session) -> None:
    answer = conversation.ask("tonight we have champagne, dry rosé and zinfandel")
    assert dict(conversation.tonight.owned)[ROSE] == 1
    assert "Dry rosé: taken as Provence rosé" in answer.text


@pytest.mark.parametrize("typed", ["you forgot the rosé", "you left out the rosé", "the rosé is missing"])
def test_what_is_missed_on_the_table_is_laid(table: Session, typed: str) -> None:
    table.ask(typed)
    assert table.tonight.wines == (ZINFANDEL, SAUVIGNON, ROSE)


@pytest.mark.parametrize(
    ("typed", "wines"),
    [
        ("brie, ham and salami tonight, red only", ()),
        ("we have merlot, brie and ham, no white", ("wine/merlot",)),
    ],
)
def test_a_colour_that_limits_is_no_bottle(conversation: Session, typed: str, wines: tuple[str, ...]) -> None:
    conversation.ask(typed)
    assert conversation.tonight.wines == wines
