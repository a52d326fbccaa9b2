"""What hosts say against one another and against the book, in the statements that stand."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Hashable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from assistant.evening.facts import fact
from assistant.language.fold import key
from assistant.notebook import Statement
from assistant.pairing.engine import Engine, key_of
from assistant.pairing.score import DISLIKED, LIKED
from assistant.taught.pairs import apart, halves, verdict_of

PAIR, PROFILE, NAME, BOOK = "pair", "profile", "name", "book"


@dataclass(frozen=True, slots=True)
class Conflict:
    """Two that cannot both hold: statements (`kind` pair, profile, name), or one and the book (`book`).

    `apart`: steps of the host's verdict above the book's, which has this `verdict` and signed `score`.
    """

    kind: str
    older: Statement
    newer: Statement | None = None
    verdict: str | None = None
    score: float | None = None
    apart: int = 0

    def as_json(self) -> dict[str, Any]:
        """The record, ready for JSON."""
        told = [one.as_json() for one in (self.older, self.newer) if one]
        rest = {"verdict": self.verdict, "score": self.score, "apart": self.apart}
        return {"kind": self.kind, "statements": told, **rest}


def conflicts(told: Sequence[Statement], engine: Engine) -> tuple[Conflict, ...]:
    """Every conflict of the statements that stand; each thing once, with the newest of both sides."""
    return (*among_hosts(told), *with_book(told, engine))


def among_hosts(told: Sequence[Statement]) -> tuple[Conflict, ...]:
    """A pair praised and damned, an amount given twice, a name given to two things."""
    pairs = ((frozenset(s.about), _side(s), s) for s in told if s.kind == "pairing" and _side(s))
    profiles = (s for s in told if s.kind == "profile")
    amounts = (((s.about, s.value["dimension"]), s.value["amount"], s) for s in profiles)
    return (*_two(PAIR, pairs), *_two(PROFILE, amounts), *_two(NAME, _names(told)))


def _two(kind: str, said: Iterable[tuple[Hashable, Hashable, Statement]]) -> Iterator[Conflict]:
    """Where the same thing is given more than one meaning: the newest two that differ."""
    found: dict[Hashable, dict[Hashable, Statement]] = defaultdict(dict)
    for thing, meaning, one in said:
        found[thing].pop(meaning, None)
        found[thing][meaning] = one  # the newest comes last
    for meanings in found.values():
        if len(meanings) > 1:
            older, newer = list(meanings.values())[-2:]
            yield Conflict(kind, older, newer)


def _side(one: Statement) -> int:
    return {**dict.fromkeys(LIKED, 1), **dict.fromkeys(DISLIKED, -1)}.get(verdict_of(one), 0)


def _names(told: Sequence[Statement]) -> Iterator[tuple[Hashable, Hashable, Statement]]:
    """Names as they are found again in a text, with what they stand for."""
    for one in told:
        if one.kind == "alias":
            yield tuple(key(str(one.value["alias"]))), one.about[0], one
        elif one.kind == "new-food":
            yield tuple(key(one.about[0])), one.value.get("like"), one


def with_book(told: Sequence[Statement], engine: Engine) -> tuple[Conflict, ...]:
    """Verdicts on one food with one wine that lie steps from the book's; the newest of each pair counts.

    The book is asked wine by wine, each with its foods at once: a pair by itself costs ten times as much. Of
    more wines than it can be asked for in a second or two, those spoken of last are held against it.
    """
    least = fact("rehearse", "conflict", "steps").typical
    found = []
    for wine, foods in list(by_wine(told, engine).items())[: int(fact("rehearse", "conflict", "wines").high)]:
        scores = engine.score_plates(wine, {key_of(food): engine.plate_of_food(food) for food in foods})
        for food, one in foods.items():
            score = scores[key_of(food)]
            steps = apart(verdict_of(one), score.verdict, engine.knowledge)
            if abs(steps) >= least:
                found.append(Conflict(BOOK, one, None, score.verdict, round(score.total, 1), steps))
    return tuple(found)


def by_wine(told: Sequence[Statement], engine: Engine) -> dict[str, dict[str, Statement]]:
    """The newest verdict by wine and food, where it is of one style and one known food; last told first."""
    found: dict[str, dict[str, Statement]] = defaultdict(dict)
    for one in (s for s in reversed(told) if s.kind == "pairing"):
        wines, foods = halves(one, engine.knowledge)
        known = foods <= engine.knowledge.digest.keys() and set(wines) <= engine.knowledge.wines.keys()
        if known and len(wines) == len(foods) == 1:
            found[wines[0]].setdefault(foods.pop(), one)
    return found
