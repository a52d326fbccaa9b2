"""Mends misspelt words in their context: alone, put together with their neighbours, or taken apart."""

from __future__ import annotations

from collections.abc import Iterator, Sequence, Set
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from spacy.lang.en.stop_words import STOP_WORDS
from spacy.tokens import Doc, Span

from assistant.knowledge.cache import cached, content_key
from assistant.language import sounding
from assistant.language.fold import fold, stem
from assistant.language.heard import Heard
from assistant.language.lexicon import Lexicon
from assistant.language.mishearing import Mishearings, pieces_of, windows_around
from assistant.language.spelling import MARGIN, Speller, allowed, everyday, is_english

MOST_REPAIRS = 12  # a text with more strange words is not a question
# What a repair costs beside the slip itself, in slips of one letter.
SWALLOWED, MORE_USED, LETTER_USED, COMPLETES = 0.35, -0.3, -0.05, -0.5
BEHIND = 0.4
ROOM = 0.1  # what a repair in its context may cost beyond the slip
UNCOMMON = 0.25  # what has no place in the list of English words is asked for less often
PART_ONLY, ANOTHER_SLIP, RARELY_MEANT = 0.3, 0.25, 0.1
_PLAIN_WORDS = (
    0.6,
    0.1,
    -0.3,
)  # one without meaning in this job, one of the job, one of the commonest of all
CERTAIN = 0.6  # the part of what a slip may cost that is allowed in what looks like somebody's name
_RARE = ("Aroma", "Region", "Term", "Method")


@dataclass(frozen=True, slots=True)
class Repair:
    """The word meant by the tokens from `start` to `end` (exclusive), and what it costs to think so."""

    cost: float
    start: int
    end: int
    word: str


class Repairer:
    """Knows the names, the little words of questions, and the plain words that are never meant."""

    def __init__(
        self,
        lexicon: Lexicon,
        little: frozenset[str],
        plain: frozenset[str],
        heard: Heard,
    ) -> None:
        self._lexicon, self._sounds = lexicon, heard.sounds
        self._people, self._others, self._key = heard.people, heard.others, heard.key
        self._little = little | {stem(fold(word)) for word in STOP_WORDS}
        self._plain = plain | self._little

    @cached_property
    def _speller(self) -> Speller:
        code = content_key([Path(sounding.__file__), Path(__file__)])
        key = self._lexicon.key and self._lexicon.key + self._key + code
        heard = cached("sounds", key, self._heard, self._lexicon.cache) if key else self._heard()
        known = self._lexicon.spelt_right | self._plain | set(self._lexicon.joined)
        return Speller(known | set(self._lexicon.slips), self._sounds, heard)

    @cached_property
    def _names(self) -> frozenset[str]:
        """All that pieces may be put together to."""
        return self._lexicon.words.union(self._lexicon.joined, self._lexicon.slips)

    def _heard(self) -> dict[str, list[str]]:
        """Names and their words by their bones: `name sound`, as the speller takes them."""
        heard: dict[str, list[str]] = {}
        spoken: dict[str, tuple[str, ...]] = {
            word: (word,) for word in sorted(self._lexicon.spelt_right) if len(word) > 2
        }
        spoken |= {joined: tuple(words.split()) for joined, words in self._lexicon.joined.items()}
        common = everyday()
        for name, words in spoken.items():
            for bones, sound in self._sounds.entries(words, common.issuperset(words)):
                heard.setdefault(bones, []).append(f"{name} {sound}")
        return heard

    def strange(self, word: str) -> bool:
        """Whether the folded stem is neither known nor English, and so may be a slip."""
        known = word in self._lexicon.spelt_right or word in self._plain or word in self._others
        return not known and word.isalpha() and len(word) > 2 and not is_english(word)

    def repairs(self, doc: Doc) -> Iterator[Repair]:
        """The likeliest repair of each strange word; the doc may be changed in between."""
        tried, done, named = 0, 0, self._named(doc)
        for at, token in enumerate(doc):
            word = token.norm_
            idle = len(word) > 2 and word.isalpha() and word not in self._little and word not in self._others
            if at < done or at in named or tried == MOST_REPAIRS or not idle:
                continue
            tried += 1
            if at and doc[at - 1].norm_ in self._people:
                continue
            found = self._likeliest(doc, at, done, named) if self._odd(word) else None
            found = found or self._misheard(doc, at, done)
            if found:
                done = found.end
                yield found

    def _misheard(self, doc: Doc, at: int, since: int) -> Repair | None:
        """The name that this and its neighbours were meant for, though each is a word in its own right."""
        windows = [(s, e) for s, e in windows_around(doc, at, since) if e - s > 1 and self._free(doc[s:e])]
        for start, end in reversed(windows):
            idle = all(t.norm_ not in self._little for t in doc[start:end])
            name = self._mishearings.name(pieces_of(doc[start:end]), 3 if idle else 4)
            if name:
                return Repair(0.0, start, end, name)
        return None

    def _free(self, span: Span) -> bool:
        """Whether no word is one of the commonest, other than the shortest behind the first."""
        return span[0].norm_ not in STOP_WORDS and all(
            len(t.norm_) < 3 or t.norm_ not in STOP_WORDS for t in span
        )

    @cached_property
    def _mishearings(self) -> Mishearings:
        return Mishearings(self._lexicon, self._speller)

    def _odd(self, word: str) -> bool:
        """Whether a word outside a name is strange, or a part of foreign names only (`noir`)."""
        if self.strange(word):
            return True
        part = word in self._lexicon.spelt_right and word not in self._plain and len(word) > 2
        return part and word.isalpha() and not is_english(word)

    def _named(self, doc: Doc) -> set[int]:
        """Positions of the words that make a name as they stand, be it one that is spelt wrong."""
        places = [token.i for token in doc if token.norm_ not in "-–"]
        stems = [doc[i].norm_ for i in places]
        found = ((at, self._lexicon.longest(stems, at)) for at in range(len(stems)))
        return {i for at, name in found if name for i in places[at : at + name[0]]}

    def _likeliest(self, doc: Doc, at: int, since: int, named: Set[int]) -> Repair | None:
        """The cheapest repair, if it is cheaper than any that means something else."""
        found = sorted(self._options(doc, at, since, named), key=lambda r: (r.cost, r.word))
        if found and self._idle(found[0].word):  # `proz ecco` is nearer to `pros`, which leaves `ecco` behind
            limit = found[0].cost + BEHIND
            found = [r for r in found if self._uses_more(r, doc, at) and r.cost < limit]
        if not found:
            return None
        best = found[0]
        rivals = [r for r in found[1:] if r.cost < best.cost + MARGIN and self._differ(r, best)]
        return None if rivals else best

    def _uses_more(self, repair: Repair, doc: Doc, at: int) -> bool:
        """Whether a repair explains other words that would be left over."""
        more = (doc[i].norm_ for i in range(repair.start, repair.end) if i != at)
        return any(word not in self._little for word in more)

    def _idle(self, word: str) -> bool:
        """Whether a word means nothing in this job."""
        return word in self._plain and word not in self._little and not self._lexicon.longest([word], 0)

    def _differ(self, one: Repair, other: Repair) -> bool:
        span = (one.start, one.end) == (other.start, other.end)
        return span and self._concepts(one.word) != self._concepts(other.word)

    def _concepts(self, word: str) -> tuple[str, ...]:
        found = self._lexicon.longest([word], 0)
        return tuple(name.id for name in found[1]) if found else (word,)

    def _options(self, doc: Doc, at: int, since: int, named: Set[int] = frozenset()) -> Iterator[Repair]:
        for start, end in self._sensible(doc, at, since, named):
            pieces = pieces_of(doc[start:end])
            joined = "".join(pieces)
            extra = sum(MORE_USED if self.strange(p) else SWALLOWED for p in pieces) - MORE_USED
            extra += 0.0 if end - start == 1 else self._swallowing(pieces)
            extra += LETTER_USED * (len(joined) - len(doc[at].norm_))
            if len(pieces) > 1 and joined in self._names:
                yield Repair(extra + COMPLETES, start, end, self._lexicon.slips.get(joined, joined))
                continue
            limit = (ROOM + allowed(len(joined))) * (CERTAIN if _like_a_person(doc, at) else 1.0)
            for cost, near in self._speller.near(joined, pieces):
                word = self._lexicon.slips.get(near, near)
                doubt = self._doubt(doc, start, end, word)
                if doubt is None or (len(pieces) > 1 and not self._lexicon.longest([word], 0)):
                    continue
                cost += doubt + (0.0 if word == near else ANOTHER_SLIP)
                if cost <= limit or self._idle(word):
                    yield Repair(cost + extra, start, end, word)

    def _sensible(self, doc: Doc, at: int, since: int, named: Set[int]) -> Iterator[tuple[int, int]]:
        """Windows that take no name away from their neighbours, nor the commonest words."""
        for start, end in windows_around(doc, at, since):
            taken = any(i in named and len(doc[i].norm_) > 4 for i in range(start, end) if i != at)
            ends = [doc[i].norm_ for i in (start, end - 1) if i != at]
            if not taken and not any(len(word) > 1 and word in STOP_WORDS for word in ends):
                yield start, end

    def _swallowing(self, pieces: Sequence[str]) -> float:
        return sum(SWALLOWED for p in pieces if p in STOP_WORDS)

    def _doubt(self, doc: Doc, start: int, end: int, word: str) -> float | None:
        """How much less likely the word is than a well-known name; None where it would name nothing."""
        if self._completed(doc, start, end, word) > 1:
            return COMPLETES
        found = self._lexicon.longest([word], 0)
        if not found and word in self._plain:
            return _PLAIN_WORDS[(word in self._little) + (word in STOP_WORDS)]
        if not found:
            return PART_ONLY if end < len(doc) and self.strange(doc[end].norm_) else None
        known = all(map(is_english, self._lexicon.joined.get(word, word).split()))
        rare = all(name.type in _RARE for name in found[1])
        return (0.0 if known else UNCOMMON) + (RARELY_MEANT if rare else 0.0)

    def _completed(self, doc: Doc, start: int, end: int, word: str) -> int:
        """How many words the longest name has that the word makes with its neighbours."""
        before = [t.norm_ for t in doc[max(0, start - 2) : start]]
        stems = [*before, word, *(t.norm_ for t in doc[end : end + 2])]
        spans = ((s, self._lexicon.longest(stems, s)) for s in range(len(before) + 1))
        return max((f[0] for s, f in spans if f and s + f[0] > len(before)), default=0)

    def apart(self, word: str) -> tuple[str, ...]:
        """The words a strange one was run together from (`withsteak`), or nothing."""
        return _apart(word, self) if len(word) >= 7 and self.strange(word) else ()

    def parts(self, words: Sequence[str]) -> bool:
        """Whether the words are little words of a question and a name, or all of them one name."""
        names = [stem(w) for w in words if not {w, stem(w)} & self._little]
        found = self._lexicon.longest(names, 0) if names else None
        return bool(found and found[0] == len(names)) or (not names and not STOP_WORDS.isdisjoint(words))


def _apart(word: str, repairer: Repairer) -> tuple[str, ...]:
    ways = [(word[:i], word[i:]) for i in range(2, len(word) - 1)]
    return next((w for w in ways if min(map(len, w)) > 2 and repairer.parts(w)), ())


def _like_a_person(doc: Doc, at: int) -> bool:
    """A capital in the middle of a text that has none elsewhere."""
    others = [t.text for t in doc if t.is_alpha and t.i != at and len(t.text) > 1]
    return bool(at and doc[at].is_title and others and not any(map(str.isupper, (o[0] for o in others[1:]))))
