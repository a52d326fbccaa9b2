"""Needs and dates told by talk stand on tonight's table, and in the plan and the file made of it."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

import pytest

from assistant.evening import kept
from assistant.language.guests import Asked
from assistant.session import Session
from assistant.table.tonight import Tonight


@pytest.fixture
def table(session: Session) -> Iterator[Session]:
    """A session with guests, wines and foods told."""
    session.new_conversation()
    for said in (
        "12 people Saturday at 7, two don't drink",
        "on the table: off-dry Riesling, Pinot Noir",
        "board is brie, salami, almonds",
    ):
        session.ask(said)
    yield session
    session.lay(Tonight())
    session.new_conversation()


def test_a_guest_who_is_allergic_is_told_what_to_keep_away_from(table: Session) -> None:
    answer = table.ask("R. is allergic to nuts")
    assert answer.say == "Noted for R.: allergic to nuts."
    assert "Keep away: almond." in answer.text
    assert answer.left_out == ()
    assert [c["id"] for c in answer.cautions] == ["caution/allergy"]
    assert [(n.guest, n.need) for n in table.tonight.needs] == [("R.", "allergic to nuts")]


def test_a_need_said_twice_stands_once(table: Session) -> None:
    table.ask("Mo is vegetarian")
    table.ask("Mo is vegetarian")
    assert len(table.tonight.needs) == 1


@pytest.mark.parametrize("said", ["the brie is vegan", "is the brie ok, she's pregnant?", "malbec is dry"])
def test_what_is_said_of_food_or_asked_is_no_need(table: Session, said: str) -> None:
    table.ask(said)
    assert table.tonight.needs == ()


def test_the_start_and_the_needs_come_into_the_plan(table: Session) -> None:
    table.ask("my sister is pregnant")
    text = table.ask("plan it").text
    assert "my sister (pregnant)" in text
    assert "19:00  welcome" in text


def test_both_are_saved_and_taken_up_again(
    table: Session, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(kept, "folder", lambda: tmp_path)
    table.ask("Mo is vegetarian")
    assert table.ask("save it as friends").left_out == ()
    saved = tomllib.loads((tmp_path / "friends.toml").read_text("utf-8"))
    assert saved["needs"] == [{"guest": "Mo", "needs": ["vegetarian"]}]
    assert isinstance(saved["start"], datetime)
    assert (saved["start"].hour, saved["start"].weekday()) == (19, 5)
    table.new_conversation()
    table.ask("load friends")
    assert [(n.guest, n.need) for n in table.tonight.needs] == [("Mo", "vegetarian")]
    assert table.tonight.start == saved["start"]


def test_a_new_conversation_forgets_the_guests(table: Session) -> None:
    table.ask("Mo is vegetarian")
    table.new_conversation()
    assert table.tonight.needs == ()


@pytest.mark.parametrize(
    ("said", "noted"),
    [
        ("Zoe is vegan, Mia is pregnant, Ben drives", ["Zoe", "Mia", "Ben"]),
        ("Zoe is vegan, Mia is pregnant, Ben yodels", ["Zoe", "Mia"]),
        ("Zoe is vegan, Ben yodels, Mia is pregnant", ["Zoe", "Mia"]),
        ("Ben drives", ["Ben"]),
        ("Ben drives and Al hums", ["Ben"]),
        ("Ben is driving home tonight", ["Ben"]),
        ("Ben doesn't drink", ["Ben"]),
        ("Ben isn't drinking", ["Ben"]),
        ("Ben is the designated driver", ["Ben"]),
        ("Ben doesn't drink red", ["Ben"]),
        ("Ben isn't vegan", []),
        ("two don't drink", []),
        ("my sister is vegan, red for the curry", []),
        ("who can't have the almonds", []),
        ("I am a doctor, R may have the brie", []),
        ("R forgot to say she's lactose intolerant", ["R"]),
        ("I forgot to mention Mo is coeliac", ["Mo"]),
    ],
)
def test_whose_needs_are_noted(table: Session, said: str, noted: list[str]) -> None:
    table.ask(said)
    assert [need.guest for need in table.tonight.needs] == noted


def test_what_is_not_read_is_named(table: Session) -> None:
    text = table.ask("Zoe is vegan, Mia is pregnant, Ben yodels").text
    assert "Not noted, because I could not read it: Ben yodels." in text


def test_a_guest_is_called_as_before(table: Session) -> None:
    table.ask("R. is pregnant")
    table.ask("R forgot to say she's lactose intolerant")
    assert {need.guest for need in table.tonight.needs} == {"R."}


@pytest.mark.parametrize("said", ["Ben drives", "Ben doesn't drink", "Ben is the designated driver"])
@pytest.mark.parametrize("asked", ["which wine for Ben", "what can Ben drink with salmon"])
def test_a_driver_is_never_poured_wine(table: Session, said: str, asked: str) -> None:
    assert "Keep away: off-dry Riesling and Pinot Noir." in table.ask(said).text
    picks = table.ask(asked).picks
    assert picks
    assert all(pick.id.startswith("drink/") for pick in picks)


def test_who_may_not_have_wine_counts_among_those_without(table: Session) -> None:
    for said in ("Mia is pregnant", "Ben drives"):
        table.ask(said)
        assert table.tonight.non_drinkers == 2  # they may be the two who were counted
    table.ask("Kim doesn't drink")
    assert table.tonight.non_drinkers == 3
    table.ask("Mo is vegetarian")
    assert table.tonight.non_drinkers == 3
    assert "more guests" not in table.ask("plan it").text


def test_they_count_when_the_guests_are_told_after_them(session: Session) -> None:
    session.new_conversation()
    for said in ("Mia is pregnant", "12 people Saturday at 7", "on the table: Pinot Noir", "board is salami"):
        session.ask(said)
    session.ask("plan it")
    assert session.tonight.non_drinkers == 1
    session.new_conversation()


@pytest.mark.parametrize(
    ("said", "guest", "need"),
    [
        ("Igor not drink alcohol", "Igor", "not drink alcohol"),
        ("one friend eats no pig", "one friend", "eats no pig"),
        ("my neighbour Ewa has intolerance for lactose", "my neighbour Ewa", "has intolerance for lactose"),
    ],
)
def test_needs_in_the_words_of_a_second_language(table: Session, said: str, guest: str, need: str) -> None:
    table.ask(said)
    assert Asked(guest, need) in table.tonight.needs


def test_a_guest_told_of_by_more_than_a_name_is_known_by_the_name(table: Session) -> None:
    table.ask("my neighbour Ewa has intolerance for lactose")
    assert table.ask("can Ewa have the brie").say.endswith("for my neighbour Ewa: Brie.")
    table.ask("Ewa is vegan")
    assert {one.guest for one in table.tonight.needs if "Ewa" in one.guest} == {"my neighbour Ewa"}


@pytest.mark.parametrize(
    ("typed", "guest", "need"),
    [
        ("Ruby is the bride, she hates oaky whites", "Ruby", "hates oaky whites"),
        ("Tom is my brother, he can't stand sweet wine", "Tom", "can't stand sweet wine"),
        ("Ruby is the bride and she's vegan", "Ruby", "vegan"),
    ],
)
def test_who_a_guest_is_at_the_party_hides_no_need(
    conversation: Session, typed: str, guest: str, need: str
) -> None:
    conversation.ask("we are nine")
    conversation.ask(typed)
    assert [(one.guest, one.need) for one in conversation.tonight.needs] == [(guest, need)]
