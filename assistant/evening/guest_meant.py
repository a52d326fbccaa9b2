"""Whom `she` or `he` means of the guests spoken of: by what is known of them, else the last; doubts told."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import dropwhile
from typing import Any

from spacy.lang.en.stop_words import STOP_WORDS

from assistant.answers.wording import listed
from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data
from assistant.language.fold import fold, key, stem
from assistant.language.follow_lines import says
from assistant.language.follow_words import follow_words
from assistant.language.frame import Frame
from assistant.language.guest_named import POSSESSIVE, guests_named, has_name, words_of_guests
from assistant.language.guests import guest_words
from assistant.session import Session

KEPT = ("Wine", "Drink", "Food")


@dataclass(frozen=True, slots=True)
class Pronoun:
    """A row of the table `pronouns` of corpus/language/guests.toml: what is said, and by what it is known."""

    said: frozenset[str]
    known_by: frozenset[str]

    @classmethod
    def of(cls, row: Mapping[str, Any]) -> Pronoun:
        """The words as stems. Raises KeyError for a key that is missing."""
        said, known_by = (frozenset(stem(fold(word)) for word in row[name]) for name in ("said", "known_by"))
        return cls(said, known_by)


@lru_cache(maxsize=1)
def _pronouns() -> Mapping[str, Pronoun]:
    """The shipped rows. Raises KnowledgeError for a broken file."""
    return read_data(
        corpus_dir() / "language" / "guests.toml",
        lambda tables: {name: Pronoun.of(row) for name, row in tables["pronouns"].items()},
    )


@lru_cache(maxsize=1)
def _someone() -> Mapping[str, frozenset[str]]:
    """Words for people who are no guest told of, and what stands behind a name. Raises KnowledgeError."""
    return read_data(
        corpus_dir() / "language" / "guests.toml",
        lambda tables: {
            name: frozenset(stem(fold(word)) for word in words) for name, words in tables["someone"].items()
        },
    )


def spoken_of(frame: Frame, session: Session) -> tuple[str, ...]:
    """The guests whom `she`, `he` or `they` means; none where nobody of whom it can be said was spoken of."""
    if not (says(frame, "guest-she") and session.spoken.of):
        return ()
    said = _said(frame)
    if said is None:
        return session.spoken.of
    if _of_another(frame, said):
        return ()
    last = [guest for guest in session.spoken.of if _of(guest, session) in (said, None)]
    sure = [guest for guest in _guests(session) if _of(guest, session) == said]
    asked = bool(last) and set(last) <= set(session.spoken.asked)
    if last and (asked or not sure or set(last) & set(sure)):
        return tuple(guest for guest in last if guest in sure) or tuple(last)
    others = [guest for guest in _guests(session) if _of(guest, session) is None]
    return tuple((sure or others)[-1:])


def _of_another(frame: Frame, said: str) -> bool:
    """Whether somebody stands in front whom it is said of: `my guest says so, is she right`."""
    stems, row = frame.text.stems, _pronouns()[said]
    at = next(i for i, stem in enumerate(stems) if stem in row.said)
    named = {stem(fold(word)) for words in frame.text.left_out for word in words.split()}
    others = {*named, *row.known_by, *_someone()["words"]}
    return not others.isdisjoint(stems[:at]) or (at > 1 and any(one < at for one in _people(frame)))


def names_another(frame: Frame, session: Session) -> bool:
    """Whether somebody who is no guest with needs is named (`Pete doesn't like bubbles`)."""
    guests = words_of_guests(_guests(session))
    return any(fold(POSSESSIVE.sub("", frame.text.words[at])) not in guests for at in _people(frame))


def _people(frame: Frame) -> list[int]:
    """Where a name stands that opens a sentence, with what only a person does behind it, or behind `for`."""
    stems, words = frame.text.stems, frame.text.words
    taken = {at for reading in frame.text.readings for at in range(reading.start, reading.end)}
    free = (at for at in range(len(stems)) if at not in taken and stems[at] not in STOP_WORDS)
    return [at for at in free if _does(stems, at) or is_meant(words, at)]


def _does(stems: Sequence[str], at: int) -> bool:
    """Whether a word opens a part of a text and does what only a person does."""
    before = list(dropwhile(follow_words().lead.__contains__, reversed(stems[:at])))
    opened = not before or not before[0].isalnum()
    return opened and stems[at].isalpha() and not _someone()["verbs"].isdisjoint(stems[at + 1 : at + 2])


def is_meant(words: Sequence[str], at: int) -> bool:
    """Whether a word with a capital letter stands behind one that only somebody stands behind."""
    return words[at][:1].isupper() and at > 0 and fold(words[at - 1]) in guest_words().before_one


def doubt(frame: Frame, session: Session) -> tuple[str, str, str] | None:
    """What was said, whom it was taken for, and who else it may be; None where nobody else may be meant."""
    said, meant = _said(frame), spoken_of(frame, session)
    named = guests_named(frame.text.typed, session.tonight.needs)
    if said is None or named or not any(meant) or set(meant) != set(session.spoken.asked):
        return None
    known = {_of(guest, session) for guest in meant} == {said}
    others = [g for g in _guests(session) if g not in meant and _may_be(g, said, known, session)]
    return (said, listed(meant), listed(others, "or")) if others else None


def kept(frame: Frame, session: Session) -> None:
    """Remembers of whom `she` was said, where nobody else may have been meant."""
    said = _said(frame)
    if said and _of_another(frame, said):
        session.spoken.of = ()  # whoever was spoken of before is meant no longer
    if said and len(session.spoken.asked) == 1 and spoken_of(frame, session) and not doubt(frame, session):
        session.spoken.called[session.spoken.asked[0]] = said


def _may_be(guest: str, said: str, known: bool, session: Session) -> bool:
    """Whether it may be said of a guest; `known`: it is known of those whom it was taken for."""
    of = _of(guest, session)
    return of == said or (of is None and (not known or guest in session.spoken.of))


def _said(frame: Frame) -> str | None:
    return pronoun_in(frame.text.stems)


def pronoun_in(stems: Sequence[str]) -> str | None:
    """The one pronoun that stands in these words; None where none does, or both."""
    found = [name for name, row in _pronouns().items() if row.said.intersection(stems)]
    return found[0] if len(found) == 1 else None


def says_pronoun(frame: Frame) -> bool:
    """Whether `she` or `he` is said."""
    return _said(frame) is not None


def says_single(guest: str) -> bool:
    """Whether one guest without a name is meant: `one of the guests`, `a friend of mine`."""
    return not _someone()["single"].isdisjoint(key(guest)[:1])


def _guests(session: Session) -> list[str]:
    """The guests with needs who have a name, in the order told."""
    return list(dict.fromkeys(one.guest for one in session.tonight.needs if has_name(one.guest)))


def _of(guest: str, session: Session) -> str | None:
    """`she` of my sister, or of whoever is pregnant; None where nothing tells."""
    needs = (one.need for one in session.tonight.needs if one.guest == guest)
    told = {*key(guest), *(word for need in needs for word in key(need))}
    if guest in session.spoken.called:
        return session.spoken.called[guest]
    found = [name for name, row in _pronouns().items() if row.known_by & told]
    return found[0] if len(found) == 1 else None


def everybody(frame: Frame, session: Session) -> tuple[str, ...]:
    """All guests with needs, where it is asked who of them may not have what is named."""
    it = says(frame, "guest-which") or says(frame, "guest-it") or says(frame, "guest-all")
    named = any(reading.type in KEPT for reading in frame.text.readings) or it
    return (
        tuple(dict.fromkeys(n.guest for n in session.tonight.needs))
        if named and says(frame, "guest-who")
        else ()
    )
