"""`a tour of Spain in five glasses`: a place that several wines, or an evening, are to be about."""

from __future__ import annotations

from dataclasses import replace

from assistant.knowledge.store import Knowledge
from assistant.language.frame import Frame, Preference, Reading, Text
from assistant.language.small_words import small_words
from assistant.language.turning import negated

CHOOSES, PLANS = "choose-wines", "plan"


def of_a_place(frame: Frame, knowledge: Knowledge) -> Frame:
    """The frame with the wines kept to the one place that is named and was no kitchen and no limit yet."""
    places = [r for r in frame.text.readings if r.kind == "region" and r.text in frame.text.left_out]
    if len(places) != 1 or not _is_theme(places[0], frame, knowledge):
        return frame
    place = places[0]
    limit = Preference(f"from {place.label}", "home", wanted=place.id)
    text = replace(
        frame.text,
        left_out=tuple(word for word in frame.text.left_out if word != place.text),
        readings=tuple(replace(r, kind="preference") if r is place else r for r in frame.text.readings),
    )
    return replace(frame, text=text, preferences=(*frame.preferences, limit))


def _is_theme(place: Reading, frame: Frame, knowledge: Knowledge) -> bool:
    """Whether wines are to come from there: a plan is about a country, and cooks its food."""
    by_noun = place.text.casefold() == place.label.casefold()
    asked = frame.intent == CHOOSES or (frame.intent == PLANS and by_noun)
    grows = any(place.id in wine.homes for wine in knowledge.wines.values())
    limited = frame.wines or any(limit.property == "home" for limit in frame.preferences)
    return asked and grows and not (limited or _eaten(frame.text) or _turned(frame.text, place.start))


def _turned(text: Text, at: int) -> bool:
    """Whether the place is ruled out, be it in part (`that aren't all French`)."""
    before = text.stems[max(0, at - 2) : at]
    return negated(text, at) or bool(small_words()["turns-word"].intersection(before))


def _eaten(text: Text) -> bool:
    """Whether the place may be that of a kitchen (`the menu's Lebanese`)."""
    return bool(small_words()["of-a-kitchen"].intersection(text.stems))
