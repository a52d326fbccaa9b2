"""`next year the same but without the Zinfandel`: what is left out next time, and nothing planned now."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.after.next_event import names_of, next_event
from assistant.after.phrases import said
from assistant.after.telling import told
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.language.follow_words import follow_words
from assistant.pairing.dish import Dish
from assistant.table.tonight import Tonight
from assistant.taught.note import as_note
from assistant.taught.telling import Hearing

if TYPE_CHECKING:
    from assistant.session import Session


def next_same(context: Context, session: Session) -> Answer:
    """The same table without what is named, as the next evening; another where nothing is left out."""
    table, gone = context.tonight, _gone(context)
    wines = tuple(wine for wine in table.wines if not gone & names_of(wine, context))
    dishes = tuple(dish for dish in table.dishes if not gone & _names(dish, context))
    if (wines, dishes) == (table.wines, table.dishes):
        return next_event(context, session)
    session.proposed = Tonight(wines, dishes, table.guests, table.non_drinkers, None, table.needs)
    off = [context.knowledge.label(wine) for wine in table.wines if wine not in wines]
    off += [context.one_dish(dish) for dish in table.dishes if dish not in dishes]
    lines = [said("next", "same", things=listed(off)), said("next", "same-now")]
    kept = _kept(context, session)
    return replace(told(context, [*lines, *kept, said("next", "same-take")]), intent="note")


def _gone(context: Context) -> set[str]:
    """All that is named behind the word that leaves something out, with what else a name may mean."""
    text = context.frame.text
    starts = [at for at, word in enumerate(text.stems) if word in follow_words().drops]
    named = (r for r in text.readings if starts and r.start > starts[0])
    return {name for r in named for name in (r.id, *r.others)}


def _names(dish: Dish, context: Context) -> set[str]:
    return {dish.main.food, *context.knowledge.broader(dish.main.food)}


def _kept(context: Context, session: Session) -> list[str]:
    """The words as a note in the notebook, where there is one."""
    if not session.taught.keeps or session.taught.keep(as_note(Hearing(context, session.taught))):
        return []
    return [said("next", "same-kept")]
