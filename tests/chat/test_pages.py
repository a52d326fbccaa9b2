"""Pages are laid out for the size that the terminal has when each is shown; nothing is lost between."""

from __future__ import annotations

import pytest

from assistant.answers.wrap import wrapped
from assistant.chat.pages import behind, laid

LINES = [
    (
        "said",
        "Here is the plan of the evening, which is told in a line that is rather long for most screens.",
    ),
    *(
        ("rest", f"  {at}: a line with words of its own, number {at}, and some more to fill it.")
        for at in range(9)
    ),
]
WORDS = " ".join(text for _, text in LINES).split()


@pytest.mark.parametrize("sizes", [[(80, 6), (50, 4)], [(30, 3), (80, 5)], [(20, 2)], [(200, 3), (24, 7)]])
def test_every_word_is_shown_once_whatever_the_sizes(sizes: list[tuple[int, int]]) -> None:
    left, shown, turn = list(LINES), [], 0
    while left:
        width, page = sizes[turn % len(sizes)]
        rows = laid(left, lambda text: wrapped(text, width).split("\n"))  # noqa: B023
        assert all(len(row.text) <= width for row in rows)
        shown += [row.text for row in rows[:page]]
        left, turn = behind(left, rows, page), turn + 1
    assert " ".join(shown).split() == WORDS


def test_what_is_cut_in_a_line_keeps_its_weight_and_indent() -> None:
    rows = laid(LINES[1:2], lambda text: wrapped(text, 30).split("\n"))
    ((style, rest),) = behind(LINES[1:2], rows, 1)
    assert style == "rest"
    assert rest.startswith("    ")
