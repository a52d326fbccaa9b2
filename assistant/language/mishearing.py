"""Finds names that were heard as ordinary English words: `zen fan dell`, `pinto noir`.

Every piece is a word in its own right, so more is asked than of a misspelt word: the pieces must sound
just like a foreign name, or stand beside a word known from foreign names alone and nearly spell one.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.language.slipping import slip_cost
from assistant.language.spelling import is_english
from assistant.language.vocabulary import Vocabulary

FEWEST = 6  # letters
LOOSELY = 0.3
OFF_LETTER = 0.02  # how differently the pieces may sound, for each letter
LEAD = 0.012  # how much more like the pieces a name must sound than any other
UNFAMILIAR = 0.02  # what is seldom asked for must sound so much more like them
RIVAL = 0.08  # how unlike the pieces another name may sound
NEARLY = 0.11  # what the slips may cost for each letter beside a foreign word
_SOUGHT = ("Wine", "Grape", "Food")


class Mishearings:
    """Looks for foreign names in windows of English words."""

    def __init__(self, known: Vocabulary) -> None:
        self._known, self._lexicon = known, known.lexicon

    def name(self, pieces: Sequence[str], consonants: int = 3) -> str | None:
        """The name that two or more words were meant for, of at least so many consonants, or None."""
        joined = "".join(pieces)
        if len(joined) < FEWEST:
            return None
        if self._is_name(joined):
            return joined if self._foreign(joined) else None
        heard = self._heard(pieces, consonants)
        return heard or (self._nearly(joined) if any(map(self._marks, pieces)) else None)

    def _is_name(self, joined: str) -> bool:
        return joined in self._lexicon.joined or joined in self._lexicon.spelt_right

    def loosely(self, pieces: Sequence[str]) -> str | None:
        """The name where nothing else can have been meant: it may sound a little otherwise."""
        return self._heard(pieces, 3, LOOSELY) if sum(map(len, pieces)) >= FEWEST else None

    def alike(self, pieces: Sequence[str], limit: float) -> str | None:
        """The name that sounds most like the pieces, within the limit for each sound, or None."""
        off = self._known.echoes.alike(self._known.heard.sounds.sought(pieces), limit)
        found = sorted((self._doubted(name, cost), name) for name, cost in off.items() if self._meant(name))
        if not found or found[0][0] > limit:
            return None
        best = found[0][1]
        near = [name for cost, name in found[1:] if cost < found[0][0] + LEAD]
        return best if all(self._meant(name) == self._meant(best) for name in near) else None

    def all_alike(self, pieces: Sequence[str], limit: float) -> dict[str, float]:
        """How unlike the pieces all names and their words sound, within the limit for each sound."""
        return self._known.echoes.alike(self._known.heard.sounds.sought(pieces), limit)

    def of_kind(self, pieces: Sequence[str], kind: str, limit: float) -> str | None:
        """The name of this kind that sounds most like the pieces, clearly more than any other, or None."""
        off = self._known.echoes.alike(self._known.heard.sounds.sought(pieces), limit)
        found = sorted((self._doubted(name, cost), name) for name, cost in off.items())
        found = [(cost, name) for cost, name in found if self._falls_under(name, kind)]
        meant = {self._meant(name) for cost, name in found if cost < found[0][0] + LEAD}
        return found[0][1] if len(meant) == 1 else None

    def _falls_under(self, name: str, kind: str) -> bool:
        return any(self._lexicon.falls_under(id_, kind) for id_ in self._meant(name))

    def _doubted(self, name: str, cost: float) -> float:
        return cost + (0.0 if self._known.familiar(name) else UNFAMILIAR)

    def _heard(self, pieces: Sequence[str], consonants: int, least: float = 0.0) -> str | None:
        limit = max(least, OFF_LETTER * sum(map(len, pieces)))
        found = [
            (off, name) for name, off in self._known.speller.sounding_like(pieces, consonants) if off <= limit
        ]
        name = self._only(name for off, name in sorted(found) if off <= min(found)[0] + 0.05)
        return name if name and self._alone(name, pieces) else None

    def _alone(self, name: str, pieces: Sequence[str]) -> bool:
        """Whether nothing else is more like the pieces (`shabby lee` is no jabali)."""
        off = self._known.echoes.alike(self._known.heard.sounds.sought(pieces), RIVAL)
        own = self._doubted(name, off.get(name, RIVAL))
        others = (n for n, cost in off.items() if self._doubted(n, cost) < own + LEAD and self._meant(n))
        return all(self._meant(n) == self._meant(name) for n in others)

    def _nearly(self, joined: str) -> str | None:
        near = [(slip_cost(joined, name), name) for _, name in self._known.speller.near(joined)]
        near = [(cost, name) for cost, name in near if cost <= NEARLY * len(joined)]
        return self._only(name for cost, name in near if cost <= min(near)[0] + 0.05)

    def _only(self, names: Iterable[str]) -> str | None:
        """The first foreign name, unless another one means something else."""
        found = [name for name in dict.fromkeys(names) if self._foreign(name)]
        meant = {self._meant(name) for name in found}
        return found[0] if len(meant) == 1 else None

    def _meant(self, name: str) -> tuple[str, ...]:
        found = self._lexicon.longest([name], 0)
        return tuple(n.id for n in found[1] if n.type in _SOUGHT) if found else ()

    def _foreign(self, name: str) -> bool:
        words = self._lexicon.joined.get(name, name).split()
        return bool(self._meant(name)) and not (len(words) > 1 and all(map(is_english, words)))

    def _marks(self, word: str) -> bool:
        """Whether a word stands in names and nowhere else (`noir`, `frites`)."""
        return word in self._lexicon.spelt_right and not is_english(word)
