"""A party told of in passing: how many have which need, and what there is to spend."""

from __future__ import annotations

import pytest

from assistant.language.guests import Asked
from assistant.session import Session

PARTIES = [
    ("we are eight on saturday, two vegetarians, budget 120", 8, [("2 guests", "vegetarian")], 120),
    ("six people, £90", 6, [], 90),
    (
        "we're 10, 2 veggie, one is coeliac",
        10,
        [("2 guests", "vegetarian"), ("one guest", "coeliac")],
        None,
    ),
    ("nine of us tonight, three vegans, 150 quid to spend", 9, [("3 guests", "vegan")], 150),
    ("there are two vegetarians", None, [("2 guests", "vegetarian")], None),
    ("eight guests, brie and salami on the board, one gluten free", 8, [("one guest", "gluten free")], None),
    ("budget is 120", None, [], 120),
    ("eight, two vegetarians", 8, [("2 guests", "vegetarian")], None),
    (
        "ten on friday, one vegan and two coeliacs",
        10,
        [("one guest", "vegan"), ("2 guests", "coeliac")],
        None,
    ),
]


@pytest.mark.parametrize(("said", "guests", "needs", "budget"), PARTIES, ids=[p[0] for p in PARTIES])
def test_a_party_is_taken_down(
    session: Session, said: str, guests: int | None, needs: list[tuple[str, str]], budget: int | None
) -> None:
    session.new_conversation()
    answer = session.ask(said)
    tonight = session.tonight
    assert (tonight.guests, tonight.budget) == (guests, budget)
    assert tonight.needs == tuple(Asked(*need) for need in needs)
    assert all(f"{guest} {need}" in answer.text.replace(":", "") for guest, need in needs)
    assert budget is None or f"at most {budget}" in answer.text
    assert not {"budget", "vegetarians", "vegans", "veggie"}.intersection(answer.left_out)


@pytest.mark.parametrize(
    "said",
    [
        "what can the two vegetarians have",
        "is the brie fine for two vegetarians",
        "what goes with a vegan burger",
        "pick two vegetarian dishes for syrah",
    ],
)
def test_a_question_takes_nothing_down(session: Session, said: str) -> None:
    session.new_conversation()
    session.ask(said)
    assert session.tonight.needs == ()


def test_so_many_vegetarians_are_not_all_guests(session: Session) -> None:
    session.new_conversation()
    session.ask("we are eight on saturday")
    session.ask("two vegetarians")
    assert session.tonight.guests == 8
    assert session.tonight.needs == (Asked("2 guests", "vegetarian"),)


def test_a_wine_is_asked_for_and_the_party_noted_besides(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("brie for six people, two vegans, which wine")
    assert answer.intent == "wines-for-food"
    assert answer.picks
    assert "Noted: 6 guests and 2 guests vegan." in answer.text


@pytest.mark.parametrize(
    "turns",
    [
        ("eight of us, two vegetarians", "Jo is vegetarian", "Tom is vegan"),
        ("Jo is vegetarian", "Tom is vegan", "eight of us, two vegetarians"),
        ("Tom is vegan", "eight of us, two vegetarians", "Jo is veggie"),
    ],
)
def test_who_is_counted_may_be_named_before_or_after(session: Session, turns: tuple[str, ...]) -> None:
    session.new_conversation()
    for turn in turns:
        assert session.ask(turn).understood
    guests = {(asked.guest, asked.need.replace("veggie", "vegetarian")) for asked in session.tonight.needs}
    assert guests == {("one other guest", "vegetarian"), ("Jo", "vegetarian"), ("Tom", "vegan")}


def test_when_all_who_are_counted_are_named_nobody_is_left_over(session: Session) -> None:
    session.new_conversation()
    for turn in ("nine people, two vegans", "Ann is vegan", "Bo is vegan", "Cy is vegan"):
        session.ask(turn)
    assert [asked.guest for asked in session.tonight.needs] == ["Ann", "Bo", "Cy"]


@pytest.mark.parametrize("first", ["eight people", "Ann drives"])
def test_a_driver_takes_no_wine_whenever_the_guests_are_counted(session: Session, first: str) -> None:
    session.new_conversation()
    for turn in (first, "eight people" if first == "Ann drives" else "Ann drives"):
        session.ask(turn)
    assert (session.tonight.guests, session.tonight.non_drinkers) == (8, 1)


def test_a_party_told_is_noted_before_the_cautions_of_it(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("eight, two vegetarians and one coeliac")
    assert answer.say.startswith("Noted: 8 guests")
    assert answer.cautions
    assert all(one["text"].split(". ")[-1] in answer.text for one in answer.cautions)
