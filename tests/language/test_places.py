"""Names heard as other words are found where a name is due, and nowhere else."""

from __future__ import annotations

import pytest

from assistant.language.cues import CueBook, RareWords, match, needed, read_line
from assistant.language.likeness import unlike
from assistant.language.parse import Parser
from assistant.language.words import tokens


@pytest.mark.parametrize(
    ("typed", "label", "heard_as"),
    [
        ("steak and rise", "white rice", "rise"),
        ("jerk chicken and rise", "white rice", "rise"),
        ("what goes with poor chetta", "porchetta", "poor chetta"),
        ("general so's chicken", "General Tso chicken", "general so's chicken"),
    ],
)
def test_a_place_is_heard(parser: Parser, typed: str, label: str, heard_as: str) -> None:
    readings = parser.parse(typed).text.readings
    assert (label, heard_as) in [(r.label, r.corrected_from) for r in readings]


@pytest.mark.parametrize(
    "typed",
    ["my port is on the rise", "wow nice one", "show menu", "the tap has a leak", "is that okay or not okay"],
)
def test_plain_talk_stays(parser: Parser, typed: str) -> None:
    assert [r for r in parser.parse(typed).text.readings if r.corrected_from] == []


@pytest.mark.parametrize(
    ("typed", "left"),
    [
        ("what goes with rise", ("rise",)),
        ("steak and a hedge", ("hedge",)),
        ("does port go with my stake", ("stake",)),
        ("i have steak and friends", ()),
    ],
)
def test_a_plain_word_where_a_name_is_due_is_told(parser: Parser, typed: str, left: tuple[str, ...]) -> None:
    assert parser.parse(typed).text.left_out == left


def test_what_is_easily_misheard_is_less_unlike() -> None:
    assert unlike("marlo", "merlo") < unlike("barlo", "merlo") < unlike("sarko", "merlo")
    assert unlike("merlo", "merlo") == 0.0


def test_rare_words_lose_no_line() -> None:
    texts = ["what? * goes|go with", "a b? c", "b? a?", "with * a", "* c"]
    lines = [read_line(text) for text in texts]
    found = RareWords(lines)
    for typed in ("what goes with a", "a c", "b", "with b c a", "go"):
        stems = [token.norm_ for token in tokens(typed)]
        brute = [i for i, line in enumerate(lines) if any(match(line, stems, at) for at in range(len(stems)))]
        near = found.near(set(stems))
        assert set(brute) <= set(near)
        assert all(all(step & set(stems) for step in needed(lines[i])) for i in near)
        book = CueBook({str(i): [text] for i, text in enumerate(texts)})
        assert {cue.name for cue in book.find(tokens(typed))} <= {str(i) for i in near}
