"""How hot it is where the food stands, and what was told to be binned, count for all of the evening."""

from __future__ import annotations

import pytest

from assistant.session import Session

TABLE = "tonight: Champagne, Sauvignon Blanc and Zinfandel; Brie, aged cheddar, pickles, smoked brisket, nuts"
ALL = "Brie, aged cheddar and barbecue brisket"


@pytest.fixture
def table(bare: Session) -> Session:
    """A table with foods that spoil and foods that keep."""
    bare.ask(TABLE)
    return bare


def _last(session: Session, lines: list[str]) -> str:
    return [session.ask(line) for line in lines][-1].text


@pytest.mark.parametrize(
    "said",
    [
        "it's outside, 95 F",
        "it's 95 degrees on the porch here",
        "it's a hundred degrees out here",
        "thermometer says 92",
        "it's 95 out here on the deck",
    ],
)
def test_fahrenheit_is_answered_in_fahrenheit_and_hours_for_all_that_spoils(
    table: Session, said: str
) -> None:
    answer = table.ask(said)
    assert (
        answer.say == f"Above 90 °F what spoils may stand out an hour at most: {ALL}. Since when is it out?"
    )
    assert "caution/left-out" in [record["id"] for record in answer.cautions]


def test_celsius_is_answered_in_celsius(table: Session) -> None:
    assert table.ask("it's 38 degrees in the garden").say.startswith("Above 32 °C what spoils may stand out")
    assert table.ask("it's 30 degrees in the garden").say.startswith(
        "Up to 32 °C what spoils may stand out 2"
    )


@pytest.mark.parametrize(
    ("lines", "starts"),
    [
        (["it's 95 out, how long can the brie stay"], "Above 90 °F what spoils may"),
        (["is the brie still ok, it's boiling out here"], "Above 32 °C (90 °F) what spoils"),
        (["it's 95 out here", "so is the cheese ok"], "Above 90 °F what spoils may"),
        (["it's 95 out here", "so is the cheese ok", "an hour and a half"], "Bin the cheese: 1 h 30 min out"),
        (["it's 95 out here", "40 minutes"], f"Keep the {ALL}: 40 minutes out, good for another 20 minutes."),
        (["the brie's been out for 90 minutes", "it's 95 here on the deck"], "Bin the Brie: 1 h 30 min"),
        (["the brie's been out for 40 minutes", "and the cheddar"], "Since when is the cheddar out?"),
    ],
)  # fmt: skip
def test_what_is_asked_next_keeps_to_the_heat(table: Session, lines: list[str], starts: str) -> None:
    assert _last(table, lines).startswith(starts)


def test_degrees_are_no_guests_and_no_degrees_of_the_air(table: Session) -> None:
    table.ask("it's 95 out, what wine")
    assert table.tonight.guests is None
    for line in ("serve the champagne at 45 F", "the oven is at 350 F", "the fridge is at 50 F"):
        table.new_conversation()
        table.ask(line)
        assert table.tonight.heat is None


TOO_LONG = "3 hours is too long for the Brie: 2 hours is the limit."
BINNED = "the brisket's been out since 5, it's 8 now"


@pytest.mark.parametrize(
    "asked",
    [
        "can we still eat the brisket",
        "what about the brisket now",
        "what do I do with the leftover brisket",
        "which wine with the brisket",
    ],
)
def test_what_was_binned_is_not_served_or_stored(table: Session, asked: str) -> None:
    assert "Off tonight's table: barbecue brisket." in table.ask(BINNED).text
    assert table.ask(asked).say.startswith("The brisket went in the bin: it stood out too long.")
    assert "brisket" not in table.ask("plan it for 6").text


def test_what_is_only_supposed_to_stand_out_stays(table: Session) -> None:
    assert table.ask("would the brie be safe if it sits out 3 hours").say == TOO_LONG
    assert table.ask("is 3 hours ok for the brie on the table").say == TOO_LONG
    assert "Brie" in table.ask("what's on the table").text


def test_the_rest_is_answered_and_who_ate_of_it_is_cared_for(table: Session) -> None:
    table.ask(BINNED)
    both = table.ask("what goes with the brisket and the pickles")
    assert both.picks
    assert both.text.endswith(
        "The brisket went in the bin: it stood out too long. Tell me if there is a fresh one."
    )
    ate = table.ask("someone already ate some of the brisket")
    assert ate.cautions[0]["id"] == "caution/food-poisoning"


def test_a_fresh_one_is_served(table: Session) -> None:
    table.ask(BINNED)
    assert table.ask("we have a fresh brisket now").say == "On the table again: barbecue brisket."
    assert table.ask("what about the brisket").picks


@pytest.mark.parametrize(
    "said",
    [
        "we threw the brisket away",
        "I binned the brisket",
        "we've chucked the brisket out",
        "the brisket went in the bin",
        "the brisket's been thrown out",
    ],
)
def test_what_the_host_threw_away_comes_off(table: Session, said: str) -> None:
    table.ask(said)
    assert "brisket" not in table.ask("what's on the table").text


@pytest.mark.parametrize(
    ("said", "caution"),
    [
        ("the brisket is only at 120 F inside, is it safe", "caution/doneness"),
        ("what temperature for the brisket to be safe in F", "caution/doneness"),
        ("the ice melted and the prawns are warm", "caution/left-out"),
        ("is it ok for the 3 year old to have nuts", "caution/small-children"),
        ("can the two year old eat the brie", "caution/small-children"),
        ("does the brie go with it for a pregnant guest", "caution/pregnancy-mould-ripened"),
        ("a kid drank from a wine glass", "caution/child-drank"),
        ("my toddler had a sip of the champagne", "caution/child-drank"),
    ],
)
def test_a_worried_host_is_told_the_caution_and_no_wine(table: Session, said: str, caution: str) -> None:
    answer = table.ask(said)
    assert caution in [record["id"] for record in answer.cautions]
    assert not answer.picks


def test_degrees_are_no_time_of_day(table: Session) -> None:
    table.ask("the brisket is only at 120 F inside, is it safe")
    assert "Since when is it out?" in table.ask("how long can food stand out at 92").say
    assert not table.tonight.binned


def test_the_age_of_a_cheese_is_no_age_of_a_child(table: Session) -> None:
    assert table.ask("is a 3 year old cheddar good with the zin").intent == "judge-pair"


def test_a_car_is_no_fridge(table: Session) -> None:
    assert table.ask("the brie has been in the car for 3 hours").say.startswith("Bin the Brie: 3 hours out")
