"""Finds names that were heard as other words, in the places of a question where a name is due.

A place is what stands between two words that are sure to be no part of it: behind `with` or `about`, before
`please` or another name, at an end of the text. All of it must sound like the name.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence, Set

from spacy.lang.en.stop_words import STOP_WORDS
from spacy.tokens import Doc

from assistant.language.fold import fold
from assistant.language.mishearing import Mishearings
from assistant.language.small_words import small_words
from assistant.language.spelling import slip_cost
from assistant.language.vocabulary import Vocabulary
from assistant.language.weighing import LONGEST, Repair, like_a_person

FEWEST, FEWEST_OF_ONE = 5, 4  # letters of a place that is looked at, and of one word
# How unlike a name the words may sound, for each sound: before the words themselves are mended, and after.
SURELY, LIKELY = 0.035, 0.075
BESIDE, REST = 0.055, 4  # the same with a name among them that is kept, and letters that are left besides
SAME, IN_LIST = (
    0.012,
    ((0.012, 0.3),),
)  # names or little words that are a name together; a plain word in a list
MANY = 10  # letters of little words that need not sound just like a name
# The same for one strange word, short or long, with how it may look, for each letter.
LONG, ONE_SHORT, ONE_SAME, ONE_LONG = 7, ((0.012, 0.2),), (0.012, 0.42), (0.05, 0.3)
SELDOM = ((0.012, 0.16),)  # one English word that is seldom said
LONGER = 1.2  # how many times as long as a name one word may be


class Slots:
    """Looks for names in the places of a question."""

    def __init__(self, known: Vocabulary, mishearings: Mishearings) -> None:
        self._known, self._mishearings = known, mishearings
        self._passed, self._between = known.heard.passed_over, known.heard.between

    def surely(self, doc: Doc) -> Iterator[Repair]:
        """Names that the words of a place sound just like, be a part of them a name of its own."""
        return self._heard(doc, SURELY, 2)

    def likely(self, doc: Doc) -> Iterator[Repair]:
        """Names that what is left unread sounds like."""
        return self._heard(doc, LIKELY, 1)

    def _heard(self, doc: Doc, limit: float, fewest: int) -> Iterator[Repair]:
        named = self._known.named(doc)
        done = 0
        for start, end in self._places(doc, named):
            if start < done or end - start < fewest:
                continue
            words = [doc[i].norm_ for i in range(start, end)]
            if self._is_name(words):
                done = end  # it is read as it stands, or put together
                continue
            one = len(words) == 1
            name = self._of_one(doc, start, named) if one else self._of_all(doc, start, words, named, limit)
            if name:
                done = end
                yield Repair(0.0, start, end, name)

    def _is_name(self, words: Sequence[str]) -> bool:
        lexicon = self._known.lexicon
        return "".join(words) in lexicon.joined or bool(len(words) == 1 and lexicon.longest(words, 0))

    def _of_one(self, doc: Doc, at: int, named: Set[int]) -> str | None:
        """The name that one word looks and sounds like."""
        word = fold(doc[at].text)
        for most, looks_so in self._limits(doc, at, named):
            name = self._mishearings.alike([word], most) or ""
            looks = looks_so * max(len(word), len(name))
            if name and len(word) <= LONGER * len(name) and slip_cost(word, name) <= looks:
                return name
        return None

    def _limits(self, doc: Doc, at: int, named: Set[int]) -> tuple[tuple[float, float], ...]:
        """How unlike a name one word may sound, and how unlike it may look then."""
        word = doc[at].norm_
        idle = word.endswith(tuple(small_words()["idle-endings"])) or word in STOP_WORDS
        if at in named or idle or word in self._known.heard.others:
            return ()
        if self._known.strange(word):
            person = like_a_person(doc, at, at_start=True)
            return () if person else (ONE_SAME, ONE_LONG) if len(word) >= LONG else ONE_SHORT
        if word not in self._known.plain and word not in self._known.lexicon.words:
            return SELDOM
        return IN_LIST if self._listed(doc, at, named) else ()

    def _listed(self, doc: Doc, at: int, named: Set[int]) -> bool:
        """Whether the word is one of a list, or said to go with a name."""
        beside = at and doc[at - 1].norm_ in self._known.heard.listed
        return bool(beside and named and self._ends(doc, at + 1))

    def _ends(self, doc: Doc, at: int) -> bool:
        """Whether a text ends here, or a word follows that is no part of a name."""
        return at == len(doc) or not doc[at].norm_.isalpha() or doc[at].norm_ in STOP_WORDS

    def _of_all(
        self, doc: Doc, start: int, words: Sequence[str], named: Set[int], limit: float
    ) -> str | None:
        """The name that several words sound like."""
        most = self._most(doc, start, words, named, limit)
        pieces = [fold(doc[i].text) for i in range(start, start + len(words))]
        name = self._mishearings.alike(pieces, most) if most else None
        kept = [w for i, w in enumerate(words, start) if i in named and len(w) >= REST]
        if not name or not kept or most <= SURELY or self._keeps(name, kept):
            return name
        return self._mishearings.alike(pieces, SURELY)

    def _keeps(self, name: str, kept: Sequence[str]) -> bool:
        return not set(self._known.lexicon.joined.get(name, name).split()).isdisjoint(kept)

    def _most(self, doc: Doc, start: int, words: Sequence[str], named: Set[int], limit: float) -> float:
        """How unlike a name several words may sound; 0 where they stand for none."""
        unread = [w for i, w in enumerate(words, start) if i not in named]
        lone = [w for w in unread if w not in STOP_WORDS]
        if not self._known.heard.others.isdisjoint(unread):
            return 0.0
        if not lone:
            return 0.0 if unread else SAME
        little = self._known.little.intersection(words)
        end, beside = start + len(words), len(unread) < len(words)
        if beside and sum(map(len, unread)) < REST:
            return 0.0
        if little.issuperset(lone):
            sure = sum(map(len, words)) >= MANY and not beside and self._framed(doc, start, end, True)
            return SURELY if sure else SAME if self._framed(doc, start, end, False) else 0.0
        if little and not self._framed(doc, start, end, False):
            return 0.0
        if any(map(self._known.strange, lone)):
            return BESIDE if beside else LIKELY
        return SURELY if beside else limit if not little or self._framed(doc, start, end, True) else SAME

    def _places(self, doc: Doc, named: Set[int]) -> Iterator[tuple[int, int]]:
        """Places where a name may stand, the longest of each start first."""
        for start in range(len(doc)):
            if not self._opens(doc, start, named):
                continue
            for end in range(min(len(doc), start + LONGEST), start, -1):
                if self._closes(doc, end, named) and self._whole(doc, start, end):
                    yield start, end

    def _whole(self, doc: Doc, start: int, end: int) -> bool:
        """Whether these are words enough; an article in front is one of two pieces at least besides."""
        words = [doc[i].norm_ for i in range(start, end)]
        fewest = FEWEST if len(words) > 1 else FEWEST_OF_ONE
        enough = sum(map(len, words)) >= fewest and all(map(str.isalpha, words))
        one = self._between.isdisjoint(words) and self._known.heard.people.isdisjoint(words)
        return enough and one and (words[0] not in self._passed or len(words) > 2)

    def _opens(self, doc: Doc, at: int, named: Set[int]) -> bool:
        """Whether a name may begin here."""
        if at == 0:
            return True
        before = doc[at - 1]
        if before.norm_ in self._known.heard.people:
            return False
        return at - 1 in named or not before.norm_.isalpha() or before.norm_ in self._known.little

    def _closes(self, doc: Doc, end: int, named: Set[int]) -> bool:
        """Whether a name may end before this word."""
        if end == len(doc) or end in named or not doc[end].norm_.isalpha():
            return True
        return doc[end].norm_ in self._known.little and len(doc[end]) > 2

    def _framed(self, doc: Doc, start: int, end: int, behind_with: bool) -> bool:
        """Whether little words within may be taken for pieces of a name: nothing else is said."""
        at = start
        while at and doc[at - 1].norm_ in self._passed:
            at -= 1
        opened = doc[at - 1].norm_ in self._known.heard.eaten if at else not behind_with
        behind = [doc[i].norm_ for i in range(end, len(doc)) if doc[i].norm_.isalpha()]
        return opened and all(word in STOP_WORDS for word in behind)
