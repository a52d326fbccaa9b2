"""Safety answers: fixed wording with its source, most cautious first; never scored, never a taste."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.eating import fits
from assistant.answers.items import source_text
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.knowledge.concepts import first
from assistant.knowledge.diets import allergens, holds, lineage, only_in
from assistant.knowledge.store import Knowledge
from assistant.language.topics import Topic
from assistant.pairing.dish import Dish

MOST_SPOKEN = 30  # words that are said in one breath
_STOP = ". "


def safety(context: Context) -> Answer:
    """The cautions that the topics, foods and drinks of the question call for."""
    records = cautions(context)
    sentences = [record["text"] for record in records]
    say, below = spoken(sentences[0]) if sentences else (context.wording("say", "safety"), "")
    held = _held_lines(context)
    say = " ".join([*held, say])
    lines = [say, below, *sentences[1:], *_allergen_lines(context), *fits(context)]
    sources = dict.fromkeys(s for r in records for s in r["source"].split("; "))
    lines += [context.wording("line", "source", source="; ".join(sources))] if sources else []
    return replace(compose(context, say, lines), dish=None, cautions=records)


def spoken(text: str) -> tuple[str, str]:
    """What of a caution is said aloud, its first sentence and those that `MOST_SPOKEN` words leave room for.

    The rest of it, empty where there is none, stands below: nothing is lost.
    """
    sentences = text.split(_STOP)
    count = 1
    while count < len(sentences) and len(_STOP.join(sentences[: count + 1]).split()) <= MOST_SPOKEN:
        count += 1
    first, rest = _STOP.join(sentences[:count]), _STOP.join(sentences[count:])
    return first.rstrip(".") + ".", rest


def cautions(context: Context) -> tuple[dict[str, str], ...]:
    """The cautions that the topics, foods and drinks of the question call for, most urgent first."""
    return tuple(caution(context, name) for name in _cautions(context))


def caution(context: Context, name: str) -> dict[str, str]:
    """A caution in its fixed wording: id, text, source."""
    text = str(first(context.knowledge.entry(name), "say"))
    return {"id": name, "text": text, "source": _sources(context, name)}


def _sources(context: Context, name: str) -> str:
    sources = context.knowledge.entry(name).get("source", [])
    return "; ".join(source_text(s, context.knowledge) for s in sources)


def _cautions(context: Context) -> list[str]:
    """The cautions of every topic, most urgent topic first; what the foods call for before the rest."""
    found: list[str] = []
    for name in context.frame.topics:
        topic = context.topics[name]
        found += _for_foods(context, topic)
        if topic.drink and (context.frame.wines or not context.frame.dishes):
            found.append(topic.drink)
        found += topic.base
    return list(dict.fromkeys(found))


def _for_foods(context: Context, topic: Topic) -> list[str]:
    """What the foods named call for, in the order of the topic; last, what holds for a food not known."""
    by_food = [for_food(food, topic, context.knowledge) for food in _foods(context)]
    wanted = {caution for cautions in by_food for caution in cautions}
    found = [c for c in (*topic.care.values(), *topic.kinds.values()) if c in wanted]
    return [*found, topic.unknown] if topic.unknown and not all(by_food) else found


def for_food(food: str, topic: Topic, knowledge: Knowledge) -> set[str]:
    """Cautions for what a food holds or may hold (unknown counts as unsafe), else for its kind."""
    has, may = holds(food, knowledge)
    care = {mark.removeprefix("care/") for mark in has | may}
    kinds = {kind.removeprefix("kind/") for kind in lineage(food, knowledge)}
    lighter = {
        name for name, of in topic.lighter.items() if only_in(food, {f"care/{name}"}, of, knowledge)
    } & care
    found = {c for name, c in topic.care.items() if name in care - lighter}
    instead = {kind.removeprefix("kind/") for name in lighter for kind in topic.lighter[name]} & kinds
    told = found | {topic.kinds[kind] for kind in instead if kind in topic.kinds}
    return told or {c for name, c in topic.kinds.items() if name in kinds}


def _foods(context: Context) -> list[str]:
    return list(dict.fromkeys(part.food for dish in context.frame.dishes for part in dish.parts))


def _held_lines(context: Context) -> list[str]:
    """Which dishes named hold, may hold or do not hold what is asked about, as far as is known."""
    told = next((topic.tells for name in context.frame.topics if (topic := context.topics[name]).tells), "")
    found: dict[str, list[str]] = {}
    for dish in context.frame.dishes if told else ():
        found.setdefault(_held(dish, f"care/{told}", context.knowledge), []).append(context.one_dish(dish))
    return [
        capital(context.wording("holding", f"{told}-{kind}", foods=listed(found[kind])))
        for kind in ("held", "may-hold", "not-held")
        if kind in found
    ]


def _held(dish: Dish, mark: str, knowledge: Knowledge) -> str:
    has, may = zip(*(holds(part.food, knowledge) for part in dish.parts), strict=True)
    if any(mark in marks for marks in has):
        return "held"
    return "may-hold" if any(mark in marks for marks in may) else "not-held"


def _allergen_lines(context: Context) -> list[str]:
    """What the foods named contain and may contain, as far as is known."""
    if not any(context.topics[name].allergens for name in context.frame.topics):
        return []
    return [_allergen_line(context, food) for food in _foods(context)]


def _allergen_line(context: Context, food: str) -> str:
    has, may = allergens(food, context.knowledge)
    return context.wording(
        "line",
        "allergens",
        food=context.knowledge.label(food),
        has=listed(has) or context.wording("care", "none"),
        may=listed(may) or context.wording("care", "label"),
    )
