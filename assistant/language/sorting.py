"""Readings sorted into wines, foods, terms, cuisines and limits on the wine."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from assistant.knowledge.store import Knowledge
from assistant.language.cooked_in import cooked_in
from assistant.language.frame import Preference, Reading, Text
from assistant.language.homes import in_manner, of_eating, of_people, one_of, told_alone, told_to_be
from assistant.language.preferences import PreferenceWord, phrase_before
from assistant.language.small_words import small_words
from assistant.language.smells import find_smells
from assistant.language.sort_wished import condition_of, taught_as, wished_behind
from assistant.language.turning import excepted, hated, held_against, negated, ruled_out, turned_word
from assistant.pairing.dish import Dish, single

MOST_DISHES = 6
BARE_WORDS = 4
EARLY = 3
DESSERT = "kind/dessert"
Limits = Mapping[str, list[PreferenceWord]]  # by the stem each begins with
EDIBLE = ("food", "sauce", "dressing", "garnish")


class Sorting:
    """The readings of a text by what they do in the question."""

    def __init__(self, text: Text, knowledge: Knowledge, limits: Limits, standing: bool = False) -> None:
        self._text, self._knowledge, self._limits = text, knowledge, limits
        self._standing = standing
        self.among: dict[int, Reading] = {}
        self.wines: list[Reading] = []
        self.refused: dict[str, Preference] = {}
        self.foods: list[Reading] = []
        self.edible: list[Reading] = []
        self.terms: list[Reading] = []
        self.cuisines: list[Dish] = []
        self.named: list[Reading] = []
        self.unused: list[str] = []
        self.barred: list[str] = []
        has_food = any(r.kind in EDIBLE for r in text.readings)
        asks_meaning = "means" in text.cues or ("define" in text.cues and is_bare(text))
        smells = find_smells(text)
        self.preferences, self.smelled = [*smells.limits], smells.read
        self.beside_wines = tuple(text.words[at] for at in sorted(smells.idle))
        readings = [self._as_term(r) for r in text.readings] if asks_meaning else text.readings
        for i, reading in enumerate(readings):
            follower = text.readings[i + 1] if i + 1 < len(text.readings) else None
            if not self.smelled.issuperset(range(reading.start, reading.end)):
                self._sort(reading, follower, has_food)

    def spare(self, not_eaten: list[Reading], left_off: list[Reading]) -> None:
        """Foods named as not eaten are on no dish, unless nothing else is named."""
        if len(not_eaten) < len(self.edible) or self.wines:
            self.edible = [r for r in self.edible if r not in not_eaten]
            self.foods = [r for r in self.foods if r not in not_eaten]
        named = [r for r in (*not_eaten, *left_off) if r.kind in EDIBLE]
        self.barred = [i for r in named for i in (r.id, *r.others) if i.startswith(("food/", "kind/"))]

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
        kind = "remark" if in_manner(self._text, reading) else reading.kind
        if kind == "wine" and (cooked := cooked_in(self._text, reading, self._knowledge)):
            self.foods.append(cooked)
            self.edible.append(cooked)
            reading, kind = cooked, cooked.kind
        elif reading.type == "Kind" and kind == "wine":
            kind = self._wine_kind(reading)
        elif kind == "wine":
            kind = self._wine(reading)
        elif kind in EDIBLE and self._names_the_course(reading):
            return
        elif kind in EDIBLE:
            self.foods.append(reading)
            self.edible.append(reading)
        elif kind == "method" and not self._of_wine(reading, follower):
            self.edible.append(reading)
        elif kind == "region":
            kind = self._region(reading, follower, has_food)
        elif kind == "term":
            self.terms.append(reading)
        elif kind == "aroma" and small_words()["smelling"].intersection(self._text.stems):
            kind = self._smell(reading)
        self.named.append(replace(reading, kind=kind))

    def _names_the_course(self, reading: Reading) -> bool:
        """`cheese for dessert` eats cheese, `bobotie for Sunday lunch` bobotie."""
        before = self._text.stems[reading.start - 1] if reading.start else ""
        others = [r for r in self._text.readings if r.kind in EDIBLE and r is not reading]
        told = self._is_dessert(reading) or self._is_meal(reading)
        return before in small_words()["course-before"] and bool(others) and told

    def _is_meal(self, reading: Reading) -> bool:
        return self._text.stems[reading.end - 1] in small_words()["meal"]

    def _is_dessert(self, reading: Reading) -> bool:
        return reading.label == self._knowledge.label(DESSERT)

    def _wine(self, reading: Reading) -> str:
        if held_against(self._text, reading.start):
            self.unused.append(reading.text)
            return "remark"
        judged = "judge" in self._text.cues and not hated(self._text, reading.start)
        if ruled_out(self._text, reading.start) or (negated(self._text, reading.start) and not judged):
            grape = next((i for i in reading.others if i.startswith("grape/")), None)
            label = self._knowledge.label(grape) if grape else reading.label
            ban = Preference(f"no {label}", "kind", wanted=grape or reading.id, banned=True)
            self.preferences.append(ban)
            self.refused[reading.id] = ban
            return "preference"
        self.wines.append(reading)
        return "wine"

    def _wine_kind(self, reading: Reading) -> str:
        """`a red` is a limit; `does red go with fish` asks about reds; `white gravy` is no wine."""
        if self._of_food(reading) or taught_as(self._text, reading):
            return "remark"
        before = self._text.stems[reading.start - 1] if reading.start else ""
        banned = negated(self._text, reading.start)
        if (asked := condition_of(self._text, reading, self._limits)) is not None:
            self.among[asked] = reading  # `low tannin if red`
            return "preference"
        if banned and before in small_words()["too-much"]:
            return self._not_too(reading)
        adjective = phrase_before(self._text.stems, reading.start, self._limits)
        if banned and adjective is not None and turned_word(self._text.stems, adjective):
            banned = False  # `a not oaky white` is a white
        elif banned and adjective is not None:
            self.among[adjective] = reading  # `no oaky whites` leaves the other whites
            return "preference"
        judged = "judge" in self._text.cues and not wished_behind(self._text, reading)
        limit = banned or before in small_words()["limit-before"] or not judged
        kinds_alone = self.foods and all(food.id.startswith("kind/") for food in self.foods)
        sought = kinds_alone and before in small_words()["wine-behind"]  # `snacks for orange wine`
        if not limit or sought or ("foods-for-wine" in self._text.cues and not self.foods):
            self.wines.append(reading)
            return "wine"
        label = f"no {reading.label}" if banned else reading.label
        self.preferences.append(Preference(label, "kind", wanted=reading.id, banned=banned))
        return "preference"

    def _not_too(self, reading: Reading) -> str:
        """`a not too heavy red` is a red; `not too sticky` says nothing of the sort."""
        sort = self._knowledge.broader(reading.id)[:-1]
        if not sort:
            return "remark"
        label = self._knowledge.label(sort[0])
        self.preferences.append(Preference(label, "kind", wanted=sort[0]))
        self.preferences.append(Preference(f"no {reading.label}", "kind", wanted=reading.id, banned=True))
        return "preference"

    def _limited(self) -> bool:
        """Whether a word limits the wine."""
        return any(len(w.words) == 1 for stem in self._text.stems for w in self._limits.get(stem, ()))

    def _smell(self, reading: Reading) -> str:
        """`with vanilla notes` limits the wine to those of that family of smells."""
        family = (*self._knowledge.broader(reading.id), reading.id)[0]
        banned = negated(self._text, reading.start)
        label = f"{'not ' if banned else ''}smelling of {self._knowledge.label(family)}"
        self.preferences.append(Preference(label, "smell", wanted=family, banned=banned))
        return "preference"

    def _of_wine(self, reading: Reading, follower: Reading | None) -> bool:
        """`I chilled the Shiraz`: what is done is done to a wine that follows at once."""
        if follower is None or follower.kind != "wine":
            return False
        return set(self._text.stems[reading.end : follower.start]) <= small_words()["articles"]

    def _of_food(self, reading: Reading) -> bool:
        """Whether a food follows at once: `white sausage`, `pink sauce`."""
        return any(r.start == reading.end and r.kind in EDIBLE for r in self._text.readings)

    def _region(self, reading: Reading, follower: Reading | None, has_food: bool) -> str:
        """A kitchen (`Thai food`), a limit on the wine (`an Italian red`), or nothing we can use."""
        after = self._text.stems[reading.end] if reading.end < len(self._text.stems) else ""
        if after in small_words()["kitchen"]:
            return self._cuisine(reading)
        if after in small_words()["manner"] or self._of_food(reading):
            return "remark"  # `meatballs Swedish style`, `American cheese`
        before = self._text.stems[max(0, reading.start - 2) : reading.start]
        if of_people(self._text, reading, has_food):
            return "remark"  # `my Spanish friend`, `we are cooking Italian, lasagne`
        if after in small_words()["only-behind"] or "from" in before:
            return self._home_limit(reading)
        if (
            after in small_words()["bottle"]
            or (follower and follower.kind == "wine")
            or "wine" in self._text.stems
        ):
            return self._home_limit(reading)
        adjective = reading.text.lower() != self._knowledge.label(reading.id).lower()
        asks = "wines-for-food" in self._text.cues or is_bare(self._text)
        out = excepted(self._text.stems, reading.start) is not None  # `anything but Italian`
        wanted = adjective and (out or (before[-1:] and before[-1] in small_words()["any-wine"]))
        if wanted and (not after or after in small_words()["behind-wish"]) and not of_eating(self._text):
            return self._home_limit(reading)  # `something Italian, for burrata`
        told = told_to_be(self._text, reading) or one_of(self._text, reading, follower)
        if (adjective and told) or told_alone(self._text, reading):
            return self._home_limit(reading)
        early = self._standing and reading.start < EARLY
        if not has_food and (early or (is_bare(self._text) and (self._standing or self._limited()))):
            return self._home_limit(reading)  # `not Italian` of what stands, `something dry and Italian`
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


def is_bare(text: Text) -> bool:
    """Whether hardly anything is said beyond the names (`what is brie`)."""
    return words_beside(text) <= BARE_WORDS


def words_beside(text: Text) -> int:
    """How many words stand beside the names."""
    used = sum(r.end - r.start for r in text.readings)
    return len([w for w in text.words if any(c.isalnum() for c in w)]) - used
