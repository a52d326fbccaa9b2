"""Behind time: a little less for every wine, then as few wines as need be left out, the least missed first,
never more than half of them: what cannot be made up so is said."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import ceil

from assistant.after.times import minutes_said
from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.first import eaten_first, first_told
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.evening.by_talk import evening_of
from assistant.evening.choose_search import choose
from assistant.evening.choose_task import Task
from assistant.evening.clock import pace
from assistant.evening.facts import fact
from assistant.evening.records import Evening
from assistant.evening.selecting import MOST_STATES
from assistant.evening.tasting import taste
from assistant.language.quantities import numbers
from assistant.pairing.engine import Engine
from assistant.session import Session
from assistant.table.overrun import food_late

MOST_OUT = 0.5  # of the wines: with fewer it is another evening
MOST_BEHIND = 180.0  # more minutes than this are no number of minutes


@dataclass(frozen=True, slots=True)
class Caught:
    """How `minutes` are made up: `shorter` minutes less for each wine poured, and wines left out.

    `missing`: minutes that are not made up, because half of the wines and those that must be stay.
    """

    minutes: float
    shorter: int
    left_out: tuple[str, ...] = ()
    missing: float = 0.0


def late_by_talk(context: Context, session: Session) -> Answer | None:
    """What to cut where the evening runs late; None without wines on the table."""
    evening = evening_of(context)
    if food_late(context.frame):
        return _food_late(context, evening)
    if len(evening.wines) < 2:
        return None
    found = caught(evening, _behind(context, evening), session.engine)
    name = ("late-part" if found.missing else "late-out") if found.left_out else "late-shorter"
    name = name if found.left_out or not found.missing else "late-little"
    fields = {"minutes": f"{found.minutes:g}", "shorter": found.shorter, "wines": listed(found.left_out)}
    fields |= {"missing": f"{found.missing:g}", "made": f"{found.minutes - found.missing:g}"}
    say = context.wording("plan", name, **fields)
    lines = [say, context.wording("plan", "late-why", pace=f"{pace(evening):g}", **fields)]
    lines += [context.wording("plan", "late-missing", **fields)] if found.missing else []
    return replace(compose(context.of_evening(), say, lines), intent="plan", dish=None)


def _food_late(context: Context, evening: Evening) -> Answer | None:
    """Where the food is late nothing is cut: there is more time to pour."""
    if not evening.wines:
        return None
    length = minutes_said(context.frame.text.typed)
    say = context.wording("plan", "food-late-by" if length else "food-late", minutes=f"{length or 0:g}")
    opener = first_told(replace(context, tonight=replace(context.tonight, dishes=eaten_first(context)))).say
    lines = [say, opener, *(context.wording("plan", name) for name in ("food-late-then", "food-late-out"))]
    return replace(compose(context.of_evening(), say, lines), intent="plan", dish=None)


def caught(evening: Evening, minutes: float, engine: Engine) -> Caught:
    """The gentlest way: what each wine can give of its time first, then the wines that are missed least."""
    count = len(evening.wines)
    spare = int(pace(evening) - fact("clock", "pace", evening.meal).low)
    if minutes <= spare * count:
        return Caught(minutes, ceil(minutes / count))
    least = max(ceil(count * MOST_OUT), sum(line.must for line in evening.wines))
    kept = next(
        (n for n in range(count - 1, least, -1) if _saved(count, n, spare, evening) >= minutes), least
    )
    missing = max(0.0, minutes - _saved(count, kept, spare, evening))
    return Caught(minutes, spare, _missed_least(evening, kept, engine), missing)


def _saved(count: int, kept: int, spare: int, evening: Evening) -> float:
    """Minutes saved where so many wines are kept, each a little shorter."""
    return (count - kept) * pace(evening) + kept * spare


def _missed_least(evening: Evening, kept: int, engine: Engine) -> tuple[str, ...]:
    """The wines outside the best choice of so many; of a table without food the last ones."""
    labels = [line.label for line in evening.wines]
    tasting = taste(evening, engine)
    if tasting is None:
        return tuple(labels[kept:])
    must = frozenset(line.label for line in evening.wines if line.must)
    choice = choose(Task(tasting.tasted.among(labels), kept, 0.0, must=must), MOST_STATES)
    stay = choice.wines if choice else labels[:kept]
    return tuple(label for label in labels if label not in stay)


def _behind(context: Context, evening: Evening) -> float:
    """The minutes said (`half an hour`, `15 over`), or the time of one wine."""
    length = minutes_said(context.frame.text.typed)
    counted = [number for _, _, number in numbers(context.frame.text.stems)]
    said = (number for number in (length, *counted) if number and number <= MOST_BEHIND)
    return next(said, pace(evening))
