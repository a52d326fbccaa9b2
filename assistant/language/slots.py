"""Finds names that were heard as other words, in the places of a question where a name is due.

All of a place must sound like the name, the more so the likelier its words are meant as they stand.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from spacy.tokens import Doc

from assistant.language.doubts import Repair
from assistant.language.expected import Expected
from assistant.language.fold import fold
from assistant.language.mishearing import Mishearings
from assistant.language.places import FEWEST_OF_ONE, Places
from assistant.language.slipping import slip_cost
from assistant.language.small_words import small_words
from assistant.language.vocabulary import Vocabulary
from assistant.language.weighing import like_a_person

# How unlike a name the words may sound, for each sound: before the words themselves are mended, and after.
SURELY, LIKELY = 0.035, 0.075
BESIDE, REST = 0.055, 4  # the same with a name among them that is kept, and letters that are left besides
MARKED = 0.09  # the same where a word stands that only names have (`sovereign blanc`)
SAME = 0.012  # the same for little words that are a name together
MANY = 10  # letters of little words that need not sound just like a name
# How unlike one word may sound and, for each letter, look: a strange one, short or long.
LONG, ONE_SHORT, ONE_LONG = 7, ((SAME, 0.2),), ((SAME, 0.42), (0.05, 0.3))
SELDOM, IN_LIST = ((SAME, 0.16),), ((SAME, 0.3),)  # an English one, seldom said; a plain one in a list
LONGER = 1.2  # how many times as long as a name one word may be

Limits = tuple[tuple[float, float], ...]


class Slots:
    """Looks for names in the places of a question."""

    def __init__(self, known: Vocabulary, mishearings: Mishearings) -> None:
        self._known, self._mishearings = known, mishearings
        self._expected = Expected(known.lexicon, known.heard)

    def surely(self, doc: Doc, places: Places) -> Iterator[Repair]:
        """Names that the words of a place sound just like, be a part of them a name of its own."""
        return self._heard(doc, places, SURELY, 2)

    def likely(self, doc: Doc, places: Places) -> Iterator[Repair]:
        """Names that what is left unread sounds like."""
        return self._heard(doc, places, LIKELY, 1)

    def _heard(self, doc: Doc, places: Places, limit: float, fewest: int) -> Iterator[Repair]:
        done = 0
        for start, end in places.all():
            if start < done or end - start < fewest:
                continue
            if self._is_name(places.words[start:end]):
                done = end  # it is read as it stands, or put together
                continue
            one = end - start == 1
            name = self._of_one(doc, places, start) if one else self._of_all(doc, places, start, end, limit)
            if name and self._is_due(doc, start, end, places, name):
                done = end
                yield Repair(0.0, start, end, name)

    def _is_due(self, doc: Doc, start: int, end: int, places: Places, name: str) -> bool:
        """Whether a name that is only heard is of the kind due, and more than a word that stands there."""
        found = self._known.lexicon.longest([name], 0)
        kind = self._expected.kind(doc, start, end, places.named)
        due = not found or self._expected.doubt(found[1], kind) <= 0
        return due and name not in places.words[start:end]

    def _is_name(self, words: list[str]) -> bool:
        lexicon = self._known.lexicon
        return "".join(words) in lexicon.joined or bool(len(words) == 1 and lexicon.longest(words, 0))

    def _of_one(self, doc: Doc, places: Places, at: int) -> str | None:
        """The name that one word looks and sounds like."""
        word = fold(doc[at].text)
        for most, looks_so in self._limits(doc, places, at):
            name = self._mishearings.alike([word], most) or ""
            looks = looks_so * max(len(word), len(name))
            if name and len(word) <= LONGER * len(name) and slip_cost(word, name) <= looks:
                doubted = most > SAME and self._known.looks_otherwise(word, name)
                return None if doubted else name
        return None

    def _limits(self, doc: Doc, places: Places, at: int) -> Limits:
        """How unlike a name one word may sound, and how unlike it may look then."""
        word = places.words[at]
        if at in places.named or places.stop[at] or word in self._known.heard.others or _tells_how(word):
            return ()
        if self._known.strange(word):
            person = like_a_person(doc, at, at_start=True)
            return () if person else ONE_LONG if len(word) >= LONG else ONE_SHORT
        if word not in self._known.plain and word not in self._known.lexicon.words:
            return SELDOM
        return IN_LIST if places.in_list(at) else ()

    def _of_all(self, doc: Doc, places: Places, start: int, end: int, limit: float) -> str | None:
        """The name that several words sound like."""
        most = self._most(places, start, end, limit)
        if not most:
            return None
        pieces = [fold(doc[i].text) for i in range(start, end)]
        name = self._mishearings.alike(pieces, most)
        if not name and places.named.isdisjoint(range(start, end)):
            name = self._of_marked(places.words[start:end], pieces)
        kept = {
            w
            for i, w in enumerate(places.words[start:end], start)
            if (i in places.named and len(w) >= REST) or self._known.marks(w)
        }
        if name and not self._cooks(name, places.words[start:end]):
            return None
        if not name or not kept or most <= SURELY or self._keeps(name, kept):
            return name
        return self._mishearings.alike(pieces, SURELY)

    def _of_marked(self, words: Sequence[str], pieces: Sequence[str]) -> str | None:
        """The name with a word that stands in names alone, beside others that may sound otherwise."""
        marks = {word for word in words if self._known.marks(word)}
        name = self._mishearings.alike(pieces, MARKED) if marks else None
        return name if name and self._keeps(name, marks) else None

    def _keeps(self, name: str, kept: set[str]) -> bool:
        return not kept.isdisjoint(self._known.lexicon.joined.get(name, name).split())

    def _most(self, places: Places, start: int, end: int, limit: float) -> float:
        """How unlike a name several words may sound; 0 where they stand for none."""
        unread = [i for i in range(start, end) if i not in places.named]
        lone = [i for i in unread if not places.stop[i]]
        if not lone:
            return 0.0 if unread else SAME
        words = [places.words[i] for i in unread]
        beside = len(unread) < end - start
        if not self._known.heard.others.isdisjoint(words) or (beside and sum(map(len, words)) < REST):
            return 0.0
        if all(places.little[i] for i in lone):
            return self._of_little(places, start, end, beside)
        if any(self._known.strange(places.words[i]) for i in lone):
            return BESIDE if beside else LIKELY
        plain = any(places.little[start:end]) and not places.framed(start, end, at_start=False)
        return SURELY if beside else SAME if plain else limit

    def _cooks(self, name: str, words: Sequence[str]) -> bool:
        """Whether a name keeps the way of cooking that was said: `sautéed chicken` is no chicken satay."""
        methods = [word for word in words if self._is_method(word)]
        parts = self._known.lexicon.joined.get(name, name).split()
        return all(any(part.startswith(word[:FEWEST_OF_ONE]) for part in parts) for word in methods)

    def _is_method(self, word: str) -> bool:
        found = self._known.lexicon.longest([word], 0)
        return found is not None and any(one.type == "Method" for one in found[1])

    def _of_little(self, places: Places, start: int, end: int, beside: bool) -> float:
        many = sum(map(len, places.words[start:end])) >= MANY and not beside
        return SURELY if many and places.framed(start, end, at_start=False) else SAME


def _tells_how(word: str) -> bool:
    return word.endswith(tuple(small_words()["idle-endings"]))
