"""Answers to: what wine goes with this, what food goes with that, do these two go together."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.context import (
    Context,
    deciding_part,
    say_reason,
    tied_with_first,
)
from assistant.answers.items import groups_of, path_entries, total
from assistant.answers.record import Answer, Item
from assistant.answers.wording import capital, listed
from assistant.pairing import choose
from assistant.pairing.engine import Match
from assistant.pairing.score import Score

AVOID = 3
EDIBLE = ("food", "sauce", "dressing", "garnish", "cuisine")
LIKED = ("strong", "good", "fair")
TASTING_KINDS = ("kind/cheese", "kind/meat", "kind/seafood", "kind/nut", "kind/olive-kind",
                 "kind/dish", "kind/sweet-food", "kind/egg-dish")  # fmt: skip


def wines_for_food(context: Context) -> Answer:
    """The first choice, a second, one to avoid, within the guest's limits."""
    ranked = context.engine.rank(context.table(), context.candidates())
    ranked = [m for m in ranked if m.wine not in context.frame.named_before]
    if not ranked:
        return _empty(context)
    chosen = choose.picks(ranked, context.top, context.knowledge)
    sweetness = {wine: glass.points["sweetness"] for wine, glass in context.engine.glasses.items()}
    bad = choose.avoided(ranked, AVOID, context.knowledge, sweetness)
    other = choose.other_colour(ranked, chosen[:3], context.knowledge)
    noise = context.knowledge.constants["noise"]
    tied = tied_with_first(ranked, noise)
    lines = [_first_line(context, chosen[0]), *_next_lines(context, chosen, noise)]
    lines += _other_lines(context, other) + _avoid_lines(context, bad[:1])
    lines += _limit_lines(context, chosen[0]) + _dish_lines(context, chosen[0])
    return _answer(
        context,
        say=_spoken_pick(context, chosen[0]),
        lines=lines,
        picks=chosen,
        avoid=bad,
        other=other,
        tied=tuple(m.wine for m in tied) if len(tied) > 1 else (),
    )


def _answer(
    context: Context,
    say: str,
    lines: Sequence[str],
    picks: Sequence[Match] = (),
    avoid: Sequence[Match] = (),
    verdict: str | None = None,
    other: Match | None = None,
    tied: tuple[str, ...] = (),
) -> Answer:
    return Answer(
        question=context.frame.text.typed,
        intent=context.frame.intent,
        say=say,
        text="\n".join([*(line for line in lines if line), *reading_lines(context)]),
        read_as=context.read_as(),
        left_out=context.frame.text.left_out,
        dish=context.dish_record(),
        picks=tuple(context.item(m) for m in picks),
        avoid=tuple(context.item(m) for m in avoid),
        verdict=verdict,
        other_colour=context.item(other) if other else None,
        tied=tied,
    )


def _empty(context: Context) -> Answer:
    return _answer(context, context.wording("line", "none-left"), [context.wording("line", "none-left")])


def _label(context: Context, match: Match) -> str:
    return context.knowledge.wines[match.wine].label


def _spoken_pick(context: Context, match: Match) -> str:
    reason = say_reason(match, context.knowledge, good=True)
    fields = {"wine": _label(context, match), "dish": context.dish_name(), "reason": reason}
    if match.verdict not in LIKED:
        quiet = any(e.rule == "limit/quiet-food" for e in match.path)
        return context.wording("say", "quiet" if quiet else "none", **fields)
    if reason is None:
        return context.wording("say", "pick-short", **fields)
    return context.wording.spoken("pick", "pick-short", **fields)


def _first_line(context: Context, match: Match) -> str:
    reason = say_reason(match, context.knowledge, good=True)
    if match.verdict not in LIKED or reason is None:
        return _spoken_pick(context, match)
    return capital(context.wording("line", "pick", wine=_label(context, match), reason=reason))


def _next_lines(context: Context, chosen: list[Match], noise: float) -> list[str]:
    if len(chosen) < 2:
        return []
    if context.top > AVOID:
        rest = [f"{_label(context, m)} ({m.verdict})" for m in chosen[1:]]
        return [context.wording("line", "next", wines=", ".join(rest))]
    second = chosen[1]
    if chosen[0].score - second.score < noise:
        labels = [_label(context, m) for m in chosen if chosen[0].score - m.score < noise]
        return [context.wording("line", "tie", wines=listed(labels))]
    return [context.wording("line", "next", wines=listed([_label(context, m) for m in chosen[1:]]))]


def _other_lines(context: Context, other: Match | None) -> list[str]:
    if other is None or context.frame.preferences:
        return []
    red = context.knowledge.wines[other.wine].colour == "colour/red"
    colour = "red" if red else "white or pink"
    return [context.wording("line", "other-colour", colour=colour, wine=_label(context, other))]


def _avoid_lines(context: Context, bad: Sequence[Match]) -> list[str]:
    lines = []
    for match in bad:
        reason = say_reason(match, context.knowledge, good=False)
        if reason:
            lines.append(context.wording("line", "avoid", wine=_label(context, match), reason=reason))
    return lines


def _limit_lines(context: Context, first: Match) -> list[str]:
    """What the limit costs: named when the best wine outside it does clearly better."""
    if not context.frame.preferences:
        return []
    wines = [w.id for w in context.knowledge.wines.values() if w.type == "Wine"]
    best = context.engine.rank(context.table(), wines)[0]
    labels = listed([p.label for p in context.frame.preferences])
    lines = [context.wording("line", "limits", limits=labels)]
    if best.score - first.score > 2 * context.knowledge.constants["noise"]:
        lines.append(context.wording("line", "limit-cost", wine=_label(context, best)))
    return lines


def _dish_lines(context: Context, first: Match) -> list[str]:
    lines = []
    for dish in context.frame.dishes[:1]:
        found = deciding_part(dish, context.engine)
        if found:
            part, name, points = found
            word = context.knowledge.label(part)
            what = f"{_taste(name)} {points:.1f} of 5"
            lines.append(context.wording("line", "decides", part=word, what=what))
    rules = context.knowledge.rules
    for warning in first.warnings[:1]:
        lines.append(context.wording("line", "warning", reason=rules[warning.rule].because))
    return lines


def _taste(name: str) -> str:
    return {"heat": "chilli heat", "acid": "acid"}.get(name, name)


def judge_pair(context: Context) -> Answer:
    """A verdict on the wines named with the dishes named, and something better if it is poor."""
    matches = [_judged(context, wine) for wine in context.frame.wines]
    match = matches[0]
    good = match.verdict in LIKED
    reason = say_reason(match, context.knowledge, good)
    fields = {"wine": _label(context, match), "dish": context.dish_name(), "reason": reason}
    long = f"judge-{match.verdict}" if reason else f"judge-short-{match.verdict}"
    say = context.wording.spoken(long, f"judge-short-{match.verdict}", **fields)
    lines = [context.wording("line", "verdict", verdict=m.verdict, wine=_label(context, m), dish=fields["dish"]) for m in matches]  # fmt: skip
    lines = [say, *lines, *_forces(context, match), *([] if good else _repairs(context, match))]
    return _answer(context, say, lines, picks=matches, verdict=match.verdict)


def _judged(context: Context, wine: str) -> Match:
    """A style's match; for a whole kind of wine, the match of its middle member."""
    if wine in context.knowledge.wines:
        return context.engine.judge(context.table(), wine)
    members = [w.id for w in context.knowledge.wines.values() if wine in w.kinds]
    ranked = context.engine.rank(context.table(), members)
    return ranked[len(ranked) // 2]


def _forces(context: Context, match: Match) -> list[str]:
    """The fewest reasons on both sides that carry most of the effect."""
    rules = context.knowledge.rules
    lines = []
    for name, sign in (("plus", 1), ("minus", -1)):
        found = [rules[e.rule].because for e in match.path if e.effect * sign > 0 and e.rule in rules]
        if found:
            lines.append(context.wording("line", name, reasons="; ".join(found[:2])))
    return lines


def _repairs(context: Context, match: Match) -> list[str]:
    """The fix of the rule that costs most, and the wine that does best instead."""
    rules = context.knowledge.rules
    fixes = (rules[e.rule].fix for e in match.path if e.effect < 0 and e.rule in rules)
    fix = next((f for f in fixes if f), None)
    ranked = context.engine.rank(context.table(), context.candidates())
    best = choose.picks(ranked, 1, context.knowledge)
    lines = [context.wording("line", "fix", fix=fix)] if fix else []
    return lines + [context.wording("line", "better", wine=_label(context, m)) for m in best]


def foods_for_wine(context: Context) -> Answer:
    """Foods that love the wine, kinds mixed, and one that fights it."""
    wine = _style(context, context.frame.wines[0])
    foods = [f for f in _tasting_foods(context) if f not in context.frame.named_before]
    ranked = context.engine.rank_foods(wine, foods)
    chosen = _varied(context, ranked, context.top)
    worst = ranked[-1]
    label = context.knowledge.wines[wine].label
    names = [context.knowledge.label(food) for food, _ in chosen]
    say = context.wording("say", "foods", wine=label, food=names[0])
    reason = _food_reason(context, worst[1])
    lines = [say, context.wording("line", "foods-safe", foods=listed(names))]
    lines.append(context.wording("line", "foods-avoid", food=context.knowledge.label(worst[0]), reason=reason))
    answer = _answer(context, say, lines)
    items = tuple(_food_item(context, food, score) for food, score in chosen)
    return _with_items(answer, items, (_food_item(context, *worst),))


def _style(context: Context, wine: str) -> str:
    """A style for a wine word: itself, or the first member of a kind."""
    if wine in context.knowledge.wines:
        return wine
    return next(w.id for w in context.knowledge.wines.values() if wine in w.kinds)


def _tasting_foods(context: Context) -> list[str]:
    """Foods that can stand on a table by themselves, or those of the kinds the guest named."""
    named = [d.main.food for d in context.frame.dishes]
    kinds = tuple(f for f in named if f.startswith("kind/")) or TASTING_KINDS
    found = (f for kind in kinds for f in context.knowledge.members(kind))
    return list(dict.fromkeys(found))


def _varied(
    context: Context, ranked: list[tuple[str, Score]], count: int
) -> list[tuple[str, Score]]:
    if count > choose.VARIED_UP_TO:
        return ranked[:count]
    chosen: list[tuple[str, Score]] = []
    seen: set[str] = set()
    for food, score in ranked:
        kind = next(iter(context.knowledge.broader(food)), food)
        if kind not in seen:
            chosen.append((food, score))
            seen.add(kind)
        if len(chosen) == count:
            break
    return chosen


def _food_reason(context: Context, score: Score) -> str:
    rules = context.knowledge.rules
    found = (rules[e.rule].because for e in score.path if e.effect < 0 and e.rule in rules)
    return next(found, context.wording("reason", "limit-quiet"))


def _food_item(context: Context, food: str, score: Score) -> Item:
    path = path_entries(score.path, context.knowledge, context.wording)
    return Item(
        id=food,
        label=context.knowledge.label(food),
        kind="food",
        groups=groups_of(context.knowledge.broader(food), context.knowledge),
        score=total(path),
        verdict=score.verdict,
        path=path,
    )


def _with_items(answer: Answer, picks: tuple[Item, ...], avoid: tuple[Item, ...]) -> Answer:
    return replace(answer, picks=picks, avoid=avoid)


def reading_lines(context: Context) -> list[str]:
    """What was read, what was mended, and what could not be used."""
    text, wording = context.frame.text, context.wording
    lines = []
    if text.readings:
        labels = list(dict.fromkeys(r.label for r in text.readings))
        lines.append(wording("line", "read", readings=", ".join(labels)))
    if context.frame.dishes and not any(r.kind in EDIBLE for r in text.readings):
        lines.append(wording("line", "standing", dish=context.dish_name()))
    lines += [
        wording("line", "mended", typed=r.corrected_from, meant=r.label)
        for r in text.readings
        if r.corrected_from
    ]
    if text.left_out:
        quoted = listed([f"“{word}”" for word in text.left_out])
        lines.append(wording("line", "left-out", words=quoted))
    lines += [wording("line", note, limit=1000) for note in text.notes]
    return lines
