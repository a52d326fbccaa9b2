"""How far a rule weight may go from the judged one, read from reference/calibration.toml."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from assistant.knowledge.concepts import Rule

REFERENCE = Path(__file__).parent.parent / "reference"
SETTINGS = REFERENCE / "calibration.toml"
PREFIX = "rule/"


@dataclass(frozen=True, slots=True)
class Search:
    """What a fit tries and what a change must earn; prices and gains in units of the objective."""

    multipliers: list[float]
    short_list: int
    rounds: int
    price: float
    least_gain: float


@dataclass(frozen=True, slots=True)
class Settings:
    """Factors by confidence, judged weights in points by rule, what to raise, how, and how close is close."""

    factors: Mapping[str, float]
    judged: Mapping[str, float]
    objective: Mapping[str, float]
    search: Search
    close: float

    def bounds(self, rule: Rule) -> tuple[float, float]:
        """Lowest and highest weight in points; raises KeyError for a rule without a judged weight."""
        judged, factor = self.judged[rule.id], self.factors[rule.confidence]
        low, high = sorted((judged / factor, judged * factor))
        return low, high

    def allows(self, rule: Rule, multiplier: float) -> bool:
        """Whether a multiple of the weight keeps to the bounds."""
        low, high = self.bounds(rule)
        return low <= rule.weight * multiplier <= high


def read_settings(file: Path = SETTINGS) -> Settings:
    """Bounds and search as the file has them."""
    with file.open("rb") as handle:
        table: dict[str, Any] = tomllib.load(handle)
    judged = {PREFIX + name: weight for name, weight in table["judged"].items()}
    search, close = Search(**table["search"]), table["target"]["close"]
    return Settings(table["factor"], judged, table["objective"], search, close)


def refusals(rules: Mapping[str, Rule], settings: Settings) -> list[str]:
    """One sentence for each weight that is out of bounds, has no judged weight, or names no rule."""
    found = [_refusal(rule, settings) for rule in rules.values()]
    gone = [f"{name} has a judged weight but is no rule." for name in settings.judged if name not in rules]
    return [sentence for sentence in found if sentence] + gone


def _refusal(rule: Rule, settings: Settings) -> str:
    if rule.id not in settings.judged:
        missing = f"{rule.id} weighs {rule.weight:g} and has no judged weight in {SETTINGS.name}."
        return missing if rule.weight else ""
    if settings.allows(rule, 1.0):
        return ""
    low, high = settings.bounds(rule)
    return f"{rule.id} weighs {rule.weight:g}, which is not between {low:.3g} and {high:.3g}."
