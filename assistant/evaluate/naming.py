"""Names in people's words -> what the knowledge calls them, so that `prawn` and `shrimp` are one."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace

from assistant.knowledge.files import corpus_dir
from assistant.knowledge.store import Knowledge
from assistant.language.fold import key
from assistant.language.frame import Preference
from assistant.language.lexicon import Lexicon
from assistant.language.plain_terms import PlainTerms
from assistant.language.preferences import read_preference_words
from assistant.language.smells import smell_labels

LIMITING = ("wine/", "drink/", "kind/", "grape/", "region/")
_BANS = ("no ", "not from ")
_STRENGTH = re.compile(r"(?<!\d)(\d+(?:\.\d+)?) % alcohol")


@dataclass(frozen=True, slots=True)
class Meant:
    """A thing said: what it may be called in the knowledge, and whether it is banned."""

    ids: frozenset[str]
    said: str
    banned: bool = False

    def same(self, other: Meant) -> bool:
        """Whether both may be the same thing."""
        return self.banned == other.banned and self.alike(other)

    def alike(self, other: Meant) -> bool:
        """The same, whether wanted or banned."""
        return not self.ids.isdisjoint(other.ids)


class Namer:
    """Looks names up as the parser would, without reading sentences."""

    def __init__(self, lexicon: Lexicon, knowledge: Knowledge) -> None:
        self._lexicon, self._knowledge = lexicon, knowledge
        words = read_preference_words(corpus_dir() / "language" / "preferences.toml")
        self._tastes = {p.label for word in words for p in (word.asks, word.negated)}
        self._tastes |= smell_labels()
        self._plain = PlainTerms(knowledge)

    def name(self, said: str) -> Meant:
        """A food, method, wine or term; one that is not known stands for itself."""
        return Meant(frozenset(self._lexicon.find(said)) or frozenset((_itself(said),)), said)

    def term(self, said: str) -> Meant:
        """A word whose meaning is asked, be it a plain word too."""
        named = self.name(said)
        return replace(named, ids=named.ids | self._plain.find(said))

    def known(self, said: str) -> bool:
        """Whether the knowledge has exactly this name."""
        return bool(self._lexicon.find(said) or self._plain.find(said))

    def parts(self, food: str) -> tuple[str, ...]:
        """What a composed food is made of."""
        return tuple(part.food for part in self._knowledge.food(food).parts)

    def kinds(self, subject: str) -> tuple[str, ...]:
        """The broader concepts of a concept."""
        return tuple(self._knowledge.broader(subject)) if subject in self._knowledge.digest else ()

    def limit(self, said: str) -> Meant:
        """A limit as the program words it: `not oaky`, `no rosé`, `from Italy`, `under 12 % alcohol`."""
        if said in self._tastes or _STRENGTH.search(said):
            return Meant(frozenset((_taste(said),)), said)
        bare = next((said.removeprefix(b) for b in _BANS if said.startswith(b)), said).removeprefix("from ")
        ids = [i for i in self._lexicon.find(bare) if i.startswith(LIMITING)]
        return Meant(frozenset(ids) or frozenset((_itself(bare),)), said, banned=said.startswith(_BANS))


def limit_read(preference: Preference) -> Meant:
    """A limit that was read."""
    if preference.wanted is None or preference.label in smell_labels():
        return Meant(frozenset((_taste(preference.label),)), preference.label)
    return Meant(frozenset((preference.wanted,)), preference.label, preference.banned)


def words_of(phrases: Iterable[str]) -> frozenset[str]:
    """The folded stems of all these phrases."""
    return frozenset(stem for phrase in phrases for stem in key(phrase))


def _taste(label: str) -> str:
    strength = _STRENGTH.search(label)
    return f"alcohol {float(strength[1]):g}" if strength else label


def _itself(said: str) -> str:
    return f"unknown/{' '.join(key(said))}"
