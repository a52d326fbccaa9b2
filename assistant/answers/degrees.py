"""Whether a wine is poured too warm or too cold: the degrees named, held against its serving range."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.chilling import chill_lines
from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.service import common_styles, words_asked
from assistant.answers.wording import capital, span
from assistant.knowledge.concepts import Wine
from assistant.language.follow_lines import says
from assistant.language.frame import Frame
from assistant.language.quantities import counts, numbers

INTENTS = ("service", "trouble", "myth", "judge-pair", "foods-for-wine", "describe", "unclear")
SERVICE, CELSIUS, FAHRENHEIT = "service", "celsius", "fahrenheit"
ICE, STEAM, PER_DEGREE = 32.0, 40.0, 1.8  # no wine is poured at more than 40 degrees Celsius


def degrees_said(frame: Frame) -> float | None:
    """The degrees Celsius that a wine is said to have; None where nobody asks about that."""
    if frame.intent not in INTENTS or frame.dishes:
        return None
    found = {c.name: c.number for c in counts(frame.text.stems) if c.name in (CELSIUS, FAHRENHEIT)}
    bare = numbers(frame.text.stems)
    if not found and bare and says(frame, "degrees"):
        found = {CELSIUS: bare[0][2]}
    if FAHRENHEIT in found or found.get(CELSIUS, 0.0) > STEAM:
        return (next(iter(found.values())) - ICE) / PER_DEGREE
    return found.get(CELSIUS)


def held_against(context: Context, degrees: float) -> Answer | None:
    """Too warm, too cold or right, and how to get there; None where no wine with a known range is meant."""
    word = next(iter(words_asked(context)), None)
    wines = _styles(context, word) if word else []
    if word is None or not wines:
        return None
    low, high = min(w.serve.low for w in wines if w.serve), max(w.serve.high for w in wines if w.serve)
    found = "warm" if degrees > high else "cold" if degrees < low else "right"
    called = context.knowledge.label(word)
    say = context.wording("say", f"degrees-{found}", wine=called, degrees=span(low, high))
    colder = chill_lines(context, capital(called), wines, degrees) if found == "warm" else []
    context = replace(context, frame=replace(context.frame, intent=SERVICE))
    figure = {"value": degrees, "low": low, "high": high, "unit": "°C"}
    return replace(compose(context, say, [say, *colder]), figures={CELSIUS: figure}, dish=None)


def _styles(context: Context, word: str) -> Sequence[Wine]:
    """The wine named, or the common styles of a kind, as far as it is known how cold they are poured."""
    wine = context.knowledge.wines.get(word)
    return [w for w in ([wine] if wine else common_styles(context, word)) if w.serve]
