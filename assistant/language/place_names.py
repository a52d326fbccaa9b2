"""`anywhere in Kochi`, `my flat in Leeds`: where somebody is, which is neither food nor wine."""

from __future__ import annotations

from collections.abc import Set

from spacy.tokens import Doc, Token

from assistant.language.fold import fold
from assistant.language.small_words import small_words

LONGEST = 3  # words


def is_place_name(token: Token, places: Set[str], named: Set[int]) -> bool:
    """Whether the word is of the name of a place, behind `in` or `near`, with no food or wine behind it.

    Or before what is of a place: `a hot Lagos evening`, `our Durban kitchen`.

    `places`: names folded, their words joined by hyphens; `named`: positions of what was recognised.
    """
    doc, at = token.doc, token.i
    spans = (
        (start, start + length)
        for length in range(LONGEST, 0, -1)
        for start in range(max(0, at - length + 1), at + 1)
        if start + length <= len(doc)
    )
    return any(_named(doc, *span) in places and _stands(doc, *span, named) for span in spans)


def _named(doc: Doc, start: int, end: int) -> str:
    return "-".join(fold(token.text) for token in doc[start:end])


def _stands(doc: Doc, start: int, end: int, named: Set[int]) -> bool:
    """Whether it stands where a place is told; `a red from Hobart` asks for a wine of there."""
    words = small_words()
    if end < len(doc) and end not in named and doc[end].norm_ in words["of-a-place"]:
        return True
    before = [token.norm_ for token in doc[max(0, start - 2) : start]]
    if not before or end in named:
        return False
    of_wine = start - 2 in named or before[0] in words["bottle"] | words["any-wine"]
    return before[-1] in words["place-before"] or (before[-1] == "from" and not of_wine)
