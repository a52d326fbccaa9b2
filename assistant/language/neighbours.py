"""Weighs the words that make a longer name with their neighbours, by how they look and how they sound."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from operator import attrgetter

from spacy.lang.en.stop_words import STOP_WORDS
from spacy.tokens import Doc

from assistant.language.completing import Completions
from assistant.language.fold import fold
from assistant.language.likeness import like_any
from assistant.language.remembering import remembered
from assistant.language.spelling import MARGIN, is_english
from assistant.language.vocabulary import Vocabulary

LONG = 7  # letters of a plain word that is mended
# What the slip may cost in a word that completes a name: at most; in a strange one, so that the name is sure;
# in an English one.
COMPLETED, ONE_LETTER, HOMOPHONE = 1.1, 0.9, 0.65
COMPLETES = -0.5  # what a repair costs beside the slip itself where it makes a longer name
WHOLE = -0.3  # the same where what else stands there leaves little doubt of the name
FAR, HYPHENS = 8, ("-", "–")  # how far a name reaches, and what stands between its words
# How unlike what completes a name a word may sound, for each sound, and what that costs.
UNLIKE, HEARD, BY_SOUND = 0.07, 0.35, 5.0
KEPT = 64  # words that were compared last: the same is looked at again within a question
SHORTEST = 4  # letters of an English word that may have been heard for another, and of one by its sound


@dataclass(frozen=True, slots=True)
class Option:
    """A word that makes a longer name with its neighbours, the ids of that, and what it costs to think so.

    The name is `whole` where two words more of it stand there, or one that only names have.
    """

    cost: float
    word: str
    ids: tuple[str, ...]
    whole: bool


class Completer:
    """Finds what a word was meant for by the names that its neighbours are parts of."""

    def __init__(self, known: Vocabulary) -> None:
        self._known, self._lexicon = known, known.lexicon
        self._readings = remembered(self._sounds, 2048)
        self._alike = remembered(self._sounding_alike, KEPT)

    def options(self, doc: Doc, at: int, wholly: bool = False) -> Iterator[Option]:
        """What makes a longer name with the words beside it, be it behind a hyphen; `wholly`: a whole one."""
        solid = [i for i in range(max(0, at - FAR), min(len(doc), at + FAR)) if doc[i].norm_ not in HYPHENS]
        words, place = [doc[i].norm_ for i in solid], solid.index(at)
        beside = self._wholly(words, place) if wholly else self._beside(words, place)
        most = HEARD if wholly and words[place] in STOP_WORDS else COMPLETED - WHOLE
        near = self._near(words[place], beside, fold(doc[at].text)) if beside else []
        for cost, word in (one for one in near if one[0] <= most):
            found = self._longest([*words[:place], word, *words[place + 1 :]], place, word)
            if found and word != words[place] and (cost + (WHOLE if found.whole else 0.0)) <= COMPLETED:
                more = COMPLETES + (WHOLE if found.whole else 0.0)
                yield Option(cost + more, word, found.ids, found.whole)

    def _beside(self, words: Sequence[str], place: int) -> set[str]:
        """What may stand beside the neighbours."""
        # `ship and cheese` are no chips
        apart = frozenset() if self._known.strange(words[place]) else STOP_WORDS
        return self._known.completions.around(words, place, apart)

    def _wholly(self, words: Sequence[str], place: int) -> set[str]:
        """What leaves nothing out of a name beside two neighbours, or beside one that only names have."""
        known = self._known.completions
        before, behind = words[max(0, place - 1) : place], words[place + 1 : place + 2]
        marks = [word for word in (*before, *behind) if self._marks(word)]
        alone = known.beside(filter(marks.count, before), filter(marks.count, behind)) if marks else set()
        if words[place] not in STOP_WORDS:
            return alone | known.between(words, place)
        named = behind and self._lexicon.longest(words, place + 1)
        return set() if named else alone  # `with vinho verde`

    def _near(self, word: str, beside: set[str], typed: str) -> list[tuple[float, str]]:
        """What may be meant of what stands beside the neighbours, by its look or its sound."""
        found = {other: cost for cost, other in Completions.near(word, beside)}
        for other, off in self._alike(typed, frozenset(beside)).items():
            cost = HEARD + BY_SOUND * off
            found[other] = min(cost, found.get(other, cost))
        return sorted((cost, other) for other, cost in found.items())

    def _sounding_alike(self, typed: str, beside: frozenset[str]) -> dict[str, float]:
        """How unlike the word those sound that are nearly alike."""
        if len(typed) < SHORTEST or not typed.isalpha():
            return {}
        far = len(typed) // 2
        others = (w for w in beside if len(w) > 2 and abs(len(w) - len(typed)) <= far)
        # `crusted` is no crust
        sounds = {w: self._readings(w) for w in others if not typed.startswith(w)}
        return like_any(self._known.heard.sounds.readings([typed]), sounds, UNLIKE)

    def _sounds(self, word: str) -> list[str]:
        """How a word of a name sounds: an English one in English alone."""
        return self._known.heard.sounds.readings([word])[: 1 if is_english(word) else None]

    def _longest(self, words: Sequence[str], place: int, word: str) -> Option | None:
        """The longest name of several words that goes over the place."""
        found = ((start, self._lexicon.longest(words, start)) for start in range(place + 1))
        names = [(n[0], s, n[1]) for s, n in found if n and n[0] > 1 and s + n[0] > place]
        if not names:
            return None
        length, start, meant = max(names, key=lambda name: name[0])
        others = [words[i] for i in range(start, start + length) if i != place]
        said = [other for other in others if other not in STOP_WORDS]  # `shop and cheese` are no chips
        whole = len(said) > 1 or any(map(self._marks, said))
        return Option(0.0, word, tuple(name.id for name in meant), whole)

    def _marks(self, word: str) -> bool:
        """Whether a word stands in names and nowhere else (`medames`)."""
        return self._known.marks(word) and not is_english(word)

    def sure(self, doc: Doc, at: int, idle: bool = False) -> Option | None:
        """The one word that is but for a likely slip what makes a name with its neighbours.

        An `idle` one stands beside a name without any work of its own.
        """
        word = doc[at].norm_
        seldom = (idle or len(word) >= LONG) and word not in self._known.little
        most = COMPLETES + (ONE_LETTER if seldom or self._known.strange(word) else HOMOPHONE)
        return self._only(option for option in self.options(doc, at) if option.cost <= most)

    def homophone(self, doc: Doc, at: int, words: Sequence[str]) -> Option | None:
        """The one word that an English one was heard for, by a name that but for it stands there whole.

        `words`: those of the doc.
        """
        if not self._wholly(words, at):
            return None
        most = COMPLETES + HOMOPHONE
        found = self._only(o for o in self.options(doc, at, wholly=True) if o.cost <= most)
        return found if found and found.whole else None

    def variant(self, words: Sequence[str], at: int) -> str | None:
        """The other spelling of a foreign name that makes a longer one beside others (`lamb tajine`)."""
        others = self._known.spelt_otherwise(words[at])
        if not others or is_english(words[at]) or self._longest(words, at, words[at]):
            return None
        found = (w for w in others if self._longest([*words[:at], w, *words[at + 1 :]], at, w))
        return next(found, None)

    def _only(self, options: Iterator[Option]) -> Option | None:
        """The likeliest, unless one that means something else is about as likely."""
        found = sorted(options, key=attrgetter("cost"))
        rivals = [o for o in found[1:] if o.cost <= found[0].cost + MARGIN and o.ids != found[0].ids]
        return found[0] if found and not rivals else None
