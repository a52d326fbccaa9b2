"""Finds names heard as other words in front of the word for their kind: `greer cheese`, `wrestling wine`.

The kind leaves so few names that they may sound a little otherwise than where anything may be meant.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from spacy.tokens import Doc

from assistant.language.doubts import Repair
from assistant.language.fold import fold
from assistant.language.mishearing import Mishearings
from assistant.language.places import SHORT, Places
from assistant.language.slipping import slip_cost
from assistant.language.spelling import LONG, is_english
from assistant.language.vocabulary import Vocabulary

MOST = 3  # words in front
FEWEST = 4  # letters of them
# How unlike a name of the kind they may sound, for each sound: words of questions, others, and strange ones.
BESIDE = 0.07  # the same for a part of a name with the rest of it beside them
WINE = "kind/wine"  # so many wines have a name that short words sound like one
LITTLE, ENGLISH, STRANGE = 0.035, 0.06, 0.085


class Heads:
    """Looks for names in front of the words for their kinds."""

    def __init__(self, known: Vocabulary, mishearings: Mishearings) -> None:
        self._known, self._mishearings = known, mishearings

    def heard(self, doc: Doc, places: Places) -> Iterator[Repair]:
        """The names of a kind that the words in front of it sound like."""
        for at, word in enumerate(places.words):
            kind = self._known.heard.heads.get(word)
            if kind and (found := self._in_front(doc, places, at, kind)):
                yield found

    def beside(self, doc: Doc, places: Places) -> Iterator[Repair]:
        """The ends of longer names that two or three words behind the others sound like: `seafood pay a`."""
        done = 0
        for start in sorted(i + 1 for i in places.named if i + 1 not in places.named):
            for end in range(min(len(doc), start + MOST), start + 1, -1):
                if start >= done and (word := self._behind(doc, places, start, end)):
                    done = end
                    yield Repair(0.0, start, end, word)

    def _behind(self, doc: Doc, places: Places, start: int, end: int) -> str | None:
        """The one word that sounds like these and makes a name with the word before them."""
        before = places.words[start - 1]
        beside = self._known.completions.beside([before], ()) if self._free(places, start, end) else set()
        if not beside:
            return None
        off = self._mishearings.all_alike([fold(token.text) for token in doc[start:end]], BESIDE)
        names = [w for w in off if w in beside and self._named([before, w])]
        return names[0] if len(names) == 1 and len(names[0]) >= FEWEST else None

    def _named(self, words: list[str]) -> bool:
        found = (self._known.lexicon.longest(words[i:], 0) for i in range(len(words) - 1))
        return any(name and name[0] > 1 for name in found)

    def _free(self, places: Places, start: int, end: int) -> bool:
        """Whether the words may be part of a name: none is one already, and the first is no little one."""
        words, span = places.words, range(start, end)
        if any(i in places.named or not words[i].isalpha() for i in span):
            return False
        if (
            self._known.heard.others.intersection(words[start:end])
            or sum(map(len, words[start:end])) < FEWEST
        ):
            return False
        last = places.stop[end - 1] and len(words[end - 1]) > SHORT  # `vermo uth too`
        return not (places.stop[start] or last) and places.closes(end)

    def _in_front(self, doc: Doc, places: Places, at: int, kind: str) -> Repair | None:
        for start in range(max(0, at - MOST), at):
            pieces = [fold(token.text) for token in doc[start:at]]
            if sum(map(len, pieces)) < FEWEST or not self._may_name(places, start, at):
                continue
            name = self._mishearings.of_kind(pieces, kind, self._limit(places, start, at))
            if name and not (len(pieces) == 1 and self._is_itself(pieces[0], name, kind)):
                return Repair(0.0, start, at, name)
        return None

    def _is_itself(self, word: str, name: str, kind: str) -> bool:
        """Whether a word looks more like something else, or is short, English and no slip (`bunny wine`)."""
        short = kind == WINE and len(word) <= LONG and is_english(word) and slip_cost(word, name) > 1
        return short or self._known.looks_otherwise(word, name)

    def _may_name(self, places: Places, start: int, end: int) -> bool:
        """Whether the words begin where a name may, and none of them is a part of one already."""
        words, span = places.words, range(start, end)
        if any(i in places.named or not words[i].isalpha() for i in span) or places.stop[start]:
            return False
        if any(places.little[start:end]) and not (start and places.eaten[start - 1]):
            return False  # `find a wine`
        begins = not start or places.stop[start - 1] or places.little[start - 1] or start - 1 in places.named
        return begins and not self._known.heard.others.intersection(words[start:end])

    def _limit(self, places: Places, start: int, end: int) -> float:
        words: Sequence[str] = places.words[start:end]
        if any(places.little[start:end]):
            return LITTLE
        return STRANGE if any(map(self._known.strange, words)) else ENGLISH
