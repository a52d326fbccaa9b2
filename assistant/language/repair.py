"""Mends misspelt words in their context: alone, put together with their neighbours, or taken apart."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cached_property

from spacy.lang.en.stop_words import STOP_WORDS
from spacy.tokens import Doc, Span, Token

from assistant.language.doubts import Repair, pieces_of
from assistant.language.expected import TERM
from assistant.language.fold import fold
from assistant.language.headed import Heads
from assistant.language.mishearing import Mishearings
from assistant.language.places import Places
from assistant.language.slots import Slots
from assistant.language.spelling import is_english
from assistant.language.vocabulary import Vocabulary
from assistant.language.weighing import LONGEST, SURE, Weigher, windows

MOST_REPAIRS = 12  # a text with more strange words is not a question
MOST_LOOKED_AT = 60  # words
BETTER_WHOLE = 1.2  # what a slip may cost in a word that is not taken apart
HYPHEN = "-"
FEWEST = 4  # letters of an English word that was heard for one of a name
SHORT = 5  # letters of a word that is none run together, be its accents taken apart
COMPOUND = 8  # letters of a name that may stand in two words
_APOSTROPHE = re.compile("['’]")


class Repairer:
    """Mends the words of a question by what the vocabulary knows."""

    def __init__(self, known: Vocabulary) -> None:
        self._known, self._lexicon = known, known.lexicon
        self._weigher = Weigher(known)

    @cached_property
    def _mishearings(self) -> Mishearings:
        return Mishearings(self._known)

    @cached_property
    def _slots(self) -> Slots:
        return Slots(self._known, self._mishearings)

    @cached_property
    def _heads(self) -> Heads:
        return Heads(self._known, self._mishearings)

    def repairs(self, doc: Doc) -> Iterator[Repair]:
        """The likeliest repairs; the doc may be changed in between."""
        places = Places(doc, self._known)
        for pass_ in (
            self._of_phrases,
            self._compounds,
            self._heads.beside,
            self._slots.surely,
            self._heads.heard,
            self._of_words,
            self._slots.likely,
            self._variants,
        ):
            mended = False
            for repair in pass_(doc, places):
                mended = True
                yield repair
            places = Places(doc, self._known) if mended else places

    def _of_phrases(self, doc: Doc, places: Places) -> Iterator[Repair]:
        """The repairs of strange words, and of some English ones, that make names with their neighbours."""
        for at, token in enumerate(doc[:MOST_LOOKED_AT]):
            word = token.norm_
            if self._known.strange(word):
                found = self._weigher.completing(doc, at)
            else:
                may_be = len(word) >= FEWEST and at not in places.named and word.isalpha()
                found = self._weigher.homophone(doc, at, places.words) if may_be else None
            if found:
                yield found

    def _variants(self, doc: Doc, places: Places) -> Iterator[Repair]:
        """Names spelt otherwise than in the longer name that they make (`salmon teryaki`)."""
        for at in sorted(places.named):
            if found := self._weigher.variant(places.words, at):
                yield found

    def _compounds(self, doc: Doc, _: Places) -> Iterator[Repair]:
        """Names that were written in two words."""
        done, spelt_right = 0, self._lexicon.spelt_right
        folded = [fold(token.text) for token in doc[:MOST_LOOKED_AT]]
        for at, (word, next_) in enumerate(zip(folded, [token.norm_ for token in doc[1:]], strict=False)):
            if word + next_ in spelt_right and at >= done and (found := self._compound(doc, at)):
                done = found.end
                yield found

    def completes(self, doc: Doc, at: int) -> bool:
        """Whether a strange word is one of a longer name with its neighbours, but for a slip."""
        return self._weigher.completing(doc, at) is not None

    def completed(self, doc: Doc, repair: Repair) -> bool:
        """Whether the word of a repair is a part of a longer name with its neighbours."""
        return self._weigher.completed(doc, repair.start, repair.end, repair.word) > 1

    def _of_words(self, doc: Doc, places: Places) -> Iterator[Repair]:
        """The likeliest repair of each strange word."""
        named = places.named
        heard = None if named else self._unnamed(doc)
        if heard:
            yield heard
            return
        done, tried = 0, 0
        for at, token in enumerate(doc):
            if at < done or tried == MOST_REPAIRS:
                continue
            idle = at not in named and self._idle(token)
            tried += idle
            if found := self._found(doc, at, done, places) if idle else None:
                done = found.end
                yield found

    def _idle(self, token: Token) -> bool:
        """Whether the word may be a slip or a piece of one."""
        word = token.norm_
        return (
            len(word) > 2
            and word.isalpha()
            and word not in self._known.little
            and word not in self._known.heard.others
        )

    def _found(self, doc: Doc, at: int, done: int, places: Places) -> Repair | None:
        if at and doc[at - 1].norm_ in self._known.heard.people:
            return None
        odd = self._known.odd(doc[at].norm_) and not _is_word(doc[at])
        found = self._weigher.likeliest(doc, at, done, places.named, places.due(at)) if odd else None
        if found and self._cooks_unknown(doc, found):
            return None
        if found or odd:
            return found or self._misheard(doc, at, done)
        return self._misheard(doc, at, done) or self._weigher.completing(doc, at, places.beside_name(at))

    def _cooks_unknown(self, doc: Doc, repair: Repair) -> bool:
        """Whether a strange word tells how a strange food is made (`the smoored hennel`), and is no slip."""
        alone = repair.end == repair.start + 1 and doc[repair.start].norm_.endswith("ed")
        behind = doc[repair.end].norm_ if alone and repair.end < len(doc) else ""
        if not behind or not self._known.strange(behind):
            return False
        near = [word for cost, word in self._known.speller.near(behind) if cost <= SURE]
        if any(self._lexicon.longest([word], 0) for word in near):
            return False  # `glazzed carott`
        names = self._lexicon.longest([repair.word], 0)
        return bool(names and all(name.type != "Method" for name in names[1]))

    def _compound(self, doc: Doc, at: int) -> Repair | None:
        """One name written in two words (`ginger bread`), unless they are a name as they stand.

        What is said of a kind of things (`sweet bread`, `cheese board`) is no such name.
        """
        pair = doc[at : at + 2]
        joined = "".join(pieces_of(pair))
        if len(joined) < COMPOUND and not any(self._known.strange(token.norm_) for token in pair):
            return None
        one, other = pair[0].norm_, pair[1].norm_
        if not pair[0].is_alpha or any(self._of_kind(*way) for way in ((one, other), (other, one))):
            return None
        found = self._lexicon.longest([t.norm_ for t in pair], 0)
        named = self._lexicon.longest([joined], 0) or self._weigher.completed(doc, at, at + 2, joined) > 1
        return Repair(0.0, at, at + 2, joined) if named and not (found and found[0] == 2) else None

    def _of_kind(self, word: str, kind: str) -> bool:
        return kind in self._known.heard.heads and word in self._known.little

    def _misheard(self, doc: Doc, at: int, since: int) -> Repair | None:
        """The name that this and its neighbours were meant for, though each is a word in its own right."""
        spans = [(s, e) for s, e in windows(doc, at, since) if e - s > 1 and self._free(doc[s:e])]
        for start, end in reversed(spans):
            idle = all(t.norm_ not in self._known.little for t in doc[start:end])
            name = self._mishearings.name(pieces_of(doc[start:end]), 3 if idle else 4)
            if name:
                return Repair(0.0, start, end, name)
        return None

    def _unnamed(self, doc: Doc) -> Repair | None:
        """The name that was heard as plain words where a question names nothing: all behind `with`."""
        words = [t.i for t in doc if t.norm_.isalpha()]
        if not words or words[-1] - words[0] != len(words) - 1:
            return None
        end = words[-1] + 1
        start = max((i + 1 for i in words[:-1] if doc[i].norm_ in self._known.heard.eaten), default=words[0])
        if start == words[0] and any(t.norm_ in self._known.little for t in doc):
            return None  # `show menu` is no chow mein
        while start < end and doc[start].norm_ in self._known.heard.passed_over:
            start += 1
        if not 1 < end - start <= LONGEST:
            return None
        name = self._mishearings.loosely(pieces_of(doc[start:end]))
        return Repair(0.0, start, end, name) if name else None

    def _free(self, span: Span) -> bool:
        """Whether no word is of another tongue, asks what is meant, or is common and first or long."""
        if not self._known.heard.dues[TERM].isdisjoint(t.norm_ for t in span):
            return False  # `what does crew mean` asks for no cremant
        if not self._known.heard.others.isdisjoint(t.norm_ for t in span):
            return False
        return span[0].norm_ not in STOP_WORDS and all(
            len(t.norm_) < 3 or t.norm_ not in STOP_WORDS for t in span
        )

    def apart(self, token: Token) -> tuple[str, ...]:
        """The words that one was run together from (`withsteak`, `off-drychenin`), or nothing."""
        hyphened = token.i > 1 and token.nbor(-1).text == HYPHEN and not token.nbor(-2).whitespace_
        if len(token.text) < SHORT and not hyphened:
            return ()
        word = fold(token.text)
        if hyphened:
            head = fold(token.nbor(-2).text)
            words = self._lexicon.joined.get(head + word, "").split()
            return tuple(words[1:]) if words[:1] == [head] and len(words) > 2 else ()
        if len(word) < 7 or not self._known.strange(word) or self._lexicon.longest([word], 0):
            return ()
        ways = [(word[:i], word[i:]) for i in range(3, len(word) - 2)]
        way = next((way for way in ways if self._known.parts(way)), ())
        near = self._known.speller.near(word)[:1] if way else []
        return () if near and near[0][0] <= BETTER_WHOLE else way


def _is_word(token: Token) -> bool:
    """Whether the word as typed is English (`munchies`), or what an apostrophe joined to it (`t'sales`)."""
    parts = _APOSTROPHE.split(token.lower_)
    return any(len(part) > 3 and part.isalpha() and is_english(part) for part in parts)
