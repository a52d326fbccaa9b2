"""Whether a sort of wine is wished, judged, or only a condition: `with lamb, a red`, `low tannin if red`."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.language.frame import Reading, Text
from assistant.language.preferences import PreferenceWord, phrase_before
from assistant.language.small_words import small_words

PAUSES = (",", ";")
ASKS = frozenset({"wines-for-food", "which"})


def wished_behind(text: Text, reading: Reading) -> bool:
    """Whether a sort of wine is told behind what it is for (`what's good with lamb, a red`)."""
    words, start = small_words(), reading.start
    start -= start > 1 and text.stems[start - 1] in words["any-wine"]
    behind = text.stems[reading.end : reading.end + 1]
    ends = not behind or behind[0] in words["behind-wish"]
    alone = all(r.start >= reading.end or r.kind != "wine" for r in text.readings if r is not reading)
    asked = bool(ASKS & text.cues) and "undecided" not in text.cues
    return asked and ends and alone and start > 0 and text.stems[start - 1] in PAUSES


def taught_as(text: Text, reading: Reading) -> bool:
    """Whether it is what something taught is (`Learn this: Dravinka is a dry white grape`)."""
    at = reading.start - (text.stems[reading.start - 1 : reading.start] == ("a",))
    return "teach" in text.cues and at > 0 and text.stems[at - 1] in small_words()["tells-what"]


def condition_of(text: Text, reading: Reading, limits: Mapping[str, list[PreferenceWord]]) -> int | None:
    """Where the limit starts that is asked of this sort alone (`low tannin if red`, `if white, unoaked`)."""
    words, start, end = small_words(), reading.start, reading.end
    while start and text.stems[start - 1] in words["within-condition"]:
        start -= 1
    if not start or text.stems[start - 1] not in words["condition"]:
        return None
    while end < len(text.stems) and text.stems[end] in words["behind-condition"] | words["turns"]:
        end += 1
    last = start - 1 - (text.stems[start - 2 : start - 1] == (",",))
    before = phrase_before(text.stems, last, limits)
    return end if before is None and _limit_at(text.stems, end, limits) else before


def _limit_at(stems: tuple[str, ...], at: int, limits: Mapping[str, list[PreferenceWord]]) -> bool:
    first = limits.get(stems[at], ()) if at < len(stems) else ()
    return any(w.words == stems[at : at + len(w.words)] for w in first)
