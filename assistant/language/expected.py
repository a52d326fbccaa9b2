"""What kind of thing is due at a place of a question: wine behind `glass of`, food where wine is asked for.

Between two things that a misspelt word is equally near to, that decides.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence, Set

from spacy.tokens import Doc

from assistant.language.heard import Heard
from assistant.language.lexicon import Lexicon, Name

WINE, FOOD, METHOD, TERM, BESIDE, SIDE, ASKED = "wine", "food", "method", "term", "beside", "side", "asked"
# What a thing of another kind costs beside the slip, and of a kind that is due, in slips of one letter.
OTHERWISE, JUST_SO = 0.2, -0.1
_OTHERS = {
    WINE: {"food", "dressing", "sauce", "garnish", "method", "aroma"},
    FOOD: {"wine", "grape", "region", "term", "aroma"},
    METHOD: {"wine", "grape", "region", "term", "aroma", "food", "dressing"},
    TERM: {"food", "dressing", "sauce", "garnish"},
    BESIDE: {"food", "dressing", "wine"},
    SIDE: {"food", "dressing", "wine", "grape", "region"},
    ASKED: set(),  # a term or anything else
}  # what is not meant where the kind is due
_SIDES = ("dressing", "sauce", "garnish")
_REACH = 3  # words behind `glass of`


class Expected:
    """Tells the kind that is due, by the words around a place."""

    def __init__(self, lexicon: Lexicon, heard: Heard) -> None:
        self._lexicon, self._heard = lexicon, heard

    def kind(self, doc: Doc, at: int, end: int, named: Set[int]) -> str:
        """The kind due from `at` to `end`, or nothing where anything may be meant."""
        if end in named:
            if self._is(doc[end].norm_, FOOD):
                return METHOD
            return SIDE if any(self._is(doc[end].norm_, side) for side in _SIDES) else BESIDE
        before = [token.norm_ for token in doc[max(0, at - _REACH) : at]]
        if self._heard.dues["wine-behind"] & set(before[-1:]):
            return WINE
        if before[-1:] == ["of"] and self._heard.dues["wine-of"] & set(before[-2:-1]):
            return WINE
        others = {t.norm_ for t in doc if not at <= t.i < end}
        for kind in (TERM, FOOD, WINE):
            if self._heard.dues[kind] & others:
                return kind
        return ASKED if self._asked(before) else ""

    def _asked(self, before: Sequence[str]) -> bool:
        """Whether it is asked right before what something is."""
        asks = before[:-1] if before[-1:] and before[-1] in self._heard.passed_over else before
        return bool(asks) and (asks[-1] in self._heard.dues["asked"] or asks[-2:] == ["what", "do"])

    def doubt(self, names: Iterable[Name], kind: str) -> float:
        """What it costs to mean these names where a kind is due."""
        if not kind:
            return 0.0
        if kind == ASKED:
            return JUST_SO if any(name.kind == TERM for name in names) else 0.0
        fits = any(name.kind not in _OTHERS[kind] for name in names)
        return JUST_SO if fits and kind in (METHOD, TERM) else 0.0 if fits else OTHERWISE

    def _is(self, word: str, kind: str) -> bool:
        found = self._lexicon.longest([word], 0)
        return bool(found and found[1][0].kind == kind)
