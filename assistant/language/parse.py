"""A typed question -> a frame. The only way in is `Parser.parse`; it never raises."""

from __future__ import annotations

import re
import tomllib
from dataclasses import replace
from pathlib import Path

from assistant.knowledge.files import corpus_dir
from assistant.knowledge.store import Knowledge
from assistant.language.clean import clean
from assistant.language.cues import CueBook, read_cues
from assistant.language.dishes import DishReader, read_roles
from assistant.language.fold import fold, key, stem
from assistant.language.frame import Frame, Preference, Reading, Text
from assistant.language.intent import Signature, decide, read_intents
from assistant.language.lexicon import build_lexicon
from assistant.language.preferences import find_preferences, negated, read_preference_words, small_words
from assistant.language.reading import Reader
from assistant.language.topics import Topics
from assistant.pairing.dish import Dish
from assistant.pairing.engine import single

MOST_DISHES = 6
ASKED_WHY = ("why", "why-not")
BARE_WORDS = 4
DESSERT = "kind/dessert"
EDIBLE = ("food", "sauce", "dressing", "garnish")
_NUMBER = re.compile(r"\d+(?:\.\d+)?")


class Parser:
    """Reads questions with the shipped knowledge and language files."""

    def __init__(self, knowledge: Knowledge, language: Path | None = None) -> None:
        folder = language or corpus_dir() / "language"
        self._knowledge = knowledge
        self.lexicon = build_lexicon(knowledge)
        self._cues = CueBook(read_cues(folder / "cues.toml"))
        self._rows = read_intents(folder / "intents.toml")
        self._words = read_preference_words(folder / "preferences.toml")
        roles = read_roles(folder / "roles.toml")
        self._dishes = DishReader(knowledge, roles)
        filler = (
            frozenset(stem(fold(word)) for word in roles)
            | _filler(folder / "filler.txt")
            | _stems(folder / "plain-english.txt")
        )
        heard = _slips(folder / "heard-as.toml")
        self.topics = Topics(folder / "safety.toml")
        self._reader = Reader(self.lexicon, self._cues, self.topics, filler, heard)

    def _without_limit_words(self, text: Text) -> Text:
        """A word that limits the wine and, in the plural, names a food: `crisp` is no potato crisp."""
        limits = {phrase.words[0] for phrase in self._words if len(phrase.words) == 1}
        kept = tuple(r for r in text.readings if r.kind not in EDIBLE or r.text.lower() not in limits)
        return replace(text, readings=kept)

    def parse(self, typed: str, standing: bool = False) -> Frame:
        """The frame of one question; `standing` tells that an earlier turn stands."""
        text = self._without_limit_words(self._reader.read(clean(typed)))
        sorted_out = _Sorting(text, self._knowledge)
        asks_meaning = bool(text.cues & {"means", "define"})
        limits = {word.words for word in self._words}
        fixed = [r for r in sorted_out.named if asks_meaning or r.type != "Term" or key(r.text) not in limits]
        taken = {i for r in fixed for i in range(r.start, r.end)}
        preferences, used = find_preferences(text, self._words, taken)
        preferences = [*sorted_out.preferences, *preferences]
        sorted_out.drop_terms(used)
        dishes = self._dishes.dishes(text, sorted_out.edible)
        dishes += sorted_out.cuisines
        wines = tuple(dict.fromkeys(r.id for r in sorted_out.wines))
        foods = [part.food for dish in dishes for part in dish.parts]
        signature = Signature(
            text.cues,
            len(wines),
            len(foods),
            len(sorted_out.terms),
            len(preferences),
            standing,
            generic=bool(foods) and all(food.startswith("kind/") for food in foods),
            bare=_bare(text),
        )
        used_words = {text.words[i] for i in used}
        left = tuple(w for w in text.left_out if w not in used_words) + tuple(sorted_out.unused)
        intent = decide(signature, self._rows)
        if intent in ASKED_WHY:  # `why not Barolo?` asks about Barolo
            refused = tuple(p.wanted for p in preferences if p.banned and p.wanted in self._knowledge.wines)
            wines = (*wines, *(w for w in refused if w and w not in wines))
            preferences = [p for p in preferences if p.wanted not in refused]
        return Frame(
            intent=intent,
            text=replace(text, left_out=left, readings=tuple(sorted_out.named)),
            dishes=tuple(dishes),
            wines=wines,
            preferences=tuple(preferences),
            terms=tuple(r.id for r in sorted_out.terms),
            topics=text.topics,
            numbers=_numbers(text),
            depth=3 if "deeper" in text.cues else 1,
            another="another" in text.cues,
            follows="follow" in text.cues,
        )


class _Sorting:
    """Sorts the readings into wines, foods, terms, cuisines and limits on the wine."""

    def __init__(self, text: Text, knowledge: Knowledge) -> None:
        self._text, self._knowledge = text, knowledge
        self.wines: list[Reading] = []
        self.foods: list[Reading] = []
        self.edible: list[Reading] = []
        self.terms: list[Reading] = []
        self.cuisines: list[Dish] = []
        self.preferences: list[Preference] = []
        self.named: list[Reading] = []
        self.unused: list[str] = []
        has_food = any(r.kind in EDIBLE for r in text.readings)
        asks_meaning = "means" in text.cues or ("define" in text.cues and _bare(text))
        readings = [self._as_term(r) for r in text.readings] if asks_meaning else text.readings
        for i, reading in enumerate(readings):
            follower = text.readings[i + 1] if i + 1 < len(text.readings) else None
            self._sort(reading, follower, has_food)

    def drop_terms(self, used: set[int]) -> None:
        """Terms that turned out to be limits (`not sweet`) are no terms."""
        kept = [r for r in self.named if r.type != "Term" or not used & set(range(r.start, r.end))]
        self.named = kept
        self.terms = [r for r in self.terms if any(k.start == r.start for k in kept)]

    def _as_term(self, reading: Reading) -> Reading:
        """`what does brut mean` asks for the term, not for the wine of that name."""
        term = next((i for i in reading.others if i.startswith("term/")), None)
        if term is None:
            return reading
        return replace(reading, id=term, kind="term", type="Term", label=self._knowledge.label(term))

    def _sort(self, reading: Reading, follower: Reading | None, has_food: bool) -> None:
        kind = reading.kind
        if reading.type == "Kind" and kind == "wine":
            kind = self._wine_kind(reading)
        elif kind == "wine":
            kind = self._wine(reading)
        elif kind in EDIBLE and self._names_the_course(reading):
            return
        elif kind in EDIBLE:
            self.foods.append(reading)
            self.edible.append(reading)
        elif kind == "method":
            self.edible.append(reading)
        elif kind == "region":
            kind = self._region(reading, follower, has_food)
        elif kind == "term":
            self.terms.append(reading)
        self.named.append(replace(reading, kind=kind))

    def _names_the_course(self, reading: Reading) -> bool:
        """`cheese for dessert` eats cheese."""
        before = self._text.stems[reading.start - 1] if reading.start else ""
        others = [r for r in self._text.readings if r.kind in EDIBLE and r is not reading]
        return before in small_words()["course-before"] and bool(others) and self._is_dessert(reading)

    def _is_dessert(self, reading: Reading) -> bool:
        return reading.label == self._knowledge.label(DESSERT)

    def _wine(self, reading: Reading) -> str:
        if negated(self._text, reading.start) and "judge" not in self._text.cues:
            ban = Preference(f"no {reading.label}", "kind", wanted=reading.id, banned=True)
            self.preferences.append(ban)
            return "preference"
        self.wines.append(reading)
        return "wine"

    def _wine_kind(self, reading: Reading) -> str:
        """`a red` is a limit; `does red go with fish` asks about reds."""
        before = self._text.stems[reading.start - 1] if reading.start else ""
        banned = negated(self._text, reading.start)
        limit = banned or before in small_words()["limit-before"] or "judge" not in self._text.cues
        if not limit or ("foods-for-wine" in self._text.cues and not self.foods):
            self.wines.append(reading)
            return "wine"
        label = f"no {reading.label}" if banned else reading.label
        self.preferences.append(Preference(label, "kind", wanted=reading.id, banned=banned))
        return "preference"

    def _region(self, reading: Reading, follower: Reading | None, has_food: bool) -> str:
        """A kitchen (`Thai food`), a limit on the wine (`an Italian red`), or nothing we can use."""
        after = self._text.stems[reading.end] if reading.end < len(self._text.stems) else ""
        if after in small_words()["kitchen"]:
            return self._cuisine(reading)
        before = self._text.stems[max(0, reading.start - 2) : reading.start]
        if after == "one" or "from" in before:
            return self._home_limit(reading)
        if (
            after in small_words()["bottle"]
            or (follower and follower.kind == "wine")
            or "wine" in self._text.stems
        ):
            return self._home_limit(reading)
        adjective = reading.text.lower() != self._knowledge.label(reading.id).lower()
        asks = "wines-for-food" in self._text.cues or _bare(self._text)
        if adjective and not has_food and asks:
            return self._cuisine(reading)
        if has_food and not after:
            return self._home_limit(reading)
        if not has_food:
            self.unused.append(reading.text)
        return "region"

    def _cuisine(self, reading: Reading) -> str:
        found = self._knowledge.cuisine(reading.id)
        step = max(1, len(found) // MOST_DISHES)
        self.cuisines.extend(single(food) for food in found[::step][:MOST_DISHES])
        return "cuisine" if found else "region"

    def _home_limit(self, reading: Reading) -> str:
        banned = negated(self._text, reading.start)
        label = f"not from {reading.label}" if banned else f"from {reading.label}"
        self.preferences.append(Preference(label, "home", wanted=reading.id, banned=banned))
        return "preference"


def _bare(text: Text) -> bool:
    """Whether hardly anything is said beyond the names (`what is brie`)."""
    used = sum(r.end - r.start for r in text.readings)
    words = [w for w in text.words if any(c.isalnum() for c in w)]
    return len(words) - used <= BARE_WORDS


def _numbers(text: Text) -> dict[str, float]:
    found = [float(w) for w in text.words if _NUMBER.fullmatch(w)]
    return {"first": found[0]} if found else {}


def _filler(file: Path) -> frozenset[str]:
    return frozenset(stem(fold(word)) for word in _stems(file))


def _stems(file: Path) -> frozenset[str]:
    """The words of a file that are folded stems already; `#` lines are remarks."""
    lines = file.read_text("utf-8").splitlines()
    return frozenset(w for line in lines if not line.startswith("#") for w in line.split())


def _slips(file: Path) -> dict[str, str]:
    with file.open("rb") as handle:
        return dict(tomllib.load(handle)["slips"])
