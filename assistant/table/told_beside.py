"""`Ann is allergic to nuts and we are having Brie`: what a guest needs and what is laid, in one line."""

from __future__ import annotations

from typing import TYPE_CHECKING

from assistant.language.clauses import pieces
from assistant.language.clean import MAX_CHARACTERS
from assistant.language.guest_named import has_name
from assistant.language.party import needs_told
from assistant.language.small_words import small_words
from assistant.table.tonight import SETS

if TYPE_CHECKING:
    from assistant.language.frame import Frame
    from assistant.session import Session

MOST_PARTS = 12
PAIRS = ("wines-for-food", "judge-pair")


def told_beside(typed: str, session: Session) -> list[str]:
    """What is told of the guests, then what is laid, so that neither is lost; empty for any other line."""
    parts = pieces(typed) if len(typed) < MAX_CHARACTERS else []
    if "?" in typed or not 1 < len(parts) < 2 * MOST_PARTS or not _of_guests(session.parser.parse(typed)):
        return []
    needs, rest = _divided(parts, session)
    return [needs, rest] if needs and rest and _lays(session.parser.parse(rest)) else []


def _divided(parts: list[str], session: Session) -> tuple[str, str]:
    """The parts that tell of guests, names behind such names too (`nuts and shellfish`), and all others."""
    said, was, names = {True: "", False: ""}, None, False
    for link, piece in zip(["", *parts[1::2]], parts[::2], strict=True):
        frame = session.parser.parse(piece)
        needs = _of_guests(frame) or (names and _only_names(frame))
        joined = link if needs is was else ", "
        said[needs] += f"{joined}{piece}" if said[needs] else piece
        was, names = needs, needs and bool(frame.text.readings)
    return said[True], said[False]


def _of_guests(frame: Frame) -> bool:
    """Whether a need of somebody with a name or of a part of the guests is told, or health is spoken of."""
    return bool(frame.topics) or any(has_name(one.guest) for one in needs_told(frame).asked)


def _only_names(frame: Frame) -> bool:
    known = sum(reading.end - reading.start for reading in frame.text.readings)
    return known == len(frame.text.stems)


def _lays(frame: Frame) -> bool:
    """Whether wines or foods are laid, or a host tells of them (`we're having Brie`); nobody's health is."""
    host = not small_words()["first-person"].isdisjoint(frame.text.stems[:1])
    told = frame.intent == SETS or (host and frame.intent in PAIRS)
    return told and bool(frame.dishes or frame.wines) and not frame.topics
