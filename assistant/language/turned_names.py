"""Names of wines turned round: `Champagne demi-sec`, `Rioja white`, `Port tawny`."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.language.lexicon import Lexicon, Name
from assistant.language.small_words import small_words

MOST_STYLE = 3  # words that tell the style: `late bottled vintage`
WINE = "wine"


class TurnedNames:
    """Finds the style that a wine's name means with the words right behind it, as if they stood before."""

    def __init__(self, lexicon: Lexicon) -> None:
        self._lexicon = lexicon

    def whole(
        self, before: Sequence[str], stems: Sequence[str], found: tuple[int, tuple[Name, ...]]
    ) -> tuple[int, tuple[Name, ...]]:
        """The words and concepts of a name, with the words of style behind it where it has any."""
        length, names = found
        behind = stems[length : length + MOST_STYLE]
        if names[0].kind != WINE or not behind or _is_told(before, stems[length:]):
            return found
        counts = (n for n in range(len(behind), 0, -1) if self._ends(stems[length:], n))
        for count in counts:
            turned = [*behind[:count], *stems[:length]]
            known = self._lexicon.longest(turned, 0)
            if known and known[0] == len(turned) and known[1][0].kind == WINE:
                return length + count, known[1]
        return found

    def _ends(self, behind: Sequence[str], count: int) -> bool:
        """Whether no longer name begins there: `sweet and sour pork`, `white wine vinegar`, `red meat`."""
        name = self._lexicon.longest(behind, 0)
        longer = name is not None and name[0] > count
        return not longer or (name is not None and list(behind[count : name[0]]) == [WINE])


def _is_told(before: Sequence[str], behind: Sequence[str]) -> bool:
    """Whether the words behind are told or asked of the wine (`is Riesling sweet`, `makes Port sweet`)."""
    words = small_words()
    said = [word for word in before[-2:] if word not in words["articles"]]
    if "or" in behind[1:3]:
        return True
    tells = bool(said) and said[-1] in words["tells-of-wine"] and " ".join(said) not in words["asks-what-is"]
    return tells and words["fits-with"].isdisjoint(behind[1:4])
