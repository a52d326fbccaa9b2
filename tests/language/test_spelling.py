"""Misspelt names are mended and told; English words and known words are never touched."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.language.spelling import SHORTEST, Speller, english, is_english
from tests.language.conftest import Parse

MENDED = {
    "chiken": "chicken", "sammon": "salmon", "parmesean": "Parmesan", "mozarella": "mozzarella",
    "chedder": "cheddar", "camambert": "Camembert", "proscuitto": "prosciutto", "brocolli": "broccoli",
    "tomatoe": "tomato", "asparagas": "asparagus", "avacado": "avocado", "brushetta": "bruschetta",
    "chardonay": "Chardonnay", "merlow": "Merlot", "zinfandell": "Zinfandel", "sangiovesse": "Sangiovese",
    "tempranilo": "Tempranillo", "shrmip": "shrimp", "lobstar": "lobster", "scalops": "scallop",
    "spagetti": "spaghetti", "lasanga": "lasagne", "vinagrette": "vinaigrette", "mayonaise": "mayonnaise",
    "saurkraut": "sauerkraut", "chorizzo": "chorizo", "gorgonzolla": "Gorgonzola", "stiltan": "Stilton",
    "manchago": "Manchego", "gruyer": "Gruyère", "salomon": "salmon", "grilld": "grilled", "steek": "steak",
    "roquefourt": "Roquefort", "riseling": "dry Riesling", "mushrom": "button mushroom",
}  # fmt: skip
# Near to names of wines and foods, and still meant as they stand.
STAY = re.findall(
    "[a-z]+",
    """
    bride fork lamp wife wing park duke dock boot bead lame mind meal steal stake peer pier breast
    toast coast boast race malt halt soap soup soul tutor fake chose shop ship clip sport spring
    course hurry carry shelly belly candy sandy lobby lawyer butler button custard bastard number
    timber lumber theme prime grab crop crumb thumb hat state shout scout table cable fable market
    basket casket circuit paper tapper temper amber september vessel candle handle fiddle needle
    """,
)


@pytest.mark.parametrize("word", MENDED)
@pytest.mark.parametrize("question", ["{}", "what goes with {}", "does it go with {} tonight"])
def test_misspelt_name_is_read_as_what_was_meant(parse: Parse, word: str, question: str) -> None:
    text = parse(question.format(word)).text
    assert [r.label for r in text.readings] == [MENDED[word]]
    assert text.left_out == ()


@pytest.mark.parametrize("word", MENDED)
def test_mending_is_told_with_the_typed_word(parse: Parse, word: str) -> None:
    assert [r.corrected_from for r in parse(f"{word} please").text.readings] == [word]


@pytest.mark.parametrize("word", ["chicken", "Salmon", "tomatoes", "Gruyere", "sea bass", "olives"])
def test_a_name_spelt_right_is_not_told_as_mended(parse: Parse, word: str) -> None:
    assert [r.corrected_from for r in parse(word).text.readings] == [None]


def test_there_are_sixty_words_that_stay() -> None:
    assert len(set(STAY)) >= 60


@pytest.mark.parametrize("word", STAY)
@pytest.mark.parametrize("question", ["{}", "what goes with the {}", "my {} and cheese"])
def test_english_word_stays(parse: Parse, word: str, question: str) -> None:
    readings = parse(question.format(word)).text.readings
    assert [r for r in readings if r.corrected_from] == []


@pytest.mark.parametrize("word", ["abc", "zq", "12345", "x1y2z3", "qwrtzp", "xxxxxxxx", "ümläüt"])
def test_what_is_near_to_nothing_stays(parse: Parse, word: str) -> None:
    assert parse(word).text.readings == ()


@pytest.mark.parametrize("name", ["Patricia", "Wellington", "Johnson", "Seville", "Barbara", "Brian"])
def test_name_of_a_person_or_place_stays(parse: Parse, name: str) -> None:
    assert [r for r in parse(f"dinner with {name}").text.readings if r.corrected_from] == []


def test_of_equally_near_words_the_one_that_completes_a_name_is_meant(parse: Parse) -> None:
    assert [r.label for r in parse("pinot grigoi").text.readings] == ["Pinot Grigio"]
    assert [r.label for r in parse("garlic chedar").text.readings] == ["garlic cheddar"]
    assert [r.label for r in parse("grüner veltlner").text.readings] == ["Grüner Veltliner"]


@pytest.mark.parametrize(
    ("typed", "label"),
    [("zinfan del", "Zinfandel"), ("mozza rella", "mozzarella"), ("proz ecco", "Prosecco")],
)
def test_two_pieces_of_a_name_are_put_together(parse: Parse, typed: str, label: str) -> None:
    text = parse(typed).text
    assert [r.label for r in text.readings] == [label]
    assert text.left_out == ()


@pytest.mark.parametrize("word", ["colour", "realise", "analyse", "cheese", "armour"])
def test_british_spelling_is_english(word: str) -> None:
    assert is_english(word)


@pytest.mark.parametrize("word", ["roquefourt", "chedder", "sammon", "qwrtzp", "porck"])
def test_misspelling_is_not_english(word: str) -> None:
    assert not is_english(word)


# --- the speller by itself

WORDS = ("salmon", "salami", "salad", "cheddar", "gouda", "zinfandel", "brie")


@pytest.fixture(scope="module")
def speller() -> Speller:
    """A speller that knows a handful of words."""
    return Speller(WORDS)


@pytest.mark.parametrize(
    ("word", "meant"),
    [
        ("salmn", ("salmon",)),
        ("slamon", ("salmon",)),
        ("salaml", ("salami",)),
        ("chedar", ("cheddar",)),
        ("zinfandle", ("zinfandel",)),
        ("goudda", ("gouda",)),
        ("gaoda", ()),
        ("salmon", ()),
        ("bri", ()),
        ("tractor", ()),
        ("talmonn", ()),
        ("s4lmon", ()),
    ],
)
def test_mend(speller: Speller, word: str, meant: tuple[str, ...]) -> None:
    assert speller.mend(word) == meant


@given(st.text(max_size=15))
def test_mending_gives_known_words_or_nothing(word: str) -> None:
    assert set(Speller(WORDS).mend(word)) <= set(WORDS)


@settings(max_examples=100)
@given(st.sampled_from([w for w in WORDS if len(w) >= SHORTEST + 2]), st.data())
def test_one_slip_is_mended(word: str, data: st.DataObject) -> None:
    at = data.draw(st.integers(1, len(word) - 2))
    slip = data.draw(st.sampled_from([word[:at] + word[at + 1 :], word[:at] + word[at] + word[at:]]))
    assert word in Speller(WORDS).mend(slip)


def test_the_english_list_is_large() -> None:
    assert len(english()) > 50_000
