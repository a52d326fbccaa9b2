"""Sweetness terms of Regulation (EU) 2019/33, Annex III, from sugar and acidity."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.knowledge.concepts import Wine

SPARKLING_BAR = 3.0
_COLOURS = {"colour/rose": "rosé"}


def still_term(sugar: float, acidity: float) -> str:
    """The term of a still wine: dry, medium dry, medium or sweet (Part B).

    Sugar as fructose and glucose, acidity as tartaric acid, both g/l. Dry reaches 9 g/l where
    acidity is at most 2 g/l below sugar, medium dry 18 where at most 10 g/l below.
    """
    short = round(sugar - acidity, 6)  # decimal figures, compared as such
    if sugar <= 4 or (sugar <= 9 and short <= 2):
        return "dry"
    if sugar <= 12 or (sugar <= 18 and short <= 10):
        return "medium dry"
    return "medium" if sugar < 45 else "sweet"


def sweetness_word(wine: Wine, perceived: float, c: Mapping[str, float]) -> str:
    """dry, off-dry, medium-sweet or sweet, as a guest tastes it.

    Dry as the law has it (for a sparkling wine up to extra dry); above that by `perceived`, the
    sweetness in points after acidity: the law's "medium" spans wines that taste just off dry.
    """
    sugar, acidity = wine.amounts["residualSugar"].typical, wine.amounts["acidity"].typical
    sparkling = wine.amounts["pressure"].typical >= SPARKLING_BAR
    if sugar <= 17 if sparkling else still_term(sugar, acidity) == "dry":
        return "dry"
    if perceived < c["medium-sweet-from"]:
        return "off-dry"
    return "medium-sweet" if perceived < c["sweet-from"] else "sweet"


def colour_word(colour: str) -> str:
    """white, rosé, red or orange."""
    return _COLOURS.get(colour, colour.removeprefix("colour/"))
