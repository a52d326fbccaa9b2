"""`park that question`: which question waits, whose it is, and what it was about."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import dropwhile

from spacy.lang.en.stop_words import STOP_WORDS

from assistant.language.fold import fold, key
from assistant.language.guests import guest_words
from assistant.notebook.statement import Value
from assistant.taught.telling import Hearing, wine_ids
from assistant.taught.votes import OWNS, guests_before
from assistant.taught.words import taught_words

ABOUT = "about"
_MARKS = " ,;:.-–—\"'“”"


def parked_value(heard: Hearing) -> dict[str, Value | float]:
    """`question` as it is to be asked again and `guest` who asked it, as far as they are told."""
    question, guest = question_of(heard), guest_of(heard)
    found: dict[str, Value | float] = {"question": question} if question else {}
    return {**found, "guest": guest} if guest else found


def question_of(heard: Hearing) -> str:
    """The words behind those that park; where there are none, what was asked last."""
    said, text = heard.said, heard.context.frame.text
    colon = re.search(r"[:\"“]\s*(?P<asked>\S.*)$", said)
    if colon and len(colon["asked"].split()) > 1:
        return colon["asked"].strip(_MARKS)
    asks = [at for at, stem in enumerate(text.stems) if stem in taught_words().sets["asked"]]
    if asks:
        rest = list(text.words[asks[0] + 1 :])
        while rest and fold(rest[0]) in taught_words().sets["asked_about"]:
            rest.pop(0)
        while rest and (fold(rest[-1]) in taught_words().sets["parking"] or not rest[-1][0].isalnum()):
            rest.pop()
        return " ".join(rest)
    idle = taught_words().sets["parking"]
    own = [word for word in text.words if fold(word) not in idle and any(c.isalnum() for c in word)]
    return _of_topic(text.words, heard) if own else heard.question


def _of_topic(words: Sequence[str], heard: Hearing) -> str:
    """`park that question about metallic Malbec`: what was asked last, if that was of it; else the topic."""
    sets = taught_words().sets
    idle = sets["parking"] | sets["asked_about"]
    leads = (fold(word) in idle or word.lower().endswith(OWNS) or not word[0].isalnum() for word in words)
    topic = [word for word, _ in dropwhile(lambda row: row[1], zip(words, leads, strict=True))]
    about = ABOUT in map(fold, words[: len(words) - len(topic)])
    while topic and (fold(topic[-1]) in sets["parking"] or not topic[-1][0].isalnum()):
        topic.pop()
    if not topic:
        return heard.question
    told = set(key(" ".join(topic))) - STOP_WORDS
    if about and told and told <= set(key(heard.question)):
        return heard.question
    asks = fold(topic[0]) in guest_words().asks or not about
    return " ".join(topic if asks else ("what", ABOUT, *topic))


def guest_of(heard: Hearing) -> str:
    """Who asked: the name before the word of asking, or one that owns (`park mo's question`)."""
    text = heard.context.frame.text
    asks = [at for at, stem in enumerate(text.stems) if stem in taught_words().sets["asked"]]
    if asks:
        return next(iter(guests_before(heard, asks[0])), "")
    owns = [at + 1 for at, word in enumerate(text.words) if word.lower().endswith(OWNS)]
    return next(iter(guests_before(heard, owns[0])), "") if owns else ""


def about_of(heard: Hearing) -> tuple[str, ...]:
    """What the question is about: named in it, or else what stood."""
    frame = heard.context.frame
    dishes, wines = frame.dishes, wine_ids(heard.context)
    if not dishes and not wines and question_of(heard) == heard.question:
        dishes, wines = heard.dishes, heard.wines
    foods = (part.food for dish in dishes for part in dish.parts)
    return tuple(dict.fromkeys((*wines, *foods)))
