"""`which has the least alcohol`: the wine on the table that has most or least of something."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.safety import safety
from assistant.answers.wording import capital, listed
from assistant.language.follow_lines import follow_lines, says
from assistant.language.frame import Frame, Preference
from assistant.pairing.glass import Glass

PREFIX, LEAST = "most-of-", "least-of-"
NEAR = 0.05
"""Points within which two wines are called alike: what is known of a style is no finer."""
SAME_AS = {"sugar": "sweetness"}
PERCENT, COMPARES, SAFETY = "alcohol", "compare", "safety"


def extremes_asked(frame: Frame) -> list[tuple[str, bool]]:
    """The properties whose end is asked for, in order, and whether the most of each; of other texts none."""
    lines, stems = follow_lines(), frame.text.stems
    if not lines["which-one"].stand_in(stems):
        return []
    ends = (name for name in lines if name.startswith((PREFIX, LEAST)))
    found = sorted((places, name) for name in ends for places in lines[name].find(stems))
    if _names_besides(frame, {at for places, _ in found for at in places}):
        return []
    asked = [(name.removeprefix(PREFIX).removeprefix(LEAST), name.startswith(PREFIX)) for _, name in found]
    return list({name: (name, most) for name, most in reversed(asked)}.values())[::-1]


def _names_besides(frame: Frame, places: Collection[int]) -> bool:
    """Whether a wine or a food is named but by the words that ask (`the most sugar`)."""
    named = (r for r in frame.text.readings if r.type in ("Wine", "Food"))
    return any(at not in places for reading in named for at in range(reading.start, reading.end))


def extreme(context: Context) -> Answer | None:
    """The wine on the table at each end that is asked for; None where fewer than two are poured.

    Where it is asked for somebody's health, that is told first, and nothing else to who drinks no wine.
    """
    topics = [context.topics[name] for name in context.frame.topics]
    answer = _of_all_ends(context)
    if answer is None or not topics:
        return answer
    care = replace(safety(context), intent=SAFETY)
    sober = any(topic.no_alcohol or topic.urgent for topic in topics)
    return care if sober else replace(care, text=f"{care.text}\n{answer.text}")


def _of_all_ends(context: Context) -> Answer | None:
    asked, wines = extremes_asked(context.frame), _among(context)
    if not asked or len(wines) < 2 or _of_those_spoken_of(context):
        return None
    first, *others = (_of_end(context, wines, name, most) for name, most in asked)
    return replace(first, text="\n".join([first.text, *(other.say for other in others)]))


def _of_end(context: Context, wines: Sequence[str], name: str, most: bool) -> Answer:
    """The wine at this end, with the one at the other."""
    ordered = sorted((context.engine.glasses[wine] for wine in wines), key=lambda g: _amount(g, name))
    ordered = ordered[::-1] if most else ordered
    first, last = _alike(ordered, name), _alike(ordered[::-1], name)
    if len(first) == len(ordered):
        return _told(context, "extreme-same", name, most, first, last)
    return _told(context, "extreme", name, most, first, last)


def _among(context: Context) -> list[str]:
    """The wines on the table, or those of a kind that is named: `which is the lighter red`."""
    broader = context.knowledge.broader
    kinds = [r.id for r in context.frame.text.readings if r.type == "Kind" and r.kind != "food"]
    poured = context.tonight.wines
    return [wine for wine in poured if all(kind in broader(wine) for kind in kinds)]


def _of_those_spoken_of(context: Context) -> bool:
    """Whether it is asked of two that were spoken of: `which of the two is the lighter`."""
    return context.frame.intent == COMPARES and 1 < len(context.frame.wines) < len(context.tonight.wines)


def of_taste_asked(frame: Frame) -> bool:
    """Whether it is asked which of the wines there are of a taste: `which of them is oaky`."""
    named = any(reading.type in ("Wine", "Food") for reading in frame.text.readings)
    tastes = any(limit.property != "kind" for limit in frame.preferences)
    return tastes and not named and says(frame, "which-of-them")


def asked_of_table(frame: Frame) -> bool:
    """Whether wines that are there are told apart: what is asked of them limits no other question."""
    return of_taste_asked(frame) or bool(extremes_asked(frame))


def of_taste(context: Context) -> Answer | None:
    """The wines on the table that are so; None where fewer than two are poured."""
    frame = context.frame
    if len(context.tonight.wines) < 2 or (frame.dishes and frame.intent == COMPARES):
        return None
    limits = tuple(limit for limit in frame.preferences if limit.property != "kind")
    found = context.engine.within(_among(context), limits)
    wines = listed([context.knowledge.label(wine) for wine in found])
    taste = listed([limit.label for limit in limits])
    nearest = _nearest(context, limits[0])
    kind = "of-taste" if found else "of-taste-nearest" if nearest else "of-taste-none"
    say = capital(context.wording("say", kind, taste=taste, wines=wines, nearest=nearest))
    heard = replace(context, frame=replace(frame, preferences=()))
    return replace(compose(heard.of_evening(), say, [say]), dish=None, intent=COMPARES)


def _nearest(context: Context, limit: Preference) -> str:
    """The wine on the table that comes nearest to a taste that none has; empty where none is nearer."""
    glasses = [context.engine.glasses[wine] for wine in _among(context)]
    name = SAME_AS.get(limit.property, limit.property)
    if not all(name in glass.points for glass in glasses):
        return ""
    ordered = sorted(glasses, key=lambda glass: glass.points[name], reverse=limit.low is not None)
    return context.knowledge.label(ordered[0].wine) if len(_alike(ordered, name)) == 1 else ""


def _told(
    context: Context, template: str, name: str, most: bool, first: Sequence[Glass], last: Sequence[Glass]
) -> Answer:
    ends = (
        context.wording("extreme", f"{way}-{name}")
        for way in (("most", "least") if most else ("least", "most"))
    )
    one, other = ends
    wines, others = (listed([context.knowledge.label(g.wine) for g in row]) for row in (first, last))
    say = context.wording("say", template, wines=wines, end=one, others=others, other=other)
    return replace(compose(context.of_evening(), say, [say]), dish=None, intent=COMPARES)


def _alike(ordered: Sequence[Glass], name: str) -> list[Glass]:
    """The first, and those so near to it that nobody should say which is more."""
    return [glass for glass in ordered if abs(_amount(glass, name) - _amount(ordered[0], name)) <= NEAR]


def _amount(glass: Glass, name: str) -> float:
    return glass.alcohol_percent if name == PERCENT else glass.points[name]
