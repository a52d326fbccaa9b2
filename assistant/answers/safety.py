"""Safety answers: fixed wording with its source, most cautious first; never scored, never a taste."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.items import source_text
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.knowledge.concepts import first

DEPENDS = "-depends"
MOST = 4


def safety(context: Context) -> Answer:
    """The cautions that the topics, foods and drinks of the question call for."""
    cautions = _cautions(context)[:MOST]
    entries = [context.knowledge.entry(c) for c in cautions]
    sentences = [str(first(entry, "say")) for entry in entries]
    say = sentences[0].split(". ")[0].rstrip(".") + "." if sentences else context.wording("say", "safety")
    records = tuple(
        {"id": name, "text": sentence, "source": _sources(context, name)}
        for name, sentence in zip(cautions, sentences, strict=True)
    )
    lines = [*sentences, *_allergen_lines(context)]
    sources = dict.fromkeys(s for r in records for s in r["source"].split("; "))
    lines += [context.wording("line", "source", source="; ".join(sources))] if sources else []
    return replace(compose(context, say, lines), dish=None, cautions=records)


def _sources(context: Context, caution: str) -> str:
    sources = context.knowledge.entry(caution).get("source", [])
    return "; ".join(source_text(s, context.knowledge) for s in sources)


def _cautions(context: Context) -> list[str]:
    found: list[str] = []
    for name in context.frame.topics:
        topic = context.topics[name]
        for care, caution in topic.care.items():
            if _has(context, care):
                found.append(caution)
        if topic.unknown and not found and context.frame.dishes:
            found.append(topic.unknown)
        if topic.drink and (context.frame.wines or not context.frame.dishes):
            found.append(topic.drink)
        found.extend(topic.base)
    return list(dict.fromkeys(found))


def _foods(context: Context) -> list[str]:
    return [part.food for dish in context.frame.dishes for part in dish.parts]


def _has(context: Context, care: str) -> bool:
    """Whether a food named has this property, or may have it: unknown counts as unsafe."""
    wanted = {f"care/{care}", f"care/{care}{DEPENDS}"}
    return any(wanted & context.knowledge.food(food).care for food in _foods(context))


def _allergen_lines(context: Context) -> list[str]:
    """What the foods named contain and may contain, as far as is known."""
    if "allergy" not in " ".join(context.frame.topics):
        return []
    lines = []
    for food in _foods(context):
        known = context.knowledge.food(food)
        has = [context.knowledge.label(a) for a in sorted(known.allergens)]
        may = [context.knowledge.label(a) for a in sorted(known.may_contain)]
        lines.append(
            context.wording("line", "allergens", food=known.label, has=listed(has) or "none known",
                            may=listed(may) or "unknown until the label is read")
        )  # fmt: skip
    return lines
