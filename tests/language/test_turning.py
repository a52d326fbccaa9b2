"""What bans and what wants: a turn before a word, and both ways of making an exception."""

from __future__ import annotations

import pytest

from tests.language.conftest import Parse


@pytest.mark.parametrize(
    ("text", "label"),
    [
        ("anything but red with oysters", "no red wine"),
        ("everything except rosé, with trout", "no rosé"),
        ("any wine but Chardonnay with chicken", "no Chardonnay"),
        ("all but the whites for steak", "no white wine"),
        ("I wouldn't mind anything but red with duck", "no red wine"),
        ("anything but Italian with lamb", "not from Italy"),
        ("what goes with lamb other than Merlot", "no Merlot"),
        ("my husband won't hear of anything but a red, leg of lamb", "red wine"),
        ("he refuses anything other than white wine, trout", "white wine"),
        ("never drinks anything but white, having chicken", "white wine"),
        ("I don't want anything but bubbles with oysters", "sparkling wine"),
        ("she drinks nothing but rosé; salmon tonight", "rosé"),
        ("I can't stand anything but dry wine with prawns", "dry"),
        ("nothing but Italian wine with lamb", "from Italy"),
        ("he drinks nothing from outside France, duck", "from France"),
    ],
)
def test_an_exception_is_banned_or_all_that_is_wanted(parse: Parse, text: str, label: str) -> None:
    frame = parse(text)
    assert frame.intent == "wines-for-food"
    assert [limit.label for limit in frame.preferences] == [label]


@pytest.mark.parametrize(
    ("text", "intent", "label"),
    [
        (
            "my husband hates Riesling, what else could go with a Thai green curry",
            "wines-for-food",
            "no Riesling",
        ),
        ("he can't stand Merlot, could a Syrah go with lamb", "judge-pair", "no Merlot"),
        ("would Brie be fine with Gamay for someone who dislikes Chablis", "judge-pair", "no Chablis"),
    ],
)
def test_what_somebody_hates_is_banned_whatever_is_asked(
    parse: Parse, text: str, intent: str, label: str
) -> None:
    frame = parse(text)
    assert frame.intent == intent
    assert [limit.label for limit in frame.preferences] == [label]


def test_a_question_word_with_letters_swapped_is_no_wine(parse: Parse) -> None:
    frame = parse("waht wine wiht lamb rogan josh")
    assert frame.intent == "wines-for-food"
    assert not frame.preferences


def test_a_food_hates_nothing(parse: Parse) -> None:
    frame = parse("does the blue hate the Sancerre")
    assert frame.wines == ("wine/sancerre",)
    assert not frame.preferences


@pytest.mark.parametrize(
    ("text", "label"),
    [
        ("no something fizzy", "sparkling wine"),
        ("no I want something sweet with brie", "sweet"),
        ("no fizz", "no sparkling wine"),
        ("no red with brie", "no red wine"),
    ],
)
def test_a_no_that_refuses_an_answer_bans_nothing(parse: Parse, text: str, label: str) -> None:
    labels = [limit.label for limit in parse(text).preferences]
    assert all(not one.startswith("no ") for one in labels) or labels == [label]
    assert label.startswith("no ") == any(one.startswith("no ") for one in labels)


def test_red_chile_is_a_sauce_and_no_wine(parse: Parse) -> None:
    frame = parse("the tamales are pork with red chile")
    assert [reading.id for reading in frame.text.readings][-1] == "food/enchilada-sauce"
    assert not frame.preferences
    assert not frame.wines


@pytest.mark.parametrize(
    ("text", "labels"),
    [
        ("I hate oak and bubbles, what with salmon", {"not oaky", "no sparkling wine"}),
        ("he can't stand oak or rosé, duck tonight", {"not oaky", "no rosé"}),
        ("I hate oaky Chardonnay, a red for pizza", {"no oaked Chardonnay", "red wine"}),
        ("I want no oak and something crisp for cod", {"unoaked", "sharp"}),
    ],
)
def test_what_is_hated_too_is_banned_too(parse: Parse, text: str, labels: set[str]) -> None:
    assert {limit.label for limit in parse(text).preferences} == labels
