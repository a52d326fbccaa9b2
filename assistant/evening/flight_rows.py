"""The flight as a guest reads it: each wine with its style, its warmth, a friend and a foe."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from typing import Any

from assistant.answers.context import strongest
from assistant.evening.facts import wording
from assistant.evening.flight_reasons import Broken, Step, steps, swapped
from assistant.evening.foes import foes
from assistant.evening.leftovers import allergens_of
from assistant.evening.records import Evening, WineLine
from assistant.evening.styles import style_words
from assistant.evening.tasting import Tasting, glasses_of
from assistant.evening.temperatures import band
from assistant.knowledge.store import Knowledge
from assistant.pairing.choose import COMMONEST
from assistant.pairing.flight import carry_over
from assistant.pairing.glass import Glass
from assistant.pairing.likeness import alike_wines
from assistant.pairing.match import Match
from assistant.pairing.score import DISLIKED, LIKED
from assistant.session import Session

STAND_INS = 2
PROFILE = ("sweetness", "acid", "tannin", "body")
Told = dict[str, str]


def flight(evening: Evening, tasting: Tasting | None, session: Session) -> list[dict[str, Any]]:
    """The wines of the evening in their order, as the `flight` of a plan has them."""
    rows = [_row(line, tasting, session) for line in evening.wines]
    calm = {row["wine"] for row in rows if not row["fights"]}
    lines = [line for line in evening.wines if line.label in calm]
    others = foes(lines, session.engine) if lines else {}
    return [row | {"would_fight": _elsewhere(others.get(row["wine"]), session.knowledge)} for row in rows]


def _row(line: WineLine, tasting: Tasting | None, session: Session) -> dict[str, Any]:
    known, glass = session.knowledge, session.engine.glasses[line.wine]
    low, _, high = band(known.wines[line.wine])
    keeps = known.keeps_open(line.wine)
    return {
        "wine": line.label,
        "name": line.name,
        "style": style_words(line.wine, glass, known),
        "profile": {name: round(glass.points[name], 2) for name in PROFILE},
        "celsius": [low, high],
        "loves": _loves(line.label, tasting, known),
        "fights": _fights(line.label, tasting, known),
        "keeps_open_days": keeps.typical if keeps else None,
        "keeps_open_range": [keeps.low, keeps.high] if keeps else None,
        "allergens": _allergens(line.wine, known),
        **allergens_of([line.wine], known),
        "stand_ins": [known.label(wine) for wine in _stand_ins(line.wine, session)],
    }


def _stand_ins(wine: str, session: Session) -> list[str]:
    """The wines or drinks most like it that every shop sells, for a bottle that is not to be had."""
    wines, sort = session.knowledge.wines, session.knowledge.wines[wine].type
    easy = [w.id for w in wines.values() if w.type == sort and w.availability >= COMMONEST]
    return alike_wines(wine, easy, session.engine)[:STAND_INS]


def _loves(wine: str, tasting: Tasting | None, knowledge: Knowledge) -> Told | None:
    """The food it does best with, where it is at least fair."""
    found = _with_foods(wine, tasting)
    food = max(found, key=lambda food: found[food].score, default=None)
    good = food is not None and found[food].verdict in LIKED
    return _told(food, found[food], knowledge, True) if food is not None and good else None


def _fights(wine: str, tasting: Tasting | None, knowledge: Knowledge) -> Told | None:
    """The food it does worst with, where it hurts; of several bites, the warning counts."""
    found = _with_foods(wine, tasting)
    food = min(found, key=lambda food: found[food].score, default=None)
    bad = food is not None and found[food].verdict in DISLIKED
    return _told(food, found[food], knowledge, False) if food is not None and bad else None


def _elsewhere(found: tuple[str, Match] | None, knowledge: Knowledge) -> Told | None:
    """A foe that is not on the table."""
    return _told(knowledge.label(found[0]), found[1], knowledge, False) if found else None


def _with_foods(wine: str, tasting: Tasting | None) -> dict[str, Match]:
    """How it does with what is tasted; plain bread is neither friend nor foe."""
    return {food: tasting.matches[food][wine] for food in tasting.tasted.foods} if tasting else {}


def _told(food: str, match: Match, knowledge: Knowledge, good: bool) -> Told:
    rule = strongest(match, knowledge, good)
    why = rule.because if rule else wording()("text", "no-reason")
    return {"food": food, "verdict": match.verdict, "why": why}


def _allergens(wine: str, knowledge: Knowledge) -> list[str]:
    """What it contains, and what a label must be read for: unknown counts as present."""
    found = allergens_of([wine], knowledge)
    unknown = [wording()("text", "unknown-allergen", allergen=a) for a in found["allergens_unknown"]]
    return [*found["allergens_present"], *unknown]


def pour_rows(evening: Evening, session: Session) -> list[dict[str, Any]]:
    """The contract's `pour_order`; `reset`: water, bread and a pause belong before this wine;
    `if_swapped`: what breaks where it changes places with the next."""
    c, glasses = session.knowledge.constants, glasses_of(evening, session.engine)
    found = steps(glasses, c)
    ordered = {glass.wine: glass for glass in glasses}
    resets = [False, *(_tastes_sour(ordered[a.wine], ordered[b.wine], c) for a, b in pairwise(found))]
    breaks = [_if_swapped(broken, session) for broken in swapped([ordered[step.wine] for step in found], c)]
    rows = zip(found, resets, [*breaks, None], strict=False)
    return [_pour(step, reset, session) | {"if_swapped": broken} for step, reset, broken in rows]


def _if_swapped(broken: Broken, session: Session) -> str | None:
    """What breaks where a wine changes places with the next one, or None where nothing does."""
    if broken.cost <= 0:
        return None
    what = session.wording("swapped", broken.mechanism)
    return session.wording("line", "swapped", first=broken.first, second=broken.second, what=what)


def _pour(step: Step, reset: bool, session: Session) -> dict[str, Any]:
    reason = session.wording("order", step.reason)
    if step.place:
        reason = wording()("place", step.place, reason=reason)
    if reset:
        reason = wording()("place", "reset", reason=reason)
    return {"wine": step.wine, "reason": reason, "reset": reset}


def _tastes_sour(before: Glass, after: Glass, c: Mapping[str, float]) -> bool:
    """Whether a drier wine follows a sweet one."""
    return carry_over(before, after, c)["sweetness"] >= c["carry-sweetness"]
