"""`gluten-free penne for Ben, same sauce`: what is made for a need is that guest's, if its label says so."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.safety import caution
from assistant.answers.wording import listed
from assistant.evening.needs import understood
from assistant.knowledge.diets import Fit, fit
from assistant.language.eating import diets_in
from assistant.language.sorting import EDIBLE
from assistant.session import Session

SAFETY, WITHOUT = "safety", "diet/no-"


def free_from(guests: Sequence[str], context: Context, session: Session) -> Answer | None:
    """That such a food is for the guests if its label says so; None where none is named for them."""
    needs = [n for one in session.tonight.needs if one.guest in guests for n in understood(one.need, session)]
    for diet, foods in _made(context).items():
        left_out = set(context.knowledge.entry(diet).get("leavesOut", ()))
        if needs and all(need.marks and need.marks <= left_out for need in needs):
            return _told(guests, diet, foods, context, session)
    return None  # another need is not settled by this one's label


def _made(context: Context) -> dict[str, list[str]]:
    """The foods behind words for a diet that they would not fit as they are usually made, by diet."""
    text, found = context.frame.text, dict[str, list[str]]()
    foods = {r.start: r for r in text.readings if r.kind in EDIBLE and r.id.startswith("food/")}
    for diet, places in diets_in(text.stems).items():
        behind = (foods[at] for at in sorted({*places, *(at + 1 for at in places)}) if at in foods)
        made = [r.label for r in behind if fit(r.id, diet, context.knowledge) is Fit.NO]
        found |= {diet: list(dict.fromkeys(made))} if made else {}
    return found


def _told(
    guests: Sequence[str], diet: str, foods: Sequence[str], context: Context, session: Session
) -> Answer:
    said = {"guests": listed(list(guests)), "things": listed(list(foods))}
    say = context.wording("plan", "guest-free", diet=_on_label(diet, context), **said)
    own = (name for name in context.frame.topics if not context.topics[name].otherwise)
    topics = dict.fromkeys((*own, *_topics(guests, session)))
    base = dict.fromkeys(c for topic in topics for c in session.parser.topics.by_id[topic].base)
    told = tuple(caution(context, name) for name in base)
    lines = [say, context.wording("plan", "guest-free-with"), *(one["text"] for one in told)]
    answer = compose(context, say, lines)
    return replace(answer, cautions=told, dish=None, intent=SAFETY)


def _on_label(diet: str, context: Context) -> str:
    """How a label says it: `gluten-free`, `vegan`."""
    what = diet.removeprefix(WITHOUT)
    free = what != diet
    return context.wording("plan", "free-from", what=what) if free else context.knowledge.label(diet)


def _topics(guests: Sequence[str], session: Session) -> list[str]:
    needs = (n for one in session.tonight.needs if one.guest in guests for n in understood(one.need, session))
    return [topic for need in needs for topic in need.topics]
