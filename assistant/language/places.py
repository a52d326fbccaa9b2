"""The places of a text where a name is due: between words that are sure to be no part of one.

Such a place begins behind `with` or `about`, behind another name or a little word, or with the text; it ends
before `please`, another name or a little word, or with the text.
"""

from __future__ import annotations

from collections.abc import Iterator

from spacy.lang.en.stop_words import STOP_WORDS
from spacy.tokens import Doc

from assistant.language.vocabulary import Vocabulary
from assistant.language.weighing import LONGEST

FEWEST, FEWEST_OF_ONE = 5, 4  # letters of a place that is looked at, and of one word
SHORT = 2  # letters of a little word that may be a piece of a name


class Places:
    """The words of a text and what stands around each, worked out once."""

    def __init__(self, doc: Doc, known: Vocabulary) -> None:
        heard = known.heard
        self.words = [token.norm_ for token in doc]
        self.named = known.named(doc)
        self.stop = [word in STOP_WORDS for word in self.words]
        self.little = [word in known.little for word in self.words]
        self._apart = [not w.isalpha() or w in heard.between or w in heard.people for w in self.words]
        self._passed = [word in heard.passed_over for word in self.words]
        self._opens = [True, *(self._borders(i, 0) for i in range(len(doc)))]
        for at, word in enumerate(self.words, 1):
            self._opens[at] &= word not in heard.people
        self._closes = [*(self._borders(i, SHORT) for i in range(len(doc))), True]
        self.eaten = [word in heard.eaten for word in self.words]
        self.listed = [word in heard.listed for word in self.words]
        said = [i for i, word in enumerate(self.words) if word.isalpha() and not self.stop[i]]
        self._said_last = said[-1] if said else -1

    def _borders(self, at: int, short: int) -> bool:
        word = self.words[at]
        return at in self.named or not word.isalpha() or (self.little[at] and len(word) > short)

    def all(self) -> Iterator[tuple[int, int]]:
        """(start, end) of the places, the longest of each start first."""
        for start in range(len(self.words)):
            if not self._opens[start] or self._apart[start]:
                continue
            last = start + 1
            while last < min(len(self.words), start + LONGEST) and not self._apart[last]:
                last += 1
            yield from ((start, end) for end in range(last, start, -1) if self._may_name(start, end))

    def closes(self, at: int) -> bool:
        """Whether a name may end before this word."""
        return self._closes[at]

    def due(self, at: int) -> bool:
        """Whether one word stands where a name is due."""
        alone = at > 0 or at + 1 not in self.named  # `compair Merlot and Malbec`
        return self._opens[at] and not self._apart[at] and self._closes[at + 1] and alone

    def beside_name(self, at: int) -> bool:
        """Whether a word and a name beside it fill the place of a name (`with grin pepper`)."""
        start, end = at, at + 1
        while end < len(self.words) and self._belongs(end):
            end += 1
        while start and self._belongs(start - 1):
            start -= 1
        while start and self._passed[start - 1]:
            start -= 1
        begins = start > 0 and self.eaten[start - 1]
        return begins and not self.named.isdisjoint(range(start, end)) and self._closes[end]

    def _belongs(self, at: int) -> bool:
        return at in self.named or not (self.little[at] or self._apart[at])

    def _may_name(self, start: int, end: int) -> bool:
        """Whether these are words enough; an article in front is one of two pieces at least besides."""
        if not self._closes[end] or (self._passed[start] and end - start < 3):
            return False
        if end - start > 1 and self._idle(start, end):
            return False
        fewest = FEWEST if end - start > 1 else FEWEST_OF_ONE
        return sum(map(len, self.words[start:end])) >= fewest

    def _idle(self, start: int, end: int) -> bool:
        """Whether several words are nothing but the commonest, or little words with more said around them."""
        if all(self.stop[start:end]):
            return True
        return any(self.little[start:end]) and not self.framed(start, end, at_start=True)

    def framed(self, start: int, end: int, at_start: bool) -> bool:
        """Whether nothing is said behind, and `with` or the like stands in front (or nothing, `at_start`)."""
        if self._said_last >= end:
            return False
        at = start
        while at and self._passed[at - 1]:
            at -= 1
        return self.eaten[at - 1] if at else at_start

    def in_list(self, at: int) -> bool:
        """Whether a word is one of a list of names, or said to go with one."""
        if not self.named or not at or not self.listed[at - 1]:
            return False
        behind = at + 1
        return behind == len(self.words) or not self.words[behind].isalpha() or self.stop[behind]
