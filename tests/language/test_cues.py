"""Cue lines: words, alternatives, words that may be missing, and gaps."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.knowledge.files import corpus_dir
from assistant.language.cues import LONGEST_GAP, Cue, CueBook, match, read_cues, read_line
from assistant.language.words import tokens
from tests.language.conftest import Parse

SHIPPED = corpus_dir() / "language" / "cues.toml"


def places(line: str, text: str, at: int = 0) -> tuple[int, ...] | None:
    """Where the words of a line stand in a text, if it starts there."""
    return match(read_line(line), [token.norm_ for token in tokens(text)], at)


def found(lines: dict[str, list[str]], text: str) -> list[Cue]:
    """The cues of a small book in a text."""
    return CueBook(lines).find(tokens(text))


@pytest.mark.parametrize(
    ("line", "text", "where"),
    [
        ("goes with", "goes with brie", (0, 1)),
        ("goes with", "goes", None),
        ("goes with", "goes well with", None),
        ("go|goes|going with", "going with", (0, 1)),
        ("go|goes with", "went with", None),
        ("what wine? goes", "what goes", (0, 1)),
        ("what wine? goes", "what wine goes", (0, 1, 2)),
        ("what wine? goes", "what beer goes", None),
        ("what a|the? wine", "what the wine", (0, 1, 2)),
        ("what a|the? wine", "what wine", (0, 1)),
        ("what * wine", "what wine", (0, 1)),
        ("what * wine", "what kind of wine", (0, 3)),
        ("what * wine", "what is the best wine", (0, 4)),
        ("what * wine", "what is the very best wine", None),
        ("what * wine * for", "what wine for", (0, 1, 2)),
        ("what * wine * for", "what red wine is good for", (0, 2, 5)),
        ("Époisses", "epoisses", (0,)),
        ("cheeses", "cheese", (0,)),
        ("don't", "dont", (0,)),
    ],
)
def test_a_line_finds_its_words(line: str, text: str, where: tuple[int, ...] | None) -> None:
    assert places(line, text) == where


def test_a_gap_is_as_long_as_it_says() -> None:
    for gap in range(LONGEST_GAP + 1):
        assert places("what * wine", f"what {'x ' * gap}wine") == (0, gap + 1)
    assert places("what * wine", f"what {'x ' * (LONGEST_GAP + 1)}wine") is None


def test_the_furthest_reaching_way_is_taken() -> None:
    assert places("what * wine", "what wine for wine") == (0, 3)
    assert places("how much? much?", "how much much") == (0, 1, 2)


def test_a_line_starts_where_it_is_asked_to() -> None:
    assert places("goes with", "what goes with", 1) == (1, 2)
    assert places("goes with", "what goes with", 0) is None


def test_a_word_that_may_be_missing_in_front_may_be_missing() -> None:
    lines = {"ask": ["please? tell me"]}
    assert [(c.start, c.end) for c in found(lines, "tell me")] == [(0, 2)]
    assert (0, 3) in [(c.start, c.end) for c in found(lines, "please tell me")]


def test_cues_stand_in_order_the_longest_first() -> None:
    lines = {"short": ["goes"], "long": ["goes with"], "later": ["brie"]}
    assert [c.name for c in found(lines, "goes with brie")] == ["long", "short", "later"]


def test_only_the_words_of_the_line_are_named_not_those_of_a_gap() -> None:
    (cue,) = found({"ask": ["what * wine"]}, "what nice wine")
    assert cue == Cue("ask", 0, 3, (0, 2))


def test_the_words_of_a_book_are_all_its_words() -> None:
    book = CueBook({"a": ["go|goes with?"], "b": ["what * wines"]})
    assert book.words == {"go", "with", "what", "wine"}


def test_a_book_is_read_from_its_file(tmp_path: Path) -> None:
    file = tmp_path / "cues.toml"
    file.write_text('[why]\nlines = ["why", "how come"]\n', "utf-8")
    assert read_cues(file) == {"why": ["why", "how come"]}


WORDS = st.sampled_from(["what", "goes", "with", "wine", "brie"])


@given(st.lists(WORDS, max_size=6), st.lists(WORDS | st.just("*"), min_size=1, max_size=5))
def test_a_match_is_a_way_to_read_the_line(text: list[str], line: list[str]) -> None:
    where = match(read_line(" ".join(line)), [token.norm_ for token in tokens(" ".join(text))], 0)
    words = [word for word in line if word != "*"]
    if where is not None:
        assert [text[i] for i in where] == words
        assert list(where) == sorted(set(where))


# --- the shipped lines


def test_shipped_lines_are_well_formed() -> None:
    for name, lines in read_cues(SHIPPED).items():
        assert lines, name
        for line in lines:
            words = line.split()
            assert words, (name, line)
            assert words[0] != "*", (name, line)
            assert words[-1] != "*", (name, line)
            assert all(part for word in words for part in word.rstrip("?").split("|")), (name, line)
            assert not all(word.endswith("?") for word in words), (name, line)


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("why?", "why"),
        ("how come", "why"),
        ("why not", "why-not"),
        ("anything else?", "another"),
        ("what about a red", "follow"),
        ("which order should I pour them in", "pour-order"),
        ("what is the difference between them", "compare"),
        ("what goes with brie", "wines-for-food"),
        ("what should I eat with port", "foods-for-wine"),
        ("does port go with brie", "judge"),
        ("hello", "smalltalk"),
        ("help", "help"),
        ("how many bottles for 12 people", "quantity"),
        ("what temperature for port", "service"),
        ("undo that", "undo"),
    ],
)
def test_turn_of_phrase_is_heard(parse: Parse, text: str, name: str) -> None:
    assert name in parse(text).text.cues


def test_a_cue_inside_a_name_is_not_heard(parse: Parse) -> None:
    assert "what-if" not in parse("sweet and sour pork").text.cues
    assert "smalltalk" not in parse("high tea").text.cues
