"""Weighs what a strange word and its neighbours may have been meant for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence, Set

from spacy.lang.en.stop_words import STOP_WORDS
from spacy.tokens import Doc, Span

from assistant.language.doubts import Doubts, Repair, pieces_of
from assistant.language.expected import Expected
from assistant.language.fold import fold
from assistant.language.neighbours import COMPLETES, LONG, Completer
from assistant.language.slipping import slip_cost
from assistant.language.small_words import small_words
from assistant.language.spelling import SHORTEST, allowed, is_english
from assistant.language.vocabulary import Vocabulary

LONGEST = 4  # pieces of one name
NEARLY = 0.04  # how much less like for each letter what explains more words may be
SURE = 0.7  # what the slip may cost in a long plain word that is mended
# What a repair costs beside the slip itself, in slips of one letter.
SWALLOWED, MORE_USED, LETTER_USED = 0.35, -0.3, -0.05
DUE = (
    0.22,
    0.35,
)  # how much more may be paid for a name where one is due, than for a word of questions or another
BEHIND = 0.4  # how much more may be paid for a name than for a plain word that leaves pieces behind
ROOM = 0.1  # what a repair in its context may cost beyond the slip, but in the shortest words
UNCOMMON = 0.15  # what has no place in the list of English words is asked for less often
OFTEN = -0.06  # what stands in many names is asked for more often
PART_ONLY, ANOTHER_SLIP, RARELY_MEANT = 0.3, 0.15, 0.1
# A word without meaning in this job, one of the job, one of the commonest of all.
PLAIN_WORDS = (0.6, 0.1, -0.3)
CERTAIN = 0.6  # the part of what a slip may cost that is allowed in what looks like somebody's name
_RARE = ("Aroma", "Region", "Term", "Method")


class Weigher:
    """Finds the likeliest repair of a word in its context, and abstains where two are near each other."""

    def __init__(self, known: Vocabulary) -> None:
        self._known, self._lexicon = known, known.lexicon
        self._expected = Expected(known.lexicon, known.heard)
        self._completer, self._doubts = Completer(known), Doubts(known)

    def likeliest(self, doc: Doc, at: int, since: int, named: Set[int], due: bool) -> Repair | None:
        """The cheapest repair, if it is cheaper than any that means something else."""
        found = sorted(self._options(doc, at, since, named), key=lambda r: (r.cost, r.word))
        if due and found:
            found = self._names_first(found)
        found = self._joined_first(doc, at, found)
        # `proz ecco` is nearer to `pros`, which leaves `ecco` behind
        if found and self._known.idle(found[0].word):
            if self._plainly(doc, found[0]):
                return found[0]
            limit = found[0].cost + BEHIND
            found = [r for r in found if self._uses_more(r, doc, at) and r.cost < limit]
        if not found:
            return None
        best = found[0]
        return None if self._doubts.any(doc, best, found[1:]) else best

    def _names_first(self, found: list[Repair]) -> list[Repair]:
        """Names alone where one is due, unless a plain word is much nearer."""
        names = [r for r in found if self._lexicon.longest([r.word], 0)]
        more = DUE[self._known.idle(found[0].word)]
        return names if names and names[0].cost < found[0].cost + more else found

    def _joined_first(self, doc: Doc, at: int, found: list[Repair]) -> list[Repair]:
        """What explains a neighbour that would be left over, if it is as like for each letter.

        Nothing where it is nearly so: `pinto grisio` is no gricia.
        """
        if not found or found[0].end - found[0].start > 1 or found[0].word in self._known.little:
            return found
        off = self._off(doc, found[0])
        joined = [r for r in found if r.end - r.start > 1 and self._uses_more(r, doc, at)]
        best = next((r for r in joined if self._off(doc, r) <= off + NEARLY), None)
        if best is None:
            return found
        same = [r for r in found if (r.start, r.end) == (best.start, best.end) and r != best]
        return [best, *same] if self._off(doc, best) <= off else []

    def _off(self, doc: Doc, repair: Repair) -> float:
        """What the slip itself costs for each letter."""
        pieces = pieces_of(doc[repair.start : repair.end])
        typed = "".join(pieces)
        near = {word: cost for cost, word in self._known.speller.near(typed, pieces)}
        return near.get(repair.word, slip_cost(typed, repair.word)) / len(typed)

    def _plainly(self, doc: Doc, repair: Repair) -> bool:
        """Whether a long word is a plain one but for one likely slip (`definately`)."""
        word = doc[repair.start].norm_
        alone = repair.end - repair.start == 1 and len(word) >= LONG
        return alone and not word.startswith(repair.word) and slip_cost(word, repair.word) <= SURE

    def _uses_more(self, repair: Repair, doc: Doc, at: int) -> bool:
        """Whether a repair explains other words that would be left over."""
        more = (doc[i].norm_ for i in range(repair.start, repair.end) if i != at)
        return any(word not in self._known.little for word in more)

    def _options(self, doc: Doc, at: int, since: int, named: Set[int] = frozenset()) -> Iterator[Repair]:
        for start, end in self._sensible(doc, at, since, named):
            pieces = pieces_of(doc[start:end])
            joined = "".join(pieces)
            extra = self._context_cost(pieces) + LETTER_USED * (len(joined) - len(doc[at].norm_))
            if len(pieces) > 1 and joined in self._known.names:
                yield Repair(extra + COMPLETES, start, end, self._lexicon.slips.get(joined, joined))
                continue
            if len(pieces) == 1:
                yield from (Repair(o.cost, at, at + 1, o.word) for o in self._completer.options(doc, at))
            limit = ((ROOM if len(joined) > SHORTEST else 0.0) + allowed(len(joined))) * (
                CERTAIN if like_a_person(doc, at) or self._named_so(doc, at) else 1.0
            )
            due = self._expected.kind(doc, start, end, named)
            for cost, word in self._candidates(doc, start, end, due):
                if cost <= limit or self._known.idle(word):
                    yield Repair(cost + extra, start, end, word)

    def _named_so(self, doc: Doc, at: int) -> bool:
        """Whether a capital letter and a colour or word of names behind it name something (`Velmo nero`)."""
        if not doc[at].is_title or at + 1 >= len(doc):
            return False
        behind, word = doc[at + 1].text, doc[at + 1].norm_
        coloured = bool(at) and word in small_words()["colours"]
        return behind.islower() and (coloured or self._known.strange(word) or self._known.marks(word))

    def completing(self, doc: Doc, at: int, idle: bool = False) -> Repair | None:
        """The one word that is surely what makes a name with its neighbours."""
        found = self._completer.sure(doc, at, idle)
        return Repair(found.cost, at, at + 1, found.word) if found else None

    def homophone(self, doc: Doc, at: int, words: Sequence[str]) -> Repair | None:
        """The one word that an English one was heard for within a name that stands there whole."""
        found = self._completer.homophone(doc, at, words)
        return Repair(found.cost, at, at + 1, found.word) if found else None

    def variant(self, words: Sequence[str], at: int) -> Repair | None:
        """The other spelling of a name that makes a longer one with its neighbours."""
        word = self._completer.variant(words, at)
        return Repair(0.0, at, at + 1, word) if word else None

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
