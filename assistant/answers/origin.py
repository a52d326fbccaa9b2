"""Where a wine comes from, what it is made of and how strong it is: what guests ask of a bottle first."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.answers.context import Context
from assistant.answers.wording import capital, listed
from assistant.knowledge.concepts import Wine
from assistant.language.dish_edits import POURED
from assistant.language.follow_lines import says

WINE, TWO = "Wine", 2
ASKED = {"of-home": "home", "of-grapes": "grapes", "of-strength": "strength"}
"""Turns of phrase of follow-ups.toml, and the fact they ask for."""


def origin(wine: Wine, context: Context) -> dict[str, str]:
    """A sentence for each fact that is known, by name."""
    known = context.knowledge
    homes = _nearest(wine, context) if wine.type == WINE else ()
    places = [known.label(home) for home in sorted(homes)]
    grapes = [known.label(grape) for grape in wine.grapes]
    strength = wine.amounts["alcohol"]
    figures = {"typical": f"{strength.typical:g}", "low": f"{strength.low:g}", "high": f"{strength.high:g}"}
    facts: Mapping[str, Mapping[str, str]] = {
        "home": {"places": listed(places)} if places else {},
        "grapes": {"grapes": listed(grapes)} if grapes else {},
        "strength": figures if strength.typical else {},
    }
    return {
        name: context.wording("origin", name, wine=wine.label, **fields)
        for name, fields in facts.items()
        if fields
    }


def asked_of(context: Context) -> str | None:
    """The fact that is asked for, or None."""
    named = {r.id for r in context.frame.text.readings if r.kind in POURED}
    asked = {**ASKED, "must-be": "grapes"} if len(named) > 1 else ASKED  # `Rioja has to be Tempranillo`
    return next((name for line, name in asked.items() if says(context.frame, line)), None)


def _nearest(wine: Wine, context: Context) -> frozenset[str]:
    """The homes of a wine without the countries around them; the countries where nothing nearer is known."""
    countries = context.knowledge.countries(wine.homes)
    return (wine.homes - countries) or wine.homes


def sort_told(wine: Wine, context: Context) -> str | None:
    """Whether the name of a wine is that of a grape or of a place; None where that is not asked."""
    if not (says(context.frame, "is-grape") or says(context.frame, "is-grape-named")):
        return None
    label = context.knowledge.label
    grapes, homes = [label(grape) for grape in wine.grapes], {label(home) for home in wine.homes}
    if (named := [grape for grape in grapes if grape in wine.label])[:1]:
        return context.wording("origin", "is-grape", grape=named[0])
    name = "is-place" if wine.label in homes else "is-style"
    return context.wording("origin", name, wine=wine.label, grapes=listed(grapes)) if grapes else None


def apart_told(context: Context) -> str | None:
    """Where each of two wines comes from, the one not being the other; None where that is not asked."""
    names, known = context.frame.wines, context.knowledge
    if len(names) != TWO or not says(context.frame, "isnt-other"):
        return None
    first, second = (known.wines[known.style(name)] for name in names)
    homes = [listed(sorted(map(known.label, _nearest(wine, context)))) for wine in (first, second)]
    told = {"wine": first.label, "places": homes[0], "other": second.label, "others": homes[1]}
    return capital(context.wording("origin", "another", **told)) if all(homes) else None
