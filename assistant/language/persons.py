"""`Bo rated the malbec`: a word in the place of a person, which is no slip for a food or a wine."""

from __future__ import annotations

from spacy.tokens import Doc

from assistant.language.fold import fold
from assistant.language.guests import guest_words


def is_person(doc: Doc, start: int, end: int) -> bool:
    """Whether the words from `start` to `end` (exclusive) open a sentence and do what only people do.

    Typed small, it is a person only where what is done was swallowed as well (`bo rated` is no burrata).
    """
    if end <= start or start + 1 >= len(doc) or not _opens(doc, start):
        return False
    does = fold(doc[start + 1].text) in guest_words().does
    return does and (doc[start].text[:1].isupper() or end > start + 1)


def _opens(doc: Doc, at: int) -> bool:
    """Whether a text, a part of it or a second name starts here."""
    return at == 0 or not doc[at - 1].text[:1].isalnum() or fold(doc[at - 1].text) in guest_words().lead
