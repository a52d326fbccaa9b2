"""How much and how many: bottles, pours, grams, ice, water, glasses and alcohol, by the planner's numbers."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from math import ceil, floor

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.food_amounts import Built, food_amounts, told
from assistant.answers.record import Answer
from assistant.evening import alcohol as measures
from assistant.evening.bottles import cliffs, needed, usable_ml
from assistant.evening.facts import HAIR, fact
from assistant.language.follow_lines import says
from assistant.language.quantities import Quantities, asked_for, quantities, quantity_words
from assistant.language.turning import FOODS
from assistant.table.headcount import shared


def quantity(context: Context) -> Answer:
    """What the question asks to be counted; what it does not say is taken as is usual, and told."""
    counted = _with_guests(quantities(context.frame.text), context)
    food = context.frame.dishes and not _drunk_alone(context)
    asked = asked_for(context.frame.text) or ("food" if food else "bottles")
    enough = says(context.frame, "enough-asked") and asked == "glasses"
    if counted.people and counted.bottles and (asked in ("pour", "per_bottle") or enough):
        asked = "bottles"
    if asked == "buy":
        asked = "food" if food and not context.frame.wines else "bottles"
    say, figures, lines = BUILDERS[asked](context, counted)
    answer = compose(context, say, [say, *lines])
    shown = {name: {"value": value, "unit": unit} for name, (value, unit) in figures.items()}
    return replace(answer, figures=shown, dish=None)


def _kinds(context: Context) -> int:
    """How many kinds of wine are named here (`how much fizz`), and not only kept to since before."""
    named = {reading.id for reading in context.frame.text.readings}
    limits = context.frame.preferences
    return len({limit.wanted for limit in limits if limit.wanted in named and not limit.banned})


def _drunk_alone(context: Context) -> bool:
    """Whether a wine is named and nothing to eat: what stands is not asked about then."""
    eaten = any(reading.kind in FOODS for reading in context.frame.text.readings)
    return not eaten and bool(_kinds(context))


def _with_guests(counted: Quantities, context: Context) -> Quantities:
    """The numbers with the guests as the table has them, after the question and all that was said before."""
    tonight = context.tonight
    if tonight.guests is None or shared(context.frame):
        return counted
    return replace(counted, people=tonight.guests, non_drinkers=tonight.non_drinkers)


def pour(counted: Quantities) -> float:
    """Millilitres of one pour, as said or as is usual at a tasting."""
    return counted.ml or fact("amounts", "bottle", "pour_ml").typical


WINE = "wine"


def _bottles(context: Context, counted: Quantities) -> Built:
    if counted.people is None:
        return _per_bottle(context, counted)
    if counted.bottles:
        return _enough(context, counted)
    drinkers = max(0, round(counted.people - counted.non_drinkers))
    named = len(context.frame.wines) or _kinds(context) or len(context.tonight.wines)
    wines = round(counted.wines or named or fact("amounts", "flight", "wines").typical)
    ml = round(pour(counted) * context.corrections.get(WINE, 1.0))
    each = needed(drinkers, ml, usable_ml(counted.bottle_ml))
    one = "bottle-one" if each == 1 else "bottles-one"
    kind = one if wines == 1 else "bottles" if counted.wines or named else "bottles-usual"
    say = told(context, kind, people=drinkers, ml=ml, each=each, wines=wines, all=each * wines)
    figures = {"bottles": (float(each * wines), "bottle"), "pours": (float(drinkers * wines), "pour")}
    lines = _cliff_lines(context, drinkers, each, usable_ml(counted.bottle_ml))
    return say, figures, [*_poured_line(context, ml, pour(counted)), *lines]


def _poured_line(context: Context, ml: float, planned: float) -> list[str]:
    """That the pour is corrected by what was left at earlier evenings, where it is."""
    return [] if ml == planned else [told(context, "corrected-pour", new=ml, old=planned)]


def _cliff_lines(context: Context, drinkers: int, each: int, ml: float) -> list[str]:
    """Up to which pour one bottle fewer of each does, and up to which this many do."""
    saves, holds = cliffs(drinkers, each, ml)
    lines = [told(context, "cliff", ml=saves, each=each - 1)] if saves else []
    return lines + ([told(context, "holds", ml=holds, each=each)] if holds else [])


def _enough(context: Context, counted: Quantities) -> Built:
    """The pour that so many bottles give everybody; where it is too little, how many would do."""
    drinkers = max(1.0, (counted.people or 1.0) - counted.non_drinkers)
    usable, each = usable_ml(counted.bottle_ml), _each(counted)
    ml = floor((counted.bottles or 0.0) * usable / drinkers + HAIR)
    pours = round(ml / each, 1)
    kind = "share" if shared(context.frame) else "enough" if pours >= 1 else "too-little"
    say = told(context, kind, people=drinkers, ml=ml, pours=pours, oz=ml / quantity_words().sizes["oz"])
    more = told(context, "would-do", ml=each, bottles=needed(round(drinkers), each, usable))
    return say, {"pours": (pours, "pour")}, [more] if kind == "too-little" else []


def _each(counted: Quantities) -> float:
    """Millilitres that everybody is to have: as said, a glass where one is spoken of, else a tasting pour."""
    glass = counted.glass and not counted.ml
    return fact("amounts", "glass", counted.glass or "").typical if glass else pour(counted)


def _per_bottle(context: Context, counted: Quantities) -> Built:
    pours = floor((counted.bottles or 1.0) * usable_ml(counted.bottle_ml) / pour(counted) + HAIR)
    return told(context, "pours", pours=pours, ml=pour(counted)), {"pours": (float(pours), "pour")}, []


def _pour(context: Context, counted: Quantities) -> Built:
    found = fact("amounts", "bottle", "pour_ml")
    say = told(context, "pour", low=found.low, high=found.high, ml=found.typical)
    return say, {"pours": (found.typical, "ml")}, []


def _ice(context: Context, counted: Quantities) -> Built:
    bottles = counted.bottles or 1.0
    kilos = ceil(bottles / fact("amounts", "ice", "bottles_per_kg").typical - HAIR)
    return told(context, "ice", kilos=kilos, bottles=bottles), {"ice": (float(kilos), "kg")}, []


def _water(context: Context, counted: Quantities) -> Built:
    people, each = counted.people or 1.0, fact("amounts", "water", "tasting").typical
    litres = round(people * each, 1)
    kind = "water" if counted.people else "water-each"
    return told(context, kind, litres=litres, people=people, each=each), {"water": (litres, "l")}, []


def _glasses(context: Context, counted: Quantities) -> Built:
    if counted.people is None:
        return _per_bottle(context, counted)
    each = fact("amounts", "glasses", "per_guest").typical
    every = counted.people * each
    say = told(context, "glasses", people=counted.people, each=each, all=every)
    clean = counted.people * (counted.wines or 0.0)
    lines = [told(context, "glasses-each", all=clean)] if clean else []
    return say, {"glasses": (every, "glass")}, lines


def _alcohol(context: Context, counted: Quantities) -> Built:
    """Grams and national measures of what is poured; never advice."""
    ml, percent = _poured(counted), counted.percent or _strength(context)
    found = {name: round(measure(ml, percent), 1) for name, (measure, _) in MEASURES.items()}
    say = told(context, "alcohol", ml=ml, percent=percent, **found)
    return say, {name: (value, MEASURES[name][1]) for name, value in found.items()}, []


def _poured(counted: Quantities) -> float:
    """Millilitres that are asked about: so many glasses, else bottles; one bottle where neither is said."""
    bottle = counted.bottle_ml or fact("amounts", "bottle", "typical_ml").typical
    by_glass = counted.glass and not counted.bottles
    each = counted.ml or (fact("amounts", "glass", counted.glass or "").typical if by_glass else None)
    return (each or bottle * (counted.bottles or 1.0)) * (counted.pours or 1.0)


def _energy(context: Context, counted: Quantities) -> Built:
    """Kilocalories of what is poured, from its alcohol and its sugar."""
    ml, percent = _poured(counted), counted.percent or _strength(context)
    wines = context.frame.wines
    amounts = context.knowledge.wines[context.knowledge.style(wines[0])].amounts if wines else {}
    sugar = amounts["residualSugar"].typical if wines else 0.0
    kcal = round(measures.kilocalories(ml, percent, sugar), -1)
    say = told(context, "energy", kcal=kcal, ml=ml)
    lines = [told(context, "energy-of" if wines else "energy-of-usual", percent=percent, sugar=sugar)]
    return say, {"kilocalories": (kcal, "kcal")}, lines


def _strength(context: Context) -> float:
    wines = context.frame.wines
    if not wines:
        return fact("alcohol", "usual", "strength").typical
    return context.knowledge.wines[context.knowledge.style(wines[0])].amounts["alcohol"].typical


MEASURES: Mapping[str, tuple[Callable[[float, float], float], str]] = {
    "grams_alcohol": (measures.grams, "g"),
    "us_drinks": (measures.us_drinks, "drink"),
    "uk_units": (measures.uk_units, "unit"),
    "au_drinks": (measures.au_drinks, "drink"),
}
BUILDERS: Mapping[str, Callable[[Context, Quantities], Built]] = {
    "bottles": _bottles,
    "per_bottle": _per_bottle,
    "pour": _pour,
    "ice": _ice,
    "water": _water,
    "glasses": _glasses,
    "alcohol": _alcohol,
    "energy": _energy,
    "food": food_amounts,
}
