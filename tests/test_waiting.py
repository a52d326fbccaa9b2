"""How far a long piece of work is, told on a terminal past the first second."""

from __future__ import annotations

from io import StringIO

from assistant.waiting import ERASED, Waiting


class Screen(StringIO):
    """A terminal that keeps what is written."""

    def isatty(self) -> bool:
        return True


def test_nothing_is_told_in_the_first_second_nor_off_a_terminal() -> None:
    moments = iter((0.0, 0.5, 0.9))
    screen, file = Screen(), StringIO()
    early = Waiting("{done} of {of}", screen, lambda: next(moments))
    early(1, 9)
    early(2, 9)
    early.clear()
    later = iter((0.0, 5.0))
    Waiting("{done} of {of}", file, lambda: next(later))(1, 9)
    assert screen.getvalue() == file.getvalue() == ""


def test_the_line_is_rewritten_and_taken_away() -> None:
    moments = iter((0.0, 1.5, 2.0))
    screen = Screen()
    waiting = Waiting("{done} of {of}", screen, lambda: next(moments))
    waiting(3, 9)
    waiting(4, 9)
    waiting.clear()
    assert screen.getvalue() == f"{ERASED}3 of 9{ERASED}4 of 9{ERASED}"
