"""What speaks against a repair: others about as likely, and a name that is too unlike the words."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from spacy.tokens import Doc, Span

from assistant.language.fold import fold
from assistant.language.slipping import NEVER, slip_cost
from assistant.language.spelling import MARGIN, is_english
from assistant.language.vocabulary import Vocabulary

UNSURE = 0.2  # how much likelier a repair must be than one that is more alike in look or in sound
PLACE_LIKE = 0.3  # slips for each letter below which a word may be meant for a place, however it sounds
NEARER = 0.06  # how much more a word must look like a part of a name that it is left for


@dataclass(frozen=True, slots=True)
class Repair:
    """The word meant by the tokens from `start` to `end` (exclusive), and what it costs to think so."""

    cost: float
    start: int
    end: int
    word: str


class Doubts:
    """Tells whether the likeliest repair is none to make."""

    def __init__(self, known: Vocabulary) -> None:
        self._known, self._lexicon = known, known.lexicon

    def any(self, doc: Doc, best: Repair, others: Iterable[Repair]) -> bool:
        """Whether anything speaks against the best repair."""
        rivals = (r for r in others if self._differ(r, best) and self._close(doc, r, best))
        unlike = self._part_of_another(doc, best) or self._far_off(doc, best)
        return any(rivals) or unlike or self._of_a_name(doc, best)

    def _close(self, doc: Doc, repair: Repair, best: Repair) -> bool:
        """Whether one is about as likely as the best, or not far from it and looks or sounds more alike."""
        more = repair.cost - best.cost
        if more < MARGIN or more >= UNSURE or best.word in self._known.little:
            return more < MARGIN
        pieces = pieces_of(doc[best.start : best.end])
        typed, off = "".join(pieces), self._known.speller.off(pieces)
        sounds, best_sounds = off.get(repair.word, NEVER), off.get(best.word, NEVER)
        looks = best_sounds > 0 and slip_cost(typed, repair.word) < slip_cost(typed, best.word)
        return looks or sounds < best_sounds

    def _of_a_name(self, doc: Doc, repair: Repair) -> bool:
        """Whether another first letter makes a known name of a part of one that is not (`Zorvina Negra`)."""
        first = doc[repair.start]
        if repair.end - repair.start > 1 or not first.is_title or fold(first.text)[:1] == repair.word[:1]:
            return False
        beside = doc[repair.end : repair.end + 1]
        return any(
            token.is_title and not (is_english(token.norm_) or self._lexicon.longest([token.norm_], 0))
            for token in beside
        )

    def _far_off(self, doc: Doc, repair: Repair) -> bool:
        """Whether a name neither looks nor sounds enough like the words (`quallaberry` is no Calabria)."""
        pieces, familiar = pieces_of(doc[repair.start : repair.end]), self._known.familiar(repair.word)
        typed = "".join(pieces)
        if self._only_place(repair.word) and slip_cost(typed, repair.word) > PLACE_LIKE * len(typed):
            return True  # `querrin` is nothing from Korea
        return self._known.speller.far_off(pieces, repair.word, familiar)

    def _only_place(self, word: str) -> bool:
        found = self._lexicon.longest([word], 0)
        return found is not None and all(name.type == "Region" for name in found[1])

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

    def _differ(self, one: Repair, other: Repair) -> bool:
        span = (one.start, one.end) == (other.start, other.end)
        return span and self._known.concepts(one.word) != self._known.concepts(other.word)


def pieces_of(span: Span) -> list[str]:
    """The words as typed and folded, the last as a stem."""
    return [*(fold(token.text) for token in span[:-1]), span[-1].norm_]
