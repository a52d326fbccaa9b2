"""Answers to what a wine or food is like, each value with its range, basis and source."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from assistant.answers.asked_taste import asked_taste, body_word, oak_told
from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.items import source_text, wine_item
from assistant.answers.origin import apart_told, asked_of, origin, sort_told
from assistant.answers.record import Answer, Item
from assistant.answers.wording import capital, listed
from assistant.knowledge.concepts import Amount
from assistant.knowledge.diets import allergens, fit
from assistant.pairing.sweetness import sweetness_word

DIETS = ("diet/vegetarian", "diet/vegan")
MOST_AT_ONCE, TASTE_AND_SMELL = 3, 2
_LOUDEST = ("fat", "sugar", "acid", "salt", "umami", "heat", "bitter", "smoke", "aroma")


def describe(context: Context) -> Answer:
    """The wine named, else the food."""
    if 1 < len(context.frame.wines) <= MOST_AT_ONCE:
        return _wines(context)
    return _wine(context) if context.frame.wines else _food(context)


def _wines(context: Context) -> Answer:
    """Several wines named together, each with its taste and its smell."""
    alone = (replace(context, frame=replace(context.frame, wines=(w,))) for w in context.frame.wines)
    answers = [_wine(one) for one in alone]
    lines = [line for answer in answers for line in answer.text.splitlines()[:TASTE_AND_SMELL]]
    apart = apart_told(context)
    say, lines = apart or answers[0].say, [*([apart] if apart else []), *lines]
    return replace(answers[0], say=say, text=compose(context, say, lines).text)


def _wine(context: Context) -> Answer:
    wine = context.knowledge.wines[context.knowledge.style(context.frame.wines[0])]
    glass = context.engine.glasses[wine.id]
    scales = context.knowledge.scales
    say = context.wording(
        "say",
        "describe-wine",
        wine=wine.label,
        sweetness=sweetness_word(wine, glass.points["sweetness"], context.knowledge.constants),
        body=context.wording("body", body_word(glass.points["body"], context.knowledge.constants)),
        acid=scales["acidity"].word(glass.points["acid"]),
    )
    smells = [context.knowledge.label(s) for s in sorted(wine.smells)]
    lines = [say, context.wording("line", "smells", aromas=", ".join(smells))]
    facts, asked = origin(wine, context), asked_of(context)
    say = (facts.pop(asked, say) if asked else asked_taste(wine, context)) or say
    say = sort_told(wine, context) or say
    lines = list(dict.fromkeys(map(capital, [say, *oak_told(wine, context), *lines, *facts.values()])))
    item = wine_item(wine, glass, "neutral", (), context.knowledge, context.wording)
    return _with_values(context, lines[0], lines, wine.amounts, item)


def _food(context: Context) -> Answer:
    dish = context.frame.dishes[0]
    food = context.knowledge.food(dish.main.food)
    plate = context.engine.plate(dish)
    loud = sorted(_LOUDEST, key=lambda n: -plate.points[n])[:2]
    words = [context.wording("tastes", name) for name in loud]
    label = capital(context.one_dish(dish))
    say = context.wording("say", "describe-food", food=label, first=words[0], second=words[1])
    kinds = [context.knowledge.label(k) for k in food.kinds[:3]]
    lines = [say, context.wording("line", "kind-of", kind=", ".join(kinds))]
    lines += [food.definition] if food.definition else []
    lines.append(_care_line(context, food.id))
    item = Item(food.id, food.label, "food", tuple(kinds), 0.0, "neutral", ())
    return _with_values(context, say, lines, food.amounts, item)


def _care_line(context: Context, food: str) -> str:
    """Allergens and diets as far as is known; what is unknown counts as present."""
    known = context.knowledge
    has, may = allergens(food, known)
    fits = [f"{known.label(d)} {fit(food, d, known).value}" for d in DIETS]
    nothing = context.wording("care", "nothing")
    return context.wording(
        "care", "line", has=listed(has) or nothing, may=listed(may) or nothing, fits=", ".join(fits)
    )


def _with_values(
    context: Context, say: str, lines: list[str], amounts: Mapping[str, Amount], item: Item
) -> Answer:
    """The figures go into the record always, into the text only when asked for."""
    figures = {name: _figure(context, name, amount) for name, amount in amounts.items()}
    values = [context.wording("line", "more")]
    if context.frame.depth > 1:
        values = [_value_line(context, name, amount) for name, amount in amounts.items()]
    return replace(compose(context, say, [*lines, *values]), picks=(item,), figures=figures)


def _unit(context: Context, name: str) -> str:
    return str(context.knowledge.digest.get(name, {}).get("unitText", [""])[0])


def _name(context: Context, name: str) -> str:
    return str(context.knowledge.digest.get(name, {}).get("label", [name])[0])


def _value_line(context: Context, name: str, amount: Amount) -> str:
    source = source_text(amount.source, context.knowledge)
    row = f" ({amount.row})" if amount.row else ""
    return context.wording(
        "line",
        "value",
        name=capital(_name(context, name)),
        value=f"{amount.typical:.4g}",
        unit=_unit(context, name),
        low=f"{amount.low:.4g}",
        high=f"{amount.high:.4g}",
        basis=amount.basis,
        source=source + row,
    )


def _figure(context: Context, name: str, amount: Amount) -> dict[str, object]:
    return {
        "value": amount.typical,
        "low": amount.low,
        "high": amount.high,
        "unit": _unit(context, name),
        "basis": amount.basis,
        "source": source_text(amount.source, context.knowledge),
        "row": amount.row,
    }
