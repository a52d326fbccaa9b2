"""Outcomes -> figures: shares that can be held against the floors of corpus/floors.toml."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from assistant.evaluate.outcome import Outcome
from assistant.evaluate.slots import SLOTS, Score
from assistant.evaluate.talks import RefusalOutcome, TurnOutcome

T = TypeVar("T")
Figures = dict[str, float]


@dataclass(frozen=True, slots=True)
class Results:
    """Everything that was run."""

    questions: tuple[Outcome, ...]
    turns: tuple[TurnOutcome, ...]
    refusals: tuple[RefusalOutcome, ...]

    def figures(self) -> Figures:
        """All figures by name; what was not asked for has none."""
        return {**of_questions(self.questions), **of_turns(self.turns), **_refused(self.refusals)}

    def failed(self) -> dict[str, str]:
        """What went wrong by id: the intent read instead of the right one, or what else was wrong."""
        return {
            **{o.question.id: o.intent for o in self.questions if not o.intent_right},
            **{
                t.id: t.intent if not t.intent_right else "; ".join(t.faults)
                for t in self.turns
                if not t.right
            },
            **{r.refusal.id: r.intent for r in self.refusals if not r.right},
        }


def of_questions(outcomes: Sequence[Outcome]) -> Figures:
    """`intent` and `frame`: shares right; each slot's precision, recall and F1; `told`: expected unknown
    names of which a word was left out; `wishes`: those not dropped; the rest counts per question."""
    if not outcomes:
        return {}
    known = {
        "intent": share(outcomes, lambda o: o.intent_right),
        "frame": share(outcomes, lambda o: o.frame_right),
        **_slots(outcomes),
        "false_reports": sum(len(o.false_reports) for o in outcomes) / len(outcomes),
        "false_repairs": sum(len(o.false_repairs) for o in outcomes) / len(outcomes),
    }
    unknown = sum(len(o.question.unknown) - len(o.outdated) for o in outcomes)
    wishes = sum(len(o.question.wishes) for o in outcomes)
    told = {"told": 1 - sum(len(o.untold) for o in outcomes) / unknown} if unknown else {}
    kept = {"wishes": 1 - sum(len(o.dropped) for o in outcomes) / wishes} if wishes else {}
    return known | told | kept


def _slots(outcomes: Sequence[Outcome]) -> Figures:
    figures: Figures = {}
    for slot in SLOTS:
        score = sum((o.slots[slot] for o in outcomes), Score())
        measured = {"precision": score.precision, "recall": score.recall, "f1": score.f1}
        figures |= {f"{slot}_{name}": value for name, value in measured.items() if value is not None}
    return figures


def of_turns(turns: Sequence[TurnOutcome]) -> Figures:
    """`turn_intents`: turns taken for what they are; `turns`: those of which nothing was wrong."""
    if not turns:
        return {}
    return {
        "turn_intents": share(turns, lambda t: t.intent_right),
        "turns": share(turns, lambda t: t.right),
    }


def _refused(refusals: Sequence[RefusalOutcome]) -> Figures:
    return {"refusals": share(refusals, lambda r: r.right)} if refusals else {}


def share(rows: Sequence[T], right: Callable[[T], bool]) -> float:
    """The share of rows that are right; 0 for none."""
    return sum(map(right, rows)) / len(rows) if rows else 0.0


def grouped(rows: Iterable[T], by: Callable[[T], str]) -> dict[str, list[T]]:
    """The rows by a name, in the order in which the names come up."""
    groups: dict[str, list[T]] = {}
    for row in rows:
        groups.setdefault(by(row), []).append(row)
    return groups


def confusions(outcomes: Iterable[Outcome], most: int = 30) -> list[tuple[str, str, int]]:
    """The most frequent mistakes: (expected, read, how often)."""
    wrong = Counter((o.question.intent, o.intent) for o in outcomes if not o.intent_right)
    return [(meant, read, times) for (meant, read), times in wrong.most_common(most)]


def below(figures: Figures, floors: Mapping[str, Mapping[str, float]]) -> list[str]:
    """A sentence for each figure that does not keep to `at-least` or `at-most`; one that is missing too."""
    lines = []
    for name, floor in floors.get("at-least", {}).items():
        if figures.get(name, -1.0) < floor:
            lines.append(f"{name} is {_told(figures, name)}, and should be {floor:g} or more")
    for name, ceiling in floors.get("at-most", {}).items():
        if figures.get(name, float("inf")) > ceiling:
            lines.append(f"{name} is {_told(figures, name)}, and should be {ceiling:g} or less")
    return lines


def _told(figures: Figures, name: str) -> str:
    return f"{figures[name]:.3f}" if name in figures else "not measured"
