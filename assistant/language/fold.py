"""Folding: the form in which typed words and labels are compared."""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache

_LETTERS = str.maketrans({"ß": "ss", "ø": "o", "æ": "ae", "œ": "oe", "ł": "l", "ı": "i", "’": "'", "‘": "'"})
_WORD = re.compile(r"[^\W_]+(?:[.,]\d+)?", re.UNICODE)
_POSSESSIVE = re.compile(r"'s\b")
_IS = re.compile(r"\b(what|how|where|who|that|there|let|it|when)'s\b")
_CONTRACTED = frozenset(["whats", "hows", "wheres", "whos", "thats", "theres", "lets", "its", "whens"])
_SHORT = {"w": "with", "n": "and", "wo": "without"}
LONGEST_KEPT = 40  # characters: what is longer is no word, and would fill the memory
_NOT_PLURAL = ("ss", "us", "is")


def _plain(text: str) -> str:
    """Lower case without accents, possessives and apostrophes."""
    text = text.lower()
    if not text.isascii():
        text = unicodedata.normalize("NFKD", text.translate(_LETTERS))
        text = "".join(c for c in text if not unicodedata.combining(c)).lower()
    if "'" in text:
        text = _POSSESSIVE.sub("", _IS.sub(r"\1s", text)).replace("'", "")
    return text


def fold(word: str) -> str:
    """A word in lower case, no accents, no possessive: `Époisses'` -> `epoisses`, `&` -> `and`."""
    return _kept_fold(word) if len(word) <= LONGEST_KEPT else _fold(word)


def _fold(word: str) -> str:
    if word == "&":
        return "and"
    plain = _plain(word)
    return _SHORT.get(plain, plain)


_kept_fold = lru_cache(maxsize=16384)(_fold)


def stem(word: str) -> str:
    """The singular-like form of a folded word, the same for labels and questions."""
    return _kept_stem(word) if len(word) <= LONGEST_KEPT else _stem(word)


def _stem(word: str) -> str:
    if word in _CONTRACTED:  # `what's` asks what is, `what` does not
        return word
    if len(word) > 3 and word.endswith("ie"):
        return word[:-2] + "y"
    if len(word) < 4 or not word.endswith("s") or word.endswith(_NOT_PLURAL):
        return word
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("ches", "shes", "xes", "sses", "zes", "oes")):
        return word[:-2]
    return word[:-1]


_kept_stem = lru_cache(maxsize=32768)(_stem)


def key(text: str) -> tuple[str, ...]:
    """The comparison key of a label: stems of its folded words."""
    plain = _plain(text.replace("&", " and "))
    return tuple([stem(_SHORT.get(word, word)) for word in _WORD.findall(plain)])
