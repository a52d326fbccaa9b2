"""Text -> readings: names found by longest match, misspellings mended, everything else accounted for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import partial
from itertools import islice

from spacy.tokens import Doc, Span

from assistant.language.begun import begins_longer
from assistant.language.clean import Cleaned
from assistant.language.common_slips import CommonSlips
from assistant.language.cooked_with import CookedWith
from assistant.language.cues import Cue, CueBook
from assistant.language.doubts import Repair
from assistant.language.entries import Entries
from assistant.language.fold import key
from assistant.language.frame import Reading, Text
from assistant.language.given_names import is_somebody
from assistant.language.heard import Heard
from assistant.language.homes import of_a_sort
from assistant.language.lexicon import Lexicon, Name
from assistant.language.persons import is_called_so, is_person
from assistant.language.phrases import Phrases
from assistant.language.repair import Repairer
from assistant.language.senses import Senses, lies_in, undisturbed
from assistant.language.small_words import small_words
from assistant.language.topics import Topics
from assistant.language.turned_names import TurnedNames
from assistant.language.unread import Unread
from assistant.language.vocabulary import Vocabulary
from assistant.language.words import passing, tokens

GROUP, SAFETY = "readings", "safety"
NOTHING = "\N{ZERO WIDTH SPACE}"  # the norm of a piece that went into the word before it
BETWEEN = ("-", "–", "'", NOTHING)  # what may stand between the words of a name
MOST_TAKEN_APART = 40
# What asks for the meaning of a word; then a common word may be one that the glossary lacks (`racy`).
MEANING = ("define", "means")
MOST_NAME = 8  # words of a name


class Reader:
    """Reads cleaned text with a lexicon, cue book, topics, entries, filler words and speech slips."""

    def __init__(
        self,
        lexicon: Lexicon,
        cues: CueBook,
        topics: Topics,
        entries: Entries,
        filler: frozenset[str],
        heard: Heard,
        plain: frozenset[str] = frozenset(),
        more: frozenset[str] = frozenset(),
        people: frozenset[str] = frozenset(),
        places: frozenset[str] = frozenset(),
    ) -> None:
        self._lexicon, self._cues, self._topics, self._entries = lexicon, cues, topics, entries
        self._plain, self._people = plain, people
        self._slips = Phrases(heard.slips, partial(begins_longer, lexicon))
        little = cues.words | topics.words | entries.words | filler
        self._known = Vocabulary(lexicon, little, plain, heard)
        self._repairer = Repairer(self._known)
        self._unread = Unread(self._known, filler, plain, more, people, places)
        self._senses, self._cooked = Senses(), CookedWith(lexicon)
        self._turned = TurnedNames(lexicon)
        self._common = CommonSlips(lexicon, plain, heard.eaten)

    def warm(self) -> None:
        """Makes now what the first slip would wait for."""
        self._known.warm()

    def read(self, cleaned: Cleaned) -> Text:
        """All that can be recognised in the text, and the words that could not be used."""
        with passing():
            return self._read(cleaned)

    def _read(self, cleaned: Cleaned) -> Text:
        doc, mended = self._mended(self._taken_apart(tokens(self._as_meant(cleaned.text))))
        stems = [token.norm_ for token in doc]
        elsewhere, verbs = self._senses.elsewhere(doc), self._senses.verbs(doc)
        named = (r for r in self._names(doc, stems, mended) if r.start not in verbs or r.end > r.start + 1)
        readings = [r for r in named if not (lies_in(r, elsewhere) or self._is_somebody(doc, r))]
        cues, warnings = self._cues.find(doc), undisturbed(self._topics.find(doc), readings)
        topics = self._topics.ids(warnings, {reading.kind for reading in readings}, stems)
        found = {cue.name for cue in undisturbed(cues, readings)}
        return Text(
            typed=cleaned.text,
            words=tuple(token.text for token in doc),
            stems=tuple(stems),
            readings=tuple(readings),
            cues=frozenset(found | ({SAFETY} if topics else set())),
            left_out=tuple(self._left_out(doc, readings, [*cues, *warnings], mended, elsewhere)),
            topics=topics,
            entries=self._entries.find(doc),
            notes=_notes(cleaned),
            elsewhere=elsewhere,
        )

    def _is_somebody(self, doc: Doc, reading: Reading) -> bool:
        return is_called_so(doc, reading) or is_somebody(doc, reading, self._people)

    def _as_meant(self, text: str) -> str:
        """Replaces whole-phrase speech slips (`savvy b`) by what was meant."""
        return self._slips.replaced(text)

    def _mended(self, doc: Doc) -> tuple[Doc, dict[int, str]]:
        """The doc with misspelt words' norms mended, and the typed words by token position."""
        mended: dict[int, str] = {}
        for at, token in enumerate(doc):
            for i, word in enumerate(self._common.words(doc, at), at):
                mended.setdefault(i, doc[i].text)
                doc[i].norm_ = word
            if at in mended:
                continue
            said = self._known.spoken(token)
            if said and self._repairer.completes(doc, at):
                continue  # `fruit drivin`
            if said and self._lexicon.longest([said], 0):
                mended[at] = token.text
            token.norm_ = said or token.norm_
        repairs = self._repairer.repairs(doc)
        for repair in (one for one in repairs if not is_person(doc, one.start, one.end)):
            words = self._words_of(doc, repair)
            for at in range(repair.start, repair.end):
                mended[at] = doc[at].text
                doc[at].norm_ = next(words, NOTHING)
        return doc, mended

    def _words_of(self, doc: Doc, repair: Repair) -> Iterator[str]:
        """The words of a repair, each by itself where there is room, so that a longer name is found."""
        whole = self._repairer.completed(doc, repair)  # `chickpea stew`
        words = [] if whole else self._lexicon.joined.get(repair.word, "").split()
        return iter(words if 0 < len(words) <= repair.end - repair.start else [repair.word])

    def _taken_apart(self, doc: Doc) -> Doc:
        """The doc with what was run together (`withsteak`) in words of its own."""
        apart = [(self._repairer.apart(token), token) for token in doc[:MOST_TAKEN_APART]]
        if not any(words for words, _ in apart):
            return doc
        pieces = [(" ".join(words) or token.text) + token.whitespace_ for words, token in apart]
        return tokens("".join(pieces) + doc[MOST_TAKEN_APART:].text)

    def _names(self, doc: Doc, stems: list[str], mended: dict[int, str]) -> list[Reading]:
        readings: list[Reading] = []
        at = 0
        while at < len(stems):
            found = self._longest(doc, stems, at)
            if found is None or self._is_plain(stems[at : found[0]]) or self._more(doc, stems, at, found[0]):
                at += 1
                continue
            end, names = found
            slip = self._lexicon.is_slip([s for s in stems[at:end] if s.isalnum()])
            end = _swallow(stems, end)
            end += (slip or at in mended) and self._ends_name(stems, at, end, names[0])
            readings.append(_reading(doc, at, end, names, mended, slip))
            at = end
        readings = self._cooked.meant(readings, stems)
        doc.spans[GROUP] = [Span(doc, r.start, r.end, label=r.kind, kb_id=r.id) for r in readings]
        return readings

    def _more(self, doc: Doc, stems: list[str], at: int, end: int) -> bool:
        """Whether a longer name stands behind an article: `a white zinfandel` is not `a white`."""
        found = (
            self._longest(doc, stems, at + 1)
            if stems[at] in small_words()["articles"] and end > at + 1
            else None
        )
        return bool(found and found[0] > end)

    def _is_plain(self, stems: list[str]) -> bool:
        """Whether a word is English and a slip, and was left as it is."""
        return len(stems) == 1 and stems[0] in self._plain and self._lexicon.is_slip(stems)

    def _longest(self, doc: Doc, stems: list[str], at: int) -> tuple[int, tuple[Name, ...]] | None:
        """Longest name here, hyphens between its words skipped: (end position, concepts)."""
        if stems[at] in BETWEEN:
            return None
        solid = (i for i in range(at, len(stems)) if stems[i] not in BETWEEN)
        places = list(islice(solid, MOST_NAME))
        found = self._lexicon.longest([stems[i] for i in places], 0)
        if found and at and of_a_sort(stems[at - 1], stems[places[found[0] - 1]], found[1][0].type):
            found = self._lexicon.longest([stems[i] for i in places[: found[0] - 1]], 0)
        if not found:
            return None
        length, names = self._turned.whole(stems[max(0, at - 2) : at], [stems[i] for i in places], found)
        return places[length - 1] + 1, names

    def _ends_name(self, stems: list[str], at: int, end: int, name: Name) -> bool:
        """Whether the word behind a misspelt name belongs to it (`worstershire sauce`, `fo soup`)."""
        words, next_ = key(name.label), stems[end] if end < len(stems) else ""
        if len(words) > 1 and next_ == words[-1] and next_ not in stems[at:end]:
            return True
        kind = self._known.heard.heads.get(next_)
        return kind is not None and self._lexicon.falls_under(name.id, kind)

    def _left_out(
        self,
        doc: Doc,
        readings: list[Reading],
        cues: list[Cue],
        mended: dict[int, str],
        elsewhere: frozenset[int],
    ) -> list[str]:
        """The words that did no work; a mended one among them may have been a name that is not known."""
        used = {i for r in readings for i in range(r.start, r.end)} | elsewhere
        used |= {i for cue in cues for i in cue.fixed if readings or i not in mended}
        asks = any(cue.name in MEANING for cue in cues)
        return self._unread.words(doc, used, mended, asks)


def _swallow(stems: list[str], end: int) -> int:
    """Where a name ends that swallowed the pieces behind it."""
    while end < len(stems) and stems[end] == NOTHING:
        end += 1
    return end


def _reading(
    doc: Doc, start: int, end: int, names: tuple[Name, ...], mended: dict[int, str], slip: bool
) -> Reading:
    name = _meant(doc, start, names)
    typed = doc[start:end].text
    corrected = " ".join(mended.get(i, doc[i].text) for i in range(start, end))
    touched = slip or any(i in mended for i in range(start, end))
    reading = Reading(typed, name.kind, name.label, name.id, name.type, start, end)
    others = tuple(n.id for n in names if n is not name)
    return replace(reading, corrected_from=corrected if touched else None, others=others)


def _meant(doc: Doc, start: int, names: tuple[Name, ...]) -> Name:
    """Of several things with one name, the likeliest: after `from` a place."""
    before = [token.norm_ for token in doc[max(0, start - 2) : start]]
    if before[-1:] == ["from"] or before == ["from", "the"]:
        return next((n for n in names if n.type == "Region"), names[0])
    return names[0]


def _notes(cleaned: Cleaned) -> tuple[str, ...]:
    notes = {"odd-characters": cleaned.odd_characters, "cut-off": cleaned.cut_off}
    return tuple(note for note, times in notes.items() if times)
