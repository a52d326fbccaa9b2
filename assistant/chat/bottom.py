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
    """Labels of the wines and foods on the table, the dish that stands and the limits that hold.

    `dishes`: names of the dishes that stand, where they are several.
    """

    wines: tuple[str, ...] = ()
    foods: tuple[str, ...] = ()
    dish: str = ""
    limits: tuple[str, ...] = ()
    dishes: tuple[str, ...] = ()


def standing(session: Session) -> Standing:
    """What stands in a session."""
    frame = session.talk.frame if session.talk else None
    label, table = session.knowledge.label, session.tonight
    several = frame.dishes if frame and len(frame.dishes) > 1 else ()
    return Standing(
        tuple(map(label, table.wines)),
        tuple(session.dish_name((dish,)) for dish in table.dishes),
        session.dish_name(frame.dishes) if frame else "",
        tuple(p.label for p in frame.preferences) if frame else (),
        tuple(session.dish_name((dish,)) for dish in several),
    )


def bottom_line(now: Standing, words: ChatWords, width: int) -> str:
    """One line no wider than `width` columns, the most important first; empty where nothing stands.

    What goes first, as it gets narrow, are dishes from the end where several stand, then wines so; with one
    dish the key, then wines, then the limits.
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
    key, all_wines = words("bottom", "key"), len(now.wines)
    yield _joined([*_stands(now, words), _tonight(now.wines, all_wines, words), key], words)
    for count in range(len(now.dishes) - 1, 0, -1):
        yield _joined([*_stands(now, words, count), _tonight(now.wines, all_wines, words), key], words)
    stands = _stands(now, words, 1)
    for count in range(all_wines - 1, 0, -1) if now.dishes else ():
        yield _joined([*stands, _tonight(now.wines, count, words), key], words)
    for count in range(all_wines, -1, -1):
        yield _joined([*stands, _tonight(now.wines, count, words)], words)
    yield from _shortest(now, words)


def _shortest(now: Standing, words: ChatWords) -> Iterator[str]:
    yield next(iter(_stands(now, words, 1)), "") or _tonight(now.wines, 1, words)


def _stands(now: Standing, words: ChatWords, count: int | None = None) -> list[str]:
    """The dish, of several the first `count`, and the limits."""
    named = now.dish if count is None or not now.dishes else _first(now.dishes, count, words)
    dish = [words("bottom", "dish", dish=named)] if named else []
    return dish + ([words("bottom", "limits", limits=", ".join(now.limits))] if now.limits else [])


def _tonight(wines: Sequence[str], count: int, words: ChatWords) -> str:
    """The first wines, and how many more; with none of them, nothing."""
    return words("bottom", "tonight", wines=_first(wines, count, words)) if count else ""


def _first(names: Sequence[str], count: int, words: ChatWords) -> str:
    """The first so many names, and how many more there are."""
    named = ", ".join(names[:count])
    more = len(names) - count
    return words("bottom", "more", wines=named, count=more) if more > 0 else named


def _joined(pieces: Sequence[str], words: ChatWords) -> str:
    return words("bottom", "between").join(piece for piece in pieces if piece)
