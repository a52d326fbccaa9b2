"""The calibration as a Markdown page, and what is read back from it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

from tests.calibration.bounds import PREFIX, REFERENCE, Settings
from tests.calibration.fit import SHIPPED, Fit, LeftOut, furthest, sources, unseen
from tests.calibration.scores import Moves, Row, Scores

PAGE = REFERENCE / "calibration.md"
NOTHING, STAYS = "nothing", "none"
ROUNDING = 0.0015
HEAD = """# Rule weights against published pairings

Written by `python -m tests.calibration --write`, never by hand. Facts: `pairing_facts.csv` and
`w3c_owl_guide_courses.csv`; bounds and search: `calibration.toml`. Licence: CC BY 4.0.

All figures are shares from 0 to 1. Fair: good pairs whose wine is fair or better. Any style: the rate at
which any wine style is fair or better with the same foods. Place: the share of all styles that the named
wine beats. In class: the same among dry or among sweet styles. Bad liked: bad pairs that are fair or better.
Colour, sugar: picks for the courses of the W3C example that have what it asks for, those of the rules
alone, without customs, as a fit moves rules; courses that the tests defend do not count. Nothing left out:
the weights fitted to all facts. No weight was changed by a fit.
"""
MOVED = (
    "rule",
    "shipped",
    "nothing left out",
    "lowest",
    "highest",
    "fits that raise it",
    "fits that lower it",
)
FIGURES = ("fair", "any style", "place", "in class", "bad liked", "colour", "sugar")
_NUMBER = re.compile(r"-?\d+\.\d+")


def page(scores: Scores, settings: Settings, moves: Mapping[str, Moves]) -> str:
    """The page for the moves of each fit, by the source left out."""
    fit = Fit(scores, settings)
    found = [fit.left_out(source, moves[source]) for source in sources(scores)]
    parts = {
        "Shipped weights": _shipped(fit),
        "One source left out": _left_out(scores, moves[NOTHING], found),
        "The facts of the source left out": _own(found),
        "Weights that would move": _moved(fit, moves),
    }
    return "\n\n".join([HEAD.strip(), *(f"## {title}\n\n{text}" for title, text in parts.items())]) + "\n"


def fitted(scores: Scores, settings: Settings) -> dict[str, Moves]:
    """The moves of every fit, by the source left out."""
    fit = Fit(scores, settings)
    return {NOTHING: fit.moves(), **{source: fit.moves(source) for source in sources(scores)}}


def _shipped(fit: Fit) -> str:
    rows = [
        [source, _count(fit, "good", source), *_row(fit.own(source, SHIPPED)), _count(fit, "bad", source)]
        for source in sources(fit.scores)[:-1]
    ]
    figures = _numbers(fit.scores.figures()[:4])
    rows.append(["all", _count(fit, "good"), *figures, _count(fit, "bad")])
    return _table(["source", "good pairs", *FIGURES[:4], "bad pairs"], rows)


def _count(fit: Fit, relation: str, source: str = "") -> str:
    return str(sum(source in ("", fact.source) for fact in fit.scores.facts(relation)))


def _left_out(scores: Scores, moves: Moves, found: Sequence[LeftOut]) -> str:
    start = scores.figures(moves)
    rows = [["(shipped)", *_numbers(scores.figures()), "", STAYS]]
    rows.append([NOTHING, *_numbers(start), *_numbers([0.0]), _said(moves)])
    for each in found:
        apart = _numbers([furthest(each.figures, start)])
        rows.append([each.source, *_numbers(each.figures), *apart, _said(each.moves)])
    rows.append(["(each fact fitted without its source)", *_numbers(unseen(scores, found)), "", ""])
    return _table(["left out", *FIGURES, "furthest from nothing left out", "weights that move"], rows)


def _own(found: Iterable[LeftOut]) -> str:
    rows = [[each.source, *_row(each.before), *_row(each.own)] for each in found if each.own]
    names = FIGURES[:4]
    return _table(["source", *(f"{n}, shipped" for n in names), *(f"{n}, fitted" for n in names)], rows)


def _moved(fit: Fit, moves: Mapping[str, Moves]) -> str:
    fits = [dict(found) for source, found in moves.items() if source != NOTHING]
    rows = []
    for name in sorted({rule for found in moves.values() for rule, _ in found}):
        rule, all_ = fit.shipped[name], dict(moves[NOTHING]).get(name, 1.0)
        low, high = fit.settings.bounds(rule)
        ups, downs = (sum(side * found.get(name, 1.0) > side for found in fits) for side in (1, -1))
        weights = [f"{weight:.2f}" for weight in (rule.weight, rule.weight * all_, low, high)]
        rows.append([name.removeprefix(PREFIX), *weights, f"{ups} of {len(fits)}", f"{downs} of {len(fits)}"])
    return _table(MOVED, rows) if rows else "No weight would move."


def _table(head: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    lines = [head, ["---"] * len(head), *rows]
    return "\n".join(f"| {' | '.join(cells)} |" for cells in lines)


def _row(row: Row | None) -> list[str]:
    return _numbers(row) if row else [""] * len(Row._fields)


def _numbers(values: Iterable[float]) -> list[str]:
    return [f"{value:.3f}" for value in values]


def _said(moves: Moves) -> str:
    return ", ".join(f"{rule.removeprefix(PREFIX)} ×{factor}" for rule, factor in moves) or STAYS


def read_moves(text: str) -> dict[str, Moves]:
    """The moves of every fit, as the page has them; raises IndexError where the page has no such table."""
    part = text.split("## One source left out", 1)[1].split("\n## ", 1)[0]
    rows = [line.strip("| ").split(" | ") for line in part.splitlines() if line.startswith("| ")]
    return {row[0]: _read(row[-1]) for row in rows[2:] if not row[0].startswith("(")}


def _read(cell: str) -> Moves:
    if cell == STAYS:
        return ()
    pairs = (item.split(" ×") for item in cell.split(", "))
    return tuple((PREFIX + rule, float(factor)) for rule, factor in pairs)


def agrees(text: str, other: str) -> bool:
    """Whether two pages say the same in words, and in numbers but for rounding."""
    if _NUMBER.sub("#", text) != _NUMBER.sub("#", other):
        return False
    pairs = zip(_NUMBER.findall(text), _NUMBER.findall(other), strict=True)
    return all(abs(float(a) - float(b)) <= ROUNDING for a, b in pairs)
