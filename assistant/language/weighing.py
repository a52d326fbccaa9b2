"""Weighs what a strange word and its neighbours may have been meant for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence, Set
from dataclasses import dataclass

from spacy.lang.en.stop_words import STOP_WORDS
from spacy.tokens import Doc, Span

from assistant.language.expected import Expected
from assistant.language.fold import fold
from assistant.language.spelling import MARGIN, SHORTEST, allowed, is_english, slip_cost
from assistant.language.vocabulary import Vocabulary

LONGEST = 4  # pieces of one name
LONG, SURE = 7, 0.7  # letters of a plain word that is mended, and what the slip may cost
# What a repair costs beside the slip itself, in slips of one letter.
SWALLOWED, MORE_USED, LETTER_USED, COMPLETES = 0.35, -0.3, -0.05, -0.5
DUE = (
    0.22,
    0.35,
)  # how much more may be paid for a name where one is due, than for a word of questions or another
BEHIND = 0.4  # how much more may be paid for a name than for a plain word that leaves pieces behind
ROOM = 0.1  # what a repair in its context may cost beyond the slip, but in the shortest words
UNCOMMON = 0.15  # what has no place in the list of English words is asked for less often
OFTEN = -0.06  # what stands in many names is asked for more often
NEARER = 0.06  # how much more a word must look like a part of a name that it is left for
# What the slip may cost in a word that completes a name: at most; in a strange one, so that the name is sure;
# in an English one.
COMPLETED, ONE_LETTER, HOMOPHONE = 1.1, 0.9, 0.65
PART_ONLY, ANOTHER_SLIP, RARELY_MEANT = 0.3, 0.15, 0.1
# A word without meaning in this job, one of the job, one of the commonest of all.
PLAIN_WORDS = (0.6, 0.1, -0.3)
CERTAIN = 0.6  # the part of what a slip may cost that is allowed in what looks like somebody's name
FAR, HYPHENS = 8, ("-", "–")  # how far a name reaches, and what stands between its words
_RARE = ("Aroma", "Region", "Term", "Method")


@dataclass(frozen=True, slots=True)
class Repair:
    """The word meant by the tokens from `start` to `end` (exclusive), and what it costs to think so."""

    cost: float
    start: int
    end: int
    word: str


class Weigher:
    """Finds the likeliest repair of a word in its context, and abstains where two are near each other."""

    def __init__(self, known: Vocabulary) -> None:
        self._known, self._lexicon = known, known.lexicon
        self._expected = Expected(known.lexicon, known.heard)

    def likeliest(self, doc: Doc, at: int, since: int, named: Set[int], due: bool) -> Repair | None:
        """The cheapest repair, if it is cheaper than any that means something else."""
        found = sorted(self._options(doc, at, since, named), key=lambda r: (r.cost, r.word))
        if due and found:
            found = self._names_first(found)
        # `proz ecco` is nearer to `pros`, which leaves `ecco` behind
        if found and self._known.idle(found[0].word):
            if self._plainly(doc, found[0]):
                return found[0]
            limit = found[0].cost + BEHIND
            found = [r for r in found if self._uses_more(r, doc, at) and r.cost < limit]
        if not found:
            return None
        best = found[0]
        rivals = [r for r in found[1:] if r.cost < best.cost + MARGIN and self._differ(r, best)]
        return None if rivals or self._part_of_another(doc, best) else best

    def _part_of_another(self, doc: Doc, repair: Repair) -> bool:
        """Whether a word looks more like one that is known from a longer name alone (`moilee`)."""
        word = doc[repair.start].norm_
        if repair.end - repair.start > 1 or repair.word in self._known.little:
            return False
        looks = slip_cost(word, repair.word)
        most = min(looks - NEARER, repair.cost)
        near = (w for cost, w in self._known.speller.near(word) if cost < most)
        return any(
            w in self._lexicon.spelt_right
            and w not in self._known.plain
            and not self._lexicon.longest([w], 0)
            for w in near
        )

    def _names_first(self, found: list[Repair]) -> list[Repair]:
        """Names alone where one is due, unless a plain word is much nearer."""
        names = [r for r in found if self._lexicon.longest([r.word], 0)]
        more = DUE[self._known.idle(found[0].word)]
        return names if names and names[0].cost < found[0].cost + more else found

    def _plainly(self, doc: Doc, repair: Repair) -> bool:
        """Whether a long word is a plain one but for one likely slip (`definately`)."""
        word = doc[repair.start].norm_
        alone = repair.end - repair.start == 1 and len(word) >= LONG
        return alone and not word.startswith(repair.word) and slip_cost(word, repair.word) <= SURE

    def _uses_more(self, repair: Repair, doc: Doc, at: int) -> bool:
        """Whether a repair explains other words that would be left over."""
        more = (doc[i].norm_ for i in range(repair.start, repair.end) if i != at)
        return any(word not in self._known.little for word in more)

    def _differ(self, one: Repair, other: Repair) -> bool:
        span = (one.start, one.end) == (other.start, other.end)
        return span and self._known.concepts(one.word) != self._known.concepts(other.word)

    def _options(self, doc: Doc, at: int, since: int, named: Set[int] = frozenset()) -> Iterator[Repair]:
        for start, end in self._sensible(doc, at, since, named):
            pieces = pieces_of(doc[start:end])
            joined = "".join(pieces)
            extra = self._context_cost(pieces) + LETTER_USED * (len(joined) - len(doc[at].norm_))
            if len(pieces) > 1 and joined in self._known.names:
                yield Repair(extra + COMPLETES, start, end, self._lexicon.slips.get(joined, joined))
                continue
            if len(pieces) == 1:
                yield from self._completing(doc, start)
            limit = ((ROOM if len(joined) > SHORTEST else 0.0) + allowed(len(joined))) * (
                CERTAIN if like_a_person(doc, at) else 1.0
            )
            due = self._expected.kind(doc, start, end, named)
            for cost, word in self._candidates(doc, start, end, due):
                if cost <= limit or self._known.idle(word):
                    yield Repair(cost + extra, start, end, word)

    def _completing(self, doc: Doc, at: int) -> Iterator[Repair]:
        """What makes a longer name with the words beside it, be it behind a hyphen."""
        solid = [i for i in range(max(0, at - FAR), min(len(doc), at + FAR)) if doc[i].norm_ not in HYPHENS]
        words, place = [doc[i].norm_ for i in solid], solid.index(at)
        # `ship and cheese` are no chips
        apart = frozenset() if self._known.strange(words[place]) else STOP_WORDS
        for cost, word in self._known.completions.near(words, place, apart):
            name = [*words[:place], word, *words[place + 1 :]]
            if cost <= COMPLETED and word != words[place] and self._names(name, place):
                yield Repair(cost + COMPLETES, at, at + 1, word)

    def _names(self, words: Sequence[str], place: int) -> bool:
        """Whether a name of several words goes over the place."""
        found = ((start, self._lexicon.longest(words, start)) for start in range(place + 1))
        return any(name and name[0] > 1 and start + name[0] > place for start, name in found)

    def completing(self, doc: Doc, at: int, idle: bool = False) -> Repair | None:
        """The one word that is but for a likely slip what makes a name with its neighbours.

        An `idle` one stands beside a name without any work of its own.
        """
        word = doc[at].norm_
        seldom = (idle or len(word) >= LONG) and word not in self._known.little
        most = COMPLETES + (ONE_LETTER if seldom or self._known.strange(word) else HOMOPHONE)
        found = [r for r in self._completing(doc, at) if r.cost <= most]
        return found[0] if found and all(r.cost > found[0].cost + MARGIN for r in found[1:]) else None

    def _context_cost(self, pieces: Sequence[str]) -> float:
        """What it costs to use these pieces for one name: strange ones are better explained than left."""
        extra = sum(MORE_USED if self._known.strange(p) else SWALLOWED for p in pieces) - MORE_USED
        return extra + (sum(SWALLOWED for p in pieces if p in STOP_WORDS) if len(pieces) > 1 else 0.0)

    def _candidates(self, doc: Doc, start: int, end: int, due: str) -> Iterator[tuple[float, str]]:
        """(cost with the doubts, word) of what the words may stand for."""
        pieces = pieces_of(doc[start:end])
        for cost, near in self._near(doc[start:end], pieces):
            word = self._lexicon.slips.get(near, near)
            doubt = self._doubt(doc, start, end, word, due)
            if doubt is not None and (len(pieces) == 1 or self._lexicon.longest([word], 0)):
                yield cost + doubt + (0.0 if word == near else ANOTHER_SLIP), word

    def _near(self, span: Span, pieces: Sequence[str]) -> list[tuple[float, str]]:
        """What the pieces may stand for; one that ends in s may be no plural (`crips`)."""
        near = self._known.speller.near("".join(pieces), pieces)
        whole = fold(span.text)
        if len(span) > 1 or whole == pieces[0] or not whole.isalpha():
            return near
        return near + self._known.speller.near(whole)

    def _sensible(self, doc: Doc, at: int, since: int, named: Set[int]) -> Iterator[tuple[int, int]]:
        """Windows that take no name away from their neighbours, nor the commonest words."""
        for start, end in windows(doc, at, since):
            taken = any(i in named and len(doc[i].norm_) > 4 for i in range(start, end) if i != at)
            ends = [doc[i].norm_ for i in (start, end - 1) if i != at]
            if not taken and not any(len(word) > 1 and word in STOP_WORDS for word in ends):
                yield start, end

    def _doubt(self, doc: Doc, start: int, end: int, word: str, due: str) -> float | None:
        """How much less likely the word is than a well-known name; None where it would name nothing."""
        if self.completed(doc, start, end, word) > 1:
            return COMPLETES
        found = self._lexicon.longest([word], 0)
        if not found and word in self._known.plain:
            return PLAIN_WORDS[(word in self._known.little) + (word in STOP_WORDS)]
        if not found:
            return PART_ONLY if end < len(doc) and self._known.strange(doc[end].norm_) else None
        known = all(map(is_english, self._lexicon.joined.get(word, word).split()))
        rare = all(name.type in _RARE for name in found[1])
        return (
            (OFTEN if word in self._known.often else 0.0 if known else UNCOMMON)
            + (RARELY_MEANT if rare else 0.0)
            + self._expected.doubt(found[1], due)
        )

    def completed(self, doc: Doc, start: int, end: int, word: str) -> int:
        """How many words the longest name has that the word makes with its neighbours."""
        before = [t.norm_ for t in doc[max(0, start - 2) : start]]
        stems = [*before, word, *(t.norm_ for t in doc[end : end + LONGEST])]
        spans = ((s, self._lexicon.longest(stems, s)) for s in range(len(before) + 1))
        return max((f[0] for s, f in spans if f and s + f[0] > len(before)), default=0)


def pieces_of(span: Span) -> list[str]:
    """The words as typed and folded, the last as a stem."""
    return [*(fold(token.text) for token in span[:-1]), span[-1].norm_]


def windows(doc: Doc, at: int, since: int) -> Iterator[tuple[int, int]]:
    """Spans of up to four words around a strange one, itself first."""
    for size in range(1, LONGEST + 1):
        for start in range(max(since, at - size + 1), at + 1):
            end = start + size
            if end <= len(doc) and all(doc[i].norm_.isalpha() for i in range(start, end)):
                yield start, end


def like_a_person(doc: Doc, at: int, at_start: bool = False) -> bool:
    """A capital in the middle of a text (or at its start as well) that has none elsewhere."""
    if not ((at or at_start) and doc[at].is_title):
        return False
    others = [t.text for t in doc if t.is_alpha and t.i != at and len(t.text) > 1]
    return bool(others and not any(map(str.isupper, (o[0] for o in others[1:]))))
