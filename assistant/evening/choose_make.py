"""From a table and the wines at hand to the task of choosing: scores, what counts, what must hold."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import combinations

from assistant.evening.choose_search import Choice, choose
from assistant.evening.choose_task import Bonus, Quota, Scores, Task
from assistant.pairing.choose import SPARKLING, style_kind
from assistant.pairing.dish import Bite, Table
from assistant.pairing.engine import Engine
from assistant.pairing.likeness import unlike
from assistant.pairing.match import Match

FRIED, RED, DESSERT = "trait/fried", "colour/red", "course/dessert"
DECANTED = "decanted"
KEPT_PAIRS = 1 << 16
Styles = Mapping[str, str]


def scores_of(table: Table, names: Sequence[str], wines: Sequence[str], engine: Engine) -> Scores:
    """Every wine (or drink) with every bite of the table; `names` are how the bites are called."""
    rows = matches_of([(Bite(bite.dish, 1.0),) for bite in table], wines, engine)
    return scores_from(rows, names, [bite.share for bite in table], engine)


def matches_of(foods: Sequence[Table], wines: Sequence[str], engine: Engine) -> list[dict[str, Match]]:
    """How each food (a small table where it is several bites) does with each of the wines, by wine."""
    return [{wine: found[wine] for wine in wines} for found in engine.matches(foods)]


def scores_from(
    rows: Sequence[Mapping[str, Match]], names: Sequence[str], weights: Sequence[float], engine: Engine
) -> Scores:
    """The scores of matches, one row for each food; at least one row."""
    total = sum(weights)
    shares = tuple(weight / total for weight in weights)
    of = {wine: tuple(row[wine].score for row in rows) for wine in rows[0]}
    return Scores(tuple(names), shares, of, engine.knowledge.bands)


def shortlist(scores: Scores, count: int, keep: Collection[str] = ()) -> Scores:
    """At most `count` of the wines: those with the best place by any food or by all; `keep` stay in.

    With no more wines than that nothing is left out, and the choice is the best of all.
    """
    if len(scores.of) <= count:
        return scores
    wines = sorted(scores.of)
    place = dict.fromkeys(wines, len(wines))
    for i in range(len(scores.foods) + 1):
        for rank, wine in enumerate(sorted(wines, key=lambda w: -_with_food(scores, w, i))):
            place[wine] = min(place[wine], rank)
    best = sorted(wines, key=lambda w: (w not in keep, place[w], -scores.mean([w]), w))
    return scores.among(best[:count])


def _with_food(scores: Scores, wine: str, food: int) -> float:
    return scores.of[wine][food] if food < len(scores.foods) else scores.mean([wine])


def usual_task(
    table: Table,
    scores: Scores,
    engine: Engine,
    count: int,
    must: Collection[str] = (),
    quotas: Sequence[Quota] = (),
    prices: Mapping[str, float] | None = None,
    budget: float | None = None,
    styles: Styles | None = None,
) -> Task:
    """The task as hosts mean it: good with the food, nobody left out, and a mix worth tasting.

    `prices` in money by wine (0 for a bottle already owned), `budget` in the same money. `styles`: the wine
    of the knowledge behind each name in the scores, where they are called otherwise.
    """
    c = engine.knowledge.constants
    wines = {name: (styles or {}).get(name, name) for name in sorted(scores.of)}
    return Task(
        scores,
        min(count, len(wines)),
        c["choice-weakest"],
        bonuses=(*_sorts(wines, engine), *_mix(table, wines, engine)),
        worth={wine: -c["choice-lonely"] * _missing_friends(scores, wine, c) for wine in wines},
        alike=_doubles(wines, engine, one_sweet=not _mostly_dessert(table, engine)),
        alike_cost=c["choice-alike-cost"],
        must=frozenset(must),
        quotas=(*quotas, _decanted(wines, engine, count)),
        prices=prices or {},
        budget=budget,
    )


def _sorts(wines: Styles, engine: Engine) -> Iterator[Bonus]:
    """A bonus for each sort of wine (light red, crisp white ...)."""
    sorts: dict[str, set[str]] = {}
    for name, wine in wines.items():
        sorts.setdefault(style_kind(engine.knowledge.wines[wine]), set()).add(name)
    worth = engine.knowledge.constants["choice-variety"]
    return (Bonus(sort, frozenset(members), worth) for sort, members in sorted(sorts.items()))


def _mix(table: Table, wines: Styles, engine: Engine) -> Iterator[Bonus]:
    """A bonus for a pale, a red and a light wine, and for bubbles where the board calls for them."""
    c = engine.knowledge.constants
    glasses, worth = {name: engine.glasses[wine] for name, wine in wines.items()}, c["choice-mix"]
    red = frozenset(name for name, glass in glasses.items() if glass.colour == RED)
    yield Bonus("red", red, worth)
    yield Bonus("pale", frozenset(wines) - red, worth)
    light = (name for name, glass in glasses.items() if glass.alcohol_percent <= c["choice-light-alcohol"])
    yield Bonus("light", frozenset(light), worth)
    if calls_for_bubbles(table, engine):
        sparkling = (name for name, glass in glasses.items() if SPARKLING in glass.kinds)
        yield Bonus("sparkling", frozenset(sparkling), worth)


def calls_for_bubbles(table: Table, engine: Engine) -> bool:
    """Whether much of the table is salty or fried."""
    c = engine.knowledge.constants
    plates = ((engine.plate(bite.dish), bite.share) for bite in table)
    share = sum(s for p, s in plates if p.points["salt"] >= c["choice-salty"] or FRIED in p.traits)
    return share > c["choice-salty-share"]


def _missing_friends(scores: Scores, wine: str, c: Mapping[str, float]) -> float:
    """How many foods the wine lacks that it is good with."""
    friends = sum(score >= scores.floor("good") for score in scores.of[wine])
    return max(0.0, min(c["choice-friends"], len(scores.foods)) - friends)


def _mostly_dessert(table: Table, engine: Engine) -> bool:
    plates = ((engine.plate(bite.dish), bite.share) for bite in table)
    share = sum(share for plate, share in plates if plate.course == DESSERT)
    return share > engine.knowledge.constants["choice-sweet-share"]


def _doubles(wines: Styles, engine: Engine, one_sweet: bool) -> frozenset[frozenset[str]]:
    """Pairs of wines that do the same job: alike, one a kind of the other, or (`one_sweet`) both sweet."""
    least = engine.knowledge.constants["choice-sweet"]
    sweet = {name for name, wine in wines.items() if engine.glasses[wine].points["sweetness"] >= least}
    return frozenset(
        frozenset((one, other))
        for one, other in combinations(wines, 2)
        if (one_sweet and one in sweet and other in sweet) or _alike(wines[one], wines[other], engine)
    )


@lru_cache(maxsize=KEPT_PAIRS)
def _alike(one: str, other: str, engine: Engine) -> bool:
    known, glasses = engine.knowledge, engine.glasses
    kin = one in glasses[other].kinds or other in glasses[one].kinds
    return kin or unlike(glasses[one], glasses[other], known) < known.constants["choice-alike"]


def _decanted(wines: Styles, engine: Engine, count: int) -> Quota:
    """No more wines to decant than a host has hands for."""
    c, known = engine.knowledge.constants, engine.knowledge.wines
    airs = {name: known[wine].air for name, wine in wines.items()}
    needing = frozenset(name for name, air in airs.items() if air and air.typical >= c["choice-air-minutes"])
    return Quota(DECANTED, needing, 0, min(count, int(c["choice-decanted"])))


@dataclass(frozen=True, slots=True)
class Chosen:
    """A choice with the task it answers: with fewer bottles or without the limit on decanting if need be."""

    task: Task
    choice: Choice
    wanted: int

    @property
    def wines(self) -> tuple[str, ...]:
        """The wines chosen, in order of name."""
        return self.choice.wines


def best_choice(task: Task) -> Chosen | None:
    """The best choice; where the limits allow none, more may be decanted, then fewer are chosen.

    None where not even one wine keeps to the limits.
    """
    for count in range(task.count, 0, -1):
        chosen = full_choice(replace(task, count=count))
        if chosen:
            return replace(chosen, wanted=task.count)
    return None


def full_choice(task: Task, most: int | None = None) -> Chosen | None:
    """The best choice of just as many as are wanted; where the limits allow none, more may be decanted.

    `most` cuts the search short, as in `choose`.
    """
    undecanted = replace(task, quotas=tuple(q for q in task.quotas if q.name != DECANTED))
    for tried in (task, undecanted):
        choice = choose(tried, most)
        if choice:
            return Chosen(tried, choice, task.count)
    return None
