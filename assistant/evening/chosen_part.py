"""What the wines poured do for the food: why each is in, best and worst by food, what is left uncovered."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from assistant.answers.wording import listed
from assistant.evening.choose_make import usual_task
from assistant.evening.choose_task import Scores, Task
from assistant.evening.coverage import Covered, OneMore, coverage, one_more
from assistant.evening.facts import fact, wording
from assistant.evening.records import Evening, WineLine
from assistant.evening.saturation import reaches, saturates_at
from assistant.evening.selecting import Selection
from assistant.evening.tasting import Tasting, matched, scored
from assistant.evening.why_chosen import Why, whys
from assistant.pairing.choose import COMMONEST
from assistant.pairing.engine import Engine

NOTHING: dict[str, Any] = {
    "chosen_is_best": None, "why_chosen": [], "pairings": [], "coverage": None, "weakest": None, "gaps": [],
    "one_more": None,
}  # fmt: skip


def chosen(evening: Evening, tasting: Tasting | None, selection: Selection, engine: Engine) -> dict[str, Any]:
    """The fields `chosen` to `one_more` of the contract; `evening` holds the wines poured, in order."""
    poured = [line.label for line in evening.wines]
    if tasting is None or selection.task is None or not poured:
        return {"chosen": poured, **NOTHING}
    scores = tasting.tasted
    found = coverage(scores, poured)
    return {
        "chosen": poured,
        "chosen_is_best": selection.proven,
        "why_chosen": [
            _why_row(w, line) for w, line in zip(whys(scores, poured), evening.wines, strict=True)
        ],
        "pairings": _pairings(tasting.every, poured),
        "coverage": _coverage(scores, poured, engine),
        "weakest": _row(found.weakest),
        "gaps": list(found.gaps),
        "one_more": _one_more(evening, tasting, selection.task, engine),
    }


def _why_row(why: Why, line: WineLine) -> dict[str, str]:
    """Why a wine is in: what the host said of it, and what it does."""
    fields = {"foods": listed(why.foods), "food": why.own.food, "verdict": why.own.verdict}
    said = [name for name, holds in (("must", line.must), ("owned", line.owned > 0)) if holds]
    told = [wording()("why", name) for name in said]
    return {"wine": why.wine, "why": "; ".join([*told, wording()("why", why.kind, **fields)])}


def _pairings(scores: Scores, poured: Sequence[str]) -> list[dict[str, Any]]:
    """The best and the worst wine of each food, and what is found of all of them."""
    found, alone = coverage(scores, poured), [coverage(scores, [wine]).best for wine in poured]
    columns = zip(found.best, found.worst, zip(*alone, strict=True), strict=True)
    return [
        {"food": best.food, "best": _wine(best), "worst": _wine(worst), "verdicts": [_wine(c) for c in each]}
        for best, worst, each in columns
    ]


def _wine(covered: Covered) -> dict[str, str]:
    return {"wine": covered.wine, "verdict": covered.verdict}


def _row(covered: Covered) -> dict[str, str]:
    return {"food": covered.food, **_wine(covered)}


def _coverage(scores: Scores, poured: Sequence[str], engine: Engine) -> dict[str, Any]:
    """How many foods have a fair wine, and from which number on bottles are bought for variety."""
    c, served = engine.knowledge.constants, len(scores.foods) - len(coverage(scores, poured).gaps)
    at = saturates_at(reaches(scores, int(c["choice-most"])), c)
    at = at if at is not None and at <= len(poured) else None
    lines = [wording()("coverage", "served", served=served, foods=len(scores.foods))]
    if at is not None:
        lines.append(wording()("coverage", "saturated" if at < len(poured) else "enough", count=at))
    most = fact("amounts", "flight", "wines").high
    if len(poured) > most:
        lines.append(wording()("coverage", "many", count=len(poured), most=f"{most:g}"))
    return {"foods": len(scores.foods), "served": served, "saturates_at": at, "say": " ".join(lines)}


def _one_more(evening: Evening, tasting: Tasting, task: Task, engine: Engine) -> dict[str, Any] | None:
    """What one more bottle would buy: of the wines listed or, where all are poured, of those easy to buy."""
    c, poured = engine.knowledge.constants, [line.label for line in evening.wines]
    if len(poured) >= c["choice-most"]:
        return None
    listed_left = len(task.scores.of) > len(poured)
    task = task if listed_left else _with_shop(tasting, task, engine)
    more = one_more(task, poured, c)
    return _more_row(more, listed_left) if more else None


def _more_row(more: OneMore, from_list: bool) -> dict[str, Any]:
    say = wording()("one-more", more.kind, wine=more.wine, foods=listed(more.foods))
    told = {"wine": more.wine, "lifts": list(more.lifts), "closes": list(more.closes)}
    return {**told, "listed": from_list, "saturated": more.saturated, "say": say}


def _with_shop(tasting: Tasting, task: Task, engine: Engine) -> Task:
    """The task with the wines that every shop sells beside those listed, their prices unknown."""
    known, there = engine.knowledge, {*tasting.styles.values()}
    names = {label.casefold() for label in tasting.styles}
    shop = {
        wine.label: wine.id
        for wine in known.wines.values()
        if wine.type == "Wine" and wine.availability >= COMMONEST and wine.id not in there
        and wine.label.casefold() not in names
    }  # fmt: skip
    styles = {wine: tasting.styles[wine] for wine in task.wines} | shop
    matches = {food: matched(tasting.plates[food], styles, engine) for food in tasting.tasted.foods}
    scores = scored(matches, tasting.grams, tasting.tasted.foods, engine)
    return usual_task(tasting.table, scores, engine, task.count, styles=styles)
