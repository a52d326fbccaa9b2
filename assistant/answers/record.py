"""The answer record: every field of the published JSON, and nothing that is only for show."""

from __future__ import annotations

from dataclasses import asdict, dataclass, field
from typing import Any


@dataclass(frozen=True, slots=True)
class PathEntry:
    """One effect of a rule path; the effects of a path add up to the item's score."""

    rule: str
    label: str
    effect: float
    because: str
    source: str
    source_kind: str
    values: dict[str, float]


@dataclass(frozen=True, slots=True)
class Item:
    """A wine, drink or food with its signed score, verdict and rule path; `bottles` of the host's list."""

    id: str
    label: str
    kind: str
    groups: tuple[str, ...]
    score: float
    verdict: str
    path: tuple[PathEntry, ...]
    wine: dict[str, Any] | None = None
    bottles: tuple[dict[str, Any], ...] = ()


@dataclass(frozen=True, slots=True)
class Answer:
    """What a question gets back. `say` is spoken, `text` printed; the rest is for programs.

    `also`: the records of further questions in the line; `left_for_next`: those not answered yet;
    `voices`: what the host taught of the same things; `expected`: questions that guests are likely to ask;
    `private`: whether it tells of health, or of what a guest must not have, so that no file keeps its words.
    """

    question: str
    intent: str
    say: str
    text: str
    read_as: tuple[dict[str, Any], ...] = ()
    left_out: tuple[str, ...] = ()
    dish: dict[str, Any] | None = None
    picks: tuple[Item, ...] = ()
    avoid: tuple[Item, ...] = ()
    verdict: str | None = None
    figures: dict[str, dict[str, Any]] = field(default_factory=dict)
    cautions: tuple[dict[str, str], ...] = ()
    clarify: str | None = None
    other_colour: Item | None = None
    tied: tuple[str, ...] = ()
    also: tuple[dict[str, Any], ...] = ()
    left_for_next: tuple[str, ...] = ()
    voices: tuple[dict[str, Any], ...] = ()
    expected: tuple[dict[str, Any], ...] = ()
    seconds: float = 0.0
    understood: bool = True
    private: bool = False

    def as_json(self) -> dict[str, Any]:
        """The record as JSON-ready values; `understood` decides the exit code, `private` what is kept."""
        record = asdict(self)
        del record["understood"], record["private"]
        return record
