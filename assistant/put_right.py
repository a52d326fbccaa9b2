"""`No the brisket`, `not the Cheddar, the blue one`: the question before, asked of what was meant."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Any

from assistant.answers.record import Answer
from assistant.knowledge.files import corpus_dir
from assistant.language.clean import MAX_CHARACTERS
from assistant.language.data import read_data
from assistant.language.dish_edits import PART_ROLES
from assistant.language.fold import fold
from assistant.language.frame import Reading
from assistant.language.phrases import Phrases
from assistant.language.refer import place
from assistant.language.retold import either
from assistant.language.sorting import EDIBLE
from assistant.table.pointed import pointed_at
from assistant.told_first import asks

if TYPE_CHECKING:
    from assistant.session import Session

SETS, TROUBLE, LIMIT, THE = "set-table", "trouble", "preference", "the"
PAIRS = ("wines-for-food", "foods-for-wine", "judge-pair", "compare", "why", "why-not", "what-if", "undo")
MOST_WORDS = 14
_NAME = r"(?P<{}>[^,;.?!]{{1,50}}?)"
_END = r"[ .?!]*$"


@dataclass(frozen=True, slots=True)
class RightWords:
    """The turns of corpus/language/put-right.toml: `meant` name what was meant, and some what was not."""

    meant: tuple[re.Pattern[str], ...]
    asked: re.Pattern[str]
    smells: re.Pattern[str]
    smelled: re.Pattern[str]
    small: frozenset[str]
    about: str
    swaps: str

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> RightWords:
        """The turns of the file. Raises KeyError for a key that is missing."""
        words = {name: either(listed) for name, listed in tables["words"].items()}
        lead = rf"^(?:{words['talks']}[,!.]?\s)*"
        refused = rf"{lead}(?:{words['refuses']}(?:\s?[,;.!:-]+\s*|\s))+(?:{words['talks']},?\s)*"
        said, the = rf"(?:{words['said']},?\s)", rf"(?:{words['the']}\s)"
        on, off = _NAME.format("on"), _NAME.format("off")
        maybe = rf"(?:{refused}|{lead})"
        behind = rf"(?:,?\s{words['says-behind']})"
        meant = (
            rf"{maybe}{words['not']}\s{the}?{off}(?:\s?[,;.-]+\s*|\s(?={words['but']}|{words['the']}\s))"
            rf"(?:{words['but']}\s)?{the}?{on}{behind}?{_END}",
            rf"{maybe}{said}?{the}?{on},?\s{words['not']}\s{the}?{off}{_END}",
            rf"{refused}{said}+{the}?{on}{behind}?{_END}",
            rf"{refused}{the}{on}{behind}?{_END}",
            rf"{lead}(?:{words['refuses']}\s?[,;.!:-]+\s*)+{the}?{on}{behind}?{_END}",
            rf"{maybe}{the}?{on},?\s{words['says-behind']}{_END}",
            rf"{lead}{words['asked']}\s{the}?{on}{behind}?{_END}",
        )
        instead = rf"(?:{words['not']}\s[^,;?]{{1,40}},\s(?:{words['but']}\s)?)"
        more = (
            rf"(?:{refused}{instead}?(?:{words['more-like']}\s)?|{lead}(?:{instead}|{words['more-like']}\s)+)"
        )
        return cls(
            tuple(re.compile(pattern, re.IGNORECASE) for pattern in meant),
            re.compile(rf"{refused}{words['asked']}[,:]?\s(?P<on>.+)$", re.IGNORECASE),
            re.compile(rf"{more}(?:an?\s)?(?P<on>[^,;?]{{1,60}}?){_END}", re.IGNORECASE),
            re.compile(rf"^(?P<lead>.*\b{words['smells']})\s.*$", re.IGNORECASE),
            frozenset((*tables["words"]["the"], *tables["words"]["one"])),
            tables["asks"]["about"],
            tables["asks"]["swaps"],
        )


@lru_cache(maxsize=1)
def right_words() -> RightWords:
    """The shipped turns. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "put-right.toml", RightWords.of)


def put_right(typed: str, session: Session) -> str:
    """The question before, asked of what was meant, where a line only says that; any other line as it is."""
    last, words = session.spoken.last, right_words()  # read now, so that a broken file is told at once
    said = typed.strip().replace("’", "'")[: MAX_CHARACTERS + 1]
    said = Phrases(pointed_at(said, session)).replaced(said)  # `no the other cheese`
    if last is None or len(said) > MAX_CHARACTERS or len(said.split()) > MOST_WORDS:
        return typed
    if last.intent == TROUBLE and (smelled := _smelled(said, last, session)):
        return smelled
    found = (pattern.match(said) for pattern in words.meant)
    meant = (_asked_of(one.groupdict(), last, session) for one in found if one)
    if question := next(filter(None, meant), ""):
        return question
    asked = words.asked.match(said)
    return asked["on"] if asked and asks(session, asked["on"]) else typed


def _smelled(said: str, last: Answer, session: Session) -> str:
    """`It smells of eggs` as `it smells like vinegar`, where that is trouble too; else an empty text."""
    before, now = right_words().smelled.match(last.question), right_words().smells.match(said)
    if not before or not now:
        return ""
    told = (f"{before['lead']} {like}{now['on']}" for like in ("like ", ""))
    return next((line for line in told if session.parser.parse(line).entries), "")


def _asked_of(named: Mapping[str, str], last: Answer, session: Session) -> str:
    """The question before about this one, if these are names and nothing else; else an empty text."""
    named = {part: _by_place(name, session) for part, name in named.items()}
    texts = {part: _named(name, session) for part, name in named.items()}
    if not all(texts.values()):
        return ""
    on = texts["on"]
    if len(on) > 1:  # `no, the Merlot with the Brie`
        return named["on"] if len({_is_eaten(reading) for reading in on}) > 1 else ""
    return _swapped(named["on"], texts, last, session) or _asked_again(named["on"], on[0], last, session)


def _by_place(name: str, session: Session) -> str:
    """`third one` as the third of the list just told; any other name as it is."""
    at = place(session.parser.parse(f"{THE} {name}").text)
    picks = session.talk.picks if session.talk else ()
    return session.knowledge.label(picks[at - 1]) if at and 0 < at <= len(picks) else name


def _named(name: str, session: Session) -> tuple[Reading, ...]:
    """What a few words name, where all of them do; else nothing."""
    text, small = session.parser.parse(name).text, right_words().small
    used = {at for reading in text.readings for at in range(reading.start, reading.end)}
    idle = (word for at, word in enumerate(text.words) if at not in used and word[:1].isalnum())
    return text.readings if all(fold(word) in small for word in idle) else ()


def _swapped(name: str, texts: Mapping[str, tuple[Reading, ...]], last: Answer, session: Session) -> str:
    """The swap on the table, where what was put there last was meant to be something else."""
    on, tonight = texts["on"][0], session.tonight
    there = {*tonight.wines, *(dish.main.food for dish in tonight.dishes)}
    off = texts.get("off") or _alike(on, last, session)
    if last.intent != SETS or on.id in there or not off or off[-1].id not in there:
        return ""
    return right_words().swaps.format(off=off[-1].text, on=name)


def _asked_again(name: str, on: Reading, last: Answer, session: Session) -> str:
    """The question before with this name in the place of the last one like it, or what about this one."""
    before = () if last.intent in PAIRS else _alike(on, last, session)
    at = last.question.lower().rfind(before[-1].text.lower()) if before else -1
    if at >= 0:
        return f"{last.question[:at]}{on.label}{last.question[at + len(before[-1].text) :]}"
    if on.kind in EDIBLE and session.knowledge.food(on.id).role in PART_ROLES:
        return ""  # `no, the vinaigrette` is another dressing of the same dish
    about = name if on.kind == LIMIT else f"the {name}"
    return right_words().about.format(name=about) if session.talk else ""


def _alike(on: Reading, last: Answer, session: Session) -> tuple[Reading, ...]:
    """What the question before named to eat, where this is eaten, or else to drink."""
    named = session.parser.parse(last.question).text.readings
    return tuple(reading for reading in named if _is_eaten(reading) == _is_eaten(on))


def _is_eaten(reading: Reading) -> bool:
    return reading.kind in EDIBLE
