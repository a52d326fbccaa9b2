"""Words of the trade that are ordinary words too (`tight`, `hot`): found only where a meaning is asked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from assistant.knowledge.store import Knowledge
from assistant.language.fold import key
from assistant.language.frame import Frame

TYPE, DEFINE = "PlainTerm", "define"
SEEKS = "wines-for-food"
OF_MEANING = frozenset({DEFINE, "describe", "unclear", SEEKS})  # what may ask for one, naming nothing else
MEANING = frozenset({DEFINE, "means"})  # the cues for it
MOST_BESIDE = 4  # words beside a term (`what is an orange wine?`)
LONGEST = 5  # words of a term


class PlainTerms:
    """The plain words of the knowledge by the stems of their names."""

    def __init__(self, knowledge: Knowledge) -> None:
        entries = ((i, entry) for i, entry in knowledge.digest.items() if TYPE in entry.get("type", ()))
        named = ((i, (*entry["prefLabel"], *entry.get("altLabel", ()))) for i, entry in entries)
        self._ids = {key(str(label)): subject for subject, labels in named for label in labels}

    def find(self, label: str) -> frozenset[str]:
        """The id of the term with exactly this name, if there is one."""
        return frozenset(filter(None, (self._ids.get(key(label)),)))

    def meant(self, frame: Frame) -> Frame:
        """The frame of a question for the meaning of such a word; any other as it is.

        A term that is named besides stays in front, unless the word before it is known as nothing else.
        """
        found = max(self._found(frame.text.stems), key=lambda one: (one[1] - one[0], one[0]), default=None)
        if not found or not _may_ask(frame, found[1] - found[0]):
            return frame
        words = frame.text.words[found[0] : found[1]]
        if frame.terms and not set(words) & set(frame.text.left_out):
            return frame
        kept = tuple(word for word in frame.text.left_out if word not in words)
        text = replace(frame.text, left_out=kept)
        terms = (found[2], *frame.terms)
        return replace(frame, intent=DEFINE, terms=terms, text=text, preferences=())

    def _found(self, stems: Sequence[str]) -> Iterator[tuple[int, int, str]]:
        """Start, end (exclusive) and id of the longest name at each place."""
        for at in range(len(stems)):
            for end in range(min(len(stems), at + LONGEST), at, -1):
                if subject := self._ids.get(tuple(stems[at:end])):
                    yield at, end, subject
                    break


def _may_ask(frame: Frame, words: int) -> bool:
    """Whether the meaning of a term of so many words may be asked; of what is a wine too, where it is all."""
    if frame.intent == DEFINE:
        return True
    few = len(frame.text.stems) - words <= MOST_BESIDE
    asks = few and bool(MEANING & frame.text.cues) and not (frame.dishes or frame.terms)
    return asks and frame.intent in OF_MEANING and (frame.intent == SEEKS or not frame.wines)
