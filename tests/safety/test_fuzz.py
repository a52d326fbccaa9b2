"""Small samples of the long runs of tests/fuzz_questions.py and tests/fuzz_files.py, and what those found."""

from __future__ import annotations

import time
from collections.abc import Callable
from pathlib import Path

import pytest

from assistant.evening.read import read_evening
from assistant.knowledge.problems import KnowledgeError
from assistant.knowledge.turtle import Turtle, read_turtle
from assistant.language.clean import MAX_CHARACTERS, clean
from assistant.language.in_line import questions_in
from assistant.language.words import tokenizer
from assistant.session import Session
from assistant.told_first import questions_of
from tests.fuzz_files import fuzzed
from tests.fuzz_questions import Run, asking, put, reading
from tests.safety.odd_texts import odd_texts

READ, ASKED, FILES = 250, 25, 240
SEED = 20
TIMES, MOST, FLOOR = 4, 12.0, 0.02
"""A text so many times longer takes at most so many times longer; below FLOOR seconds nothing is slow."""


def sound(run: Run) -> bool:
    """Whether a run raised nothing and hung nowhere; fails with what it found."""
    assert run.raised == {}, run.first
    assert run.hung == 0, sorted(run.slowest)[-1]
    return True


def test_odd_questions_are_read(session: Session) -> None:
    session.new_conversation()
    assert sound(put(odd_texts(READ, SEED), READ, reading(session)))


def test_odd_questions_are_answered(session: Session) -> None:
    assert sound(put(odd_texts(ASKED, SEED + 1), ASKED, asking(session)))


def test_odd_files_are_read(session: Session) -> None:
    for run in fuzzed(FILES, SEED, session).values():
        assert run.done == FILES // 4
        assert sound(run)


def test_the_run_finds_what_is_raised() -> None:
    def failing(text: str) -> None:
        raise RuntimeError(text)

    assert put(["one", "two"], 2, failing).raised.total() == 2


def test_a_text_that_never_ends_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tests.fuzz_questions.STUCK", 1)
    (told,) = put(["brie"], 1, lambda text: any(iter(lambda: not text, True))).raised
    assert told.startswith("TimeoutError: stuck for 1 s")


# --- memory


def test_words_that_were_read_are_forgotten(session: Session) -> None:
    """The tokenizer's library keeps every word it ever met, unless it is told to forget."""
    session.read("brie")
    kept = len(tokenizer().vocab.strings)
    for number in range(200):
        session.read(f"what goes with zqx{number}vw and {'y' * (number + 40)}")
    assert len(tokenizer().vocab.strings) == kept


# --- time: longer texts, and what the long runs found slow


def _took(work: Callable[[str], object], text: str) -> float:
    def once() -> float:
        started = time.process_time()
        work(text)
        return time.process_time() - started

    return min(once(), once())


def linear(work: Callable[[str], object], unit: str, size: int, end: str = "x") -> bool:
    """Whether a text that is TIMES as long takes its share of time and no more."""
    short, long = (_took(work, unit * (n // len(unit)) + end) for n in (size, TIMES * size))
    return long <= MOST * max(short, FLOOR / MOST)


@pytest.mark.parametrize("unit", ["[", ")", "“", "?", "?!", "'", "_", "zqxj ", "€", "🧀", "-a", "brie, "])
def test_reading_is_linear(session: Session, unit: str) -> None:
    assert linear(session.read, unit, MAX_CHARACTERS // TIMES)


@pytest.mark.parametrize("unit", ["?", "?!", "!", "a? ", " and what "])
def test_taking_a_line_apart_is_linear(unit: str) -> None:
    assert linear(lambda text: questions_in(text, lambda part: False, lambda part: False), unit, 5_000)


@pytest.mark.parametrize("unit", ["Ann is vegan, ", "and what can she have. ", "brie and ", ", "])
def test_what_is_told_of_guests_is_looked_for_in_linear_time(session: Session, unit: str) -> None:
    def cut(text: str) -> object:
        return questions_of(text, lambda part: False, lambda part: False, session)

    assert linear(cut, unit, 5_000)


@pytest.mark.parametrize("unit", ["\u0301\u0316", "e\u0301", "\ufdfa", "\u200b"])
def test_cleaning_is_linear(unit: str) -> None:
    assert linear(clean, unit, 5_000)


def test_long_heaps_of_marks_keep_the_words_between_them(session: Session) -> None:
    session.new_conversation()
    frame = session.read("(" * 60 + "brie" + ")" * 60)
    assert [reading.label for reading in frame.text.readings] == ["Brie"]
    assert clean("e\u0301" * 800).text == "é" * 800


@pytest.mark.parametrize("unit", ["\n", " ", "\t\n", "@prefix ", "a:b ", "<", "prefix x:\n"])
def test_places_in_a_turtle_file_are_found_in_linear_time(unit: str) -> None:
    def places(text: str) -> object:
        file = Turtle("own.ttl", text, ())
        return file.prefixes, file.starts

    assert linear(places, unit, 20_000)


# --- limits of files


def refused(read: Callable[[Path], object], file: Path) -> str:
    """What is told of a file that is not read."""
    with pytest.raises(KnowledgeError) as caught:
        read(file)
    (problem,) = caught.value.problems
    return str(problem)


def test_files_that_are_too_large_or_nested_too_deeply(session: Session, tmp_path: Path) -> None:
    toml, turtle = tmp_path / "odd.toml", tmp_path / "odd.ttl"
    toml.write_bytes(b"#" * 1_000_001)
    assert "larger than" in refused(lambda file: read_evening(file, session), toml)
    toml.write_text("a = " + "[" * 100_000)
    assert refused(lambda file: read_evening(file, session), toml)
    turtle.write_bytes(b"#" * 20_000_001)
    assert "larger than" in refused(lambda file: read_turtle(file, "odd.ttl"), turtle)
    for nest in ("<< ", "( ", "[ <a:b> ", "[ ( "):
        turtle.write_text("@prefix a: <a:> .\na:a a:b " + nest * 50_000)
        assert refused(lambda file: read_turtle(file, "odd.ttl"), turtle)


def test_turtle_whose_comment_is_no_text_is_told_with_its_line(tmp_path: Path) -> None:
    turtle = tmp_path / "odd.ttl"
    turtle.write_bytes(b"<a:b> <a:c> <a:d> .\n# caf\xe9\n")
    assert "line 2" in refused(lambda file: read_turtle(file, "odd.ttl"), turtle)


def test_nothing_is_fetched_or_expanded(tmp_path: Path) -> None:
    """An import, a base, an entity are words like any others; test_network.py sees no socket."""
    secret, turtle = tmp_path / "secret.ttl", tmp_path / "odd.ttl"
    secret.write_text("<a:secret> a <a:thing> .")
    turtle.write_text(
        f"@base <{secret.as_uri()}> .\n@prefix owl: <http://www.w3.org/2002/07/owl#> .\n"
        f"<> owl:imports <{secret.as_uri()}> , <http://127.0.0.1:9/x> .\n"
        f"<a:b> <a:c> \"&x; <!ENTITY x SYSTEM 'y'>\" .\n"
    )
    found = read_turtle(turtle, "odd.ttl")
    assert len(found.quads) == 3
    assert "a:secret" not in {quad.subject.value for quad in found.quads}  # type: ignore[union-attr]
