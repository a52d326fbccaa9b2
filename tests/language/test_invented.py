"""Foods and wines that do not exist are told as not understood, and taken for no real ones."""

from __future__ import annotations

import re

import pytest

from assistant.language.parse import Parser

# In braces what was invented, before any of it was put to the program.
ASKED = (
    "cheddar with {quallaberry chutney}",
    "what wine goes with {brenwick cheese}",
    "a glass of {tarvolino} with what",
    "what do i eat with {moscarelle}",
    "dessert wine for {plimsey tart}",
    "is {vordane} good with lamb",
    "roast {grumbleroot} and pork, which red",
    "steak with {castrovale rosso}",
    "i have a bottle of {zelmani}",
    "pork pie and {thornberry relish}",
    "oysters with {marquelle}",
    "port with {dunsop blue}",
    "prawns with {pellucine}",
    "grilled {skarrow} with lemon",
    "wine with {fennimore loaf}",
    "dip called {babbanoush} with rose",
    "pasta in {trellisano} sauce",
    "which food for {orvendale}",
    "white wine for {snettle soup}",
    "{kirribee nut} and sherry",
    "duck with {laverdiere}",
    "cheese called {chobbleton} what red",
    "braised in {ramissolo}",
    "brie with {goolberry jam}",
    "salad with {pinnagetto}",
    "sweet wine for {wexley crumble}",
    "what goes with {sorvignac}",
    "is {taramundo} a wine",
    "fizz called {bellavarde} with canapes",
    "fried {hocklefish} and chips wine",
    "{mazzolina} filled with ricotta",
    "beef and {drumlie pudding}",
    "tell me about {corvantino}",
    "{yabberleaf} salad with feta",
    "wild boar and {monterosa vecchio}",
    "mash and {pershwick sausage}",
    "fish in {velloutine}",
    "breakfast {quenderoll} with fizz",
    "champagne with {ostrelle}",
    "soup and {tamberloaf}",
    "red with {garvie stew}",
    "crackers and {nettlewick cheese}",
)
MOST_TURNED = 2  # of 42; three were when first measured
_INVENTED = re.compile("{(.*)}")


def _turned(parser: Parser, asked: str) -> list[str]:
    """The real names that were made of what was invented."""
    readings = parser.parse(_INVENTED.sub(r"\1", asked)).text.readings
    return [r.label for r in readings if r.corrected_from]


def test_invented_names_are_seldom_turned_into_real_ones(parser: Parser) -> None:
    turned = {asked: labels for asked in ASKED if (labels := _turned(parser, asked))}
    assert len(turned) <= MOST_TURNED, turned


def test_a_phrase_that_begins_a_known_name_stays(parser: Parser) -> None:
    """`touriga` is said for Touriga Nacional, but not in `Touriga Franca`."""
    assert "Touriga Franca" in {r.label for r in parser.parse("stew with Touriga Franca").text.readings}


@pytest.mark.parametrize(
    "asked", ["a bottle of Velmontino nero since Christmas", "Do we like a Barbello rosso"]
)
def test_an_invented_name_with_a_word_of_real_ones_is_told(parser: Parser, asked: str) -> None:
    """A word that real names have behind one with a capital letter makes a name of its own of both."""
    text = parser.parse(asked).text
    assert not text.readings
    assert len(text.left_out) == 2


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("Somebody gifted us a case of Torvelline white. What dishes would it suit?", "Torvelline"),
        ("With smoked brisket, which is the better call, Syrah or Pelluvian black?", "Pelluvian"),
        ("I have a querrin tart, which wine", "querrin"),
    ],
)
def test_a_strange_name_before_a_colour_and_a_strange_dish_are_no_slips(
    parser: Parser, typed: str, told: str
) -> None:
    text = parser.parse(typed).text
    assert told in text.left_out
    assert not [reading for reading in text.readings if reading.corrected_from]


@pytest.mark.parametrize("typed", ["what goes with a Gewurtztraminer white", "we have a Chardonay white"])
def test_a_slip_before_a_colour_is_mended_where_it_is_near(parser: Parser, typed: str) -> None:
    assert any(r.type == "Wine" and r.corrected_from for r in parser.parse(typed).text.readings)
