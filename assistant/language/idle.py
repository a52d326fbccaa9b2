"""Words that name nothing: little words, plain English, and what is told by a word's form."""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass

from spacy.tokens import Token

from assistant.language.small_words import small_words
from assistant.language.spelling import is_english


@dataclass(frozen=True, slots=True)
class Idle:
    """`little`: folded words that never name anything; `english`: those that may in a question about a word.

    `named`: the words of all names in the knowledge.
    """

    little: frozenset[str]
    english: frozenset[str]
    named: frozenset[str]

    def matters(self, token: Token, asks_meaning: bool) -> bool:
        """Whether a word that nothing was made of should be told to the guest."""
        word = token.norm_
        if token.is_stop or word in self.little or (word in self.english and not asks_meaning):
            return False
        if any(c.isdigit() for c in word) or self._tells_how(word) or _run_together(token):
            return False
        return any(c.isalnum() or (unicodedata.category(c).startswith("S") and not c.isascii()) for c in word)

    def _tells_how(self, word: str) -> bool:
        """Whether an English word tells how or how much (`lightly`), and is no part of any name."""
        ends = word.endswith(tuple(small_words()["idle-endings"])) and word not in self.named
        return ends and is_english(word)


def _run_together(token: Token) -> bool:
    """Whether a word is another run together with a little one (`why'd`, `it'll`)."""
    head, mark, tail = token.text.lower().replace("’", "'").rpartition("'")
    return bool(mark and head) and tail in small_words()["short-tails"]
