"""The second voice in an answer: what the host said of the pair, the food or the name, with the date."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.language.frame import Frame
from assistant.language.phrases import Phrases
from assistant.notebook import Statement
from assistant.notebook.carrying import HOST as OWN
from assistant.pairing.dish import table_of
from assistant.taught.describe import thing
from assistant.taught.keeper import Keeper
from assistant.taught.pairs import HOST, apart, eaten_as, first_of, halves, verdict_of
from assistant.taught.profile import how
from assistant.taught.telling import date, with_lines, words

ABOUT_PAIRS = ("judge-pair", "wines-for-food", "foods-for-wine", "one-bottle", "why", "why-not", "compare")
TASTED = (*ABOUT_PAIRS, "what-if", "choose-wines", "describe")
MOST_SAID = 3
Voice = Mapping[str, Any]


def with_voices(answer: Answer, frame: Frame, keeper: Keeper, context: Context) -> Answer:
    """The answer with what the host taught of the same things, and the answer remembered."""
    found = [
        *_named(frame, keeper, context),
        *_tasted(frame, keeper, context),
        *_paired(frame, keeper, context),
    ]
    voices = tuple(dict(voice) for voice in found[:MOST_SAID])
    return replace(with_lines(answer, [voice["says"] for voice in voices]), voices=voices)


def _voice(one: Statement, says: str) -> Voice:
    return {
        "who": one.author, "says": says, "about": list(one.about), "statement": one.id,
        "when": one.when.isoformat(), "verdict": one.value.get("verdict"),
    }  # fmt: skip


def said(context: Context, one: Statement, template: str, **fields: str) -> str:
    """A sentence of the host, or the same of another host, who is named."""
    if one.author == OWN:
        return words(context, template, **fields)
    return words(context, f"other-{template}", who=one.author, **fields)


def _newest(keeper: Keeper, kind: str) -> Iterator[Statement]:
    return (one for one in reversed(keeper.told()) if one.kind == kind)


def _named(frame: Frame, keeper: Keeper, context: Context) -> Iterator[Voice]:
    """What a name of the host's own stands for, where it was used."""
    for one in (*_newest(keeper, "alias"), *_newest(keeper, "new-food")):
        name, stands_for = _name_of(one)
        if Phrases({name: ""}).replaced(frame.text.typed) != frame.text.typed and stands_for:
            fields = {"name": name, "thing": thing(stands_for, context), "date": date(context, one.when)}
            yield _voice(one, said(context, one, "you-call", **fields))


def _name_of(one: Statement) -> tuple[str, str]:
    """The name that a statement gives, and the id of what it stands for."""
    if one.kind == "alias":
        return str(one.value["alias"]), one.about[0]
    return one.about[0], str(one.value.get("like", ""))


def _tasted(frame: Frame, keeper: Keeper, context: Context) -> Iterator[Voice]:
    """How a food on the plate was said to be, where it was tasted that way."""
    if frame.intent not in TASTED:
        return
    eaten = {part.food: context.knowledge.label(part.food) for dish in frame.dishes for part in dish.parts}
    eaten |= {dish.called: dish.called for dish in frame.dishes if dish.called}
    newest = {one.about[0]: one for one in keeper.told() if one.kind == "profile"}
    for name in (name for name in eaten if name in newest):
        fields = {"food": eaten[name], "how": how(keeper.overlay.amounts_of(name))}
        when = date(context, newest[name].when)
        yield _voice(newest[name], said(context, newest[name], "you-said-of", date=when, **fields))


def _paired(frame: Frame, keeper: Keeper, context: Context) -> Iterator[Voice]:
    """What hosts said of the pairs that the answer is about, the newest first."""
    if frame.intent not in ABOUT_PAIRS:
        return
    seen: set[tuple[str, ...]] = set()
    for one in reversed(keeper.overlay.pairings):
        other = _of(one, frame, keeper, context)
        if other and (one.author, *one.about) not in seen:
            seen.add((one.author, *one.about))
            yield {**_voice(one, _says(one, other, context)), **_against(one, frame, keeper, context)}


def _says(one: Statement, other: str, context: Context) -> str:
    fields = {"verdict": context.knowledge.label(str(one.value["verdict"])), "thing": other}
    return said(context, one, "you-say", date=date(context, one.when), **fields)


def _against(one: Statement, frame: Frame, keeper: Keeper, context: Context) -> Voice:
    """Whether it is told first, and how far it lies from the book's word on the same pair."""
    dish = next((d for d in frame.dishes if eaten_as(d, keeper) == halves(one, context.knowledge)[1]), None)
    wines = halves(one, context.knowledge)[0]
    told = {"first": first_of(one.about, keeper) == HOST, "said": one.said}
    if dish is None or len(wines) != 1 or wines[0] not in context.knowledge.wines:
        return told
    book = context.engine.judge(table_of([dish]), wines[0])
    steps = apart(verdict_of(one), book.verdict, context.knowledge)
    return {**told, "book": {"verdict": book.verdict, "score": round(book.score, 1)}, "apart": steps}


def _of(one: Statement, frame: Frame, keeper: Keeper, context: Context) -> str:
    """The other half of the pair in words, where the statement is about what the frame is about."""
    styles_of = context.knowledge.styles_of
    wines, foods = halves(one, context.knowledge)
    named = {style for wine in frame.wines for style in styles_of(wine)}
    poured = {style for wine in wines for style in styles_of(wine)}
    eaten = any(eaten_as(dish, keeper) == foods for dish in frame.dishes)
    if frame.dishes and (not eaten or (frame.wines and not named & poured)):
        return ""
    if not frame.dishes and not named & poured:
        return ""
    other = wines if frame.dishes else [name for name in one.about if name in foods]
    return listed([thing(name, context) for name in other])


def in_order(answer: Answer, context: Context) -> Answer:
    """The answer with the host's word before the book's, where the host is to be heard first."""
    first = next((voice for voice in answer.voices if voice.get("first")), None)
    if first is None:
        return answer
    rest = answer.text.removeprefix(answer.say).strip("\n").split("\n")
    book = words(context, "book-first", say=answer.say)
    lines = [first["says"], book, *(line for line in rest if line and line != first["says"])]
    return replace(answer, say=str(first["says"]), text="\n".join(lines))
