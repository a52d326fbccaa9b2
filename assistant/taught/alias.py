"""`when I say the house fizz I mean cava`: another name for something that the knowledge has."""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.language.fold import key
from assistant.language.frame import Frame
from assistant.language.sorting import EDIBLE
from assistant.taught.lesson import Lesson, told
from assistant.taught.telling import Hearing, words
from assistant.taught.words import taught_words

POURED = ("wine", "preference", "grape")
REGION = "Region"
SHORTEST, LONGEST_NAME = 2, 60
_CURLY = str.maketrans({"“": '"', "”": '"', "‘": "'", "’": "'"})
_WORD_FIRST = re.compile(r"\w")


def alias(heard: Hearing) -> Lesson | None:
    """The name and what it stands for, or None where the words give no such pair."""
    for name, thing in _pairs(heard, untailed(heard.said)):
        about = _meant(heard, thing) if _usable(name) else None
        if about and _reads_back(heard, about):
            label = heard.context.knowledge.label(about)
            say = words(heard.context, "alias", name=f"“{name}”", thing=label)
            line = words(heard.context, "alias-line", name=name, thing=label)
            return Lesson((told(heard, "alias", (about,), {"alias": name}),), say, (line,))
    return None


def untailed(said: str) -> str:
    """The words in plain quotation marks, without what only asks for keeping at their end."""
    text, before = said.translate(_CURLY), ""
    while text != before:
        before, text = text, text.strip().rstrip(".,;!?")
        tail = next((t for t in taught_words().tails if text.lower().endswith((f" {t}", f",{t}"))), "")
        text = text[: len(text) - len(tail)]
    return text


def _pairs(heard: Hearing, text: str) -> Iterator[tuple[str, str]]:
    """Every name with what it may stand for, the likeliest first."""
    for pattern in taught_words().named:
        found = pattern.search(text)
        if not found:
            continue
        if found.end("thing") + 1 == found.start("name"):  # `call the malbec the brute`: nothing between
            yield from _split(heard, f"{found['thing']} {found['name']}")
        else:
            yield bare(found["name"]), found["thing"]


def _split(heard: Hearing, rest: str) -> Iterator[tuple[str, str]]:
    """`the malbec the brute`: the name starts behind the first thing that is read."""
    text = heard.keeper.parser.parse(rest).text
    first = min((r.end for r in text.readings if r.kind in (*EDIBLE, *POURED)), default=0)
    ones = taught_words().sets["it"]
    while first < len(text.stems) and text.stems[first] in ones:
        first += 1
    yield bare(" ".join(text.words[first:])), " ".join(text.words[:first])


def bare(name: str) -> str:
    """A name without quotation marks and little words before it; one plain word keeps its article."""
    found = name.strip(" '\".,").split()
    articles = taught_words().sets["articles"]
    while len(found) > 2 and found[0].lower() in articles:
        found.pop(0)
    return " ".join(found)


def _usable(name: str) -> bool:
    """Whether it can be found again in a text and is more than a little word."""
    stems = set(key(name))
    sized = SHORTEST <= len(name) <= LONGEST_NAME and bool(_WORD_FIRST.match(name))
    return sized and bool(stems - taught_words().sets["no_name"])


def _meant(heard: Hearing, thing: str) -> str | None:
    """The one concept that a text names; `it` is the wine or food that stands."""
    stems = key(thing)
    if taught_words().sets["it"].issuperset(stems):
        foods = tuple(dish.main.food for dish in heard.dishes)
        return next(iter((*heard.wines, *foods)), None)
    frame = heard.keeper.parser.parse(thing)
    found = _concepts(heard, frame)
    return found[0] if len(found) == 1 and not any(r.type == REGION for r in frame.text.readings) else None


def _concepts(heard: Hearing, frame: Frame) -> list[str]:
    """The wines and foods named in a text, each once."""
    styles = heard.context.knowledge.styles_of
    named = [r.id for r in frame.text.readings if r.kind in EDIBLE or (r.kind in POURED and styles(r.id))]
    return list(dict.fromkeys(named))


def _reads_back(heard: Hearing, about: str) -> bool:
    """Whether the label, put in the place of the name, is read as what was meant."""
    label = heard.context.knowledge.label(about)
    return _concepts(heard, heard.keeper.parser.parse(label)) == [about]
