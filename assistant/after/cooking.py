"""`what do I cook with leftover riesling`, `can I freeze the rest`: what wine past its best is good for."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from assistant.after.opened import wines_meant
from assistant.after.phrases import FOLDER, said
from assistant.after.telling import told
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed, span
from assistant.evening.facts import Row, fact
from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data

if TYPE_CHECKING:
    from assistant.session import Session

WINE = "kind/wine"


@lru_cache(maxsize=1)
def uses() -> tuple[Row, ...]:
    """The rows of uses.toml in order. Raises KnowledgeError for a broken file."""
    file = corpus_dir() / "planning" / FOLDER / "uses.toml"
    return tuple(read_data(file, lambda tables: list(tables["use"])))


def cooked(context: Context, session: Session) -> Answer:
    """What to cook with it, the likeliest first, with how much and what not to use."""
    wine = next(iter(wines_meant(context)), None)
    row = use_of(wine, context)
    name = context.knowledge.label(wine) if wine else said("cook", "wine")
    first, *more = row["dishes"]
    lines = [said("cook", "say", wine=name, first=first)]
    lines += [said("cook", "more", uses=listed(more, "or")), said("cook", "amount", how=row["how"])]
    return told(context, [*lines, *_kept(), said("cook", "not"), said("cook", "alcohol")])


def frozen(context: Context, session: Session) -> Answer:
    """That wine may be frozen for the pan, and never in its bottle."""
    months = fact("after", "open", "freeze_months")
    say = said("cook", "freeze", months=span(months.low, months.high))
    return told(context, [say, said("cook", "freeze-bottle"), said("cook", "not")])


def use_of(wine: str | None, context: Context) -> Row:
    """The first row whose kind the wine is; the last one takes any."""
    kinds = {WINE} if wine is None else set(context.engine.glasses[wine].kinds)
    found = (row for row in uses() if kinds & {f"kind/{kind}" for kind in row["kinds"]})
    return next(found, uses()[-1])


def _kept() -> list[str]:
    days, months = fact("after", "open", "cook_days"), fact("after", "open", "freeze_months")
    return [said("cook", "keeps", days=span(days.low, days.high), months=span(months.low, months.high))]
