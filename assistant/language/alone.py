"""What is told by itself between stops: `a red for duck, Italian, fruity please`."""

from __future__ import annotations

from collections.abc import Set

from assistant.language.frame import Text
from assistant.language.small_words import small_words

PAUSES = (",", ";", ".", ":", "?", "!", "-", "–", "(", ")")
# Cues by which a wine is sought.
SEEKING = frozenset({"wines-for-food", "one-bottle", "choose-wines", "substitute", "swap", "bottle"})


def opens_wish(text: Text, start: int, end: int, besides: Set[str] = frozenset()) -> bool:
    """Whether the words open a question with what is eaten behind them (`young and fruity for sausages`)."""
    around = small_words()["around-wish"] | besides
    behind = text.stems[end] if end < len(text.stems) else ""
    return behind in small_words()["wish-for"] and around.issuperset(text.stems[:start])


def stands_alone(text: Text, start: int, end: int, besides: Set[str] = frozenset()) -> bool:
    """Whether but for small words of a wish, or `besides`, these words are all between two stops."""
    around, turns = small_words()["around-wish"] | besides, small_words()["wish-turns"]
    while start and text.stems[start - 1] in around and text.stems[start - 1] not in turns:
        start -= 1
    while end < len(text.stems) and text.stems[end] in around:
        end += 1
    opens = not start or text.stems[start - 1] in (*PAUSES, *turns)  # `a white again but not French`
    return opens and (end == len(text.stems) or text.stems[end] in PAUSES)


def seeks_wine(text: Text) -> bool:
    """Whether a wine is sought, by a cue, by the word for it or by a sort that is named."""
    poured = small_words()["bottle"]
    named = any(r.kind == "wine" for r in text.readings)
    return named or not SEEKING.isdisjoint(text.cues) or not poured.isdisjoint(text.stems)
