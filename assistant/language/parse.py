"""A typed question -> a frame. The only way in is `Parser.parse`; it never raises."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from assistant.knowledge.files import corpus_dir
from assistant.knowledge.kinds_meant import kinds_meant
from assistant.knowledge.store import Knowledge
from assistant.language.claimed import as_claim
from assistant.language.clean import clean
from assistant.language.counting import bottles, numbers_in
from assistant.language.cues import CueBook, read_cues
from assistant.language.data import read_data, read_words
from assistant.language.dishes import DishReader, read_roles
from assistant.language.drafts import as_called
from assistant.language.eating import (
    WITHOUT_ALCOHOL,
    abstains,
    diets_in,
    eating_words,
    left_off,
    not_eaten,
    unkept,
)
from assistant.language.entries import Entries
from assistant.language.evidence import read_evidence
from assistant.language.fold import fold, stem
from assistant.language.follow_lines import follow_lines
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame, Preference, Text
from assistant.language.guests import guest_words
from assistant.language.headings import without_headings
from assistant.language.heard import Heard
from assistant.language.intent import Choice, Signature, choose, decide, read_intents
from assistant.language.lexicon import build_lexicon
from assistant.language.made_of import heads
from assistant.language.phrases import read_phrases
from assistant.language.plain_terms import PlainTerms
from assistant.language.preferences import (
    by_first,
    consistent,
    find_preferences,
    made_so,
    parts_of,
    read_preference_words,
    stems_of,
    wishes,
)
from assistant.language.profile import described, profile_words
from assistant.language.quantities import quantity_words
from assistant.language.reading import SAFETY, Reader
from assistant.language.remembering import remembered
from assistant.language.smells import smell_words, without_smells
from assistant.language.sorting import EDIBLE, Sorting, is_bare, words_beside
from assistant.language.themes import of_a_place
from assistant.language.topics import Topics
from assistant.language.unread import beside_tastes
from assistant.pairing.dish import Dish

MORE_WORDS = (quantity_words, guest_words, smell_words, heads)
OBJECTS, CHOOSES, LIMITED, JUDGES = "why-not", "choose-wines", "wines-for-food", "judge-pair"
REASONS = frozenset({"why", "why-not", "objection", "define"})
ABOUT_KINDS = ("why", "why-not", "judge-pair")
ABOUT_REFUSED = ("why", "why-not", "substitute")
# What keeps to diets: lists of foods, and answers that look at what is on the plate.
LISTS_FOODS = ("foods-for-wine", "check-board")
LOOKS_AT_DISHES = ("wines-for-food", "safety", "judge-pair", "one-bottle", "choose-wines")
# What talks of how things taste or look.
OF_TASTES = frozenset(
    {"compare", "describe", "why", "why-not", "define", "trouble", "myth", "pour-order", "teach", "note"}
)
ENGLISH = ("plain", "more", "spoken", "mixed")  # lists of English words
FRAGMENT, REMEMBERED = 2, 32  # words; frames, as one line is read by several in turn


class Parser:
    """Reads questions with the shipped knowledge and language files."""

    def __init__(self, knowledge: Knowledge, language: Path | None = None) -> None:
        folder = language or corpus_dir() / "language"
        self._knowledge = knowledge
        self.lexicon = build_lexicon(knowledge)
        self._cues = CueBook(read_cues(folder / "cues.toml"))
        for read in (follow_words, follow_lines, eating_words, profile_words, *MORE_WORDS):
            read()  # now, so that a broken file is told at once
        self._deciding = read_intents(folder / "intents.toml")
        self.evidence = read_evidence(folder)
        self.limit_words = read_preference_words(folder / "preferences.toml")
        self._limit_parts, self._limit_starts = parts_of(self.limit_words), by_first(self.limit_words)
        roles = read_roles(folder / "roles.toml")
        alone = (phrase for phrase in self.limit_words if len(phrase.words) == 1 and not phrase.turned)
        self._limiting = frozenset(phrase.words[0] for phrase in alone)
        self._dishes = DishReader(knowledge, roles)
        filler = frozenset(stem(fold(word)) for word in (*roles, *read_words(folder / "filler.txt")))
        plain, more, spoken, mixed = (read_words(folder / f"{name}-english.txt") for name in ENGLISH)
        heard = read_data(folder / "heard-as.toml", Heard.of).and_others(frozenset(map(stem, mixed)))
        heard = heard.and_slips(read_phrases(folder / "heard-names.tsv"))
        self.topics = Topics(folder / "safety.toml")
        self.entries = Entries(folder, knowledge)
        people, places = (read_words(folder / f"{name}-names.txt") for name in ("given", "place"))
        known = (filler, heard, plain, more | spoken | frozenset(map(stem, mixed)), people, places)
        self.people, self._plain = people, PlainTerms(knowledge)
        self._reader = Reader(self.lexicon, self._cues, self.topics, self.entries, *known)
        self._remembered = remembered(self._parse, REMEMBERED)

    def _without_limit_words(self, text: Text) -> Text:
        """A word that limits the wine and, in the plural, names a food: `crisp` is no potato crisp."""
        kept = tuple(r for r in text.readings if r.kind not in EDIBLE or r.text.lower() not in self._limiting)
        return replace(text, readings=kept)

    def warm(self) -> None:
        """Makes now what the first slip would wait for."""
        self._reader.warm()

    def parse(self, typed: str, standing: bool = False) -> Frame:
        """The frame of one question; `standing` tells that an earlier turn stands."""
        return self._remembered(typed, standing)

    def _parse(self, typed: str, standing: bool) -> Frame:
        text, found, dishes = self._understood(typed, standing)
        signature = self._signature(text, found, dishes, standing)
        choice = choose(text, signature, self._deciding, self.evidence)
        objects = choice.intent == OBJECTS and not standing
        chooses = choice.intent == CHOOSES and is_bare(text) and not bottles(text).total
        topics = [self.topics.by_id[name] for name in text.topics]
        unpaired = choice.intent == JUDGES and not found.wines  # `may my child have nuts`
        of_health = unpaired and any(not (topic.general or topic.otherwise) for topic in topics)
        if of_health or any(topic.urgent for topic in topics):
            choice = replace(choice, intent=SAFETY)
        elif (objects or chooses) and _only_limits(text, found, dishes, standing):
            choice = replace(choice, intent=LIMITED)
        return of_a_place(self._plain.meant(self._frame(choice, text, found, dishes)), self._knowledge)

    def seen(self, typed: str, standing: bool = False) -> tuple[dict[str, float], str]:
        """What a question has that may speak for an intent, and what the table alone makes of it."""
        text, found, dishes = self._understood(typed, standing)
        signature = self._signature(text, found, dishes, standing)
        traits = self.evidence.traits(text, signature.counts(), standing)
        return traits, decide(signature, self._deciding.rows)

    def _signature(self, text: Text, found: Sorting, dishes: list[Dish], standing: bool) -> Signature:
        foods = [part.food for dish in dishes for part in dish.parts]
        return Signature(
            text.cues,
            len({r.id for r in found.wines}),
            len(foods),
            len(found.terms),
            len(found.preferences),
            standing,
            generic=bool(foods) and all(kinds_meant(food, self._knowledge) for food in foods),
            bare=is_bare(text),
            names_only=not words_beside(text),
            fragment=words_beside(text) <= FRAGMENT,
        )

    def settled_by_table(self, intent: str) -> bool:
        """Whether the table decides of this intent where a follow-up is short."""
        return intent in self._deciding.by_table

    def _understood(self, typed: str, standing: bool = False) -> tuple[Text, Sorting, list[Dish]]:
        """The text with the words that did no work, what is named, and the dishes."""
        text = self._without_limit_words(self._reader.read(clean(typed)))
        found = Sorting(text, self._knowledge, self._limit_starts, standing)
        used = self._limits(text, found)
        found.spare(not_eaten(text.stems, found.edible), left_off(text.stems, found.edible))
        dishes, idle = self._dishes.dishes(text, found.edible)
        dishes, profile = described(without_headings(self._named(dishes), text), text, used)
        idle_words = [*found.unused, *(reading.text for reading in idle), *wishes(text)]
        known = {text.words[i] for i in (*used, *profile)}
        left = tuple(dict.fromkeys((*(w for w in text.left_out if w not in known), *idle_words)))
        text = replace(text, left_out=left, readings=tuple(as_called(r, dishes) for r in found.named))
        return text, found, [*dishes, *found.cuisines]

    def _named(self, dishes: list[Dish]) -> list[Dish]:
        """The dishes without a kind said beside its members (`the cheese: brie, Stilton`)."""
        kinds = {kind for dish in dishes for kind in self._knowledge.broader(dish.main.food)}
        return [dish for dish in dishes if dish.main.food not in kinds or len(dish.parts) > 1]

    def _limits(self, text: Text, found: Sorting) -> set[int]:
        """Adds the limits that are words to `found`; the positions of those words."""
        asks = "means" in text.cues or ("define" in text.cues and "substitute" not in text.cues)
        asks, parts = asks and not found.edible, self._limit_parts
        fixed = [r for r in found.named if asks or r.type != "Term" or stems_of(text, r) not in parts]
        taken = {i for r in fixed for i in range(r.start, r.end)} | found.smelled
        taken |= {i for i in text.elsewhere if text.stems[i] in self._limiting}  # `lost its fizz`
        preferences, used = find_preferences(text, self._limit_starts, taken, found.among)
        found.preferences = consistent([*found.preferences, *preferences], self.limit_words)
        found.drop_terms(used)
        return used | found.smelled

    def _frame(self, choice: Choice, text: Text, found: Sorting, dishes: list[Dish]) -> Frame:
        wines, preferences = _asked_about(choice.intent, found)
        diets = diets_in(text.stems)
        text = replace(text, left_out=tuple(dict.fromkeys((*text.left_out, *found.beside_wines))))
        if choice.intent in LISTS_FOODS or (choice.intent in LOOKS_AT_DISHES and dishes):
            text = replace(text, left_out=unkept(text))
        if choice.intent in OF_TASTES:
            text = replace(text, left_out=beside_tastes(text))
        left = dict.fromkeys((*text.left_out, *made_so(choice.intent, text)))
        text = replace(text, left_out=tuple(left))
        frame = Frame(
            intent=choice.intent,
            because=choice.because,
            text=text,
            dishes=tuple(dishes),
            wines=tuple(dict.fromkeys(wines)),
            preferences=(*preferences, *self._sober(choice.intent, text, preferences)),
            terms=tuple(r.id for r in found.terms),
            topics=text.topics or (self.topics.otherwise if choice.intent == SAFETY else ()),
            numbers=numbers_in(text),
            depth=3 if "deeper" in text.cues else 1,
            another="another" in text.cues,
            follows="follow" in text.cues,
            barred=tuple(found.barred),
            diets=tuple(diets),
        )
        return as_claim(self.entries.told(frame))

    def _sober(self, intent: str, text: Text, limits: list[Preference]) -> tuple[Preference, ...]:
        """`I don't drink, what goes with the gouda` asks for a drink without alcohol."""
        told = any(limit.wanted == WITHOUT_ALCOHOL for limit in limits)
        if told or intent != LIMITED or not abstains(text.stems):
            return ()
        return (Preference(self._knowledge.label(WITHOUT_ALCOHOL), "kind", wanted=WITHOUT_ALCOHOL),)


def _asked_about(intent: str, found: Sorting) -> tuple[list[str], list[Preference]]:
    """The wines asked about and the limits that are left.

    `why not Barolo?` and `no Barolo in the shop` ask about Barolo; `why does blue cheese need sweet wine`
    about sweet wine, `why no red with fish` about red.
    """
    wines, limits = [r.id for r in found.wines if r.id not in found.refused], found.preferences
    if intent in ABOUT_REFUSED:
        wines += found.refused
        limits = [p for p in limits if p not in found.refused.values()]
    if intent in ABOUT_KINDS and not wines:
        wanted = [p for p in limits if p.property == "kind" and p.wanted]
        wines = [p.wanted for p in wanted if p.wanted and (intent in ABOUT_REFUSED or not p.banned)]
        limits = [p for p in limits if p.wanted not in wines]
    return wines, without_smells(intent, limits)


def _only_limits(text: Text, found: Sorting, dishes: list[Dish], standing: bool) -> bool:
    """`no reds with ribeye` asks for a wine within a limit: none is named but unwanted ones, and not why."""
    bans = any(p.banned for p in found.preferences) and not text.cues & REASONS
    named = (found.wines or found.refused) and LIMITED not in text.cues  # `no Syrah, what red for lamb`
    return bans and (bool(dishes) or standing) and not named
