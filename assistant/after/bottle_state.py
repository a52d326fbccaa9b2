"""`which one do we open instead`, `the Pinot's been out all day`: a bottle that is bad, or warm."""

from __future__ import annotations

from typing import TYPE_CHECKING

from assistant.after.phrases import one_of, said
from assistant.after.telling import told
from assistant.answers.chilling import chilled, usual_room
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.service import words_asked
from assistant.answers.wording import span
from assistant.evening.temperatures import FRIDGE, ICE
from assistant.knowledge.concepts import Wine
from assistant.pairing.likeness import alike_wines

if TYPE_CHECKING:
    from assistant.session import Session


def open_instead(context: Context, session: Session) -> Answer:
    """Another bottle of the wine that was bad, else what is most like it here; asked where none was named."""
    known, table = context.knowledge, context.tonight.wines
    bad = [style for wine in session.spoken.ailed for style in known.styles_of(wine)]
    near = alike_wines(bad[0], [wine for wine in table if wine not in bad], context.engine) if bad else []
    if not near:
        return told(context, [said("bottle", "same"), said("bottle", "which")])
    names = {"bad": known.label(bad[0]), "near": known.label(near[0])}
    return told(context, [said("bottle", "same"), said("bottle", "near", **names)])


def stood_warm(context: Context, session: Session) -> Answer | None:
    """How warm a wine is poured, and what brings it there from the warmth of the room."""
    known, table = context.knowledge, context.tonight.wines
    styles = [style for word in words_asked(context) for style in known.styles_of(word)]
    here = [style for style in table if style in styles]
    wines = [known.wines[style] for style in (here or (styles if context.frame.wines else []))[:1]]
    if not wines or wines[0].serve is None:
        return None
    kind = "cold" if one_of(context.frame.text.stems, "chilly") else "warm"
    lines = _colder(wines[0]) if kind == "warm" else [said("bottle", "warmer")]
    served = span(wines[0].serve.low, wines[0].serve.high)
    return told(context, [said("bottle", kind, wine=wines[0].label, degrees=served), *lines])


def _colder(wine: Wine) -> list[str]:
    """The minutes in the fridge and in ice and water, from the warmth of a usual room."""
    room = usual_room()
    fridge, ice = chilled(wine, FRIDGE, room), chilled(wine, ICE, room)
    if not fridge or not ice:
        return []
    if not fridge.typical:
        return [said("bottle", "as-it-is")]
    told_ = {"fridge": fridge.typical, "ice": ice.typical, "room": f"{room:g}"}
    return [said("bottle", "chill", **told_), said("bottle", "sound")]
