"""What wine goes with this: a first choice, others as good, one to avoid, and what a limit costs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.compose import compose, label
from assistant.answers.context import Context, deciding_part, say_reason, tied_with_first
from assistant.answers.eating import fits
from assistant.answers.limit_costs import limit_lines
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.language.follow_lines import says
from assistant.language.frame import labels_of
from assistant.pairing import choose
from assistant.pairing.dish import Dish
from assistant.pairing.likeness import nearest_foods
from assistant.pairing.match import Match
from assistant.pairing.score import DISLIKED, LIKED

FORTIFIED = "kind/fortified-wine"
AVOID = 3
BESIDE = ("role/side", "role/topping", "role/dip", "role/garnish")


def wines_for_food(context: Context) -> Answer:
    """The first choice, a second, one to avoid, within the guest's limits; without a dish, what fits them."""
    if not context.frame.dishes:
        return _within_limits(context)
    ranked = context.engine.rank(context.table(), context.candidates())
    ranked = [m for m in ranked if m.wine not in context.frame.named_before]
    if not ranked:
        return _empty(context)
    there = _at_hand(context, ranked)
    chosen = choose.picks(
        ranked, context.top, context.knowledge, _foods(context, context.frame.dishes), there
    )
    sweetness = {wine: glass.points["sweetness"] for wine, glass in context.engine.glasses.items()}
    bad = choose.avoided(ranked, AVOID, context.knowledge, sweetness)
    other = choose.other_colour(ranked, chosen[:3], context.knowledge)
    noise = context.knowledge.constants["noise"]
    tied = tied_with_first(ranked, noise)
    lines = [_first_line(context, chosen[0]), *_next_lines(context, chosen, noise)]
    ruled = choose.picks(ranked, context.top, context.knowledge, at_hand=there)[0]
    lines += [context.wording("line", "no-shop-prices")] if context.without_prices else []
    lines += _custom_lines(context, chosen[0], ruled, noise)
    lines += _other_lines(context, other) + _avoid_lines(context, bad[:1])
    lines += _shop_lines(context, chosen[0]) + limit_lines(context, chosen[0], ranked[0])
    lines += _dish_lines(context, chosen[0])
    lines += fits(context) + _described_lines(context)
    return compose(
        context,
        say=_spoken_pick(context, chosen[0]),
        lines=lines,
        picks=chosen,
        avoid=bad,
        other=other,
        tied=tuple(m.wine for m in tied) if len(tied) > 1 else (),
    )


def first_choice(context: Context, dishes: Sequence[Dish]) -> Match:
    """The wine named first for these dishes, with what custom pours and what is there weighed in."""
    eaten = replace(context, frame=replace(context.frame, dishes=tuple(dishes)))
    ranked = context.engine.rank(eaten.table(), context.candidates())
    there = _at_hand(context, ranked)
    return choose.picks(ranked, context.top, context.knowledge, _foods(context, dishes), there)[0]


def _at_hand(context: Context, ranked: Sequence[Match]) -> bool:
    """Whether all these wines are on the table or in the list of the host."""
    wines = {m.wine for m in ranked}
    return wines <= set(context.in_list()) or wines <= set(context.tonight.wines)


def _within_limits(context: Context) -> Answer:
    """Wines that keep to the limits, sorts mixed, the easiest to buy first; the dish is asked for."""
    wines = context.knowledge.wines
    fitting = _mixed([w for w in context.candidates() if w not in context.frame.named_before], context)
    if not fitting:
        return _empty(context)
    say = capital(context.wording("say", "fitting", wines=listed([wines[w].label for w in fitting])))
    limits = listed(labels_of(context.frame.preferences))
    lines = [say, context.wording("line", "limits", limits=limits), context.wording("line", "which-food")]
    answer = compose(context, say, lines, picks=[Match(w, 0.0, "neutral") for w in fitting])
    return replace(answer, clarify=context.wording("line", "which-food"), verdict=None)


def _mixed(fitting: list[str], context: Context) -> list[str]:
    """The first of each sort of wine, then the others: easy to buy, not fortified and dry go first."""
    wines, glasses = context.knowledge.wines, context.engine.glasses

    def trouble(wine: str) -> tuple[float, bool, float, str]:
        known, sweetness = wines[wine], glasses[wine].points["sweetness"]
        return -known.availability, FORTIFIED in known.kinds, sweetness, known.label

    near = sorted(fitting, key=trouble)
    first = {choose.style_kind(wines[wine]): wine for wine in reversed(near)}
    leading = [wine for wine in near if wine in first.values()]
    return list(dict.fromkeys([*leading, *near]))[: context.top]


def _empty(context: Context) -> Answer:
    frame = context.frame
    told = "none-left" if frame.preferences else "all-told" if context.tonight.wines else "all-known"
    say = context.wording("line", told if frame.named_before else "none-left")
    return compose(context, say, [say])


def _spoken_pick(context: Context, match: Match) -> str:
    reason = say_reason(match, context.knowledge, good=True)
    fields = {"wine": label(context, match), "dish": context.dish_name(), "reason": reason}
    if match.verdict not in LIKED:
        if context.frame.preferences:
            return capital(context.wording("say", "nearest", **fields))
        quiet = any(e.rule == "limit/quiet-food" for e in match.path)
        return context.wording("say", "quiet" if quiet else "none", **fields)
    if reason is None:
        return context.wording("say", "pick-short", **fields)
    return context.wording.spoken("pick", "pick-short", **fields)


def _first_line(context: Context, match: Match) -> str:
    reason = say_reason(match, context.knowledge, good=True)
    if match.verdict not in LIKED or reason is None:
        return _spoken_pick(context, match)
    return capital(context.wording("line", "pick", wine=label(context, match), reason=reason))


def _next_lines(context: Context, chosen: list[Match], noise: float) -> list[str]:
    """What comes after the first: a long list shows each verdict, a short one names no wine that hurts."""
    if context.top <= AVOID:
        chosen = [chosen[0], *(m for m in chosen[1:] if m.verdict not in DISLIKED)]
    if len(chosen) < 2:
        return []
    if context.top > AVOID:
        rest = [f"{label(context, m)} ({m.verdict})" for m in chosen[1:]]
        return [context.wording("line", "next", wines=", ".join(rest))]
    second = chosen[1]
    if chosen[0].score - second.score < noise:
        labels = [label(context, m) for m in chosen if chosen[0].score - m.score < noise]
        return [context.wording("line", "tie", wines=listed(labels))]
    return [context.wording("line", "next", wines=listed([label(context, m) for m in chosen[1:]]))]


def _custom_lines(context: Context, first: Match, best: Match, noise: float) -> list[str]:
    """That custom, and not a rule, names the wine before one that the rules find clearly better.

    Nothing is said of another wine of its kind, nor of one that no host would come upon.
    """
    poured = context.knowledge.pours(first.wine, _foods(context, context.frame.dishes))
    if not poured or context.top > AVOID or best.score - first.score < noise:
        return []
    if not choose.worth_telling(best, first, context.knowledge):
        return []
    fields = {"food": context.knowledge.label(min(poured)), "wine": label(context, best)}
    return [context.wording("line", "by-custom", **fields)]


def _other_lines(context: Context, other: Match | None) -> list[str]:
    if other is None or context.frame.preferences:
        return []
    red = context.knowledge.wines[other.wine].colour == "colour/red"
    colour = context.wording("colour", "red" if red else "pale")
    return [context.wording("line", "other-colour", colour=colour, wine=label(context, other))]


def _avoid_lines(context: Context, bad: Sequence[Match]) -> list[str]:
    lines = []
    for match in bad:
        reason = say_reason(match, context.knowledge, good=False)
        if reason:
            lines.append(context.wording("line", "avoid", wine=label(context, match), reason=reason))
    return lines


def _worth_lines(context: Context, first: Match) -> list[str]:
    """Whether a bottle from the shop does clearly more than the best of the table."""
    there = context.engine.rank(context.table(), context.tonight.wines)[0]
    gains = first.score - there.score > 2 * context.knowledge.constants["noise"]
    fields = {"wine": label(context, first), "verdict": first.verdict}
    fields |= {"there": label(context, there), "there_verdict": there.verdict}
    return [context.wording("line", "worth" if gains else "not-worth", **fields)]


def _shop_lines(context: Context, first: Match) -> list[str]:
    """The best wine of all where the table's best is clearly behind it, or where nothing on it will do."""
    if context.tonight.wines and says(context.frame, "worth"):
        return _worth_lines(context, first)
    if not context.tonight.wines or context.frame.anywhere or context.without_prices:
        return []
    if not context.at_table([first.wine]):
        return [context.wording("line", "none-on-table")]
    ranked = context.engine.rank(context.table(), context.all_candidates())
    best = choose.picks(ranked, context.top, context.knowledge, _foods(context, context.frame.dishes))[0]
    if best.score - first.score <= 2 * context.knowledge.constants["noise"]:
        return []
    fields = {"wine": label(context, best), "verdict": best.verdict}
    return [context.wording("line", "in-the-shop", **fields)]


def _foods(context: Context, dishes: Sequence[Dish]) -> frozenset[str]:
    """What is eaten, each dish by its main part; what stands beside one by use is none beside others."""
    foods = [dish.main.food for dish in dishes]
    meals = [food for food in foods if context.knowledge.food(food).role not in BESIDE]
    return frozenset(meals or foods)


def _described_lines(context: Context) -> list[str]:
    """The known food that comes nearest to what was only described."""
    described = [dish for dish in context.frame.dishes if dish.added]
    near = [(dish, nearest_foods(dish, context.engine)[:1]) for dish in described]
    name = context.knowledge.label
    return [context.wording("line", "described", food=name(food)) for _, foods in near for food in foods]


def _dish_lines(context: Context, first: Match) -> list[str]:
    lines = []
    for dish in context.frame.dishes[:1]:
        found = deciding_part(dish, context.engine)
        if found:
            part, name, points = found
            word = context.knowledge.label(part)
            what = context.wording("decides", name, points=points)
            lines.append(context.wording("line", "decides", part=word, what=what))
    rules = context.knowledge.rules
    for warning in first.warnings[:1]:
        lines.append(context.wording("line", "warning", reason=rules[warning.rule].because))
    return lines
