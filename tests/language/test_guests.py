"""What is said of guests, and when the evening starts."""

from __future__ import annotations

from datetime import datetime

import pytest

from assistant.language.guests import all_asked, asked_by
from assistant.language.starting import starts_at

NOW = datetime(2026, 11, 25, 10, 0)  # a Wednesday


@pytest.mark.parametrize(
    ("typed", "guest", "need"),
    [
        ("R. is allergic to nuts", "R.", "allergic to nuts"),
        ("oh and my sister's vegan", "my sister", "vegan"),
        ("two of them are coeliac", "two of them", "coeliac"),
        ("Mo has a nut allergy.", "Mo", "has a nut allergy"),
        ("Anna can't eat dairy", "Anna", "can't eat dairy"),
        ("she is pregnant", "", "pregnant"),
    ],
)
def test_a_guest_and_a_need_are_taken_from_a_statement(typed: str, guest: str, need: str) -> None:
    found = asked_by(typed)
    assert found is not None
    assert (found.guest, found.need) == (guest, need)


@pytest.mark.parametrize(
    "typed",
    [
        "is the brie ok, she is pregnant?",
        "what is tannin",
        "brie",
        "",
        "Malbec is good with what",
        "it has nuts",
    ],
)
def test_a_question_is_no_statement(typed: str) -> None:
    assert asked_by(typed) is None


@pytest.mark.parametrize(
    ("typed", "start"),
    [
        ("12 people Saturday at 7", datetime(2026, 11, 28, 19)),
        ("friday 7.30pm, 8 guests", datetime(2026, 11, 27, 19, 30)),
        ("tomorrow at 19:15", datetime(2026, 11, 26, 19, 15)),
        ("sunday at 11 am, ten of us", datetime(2026, 11, 29, 11)),
        ("wednesday at 8", datetime(2026, 12, 2, 20)),
        ("tonight from 6", datetime(2026, 11, 25, 18)),
        ("saturday at 12:00", datetime(2026, 11, 28, 12)),
    ],
)
def test_the_next_day_of_that_name_is_meant(typed: str, start: datetime) -> None:
    assert starts_at(typed, NOW) == start


@pytest.mark.parametrize("typed", ["12 people", "7 bottles saturday", "at 7", "saturday at 25:00", "tonight"])
def test_neither_day_nor_time_alone_is_a_start(typed: str) -> None:
    assert starts_at(typed, NOW) is None


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("12 of us, two are vegetarian and one is coeliac", [("two", "vegetarian"), ("", "coeliac")]),
        ("R. is allergic to nuts and shellfish", [("R.", "allergic to nuts and shellfish")]),
        ("Mo is vegan, Anna can't eat dairy", [("Mo", "vegan"), ("Anna", "can't eat dairy")]),
        ("Mo is vegan, what wine", []),
        ("I don't eat beef, dinner for malbec", []),
        ("my sister is vegan, red for the curry", []),
    ],
)
def test_a_sentence_may_speak_of_several_guests(typed: str, found: list[tuple[str, str]]) -> None:
    assert [(asked.guest, asked.need) for asked in all_asked(typed)] == found


@pytest.mark.parametrize(
    "typed",
    [
        "one of them is pregnant, that's Nell",
        "somebody is pregnant, it's Nell",
        "One of us is pregnant; thats Nell",
    ],
)
def test_who_is_named_behind_the_need_has_it(typed: str) -> None:
    assert [(asked.guest, asked.need) for asked in all_asked(typed)] == [("Nell", "pregnant")]


def test_who_is_named_behind_goes_with_who_comes_next() -> None:
    told = all_asked("one of them is coeliac, that's Bo, and Tom drives")
    assert [asked.guest for asked in told] == ["Bo", "Tom"]


@pytest.mark.parametrize(
    "typed",
    ["everyone is vegan, it's Monday", "somebody is vegan, it's Friday", "one is vegan. Fine, that's Nell"],
)
def test_no_day_and_nobody_of_another_sentence_has_the_need(typed: str) -> None:
    assert {asked.guest for asked in all_asked(typed)}.isdisjoint({"Monday", "Friday", "Nell", "everyMonday"})
