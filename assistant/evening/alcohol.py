"""Alcohol in what is poured: counted and shown, never turned into advice."""

from __future__ import annotations

from assistant.evening.facts import fact
from assistant.evening.records import Evening, WineLine
from assistant.knowledge.store import Knowledge

PER_CENT, ML_IN_LITRE = 100.0, 1000.0


def grams(ml: float, percent: float) -> float:
    """Grams of ethanol in so many millilitres at this strength in % vol."""
    return ml * percent / PER_CENT * fact("alcohol", "ethanol", "density").typical


def us_drinks(ml: float, percent: float) -> float:
    """United States standard drinks."""
    return grams(ml, percent) / fact("alcohol", "measure", "us_drinks").typical


def au_drinks(ml: float, percent: float) -> float:
    """Australian standard drinks."""
    return grams(ml, percent) / fact("alcohol", "measure", "au_drinks").typical


def uk_units(ml: float, percent: float) -> float:
    """United Kingdom units."""
    return ml * percent / PER_CENT / fact("alcohol", "measure", "uk_units").typical


def kilocalories(ml: float, percent: float, sugar: float) -> float:
    """Energy in kcal of the alcohol and the sugar (g/l) in so many millilitres of wine."""
    of_alcohol = grams(ml, percent) * fact("alcohol", "energy", "alcohol").typical
    return of_alcohol + sugar * ml / ML_IN_LITRE * fact("alcohol", "energy", "sugar").typical


def alcohol(evening: Evening, knowledge: Knowledge) -> dict[str, float]:
    """The contract's `alcohol`: one pour of every wine for one drinker, without refills."""
    strengths = [strength(line, knowledge) for line in evening.wines] if evening.drinkers else []
    measures = {
        "grams_per_drinker": grams,
        "us_drinks": us_drinks,
        "uk_units": uk_units,
        "au_drinks": au_drinks,
    }
    return {
        name: round(sum(measure(evening.pour_ml, percent) for percent in strengths), 2)
        for name, measure in measures.items()
    }


def strength(line: WineLine, knowledge: Knowledge) -> float:
    """% vol as the file says, else as is typical of the style."""
    if line.alcohol_percent is not None:
        return line.alcohol_percent
    return knowledge.wines[line.wine].amounts["alcohol"].typical
