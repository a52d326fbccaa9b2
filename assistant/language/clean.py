"""Makes typed text safe to read: one line, no control or direction characters, a sane length."""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass

from assistant.answers.sanitise import UNSEEN

MAX_CHARACTERS = 1_000
MOST_LOOKED_AT = 20 * MAX_CHARACTERS
_KEPT_CONTROLS = {"\t": " ", "\n": " ", "\r": " ", "\x0b": " ", "\x0c": " "}
_PIECE, _MOST_MARKS = 1_000, 30
_ODD_CATEGORIES = {"Cc", "Cf", "Co", "Cs", "Cn", "Zl", "Zp"}


@dataclass(frozen=True, slots=True)
class Cleaned:
    """Text that is safe to tokenise and to print, and what was taken out of it."""

    text: str
    odd_characters: int = 0
    cut_off: int = 0


def clean(text: str) -> Cleaned:
    """Normalises (NFKC), drops control, format and bidi characters, caps the length. Never raises."""
    looked_at = text[:MOST_LOOKED_AT]
    kept, odd = _sorted_out(looked_at) if not _is_plain(looked_at) else (looked_at, 0)
    whole = " ".join(_normal(kept).split())
    cut = max(0, len(whole) - MAX_CHARACTERS) + max(0, len(text) - MOST_LOOKED_AT)
    return Cleaned(whole[:MAX_CHARACTERS].rstrip(), odd, cut)


def _is_plain(text: str) -> bool:
    """Whether there is nothing to look at letter by letter, as in most of what is typed."""
    return text.isascii() and text.isprintable()


def _sorted_out(text: str) -> tuple[str, int]:
    """The characters that are kept, and how many odd ones were dropped."""
    kept, odd = [], 0
    for character in text:
        if character in _KEPT_CONTROLS:
            kept.append(" ")
        elif unicodedata.category(character) in _ODD_CATEGORIES or UNSEEN.match(character):
            odd += 1
        else:
            kept.append(character)
    return "".join(kept), odd


def _normal(text: str) -> str:
    """The text in NFKC, piece by piece: accents heaped on one letter take time by their square."""
    pieces, start = [], 0
    while start < len(text):
        end = start + _PIECE
        while end < min(len(text), start + _PIECE + _MOST_MARKS) and unicodedata.combining(text[end]):
            end += 1
        pieces.append(unicodedata.normalize("NFKC", text[start:end]))
        start = end
    return "".join(pieces)
