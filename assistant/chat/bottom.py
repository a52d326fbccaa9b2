"""The quiet line at the bottom: tonight's wines and what stands, as much as the terminal is wide."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from prompt_toolkit.utils import get_cwidth

from assistant.chat.words import ChatWords

if TYPE_CHECKING:
    from assistant.session import Session

CUT = "…"


@dataclass(frozen=True, slots=True)
class Standing:
    """Labels of the wines and foods on the table, the dish that stands and the limits that hold."""

    wines: tuple[str, ...] = ()
    foods: tuple[str, ...] = ()
    dish: str = ""
    limits: tuple[str, ...] = ()


def standing(session: Session) -> Standing:
    """What stands in a session."""
    frame = session.talk.frame if session.talk else None
    label, table = session.knowledge.label, session.tonight
    return Standing(
        tuple(map(label, table.wines)),
        tuple(session.dish_name((dish,)) for dish in table.dishes),
        session.dish_name(frame.dishes) if frame else "",
        tuple(p.label for p in frame.preferences) if frame else (),
    )


def bottom_line(now: Standing, words: ChatWords, width: int) -> str:
    """One line no wider than `width` columns, the most important first; empty where nothing stands.

    What goes first, as it gets narrow, is the key, then wines from the end, then the limits.
    """
    if not (now.wines or now.dish or now.limits):
        return ""
    fitting = (line for line in _lines(now, words) if get_cwidth(line) <= width)
    return next(fitting, None) or cut(next(_shortest(now, words)), width)


def cut(text: str, width: int) -> str:
    """A text that is too wide, cut short."""
    while text and get_cwidth(text) + 1 > width:
        text = text[:-1]
    return f"{text.rstrip()}{CUT}"


def _lines(now: Standing, words: ChatWords) -> Iterator[str]:
    """The line in ever fewer words."""
    stands = _stands(now, words)
    key = words("bottom", "key")
    yield _joined([*stands, _tonight(now.wines, len(now.wines), words), key], words)
    for count in range(len(now.wines), -1, -1):
        yield _joined([*stands, _tonight(now.wines, count, words)], words)
    yield from _shortest(now, words)


def _shortest(now: Standing, words: ChatWords) -> Iterator[str]:
    yield next(iter(_stands(now, words)), "") or _tonight(now.wines, 1, words)


def _stands(now: Standing, words: ChatWords) -> list[str]:
    dish = [words("bottom", "dish", dish=now.dish)] if now.dish else []
    return dish + ([words("bottom", "limits", limits=", ".join(now.limits))] if now.limits else [])


def _tonight(wines: Sequence[str], count: int, words: ChatWords) -> str:
    """The first wines, and how many more; with none of them, nothing."""
    if not count:
        return ""
    named = ", ".join(wines[:count])
    if count < len(wines):
        named = words("bottom", "more", wines=named, count=len(wines) - count)
    return words("bottom", "tonight", wines=named)


def _joined(pieces: Sequence[str], words: ChatWords) -> str:
    return words("bottom", "between").join(piece for piece in pieces if piece)
