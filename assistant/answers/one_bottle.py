"""One bottle for everything on the table: the wine that does best over all of it, and where it is weakest."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wines import wines_for_food
from assistant.answers.wording import capital
from assistant.pairing.dish import table_of


def one_bottle(context: Context) -> Answer:
    """The first choice over the whole table, with its verdict on each dish, the weakest last."""
    answer = wines_for_food(context)
    if len(context.frame.dishes) < 2 or not answer.picks:
        return answer
    wine = answer.picks[0].id
    tables = [table_of([dish]) for dish in context.frame.dishes]
    judged = [match.verdict for (match,) in context.engine.rank_each(tables, [wine])]
    verdicts = list(zip(context.frame.dishes, judged, strict=True))
    ranks = [band.verdict for band in context.knowledge.bands]
    ordered = sorted(verdicts, key=lambda pair: ranks.index(pair[1]))
    each = ", ".join(f"{context.one_dish(dish)} {verdict}" for dish, verdict in ordered)
    line = capital(context.wording("line", "for-each", wine=answer.picks[0].label, each=each))
    head, _, rest = answer.text.partition("\n")
    return replace(answer, text=f"{head}\n{line}\n{rest}")
