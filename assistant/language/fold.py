"""Folding: the form in which typed words and labels are compared."""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache

_LETTERS = str.maketrans({"ß": "ss", "ø": "o", "æ": "ae", "œ": "oe", "ł": "l", "’": "'", "‘": "'"})
_WORD = re.compile(r"[^\W_]+(?:[.,]\d+)?", re.UNICODE)
_SHORT = {"w": "with", "n": "and", "&": "and", "wo": "without"}
_NOT_PLURAL = ("ss", "us", "is", "ous")


@lru_cache(maxsize=16384)
def fold(text: str) -> str:
    """Lower case, no accents, no possessive, no apostrophes: `Époisses'` -> `epoisses`."""
    text = text.lower().translate(_LETTERS)
    if text.endswith("'s"):
        text = text[:-2]
    text = unicodedata.normalize("NFKD", text.replace("'", ""))
    text = "".join(c for c in text if not unicodedata.combining(c))
    return _SHORT.get(text, text)


@lru_cache(maxsize=16384)
def stem(word: str) -> str:
    """The singular-like form of a folded word, the same for labels and questions."""
    if len(word) > 3 and word.endswith("ie"):
        return word[:-2] + "y"
    if len(word) < 4 or not word.endswith("s") or word.endswith(_NOT_PLURAL):
        return word
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("ches", "shes", "xes", "sses", "zes", "oes")):
        return word[:-2]
    return word[:-1]


@lru_cache(maxsize=16384)
def key(text: str) -> tuple[str, ...]:
    """The comparison key of a label: stems of its folded words."""
    apostrophes = text.replace("’", "'").replace("'s ", " ").replace("&", " and ")
    words = _WORD.findall(fold(apostrophes))
    return tuple(stem(fold(word)) for word in words)
