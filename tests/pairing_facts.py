"""Published pairings as the engine judges them. `python -m tests.pairing_facts` prints the report.

Every figure stands beside the rate at which any wine style does as well with the same foods: a
model that likes everything would otherwise look right.
"""

from __future__ import annotations

import csv
import tomllib
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from statistics import fmean

from assistant.answers.context import Context
from assistant.pairing.match import Match
from assistant.session import Session

REFERENCE = Path(__file__).parent / "reference"
FACTS, NAMES = REFERENCE / "pairing_facts.csv", REFERENCE / "pairing_facts_names.toml"
LIKED = frozenset(("strong", "good", "fair"))
SWEET_FROM = 1.6
PATH_SHOWN = 5


@dataclass(frozen=True, slots=True)
class Fact:
    """One published row; `line` is its line in the file, `recalled` that nobody looked it up."""

    line: int
    food: str
    wine: str
    relation: str
    source: str
    recalled: bool

    @property
    def key(self) -> str:
        """Food and wine, as the lists of names refer to a row."""
        return f"{self.food} | {self.wine}"


@dataclass(frozen=True, slots=True)
class Names:
    """What the cells stand for; the last three map the key of a row to a reason."""

    foods: dict[str, tuple[str, ...]]
    assumed: dict[str, str]
    wines: dict[str, tuple[str, ...]]
    bad: dict[str, str]
    contested: dict[str, str]
    untested: dict[str, str]


@dataclass(frozen=True, slots=True)
class OneFood:
    """A row's wines with one of its foods; percentiles run from 0 to 1, the top."""

    words: str
    matches: tuple[Match, ...]
    any_style: float
    percentile: float
    within_class: float

    @property
    def best(self) -> Match:
        """The named wine that does best."""
        return self.matches[0]

    @property
    def liked(self) -> bool:
        """Whether the best named wine is fair or better."""
        return self.best.verdict in LIKED


@dataclass(frozen=True, slots=True)
class Outcome:
    """A row with all its foods."""

    fact: Fact
    foods: tuple[OneFood, ...]

    @property
    def fair(self) -> bool:
        """Whether the best named wine is fair or better with more than half of the foods."""
        return sum(food.liked for food in self.foods) * 2 > len(self.foods)

    @property
    def liked_pairs(self) -> list[tuple[str, Match]]:
        """Every food and named wine that are fair or better together."""
        return [(f.words, m) for f in self.foods for m in f.matches if m.verdict in LIKED]

    @property
    def any_style(self) -> float:
        """Share of all styles that are fair or better, mean of the foods."""
        return fmean(food.any_style for food in self.foods)

    @property
    def percentile(self) -> float:
        """Place of the best named wine among all styles, mean of the foods."""
        return fmean(food.percentile for food in self.foods)

    @property
    def within_class(self) -> float:
        """Place of the best named wine among the dry or the sweet styles, mean of the foods."""
        return fmean(food.within_class for food in self.foods)


@dataclass(frozen=True, slots=True)
class Figures:
    """Means over good rows."""

    rows: int
    fair: float
    any_style: float
    percentile: float
    within_class: float


def read_facts(file: Path = FACTS) -> list[Fact]:
    """All rows of the published pairings."""
    with file.open(encoding="utf-8", newline="") as handle:
        rows = list(csv.DictReader(handle))
    return [_fact(line, row) for line, row in enumerate(rows, start=2)]


def _fact(line: int, row: dict[str, str]) -> Fact:
    recalled = row["read_or_memory"] == "memory"
    return Fact(line, row["food"], row["wine_or_property"], row["relation"], row["source"], recalled)


def read_names(file: Path = NAMES) -> Names:
    """What the cells stand for."""
    with file.open("rb") as handle:
        table = tomllib.load(handle)
    foods = {cell: tuple(words) for cell, words in table["foods"].items()}
    wines = {cell: tuple(ids) for cell, ids in table["wines"].items()}
    reasons = {name: _reasons(table[name]) for name in ("bad", "contested", "untested")}
    return Names(foods, dict(table["assumed"]), wines, **reasons)


def _reasons(rows: Iterable[dict[str, str]]) -> dict[str, str]:
    return {f"{row['food']} | {row['wine']}": row["reason"] for row in rows}


@dataclass
class Judge:
    """Judges rows, ranking all wine styles once for each food."""

    session: Session = field(default_factory=Session)
    names: Names = field(default_factory=read_names)
    facts: list[Fact] = field(default_factory=read_facts)
    _rankings: dict[str, list[Match]] = field(default_factory=dict)

    def context(self, words: str) -> Context:
        """The question about a food in these words, as the session would answer it."""
        session = self.session
        frame = session.parser.parse(f"What wine goes with {words}?")
        return Context(frame, session.engine, session.wording, session.parser.topics.by_id)

    def ranking(self, words: str) -> list[Match]:
        """All wine styles with a food, best first; empty where no food was read."""
        if words not in self._rankings:
            context = self.context(words)
            known = bool(context.frame.dishes)
            self._rankings[words] = self.session.engine.rank(context.table(), self.styles) if known else []
        return self._rankings[words]

    @cached_property
    def styles(self) -> list[str]:
        """All wine styles; drinks without alcohol are no wine."""
        return [w.id for w in self.session.knowledge.wines.values() if w.type == "Wine"]

    def sweet(self, wine: str) -> bool:
        """Whether a style tastes sweet."""
        return self.session.engine.glasses[wine].points["sweetness"] >= SWEET_FROM

    def outcome(self, fact: Fact) -> Outcome:
        """A row as the engine judges it; foods that were not read are left out."""
        foods = [words for words in self.names.foods[fact.food] if self.ranking(words)]
        wines = self.names.wines[fact.wine]
        return Outcome(fact, tuple(self._one(words, wines) for words in foods))

    def _one(self, words: str, wines: Sequence[str]) -> OneFood:
        ranking = self.ranking(words)
        named = tuple(m for m in ranking if m.wine in wines)
        best = named[0]
        like = [m for m in ranking if self.sweet(m.wine) == self.sweet(best.wine)]
        liked = sum(m.verdict in LIKED for m in ranking) / len(ranking)
        return OneFood(words, named, liked, percentile(best, ranking), percentile(best, like))

    def outcomes(self, relation: str, contested: bool = False) -> list[Outcome]:
        """The rows of a relation that can be asked for (or only the contested ones)."""
        found = (
            self.outcome(fact)
            for fact in self.facts
            if fact.relation == relation
            and fact.key not in self.names.untested
            and (fact.key in self.names.contested) == contested
        )
        return [outcome for outcome in found if outcome.foods]

    def unread(self) -> list[str]:
        """Foods that the parser does not read, or reads only in part."""
        words = dict.fromkeys(w for words in self.names.foods.values() for w in words)
        return [line for line in map(self._unread, words) if line]

    def _unread(self, words: str) -> str:
        frame = self.context(words).frame
        if not frame.dishes:
            return f"{words}: no food read"
        left = ", ".join(frame.text.left_out)
        return f"{words}: left out {left}" if left else ""


def percentile(match: Match, ranking: Sequence[Match]) -> float:
    """The share of the other wines that a wine beats; a tie counts half."""
    others = [m for m in ranking if m.wine != match.wine]
    beaten = sum((m.score < match.score) + 0.5 * (m.score == match.score) for m in others)
    return beaten / len(others)


def figures(outcomes: Sequence[Outcome]) -> Figures:
    """Means over rows."""
    return Figures(
        len(outcomes),
        fmean(o.fair for o in outcomes),
        fmean(o.any_style for o in outcomes),
        fmean(o.percentile for o in outcomes),
        fmean(o.within_class for o in outcomes),
    )


def by_source(outcomes: Iterable[Outcome]) -> dict[str, list[Outcome]]:
    """Rows by their source, in file order."""
    groups: dict[str, list[Outcome]] = {}
    for outcome in outcomes:
        groups.setdefault(outcome.fact.source, []).append(outcome)
    return groups


def misses(outcomes: Iterable[Outcome]) -> str:
    """The good rows that are not fair, by source."""
    return _listed([o for o in outcomes if not o.fair])


def lowest(outcomes: Iterable[Outcome], within_class: bool = False, count: int = 25) -> str:
    """The good rows whose wine stands lowest in the ranking, by source."""
    ordered = sorted(outcomes, key=lambda o: o.within_class if within_class else o.percentile)
    return _listed(ordered[:count])


def liked_bad(outcomes: Iterable[Outcome]) -> str:
    """The bad rows with a pair that is fair or better, by source."""
    lines = []
    for source, group in by_source(o for o in outcomes if o.liked_pairs).items():
        lines.append(source)
        for outcome in group:
            pairs = (f"{words} × {_short(match)}" for words, match in outcome.liked_pairs)
            lines.append(f"  {outcome.fact.key}: {'; '.join(pairs)}")
    return "\n".join(lines)


def _listed(outcomes: Iterable[Outcome]) -> str:
    lines = []
    for source, group in by_source(outcomes).items():
        lines.append(source)
        lines += [f"  {_line(outcome)}" for outcome in group]
    return "\n".join(lines)


def _line(outcome: Outcome) -> str:
    places = f"all {outcome.percentile:.2f}, class {outcome.within_class:.2f}"
    foods = "; ".join(f"{food.words}: {_short(food.best)}" for food in outcome.foods)
    return f"{outcome.fact.key} ({places}): {foods}"


def _short(match: Match) -> str:
    return f"{match.wine.removeprefix('wine/')} {match.score:+.1f} {match.verdict}"


def path_text(match: Match, count: int = PATH_SHOWN) -> str:
    """The strongest effects of a match, rule by rule."""
    shown = match.path[:count]
    return ", ".join(f"{e.rule.removeprefix('rule/')} {e.effect:+.1f}" for e in shown)


def table(outcomes: Sequence[Outcome]) -> str:
    """The figures of each source and of all."""
    lines = [f"{'rows':>4} {'fair':>5} {'any':>5} {'place':>6} {'class':>6}  source"]
    lines += [_row(figures(group), source) for source, group in by_source(outcomes).items()]
    return "\n".join([*lines, _row(figures(outcomes), "all")])


def _row(f: Figures, source: str) -> str:
    return f"{f.rows:4} {f.fair:5.2f} {f.any_style:5.2f} {f.percentile:6.2f} {f.within_class:6.2f}  {source}"


def report(judge: Judge) -> str:
    """The whole report: figures by source, misses with their paths, bad and contested rows."""
    good, bad = judge.outcomes("good"), judge.outcomes("bad")
    missed = [o for o in good if not o.fair]
    contested = [*judge.outcomes("good", contested=True), *judge.outcomes("bad", contested=True)]
    parts = {
        "Foods not read": "\n".join(judge.unread()),
        "Good pairs": table(good),
        "Good pairs, read in the source": table([o for o in good if not o.fact.recalled]),
        "Good pairs below fair": misses(missed),
        "Paths of these": "\n".join(_paths(o) for o in missed),
        "Lowest in the ranking": lowest(good),
        "Bad pairs that are fair or better": liked_bad(bad),
        "Contested rows": "\n".join(f"{o.fact.relation}: {_line(o)}" for o in contested),
    }
    return "\n\n".join(f"{title}\n{text or '(none)'}" for title, text in parts.items())


def _paths(outcome: Outcome) -> str:
    missed = (food for food in outcome.foods if not food.liked)
    return "\n".join(f"{f.words} × {_short(f.best)}: {path_text(f.best)}" for f in missed)


if __name__ == "__main__":
    print(report(Judge()))
