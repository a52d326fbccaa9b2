"""Which bottles for all of this: a few that cover it together, in pouring order."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.eating import fits
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.evening.choose_make import Chosen, best_choice, scores_of, shortlist, usual_task
from assistant.evening.choose_task import Quota, Scores
from assistant.evening.coverage import Coverage, coverage, one_more
from assistant.evening.main_bites import wanting_wine
from assistant.evening.why_chosen import whys
from assistant.language.counting import Count, bottles
from assistant.pairing.choose import COMMONEST
from assistant.pairing.dish import table_of
from assistant.pairing.flight import pour_order

IN_A_SHOP = 2.0
ROOM = 2  # so many times the bottles wanted must stand to choose from


def choose_wines(context: Context) -> Answer:
    """As many bottles as asked for, that cover the dishes best together, in pouring order."""
    if not context.frame.dishes:
        return _which(context)
    count = _count(context)
    chosen = chosen_for(context, count)
    if chosen is None:
        none = context.wording("line", "none-left")
        return compose(context, none, [none])
    ordered = _in_order(context, chosen)
    found = coverage(chosen.task.scores, ordered)
    lines = [*_step_lines(context, chosen.task.scores, ordered), *_weak_lines(context, found)]
    lines += [*_more_lines(context, chosen), *_count_lines(context, chosen, count), *fits(context)]
    say = _spoken(context, ordered)
    matches = context.engine.judge_each(context.table(), ordered)
    return compose(context, say, [say, *lines], picks=matches)


def _count(context: Context) -> Count:
    """How many are left of a choice; else what is asked for now, or was asked for before."""
    if left := context.frame.numbers.get("left"):
        return Count(int(left))
    said, before = bottles(context.frame.text), context.frame.numbers.get("bottles")
    return said if said.total or not before else replace(said, total=int(before))


def chosen_for(context: Context, count: Count) -> Chosen | None:
    """The best choice among the wines named, or else among those that are easy to buy.

    What is eaten beside the main bites needs no wine of its own.
    """
    c = context.knowledge.constants
    wanted = min(count.total or int(c["choice-count"]), int(c["choice-most"]))
    wines = _of_custom(at_hand(context, wanted), context, wanted)
    if not wines:
        return None
    wanting = wanting_wine([[dish] for dish in context.frame.dishes], context.engine)
    tasted = [context.table()[i] for i in wanting]
    table = table_of([bite.dish for bite in tasted], [bite.share for bite in tasted])
    names = [context.one_dish(bite.dish) for bite in table]
    scores = scores_of(table, names, wines, context.engine)
    scores = shortlist(scores, int(c["choice-candidates"]))
    quotas = _quotas(context, count, scores.of, wanted)
    return best_choice(usual_task(table, scores, context.engine, wanted, quotas=quotas))


def _of_custom(wines: list[str], context: Context, wanted: int) -> list[str]:
    """Of these wines those that custom pours, where only a kind of food is named (`a cheese board`).

    All of them where a food has a name, or where custom leaves too few to choose from.
    """
    kinds = [dish.main.food for dish in context.frame.dishes]
    if not all(kind.startswith("kind/") for kind in kinds) or len(context.frame.wines) > 1:
        return wines
    poured = [wine for wine in wines if context.knowledge.pours(wine, kinds)]
    return poured if len(poured) > wanted else wines


def at_hand(context: Context, wanted: int) -> list[str]:
    """The wines to choose from: those named, else the easiest to buy within the limits."""
    known, allowed = context.knowledge, context.candidates()
    named = dict.fromkeys(style for wine in context.frame.wines for style in known.styles_of(wine))
    if len(named) > 1:
        allowed = [wine for wine in allowed if wine in named]
    allowed = [wine for wine in allowed if wine not in context.frame.named_before]
    if len(named) <= 1 and set(allowed) <= set(context.in_list()):
        return allowed
    for least in (COMMONEST, IN_A_SHOP):
        easy = [wine for wine in allowed if known.wines[wine].availability >= least]
        if len(named) <= 1 and len(easy) >= ROOM * wanted:
            return easy
    return allowed


def _quotas(context: Context, count: Count, wines: Collection[str], wanted: int) -> list[Quota]:
    """`two reds and a white` as limits: at least so many of each, where there are so many."""
    glasses = context.engine.glasses
    quotas = []
    for kind, number in count.kinds:
        members = frozenset(wine for wine in wines if kind in glasses[wine].kinds)
        quotas.append(Quota(kind, members, min(number, len(members), wanted), wanted))
    return quotas


def _in_order(context: Context, chosen: Chosen) -> list[str]:
    glasses = [context.engine.glasses[wine] for wine in chosen.wines]
    return [glass.wine for glass in pour_order(glasses, context.knowledge.constants)]


def _which(context: Context) -> Answer:
    which = context.wording("line", "which-food")
    return replace(compose(context, which, [which]), clarify=which, understood=False)


def _spoken(context: Context, ordered: Sequence[str]) -> str:
    labels = [context.knowledge.label(wine) for wine in ordered]
    fields = {"wines": listed(labels), "count": len(labels), "first": labels[0], "last": labels[-1]}
    return context.wording.spoken("choose", "choose-many", "choose-short", **fields)


def _step_lines(context: Context, scores: Scores, ordered: Sequence[str]) -> list[str]:
    """Each wine with the foods it is there for, or else the food it does best with."""
    lines = []
    for number, why in enumerate(whys(scores, ordered), 1):
        fields = {"number": number, "wine": context.knowledge.label(why.wine), "foods": listed(why.foods)}
        told = {"food": why.own.food, "verdict": why.own.verdict, **fields}
        lines.append(context.wording("line", f"choose-step-{why.kind}", **told))
    return lines


def _weak_lines(context: Context, found: Coverage) -> list[str]:
    """What nobody serves; where everything is served, what is served worst."""
    if found.gaps:
        return [context.wording("line", "choose-gaps", foods=listed(found.gaps, "or"))]
    if len(found.best) < 2:
        return []
    weak = found.weakest
    fields = {"food": weak.food, "wine": context.knowledge.label(weak.wine), "verdict": weak.verdict}
    return [context.wording("line", "choose-weakest", **fields)]


def _more_lines(context: Context, chosen: Chosen) -> list[str]:
    c = context.knowledge.constants
    more = one_more(chosen.task, chosen.wines, c) if len(chosen.wines) < c["choice-most"] else None
    if more is None:
        return []
    fields = {"wine": context.knowledge.label(more.wine), "foods": listed(more.foods)}
    return [context.wording("line", f"choose-more-{more.kind}", **fields)]


def _count_lines(context: Context, chosen: Chosen, count: Count) -> list[str]:
    """Where fewer bottles came out than were asked for: why."""
    most = int(context.knowledge.constants["choice-most"])
    got = len(chosen.wines)
    if got < chosen.wanted or (count.total or 0) > got < most:
        return [context.wording("line", "choose-fewer", count=got)]
    return [context.wording("line", "choose-most", count=most)] if (count.total or 0) > most else []
