"""What `goeswith evaluate` prints."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Any

from assistant.evaluate.figures import Figures, confusions, grouped, of_questions, of_turns
from assistant.evaluate.outcome import Outcome
from assistant.evaluate.run import Evaluation
from assistant.evaluate.slips import VERDICTS
from assistant.evaluate.slots import SLOTS
from assistant.evaluate.talks import TurnOutcome

SHARES = (
    ("intent", "intents right"),
    ("frame", "whole frames right"),
    ("told", "unknown names told"),
    ("wishes", "wishes kept or told"),
    ("false_reports", "false reports a question"),
    ("false_repairs", "false repairs a question"),
)
COLUMNS = {
    "intent": "intent",
    "frame": "frame",
    "told": "told",
    "foods": "foods_f1",
    "wines": "wines_f1",
    "limits": "limits_f1",
    "reports": "false_reports",
    "repairs": "false_repairs",
}
SHOWN = 12


def text(evaluation: Evaluation) -> str:
    """The whole report; empty lines between its parts."""
    results = evaluation.results
    parts = [
        _overall(results.questions),
        _slots(results.questions),
        _table("by pass", results.questions, lambda o: o.question.author),
        _table("by intent", results.questions, lambda o: o.question.intent),
        _confused(results.questions),
        _turns(results.turns),
        _refusals(evaluation),
        _speller(evaluation),
        _outdated(results.questions),
        _changes(evaluation),
        list(evaluation.problems),
    ]
    return "\n\n".join("\n".join(part) for part in parts if part)


def rows(evaluation: Evaluation) -> Iterator[dict[str, Any]]:
    """One object for each question, turn and refusal, and the figures last."""
    results = evaluation.results
    yield from (outcome.as_json() for outcome in results.questions)
    yield from (turn.as_json() for turn in results.turns)
    yield from (refusal.as_json() for refusal in results.refusals)
    by_pass = grouped(results.questions, lambda o: o.question.author)
    by_intent = grouped(results.questions, lambda o: o.question.intent)
    yield {
        "row": "figures",
        "all": _rounded(evaluation.figures()),
        "by_pass": {name: _rounded(of_questions(group)) for name, group in by_pass.items()},
        "by_intent": {name: _rounded(of_questions(group)) for name, group in by_intent.items()},
        "confusions": [list(confusion) for confusion in confusions(results.questions)],
        "problems": list(evaluation.problems),
        "newly_wrong": list(evaluation.newly_wrong),
        "newly_right": list(evaluation.newly_right),
    }


def _rounded(figures: Figures) -> Figures:
    return {name: round(value, 4) for name, value in figures.items()}


def _overall(outcomes: Sequence[Outcome]) -> list[str]:
    figures = of_questions(outcomes)
    lines = [f"  {label:<26}{figures[name]:7.3f}" for name, label in SHARES if name in figures]
    return [f"{len(outcomes):,} questions", *lines] if outcomes else []


def _slots(outcomes: Sequence[Outcome]) -> list[str]:
    figures = of_questions(outcomes)
    head = f"  {'slot':<26}{'precision':>10}{'recall':>8}{'F1':>8}"
    lines = [
        f"  {slot:<26}{_cell(figures, f'{slot}_precision', 10)}{_cell(figures, f'{slot}_recall', 8)}"
        f"{_cell(figures, f'{slot}_f1', 8)}"
        for slot in SLOTS
        if f"{slot}_f1" in figures
    ]
    return [head, *lines] if lines else []


def _cell(figures: Figures, name: str, width: int) -> str:
    return f"{figures[name]:{width}.3f}" if name in figures else f"{'-':>{width}}"


def _table(title: str, outcomes: Sequence[Outcome], by: Callable[[Outcome], str]) -> list[str]:
    lines = []
    for name, group in grouped(outcomes, by).items():
        figures = of_questions(group)
        cells = "".join(_cell(figures, column, 9) for column in COLUMNS.values())
        lines.append(f"  {name:<16}{len(group):6}{cells}")
    return [f"{title:<18}{'n':>6}{''.join(f'{name:>9}' for name in COLUMNS)}", *lines] if lines else []


def _confused(outcomes: Sequence[Outcome]) -> list[str]:
    lines = [f"  {meant:<16} read as {read:<16}{times:5}" for meant, read, times in confusions(outcomes)]
    return ["worst confusions", *lines] if lines else []


def _turns(turns: Sequence[TurnOutcome]) -> list[str]:
    if not turns:
        return []
    talks = len({turn.dialogue.id for turn in turns})
    lines = [
        f"  {name:<16}{len(group):6}{figures['turn_intents']:9.3f}{figures['turns']:9.3f}"
        for name, group in grouped(turns, lambda t: t.dialogue.author).items()
        for figures in (of_turns(group),)
    ]
    return [f"{f'{talks:,} conversations':<18}{'turns':>6}{'intent':>9}{'all':>9}", *lines]


def _refusals(evaluation: Evaluation) -> list[str]:
    refusals = evaluation.results.refusals
    right = sum(refusal.right for refusal in refusals)
    return [f"{right} of {len(refusals)} things outside the job turned down"] if refusals else []


def _speller(evaluation: Evaluation) -> list[str]:
    measured = evaluation.speller
    if measured is None:
        return []
    head = f"{'slips':<18}{'n':>6}" + "".join(f"{verdict:>12}" for verdict in VERDICTS)
    lines = [
        f"  {name:<16}{half.counts.total():6}" + "".join(f"{half.share(v) / 100:12.3f}" for v in VERDICTS)
        for name, half in (
            ("looked at", measured.looked_at),
            ("held back", measured.held_back),
            ("unseen", measured.unseen),
            ("later", measured.later),
        )
    ]
    stays = measured.stays.counts
    return [head, *lines, f"{stays['mended']} of {stays.total()} things that must stay were mended"]


def _outdated(outcomes: Iterable[Outcome]) -> list[str]:
    """Names marked as unknown that the knowledge has by now: the mark is to be taken away."""
    names = sorted({name for o in outcomes for name in o.outdated})
    return [f"known by now, though marked unknown: {', '.join(names)}"] if names else []


def _changes(evaluation: Evaluation) -> list[str]:
    return [
        f"{len(ids)} {which} than corpus/known-failures.toml says: {', '.join(ids[:SHOWN])}"
        + (" ..." if len(ids) > SHOWN else "")
        for which, ids in (("worse", evaluation.newly_wrong), ("better", evaluation.newly_right))
        if ids
    ]
