"""Ways of asking: what is shipped, and what is said of a line that cannot be used."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest

from assistant.evaluate.corpus import intents
from assistant.evaluate.read import read_corpus
from assistant.evaluate.ways import Way, read_ways, shipped_ways
from assistant.knowledge.problems import KnowledgeError

FEWEST = 100  # ways of asking of each intent


def test_every_intent_is_asked_in_many_ways() -> None:
    times = Counter(way.intent for way in read_ways())
    assert times.keys() == intents()
    assert min(times.values()) >= FEWEST


def test_none_is_told_twice_or_is_a_question_of_the_corpus() -> None:
    asked = Counter(" ".join(way.ask.lower().split()) for way in read_ways())
    asked.update({" ".join(question.ask.lower().split()) for question in read_corpus().questions})
    assert [ask for ask, times in asked.items() if times > 1] == []


def test_every_pass_varies_how_it_begins() -> None:
    for file in (one for one in shipped_ways() if one.stem != "own"):
        begins = Counter(" ".join(way.ask.lower().split()[:3]) for way in read_ways([file]))
        most, times = begins.most_common(1)[0]
        assert times <= len(read_ways([file])) / 100, f"{file.name}: {times} begin {most!r}"


def test_a_file_of_ways(tmp_path: Path) -> None:
    file = tmp_path / "porch.tsv"
    file.write_text("# by ear\n\nservice\tthe red feels like soup, ice?\n", "utf-8")
    assert read_ways([file]) == (Way("the red feels like soup, ice?", "service", "porch"),)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("service the red is warm", "no row of two columns"),
        ("service\t ", "no row of two columns"),
        ("service\tthe red\tis warm", "no row of two columns"),
        ("serving\tthe red is warm", "'serving' is no intent"),
    ],
)
def test_every_line_that_cannot_be_used_is_told(tmp_path: Path, line: str, said: str) -> None:
    file = tmp_path / "porch.tsv"
    file.write_text(f"{line}\nundo\tback one\n{line}\n", "utf-8")
    with pytest.raises(KnowledgeError) as error:
        read_ways([file])
    first, second = error.value.problems
    assert (first.line, second.line) == (1, 3)
    assert said in first.message
