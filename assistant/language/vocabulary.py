"""The words the mending knows: names, the little words of questions, and plain words that are never meant."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from pathlib import Path

from spacy.lang.en.stop_words import STOP_WORDS
from spacy.tokens import Doc, Token

from assistant.knowledge.cache import cached, content_key, text_key
from assistant.language import by_sound, sounding
from assistant.language.completing import Completions
from assistant.language.fold import fold, key, stem
from assistant.language.heard import Heard
from assistant.language.lexicon import Lexicon, Name
from assistant.language.likeness import Echoes
from assistant.language.slipping import slip_cost
from assistant.language.spelling import LONG, SHORTEST, Speller, english, everyday, is_english

OFTEN = 2  # ways in which a name that is often asked for is known to be heard
MANY = 12  # names in which a word stands that is often meant
VARIANT = 1.2  # what makes one spelling of a name of another, in slips of a letter, at most
LACKING = 6  # letters of a plain word that lacks one
FEWEST = 3  # letters of a word without its vowels
_VOWEL = re.compile("[aeiou]")


class Vocabulary:
    """Names, the little words of questions, and the plain words that are never meant."""

    def __init__(self, lexicon: Lexicon, little: frozenset[str], plain: frozenset[str], heard: Heard) -> None:
        self.lexicon, self.heard = lexicon, heard
        self.little = little | {stem(fold(word)) for word in STOP_WORDS}
        self.plain = plain | self.little

    def warm(self) -> None:
        """Makes now what is otherwise made on the first slip."""
        _ = self.echoes, self.completions, self._same

    @cached_property
    def speller(self) -> Speller:
        """The speller, made on the first word that needs it."""
        files = [Path(__file__), Path(sounding.__file__), Path(by_sound.__file__)]
        own = content_key(files) + text_key(" ".join(self._small))
        at = self.lexicon.key and self.lexicon.key + self.heard.key + own
        rows = cached("sounds", at, self._by_sound, self.lexicon.cache) if at else self._by_sound()
        known = self.lexicon.spelt_right | self.plain | set(self.lexicon.joined)
        return Speller(known | set(self.lexicon.slips), self.heard.sounds, by_sound.BySound(rows))

    @cached_property
    def completions(self) -> Completions:
        """The words of names by their neighbours, made on the first word that needs them."""
        return Completions(self.lexicon.joined.values())

    @cached_property
    def names(self) -> frozenset[str]:
        """All that pieces may be put together to."""
        return self.lexicon.words.union(self.lexicon.joined, self.lexicon.slips)

    @cached_property
    def _often_misspelt(self) -> frozenset[str]:
        """Names as one word that are so often asked for that their slips are known."""
        heard = Counter("".join(key(meant)) for meant in self.heard.slips.values())
        often = (name for name, times in heard.items() if times >= OFTEN)
        return frozenset({*self.lexicon.slips.values(), *often})

    @cached_property
    def often(self) -> frozenset[str]:
        """Words that stand in many names (`chicken`)."""
        counts = Counter(word for words in self.lexicon.joined.values() for word in words.split())
        return frozenset(word for word, count in counts.items() if count >= MANY)

    def familiar(self, name: str) -> bool:
        """Whether a name (as one word), or a long word of it, is often asked for."""
        words = [name, *(w for w in self.lexicon.joined.get(name, "").split() if len(w) > LONG)]
        return is_english(name) or not self._often_misspelt.isdisjoint(words)

    @cached_property
    def echoes(self) -> Echoes:
        """Names by how they sound, be it a little otherwise."""
        return Echoes(self.speller.heard)

    def _by_sound(self) -> dict[str, str]:
        """Names and their words by their bones, as `BySound` takes them."""
        return by_sound.by_sound(self._sounding())

    @cached_property
    def _small(self) -> dict[str, list[str]]:
        """Longer little words, which are known by their sound too."""
        words = sorted(word for word in self.little - self.lexicon.spelt_right if word.isalpha())
        return {word: [word] for word in words if len(word) >= LONG}

    def _sounding(self) -> Iterator[tuple[str, list[tuple[str, str]]]]:
        """Every name and its (bones, sound) in the languages it may be read in."""
        common = everyday()
        for name, words in {**self._spoken(), **self._small}.items():
            as_english = common.issuperset(words) or self._is_work(name) or name in self._small
            yield name, self.heard.sounds.entries(words, as_english)
        for name, phrase in self._respelt():
            yield name, self.heard.sounds.entries(phrase, True)[:1]

    def _respelt(self) -> Iterator[tuple[str, list[str]]]:
        """Names with the English words that they are known to be heard as."""
        for phrase, meant in self.heard.slips.items():
            name = "".join(key(meant))
            if name in self.lexicon.joined or name in self.lexicon.spelt_right:
                yield name, fold(phrase).split()

    def _spoken(self) -> Mapping[str, Sequence[str]]:
        """Names as one word, and the words they are spoken in."""
        words = {word: [word] for word in sorted(self.lexicon.spelt_right) if len(word) > 2}
        return words | {joined: words.split() for joined, words in self.lexicon.joined.items()}

    def _is_work(self, name: str) -> bool:
        """Whether an English word names what is done in the kitchen (`blanch`), and is read as English."""
        found = self.lexicon.longest([name], 0)
        return bool(found and is_english(name) and all(n.type == "Method" for n in found[1]))

    def strange(self, word: str) -> bool:
        """Whether the folded stem is neither known nor English, and so may be a slip."""
        known = word in self.lexicon.spelt_right or word in self.plain or word in self.heard.others
        return not known and word.isalpha() and len(word) > 2 and not is_english(word)

    def spoken(self, token: Token) -> str | None:
        """The stem of a plain word as it is said (`comin'`) or typed in a short message (`wht`), or None."""
        word = fold(token.text)
        if len(word) < FEWEST or not self.strange(word):
            return None
        if word.endswith("in") and len(word) >= SHORTEST and f"{word}g" in english():
            return stem(f"{word}g")
        return self._texted.get(word) or self._kept_e(word) or self._swapped(word) or self._left_out(word)

    def _kept_e(self, word: str) -> str | None:
        """The stem of the plain word that kept an e it should have lost (`tasteing`)."""
        plain = f"{word[:-4]}ing" if word.endswith("eing") else ""
        return stem(plain) if stem(plain) in self.plain and is_english(plain) else None

    def _swapped(self, word: str) -> str | None:
        """The stem of the little word or name of which two neighbours were swapped (`gose`, `breis`)."""
        ways = {word[:i] + word[i + 1] + word[i] + word[i + 2 :] for i in range(1, len(word) - 1)}
        ways = {way for way in ways if stem(way) == way or way.endswith("es")}
        found = {stem(way) for way in ways if stem(way) in self.little and is_english(way)}
        return found.pop() if len(found) == 1 else None

    def _left_out(self, word: str) -> str | None:
        """The stem of the plain word that lacks a vowel or half of a double letter (`beginers`, `tastng`)."""
        if len(word) < LACKING:
            return None
        ways = {word[:i] + letter + word[i:] for i in range(1, len(word)) for letter in (*"aeiou", word[i])}
        found = {stem(way) for way in ways if stem(way) in self.plain and is_english(way)}
        found = {way for way in found if not self.lexicon.longest([way], 0)}
        return found.pop() if len(found) == 1 else None

    @cached_property
    def _texted(self) -> dict[str, str]:
        """The commonest words without their vowels, where no two are the same."""
        short: dict[str, list[str]] = {}
        for word in sorted(word for word in STOP_WORDS if word.isalpha() and len(word) > FEWEST):
            short.setdefault(word[0] + _VOWEL.sub("", word[1:]), []).append(word)
        return {bare: stem(words[0]) for bare, words in short.items() if len(words) == 1}

    def odd(self, word: str) -> bool:
        """Whether a word outside a name is strange, or a part of foreign names only (`noir`)."""
        if self.strange(word):
            return True
        part = word in self.lexicon.spelt_right and word not in self.plain and len(word) > 2
        return part and word.isalpha() and not is_english(word)

    def marks(self, word: str) -> bool:
        """Whether a word is a part of names, and nothing by itself (`blanc`, `frites`)."""
        known = word in self.lexicon.spelt_right and word not in self.plain
        return known and not self.lexicon.longest([word], 0)

    def named(self, doc: Doc) -> set[int]:
        """Positions of the words that make a name as they stand, be it one that is spelt wrong."""
        places = [token.i for token in doc if token.norm_ not in "-–"]
        stems = [doc[i].norm_ for i in places]
        found = ((at, self.lexicon.longest(stems, at)) for at in range(len(stems)))
        return {i for at, name in found if name for i in places[at : at + name[0]]}

    def idle(self, word: str) -> bool:
        """Whether a word means nothing in this job."""
        return word in self.plain and word not in self.little and not self.lexicon.longest([word], 0)

    def concepts(self, word: str) -> tuple[str, ...]:
        """Ids of what the word names, or is heard for, or the word itself."""
        meant = self.heard.slips.get(word)
        found = self.lexicon.longest(["".join(key(meant))] if meant else [word], 0)
        return tuple(name.id for name in found[1]) if found else (word,)

    def looks_otherwise(self, word: str, name: str) -> bool:
        """Whether a strange word looks more like something else: `sautid` is no saithe."""
        if not self.strange(word):
            return False
        looks = slip_cost(word, name)
        near = (other for cost, other in self.speller.near(word)[:1] if cost < looks)
        return any(self.concepts(other) != self.concepts(name) for other in near)

    def spelt_otherwise(self, word: str) -> list[str]:
        """Other names of one word that look nearly alike and mean the same (`tagine` of `tajine`)."""
        same = self._same.get(word, "").split()
        return [other for other in same if other != word and slip_cost(word, other) < VARIANT]

    @cached_property
    def _same(self) -> dict[str, str]:
        """All names of one word of what one names, by each of them."""
        groups: dict[tuple[Name, ...], list[str]] = {}
        for word in sorted(self.lexicon.words):
            if found := self.lexicon.longest([word], 0):
                groups.setdefault(found[1], []).append(word)
        texts = ((words, " ".join(words)) for words in groups.values() if len(words) > 1)
        return {word: text for words, text in texts for word in words}

    def parts(self, words: Sequence[str]) -> bool:
        """Whether the words are little words and a name, all of them one, or one and how it is cooked."""
        names = [stem(w) for w in words if not {w, stem(w)} & self.little]
        if self._cooked(words):
            return True
        found = self.lexicon.longest(names, 0) if names else None
        return bool(found and found[0] == len(names)) or (not names and not STOP_WORDS.isdisjoint(words))

    def _cooked(self, words: Sequence[str]) -> bool:
        """Whether the words are a way of cooking and a name (`roast`, `chicken`)."""
        found = [self.lexicon.longest([stem(word)], 0) for word in words]
        names = [name[1] for name in found if name]
        whole = len(names) == len(words) and all(map(is_english, words))
        return whole and any(name.type == "Method" for name in names[0])
