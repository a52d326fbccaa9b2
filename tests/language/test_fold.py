"""Folding: the same key for every way of writing a name, different keys for different names."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.language.fold import fold, key, stem


@pytest.mark.parametrize(
    ("word", "folded"),
    [
        ("Époisses", "epoisses"),
        ("Gewürztraminer", "gewurztraminer"),
        ("CRÈME", "creme"),
        ("brûlée", "brulee"),
        ("smørrebrød", "smorrebrod"),
        ("Łódź", "lodz"),
        ("cœur", "coeur"),
        ("weißer", "weisser"),
        ("niçoise", "nicoise"),
        ("jalapeño", "jalapeno"),
        ("ploughman's", "ploughman"),
        ("goats'", "goats"),
        ("Mendel’s", "mendel"),
        ("don't", "dont"),
        ("&", "and"),
        ("n", "and"),
        ("w", "with"),
        ("wo", "without"),
        ("brie", "brie"),
        ("", ""),
    ],
)
def test_fold(word: str, folded: str) -> None:
    assert fold(word) == folded


@pytest.mark.parametrize(
    ("one", "many"),
    [
        ("cheese", "cheeses"),
        ("olive", "olives"),
        ("berry", "berries"),
        ("anchovy", "anchovies"),
        ("tomato", "tomatoes"),
        ("potato", "potatoes"),
        ("dish", "dishes"),
        ("sandwich", "sandwiches"),
        ("peach", "peaches"),
        ("box", "boxes"),
        ("glass", "glasses"),
        ("pea", "peas"),
        ("brownie", "brownies"),
        ("cookie", "cookies"),
        ("brie", "bries"),
        ("crepe", "crepes"),
        ("wine", "wines"),
        ("merlot", "merlots"),
    ],
)
def test_one_and_many_have_the_same_stem(one: str, many: str) -> None:
    assert stem(one) == stem(many)


@pytest.mark.parametrize("word", ["asparagus", "hummus", "glass", "swiss", "ibis", "gas", "as", "is", "pie"])
def test_words_that_only_look_like_many_stay(word: str) -> None:
    assert stem(word) == word


@pytest.mark.parametrize(
    ("one", "other"),
    [("pie", "pea"), ("bass", "base"), ("brie", "brine"), ("port", "pork"), ("rose", "roe")],
)
def test_different_words_keep_different_stems(one: str, other: str) -> None:
    assert stem(fold(one)) != stem(fold(other))


@pytest.mark.parametrize(
    ("label", "words"),
    [
        ("Crème brûlée", ("creme", "brulee")),
        ("mac & cheese", ("mac", "and", "cheese")),
        ("mac n cheese", ("mac", "and", "cheese")),
        ("Ploughman's lunch", ("ploughman", "lunch")),
        ("off-dry Riesling", ("off", "dry", "riesling")),
        ("dark chocolate 70 %", ("dark", "chocolate", "70")),
        ("half_and_half", ("half", "and", "half")),
        ("under 3.5 g", ("under", "3.5", "g")),
        ("  Olives,  green ", ("olive", "green")),
        ("—", ()),
    ],
)
def test_key(label: str, words: tuple[str, ...]) -> None:
    assert key(label) == words


@given(st.text(max_size=30))
def test_folding_never_raises_and_twice_is_once(word: str) -> None:
    once = fold(word)
    if once not in ("n", "w", "wo", "&"):
        assert fold(once) == once
    key(word)


@given(st.text(st.characters(categories=["Lu", "Ll", "Nd", "Zs"]), max_size=30))
def test_capitals_make_no_difference(text: str) -> None:
    assert key(text.lower()) == key(text.lower().lower())
    if text.isascii():
        assert key(text.upper()) == key(text.lower())
