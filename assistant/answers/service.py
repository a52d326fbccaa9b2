"""How a wine is served: how cold, in which glass, with how much air, and how long an open bottle keeps."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.after.heat import bound_in_words
from assistant.after.telling import time_in_words
from assistant.answers.chilling import chill_lines, usual_kinds
from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.items import wine_item
from assistant.answers.record import Answer
from assistant.answers.wording import capital, span
from assistant.evening.facts import fact, wording
from assistant.evening.outside import limit_minutes, rest_minutes
from assistant.evening.records import FoodLine
from assistant.knowledge.concepts import Amount, Wine
from assistant.knowledge.kinds_meant import kinds_meant
from assistant.language.follow_lines import says
from assistant.language.sorting import EDIBLE
from assistant.pairing.choose import COMMONEST
from assistant.pairing.dish import Dish
from assistant.table.served import hot_meant

# What may be asked of serving a wine, the first that is; by the lines of follow-ups.toml.
ASKED = ("freezer", "keeping", "chill", "air", "opening")
CHILLING = ("chill", "range", "basis")


def service(context: Context) -> Answer:
    """What is known of serving the wines named, the first one to say aloud; of a kind, the range."""
    words = words_asked(context)
    styles = [w for w in words if w in context.knowledge.wines]
    if not words and says(context.frame, "freezer"):
        return _freezer(context)
    hot = () if words else hot_meant(context.frame, context.tonight, context.knowledge)
    if hot and (context.frame.dishes or says(context.frame, "oven-asked")):
        return _heated(context, hot)
    if not words and context.frame.dishes:
        return _foods_out(context)
    if not styles:
        return _of_kinds(context, words)
    wines = [context.knowledge.wines[w] for w in styles]
    lines = list(dict.fromkeys(capital(line) for word in words for line in _of_word(context, word)))
    answer = compose(context, lines[0], lines)
    items = tuple(
        wine_item(w, context.engine.glasses[w.id], "neutral", (), context.knowledge, context.wording)
        for w in wines
    )
    keeping = context.knowledge.keeps_open(wines[0].id)
    return replace(answer, picks=items, figures=_figures(wines[0], keeping))


def _freezer(context: Context) -> Answer:
    """How long a bottle may lie in the freezer, and which never."""
    alarm = fact("cooling", "limits", "freezer_alarm").typical
    say = _in_freezer(False)
    answer = compose(context, say, [say, _in_freezer(True)])
    return replace(answer, figures={"minutes": {"value": alarm, "unit": "min"}}, dish=None)


def _foods_out(context: Context) -> Answer:
    """How long before they are eaten the foods named come out of the fridge, and how long they may stand."""
    lines, foods = [], [FoodLine(context.one_dish(dish), (dish,)) for dish in _meant(context)]
    for food in foods:
        rest = rest_minutes(food, context.knowledge)
        told = {"food": food.label, "minutes": f"{rest or 0.0:g}"}
        lines.append(capital(context.wording("line", "keeps-out" if rest is None else "take-out", **told)))
    lines.append(_limit(context))
    return replace(compose(context, lines[0], lines), dish=None)


def _limit(context: Context) -> str:
    """How long food that spoils may stand out, in a room and in the heat."""
    pace = {name: fact("clock", "pace", name).typical for name in ("out_limit", "out_limit_hot")}
    limit, hot = (time_in_words(minutes) for minutes in pace.values())
    degrees = bound_in_words(context.tonight.heat.unit if context.tonight.heat else "")
    return context.wording("line", "out-limit", limit=limit, hot=hot, degrees=degrees)


def _heated(context: Context, dishes: Sequence[Dish]) -> Answer:
    """When hot dishes go in, by the hour at which they are told or planned to be eaten, and for how long."""
    from assistant.evening.heat_by_talk import heated  # loaded late: an evening needs so much

    lines = [capital(line) for line in heated(dishes, context)]
    limit = limit_minutes(fact("cooling", "limits", "room_celsius").typical)
    away = context.wording("line", "hot-limit", minutes=f"{limit:g}")
    return replace(compose(context.of_evening(), lines[0], [*lines, away]), dish=None)


def _meant(context: Context) -> list[Dish]:
    """The dishes asked about; of a whole kind (`the cheese`) all of tonight that are of it."""
    knowledge = context.knowledge
    said = [kinds_meant(r.id, knowledge) for r in context.frame.text.readings if r.kind in EDIBLE]
    kinds = {kind for each in said for kind in each} if said and all(said) else set()
    tonight = [d for d in context.tonight.dishes if kinds & set(knowledge.broader(d.main.food))]
    return tonight or list(context.frame.dishes)


def _of_word(context: Context, word: str) -> list[str]:
    wine = context.knowledge.wines.get(word)
    if wine:
        return _lines(context, wine)
    chills = says(context.frame, "chill") and not says(context.frame, "keeping")
    chill = (
        chill_lines(context, context.knowledge.label(word), common_styles(context, word)) if chills else []
    )
    return [*chill[:1], _kind_line(context, word), *chill[1:]]


def words_asked(context: Context) -> list[str]:
    """The wines and kinds of wine named; `the white` stands among the limits, and before what only stands."""
    wanted = [p.wanted for p in context.frame.preferences if p.property == "kind" and not p.banned]
    kinds = [kind for kind in wanted if kind and context.knowledge.styles_of(kind)]
    named = {reading.id for reading in context.frame.text.readings}
    wines = [wine for wine in context.frame.wines if wine in named or not named.intersection(kinds)]
    return [*wines, *(kind for kind in kinds if kind not in wines)]


def _of_kinds(context: Context, words: list[str]) -> Answer:
    """How cold the common styles of each kind are served; without a kind, the wine is asked for."""
    chills = says(context.frame, "chill") and not says(context.frame, "keeping")
    words = words or (list(context.tonight.wines or usual_kinds()) if chills else [])
    if not words:
        which = context.wording("say", "serve-which")
        return replace(compose(context, which, [which]), clarify=which, understood=False)
    lines = list(dict.fromkeys(capital(line) for word in words for line in _of_word(context, word)))
    return compose(context, lines[0], [*lines, context.wording("line", "serve-style")])


def _kind_line(context: Context, kind: str) -> str:
    degrees = sorted(w.serve.typical for w in common_styles(context, kind) if w.serve)
    told = {"kind": context.knowledge.label(kind), "degrees": span(degrees[0], degrees[-1])}
    return context.wording("say", "serve-kind", **told)


def common_styles(context: Context, kind: str) -> list[Wine]:
    """The styles of a kind that are easy to buy; all of them where none is."""
    wines = [context.knowledge.wines[style] for style in context.knowledge.styles_of(kind)]
    return [w for w in wines if w.availability >= COMMONEST and w.serve] or [w for w in wines if w.serve]


def _lines(context: Context, wine: Wine) -> list[str]:
    """What is known of serving a wine, first what is asked for: air, keeping, or how cold and in what."""
    air = wine.air.typical if wine.air else 0.0
    lines = {"served": _served(context, wine)}
    lines["air"] = context.wording("line", "air" if air else "no-air", minutes=_range(wine.air))
    keeping = context.knowledge.keeps_open(wine.id)
    if keeping:
        lines["keeping"] = context.wording("line", "keeps", days=_range(keeping))
    bubbles = context.engine.glasses[wine.id].points["bubbles"]
    sparkling = bubbles >= context.knowledge.constants["bubbles-restart"]
    if says(context.frame, "freezer"):
        lines["freezer"] = _in_freezer(sparkling)
    if says(context.frame, "opening"):
        lines["opening"] = context.wording("line", "opening-sparkling" if sparkling else "opening-still")
    chill = chill_lines(context, wine.label, [wine]) if says(context.frame, "chill") else []
    if chill:
        lines |= dict(zip(CHILLING, chill, strict=False))
    asked = next((name for name in ASKED if name in lines and says(context.frame, name)), "served")
    first = lines.pop(asked)
    told = first if asked in ("served", "chill") else f"{wine.label}: {first[0].lower()}{first[1:]}"
    return [told, *lines.values()]


def _in_freezer(sparkling: bool) -> str:
    alarm = fact("cooling", "limits", "freezer_alarm").typical
    return wording()("note", "no-freezer" if sparkling else "freezer", minutes=f"{alarm:g}")


def _served(context: Context, wine: Wine) -> str:
    glass = context.wording("glass", wine.glass or "white-small")
    served = context.wording("say", "serve", wine=wine.label, degrees=_range(wine.serve), glass=glass)
    if wine.serve is None or not says(context.frame, "chilled-or-warm"):
        return served
    chilled = wine.serve.typical <= fact("cooling", "limits", "iced_below").typical
    return context.wording("say", "serve-chilled" if chilled else "serve-warmer", served=served)


def _range(amount: Amount | None) -> str:
    return span(amount.low, amount.high) if amount else ""


def _figures(wine: Wine, keeping: Amount | None) -> dict[str, dict[str, object]]:
    """Degrees, minutes of air and days, as the record has them."""
    found = {"celsius": (wine.serve, "°C"), "minutes": (wine.air, "min"), "days": (keeping, "day")}
    return {
        name: {"value": amount.typical, "low": amount.low, "high": amount.high, "unit": unit}
        for name, (amount, unit) in found.items()
        if amount is not None
    }
