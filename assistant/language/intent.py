"""Which question it is: what its words speak for, and an ordered table of signatures for short ones.

Both are data: corpus/language/evidence.tsv and corpus/language/intents.toml.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from assistant.language.data import read_data
from assistant.language.evidence import Evidence
from assistant.language.frame import Text

SAFETY, UNCLEAR, JUDGE = "safety", "unclear", "judge-pair"


@dataclass(frozen=True, slots=True)
class Signature:
    """What a question has: cue names and how many of each kind of thing."""

    cues: frozenset[str]
    wines: int
    foods: int
    terms: int
    preferences: int
    standing: bool
    generic: bool = False
    bare: bool = False
    names_only: bool = False
    fragment: bool = False

    @property
    def short(self) -> bool:
        """Whether it is a bare follow-up, or no more than a fragment."""
        return self.fragment or (self.standing and self.bare)

    def counts(self) -> dict[str, int]:
        """How many of each kind of thing, by name."""
        return {"wines": self.wines, "foods": self.foods, "terms": self.terms, "limits": self.preferences}


@dataclass(frozen=True, slots=True)
class Deciding:
    """The table, and who decides when.

    A question with a safety topic is about safety unless another intent leads by more than `safety_lead`;
    one without is about safety only where that leads by `safety_doubt`, and what the table understands is
    unclear only where that leads by `unclear_doubt`.
    Of a fragment or short follow-up the table decides, where words and table both say one of `by_table`.
    """

    rows: Sequence[Mapping[str, Any]]
    safety_lead: float
    safety_doubt: float
    unclear_doubt: float
    by_table: frozenset[str]


@dataclass(frozen=True, slots=True)
class Choice:
    """The intent, and the traits of the text that spoke for it, strongest first (none: the table did)."""

    intent: str
    because: tuple[str, ...] = ()


def read_intents(file: Path) -> Deciding:
    """The table and the settings of a TOML file. Raises KnowledgeError for a broken one."""
    return read_data(file, _deciding)


def _deciding(tables: Mapping[str, Any]) -> Deciding:
    rows = [{"intent": row["intent"], **row} for row in tables["row"]]
    return Deciding(
        rows,
        float(tables["safety-lead"]),
        float(tables["safety-doubt"]),
        float(tables["unclear-doubt"]),
        frozenset(tables["by-table"]),
    )


def choose(text: Text, signature: Signature, deciding: Deciding, evidence: Evidence) -> Choice:
    """The intent of a question."""
    row = decide(signature, deciding.rows)
    if signature.names_only:
        return Choice(row)
    traits = evidence.traits(text, signature.counts(), signature.standing)
    sums = evidence.sums(traits)
    intent = max(sorted(sums), key=lambda name: sums[name], default=row)
    if intent == SAFETY and SAFETY not in signature.cues:
        intent = _unless_doubtful(sums, deciding.safety_doubt)
    if intent == UNCLEAR and sums[UNCLEAR] - sums.get(row, 0.0) < deciding.unclear_doubt:
        intent = row
    if SAFETY in signature.cues and sums.get(intent, 0.0) - sums.get(SAFETY, 0.0) <= deciding.safety_lead:
        intent = SAFETY
    speaks = signature.standing and (row == UNCLEAR or intent == JUDGE)  # `does it go with the brie?`
    if signature.short and not speaks and {intent, row} <= deciding.by_table:
        return Choice(row)
    return Choice(intent, evidence.because(traits, intent))


def _unless_doubtful(sums: Mapping[str, float], doubt: float) -> str:
    """Safety where no topic is recognised, if it leads by so much; else what follows it."""
    others = {name: weight for name, weight in sums.items() if name != SAFETY}
    second = max(sorted(others), key=lambda name: others[name])
    return SAFETY if sums[SAFETY] - others[second] >= doubt else second


def decide(signature: Signature, rows: Sequence[Mapping[str, Any]]) -> str:
    """The intent of the first row that holds; the table's last row holds always."""
    return next(str(row["intent"]) for row in rows if _holds(row, signature))


def _holds(row: Mapping[str, Any], has: Signature) -> bool:
    if not has.cues.issuperset(row.get("cue", ())) or has.cues.intersection(row.get("without", ())):
        return False
    if "any" in row and not has.cues.intersection(row["any"]):
        return False
    for name in ("standing", "generic", "bare"):
        if row.get(name, getattr(has, name)) != getattr(has, name):
            return False
    return all(
        row.get(name, 0) <= count <= row.get(f"max_{name}", count)
        for name, count in (
            ("wines", has.wines),
            ("foods", has.foods),
            ("terms", has.terms),
            ("preferences", has.preferences),
        )
    )
