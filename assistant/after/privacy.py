"""What must not stand in a text to a guest: anybody's health, diet or drinking, and other guests' names."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import TYPE_CHECKING

from assistant.after.names import known_guests, plain
from assistant.answers.record import Answer
from assistant.evening.needs import understood
from assistant.language.fold import fold

if TYPE_CHECKING:
    from assistant.session import Session

DRINK, DRINK_KIND = "drink/", "kind/drink"


def private(question: str, answer: Answer, session: Session) -> bool:
    """Whether a question or its answer touches health, diet or a drink without alcohol."""
    frame = session.parser.parse(question)
    named = [*(r.id for r in frame.text.readings), *(p.wanted or "" for p in frame.preferences)]
    drinks = any(_drink(one, session) for one in (*named, *(item.id for item in answer.picks)))
    touched = answer.private or bool(frame.diets or frame.barred) or drinks
    return touched or any(need.id != question for need in understood(question, session))


def tells_need(said: str, session: Session) -> bool:
    """Whether a host's own words touch health, a diet or what somebody is to be spared."""
    frame = session.parser.parse(said)
    touched = frame.topics or frame.diets or frame.barred
    return bool(touched) or any(need.id != said for need in understood(said, session))


def _drink(name: str, session: Session) -> bool:
    """Whether it is a drink without alcohol, or a kind of them."""
    return name.startswith(DRINK) or (bool(name) and DRINK_KIND in (name, *session.knowledge.broader(name)))


def sendable(sentences: Iterable[str], guest: str, session: Session) -> list[str]:
    """The sentences that name nobody else and repeat nothing of what any guest asked to be spared."""
    others = [plain(name) for name in known_guests(session) if plain(name) != plain(guest)]
    needs = [fold(need.need) for need in session.tonight.needs]
    return [s for s in sentences if not any(_stands(word, s) for word in (*others, *needs))]


def _stands(words: str, sentence: str) -> bool:
    return re.search(rf"(?<!\w){re.escape(words)}(?!\w)", fold(sentence)) is not None
