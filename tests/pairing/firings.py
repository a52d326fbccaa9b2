"""What fires, one by one: the product works all plates and glasses out at once, tests look at single ones."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple

import numpy as np

from assistant.knowledge.store import Knowledge
from assistant.pairing.columns import Columns, glass_columns, plate_columns
from assistant.pairing.glass import Glass
from assistant.pairing.plate import Plate
from assistant.pairing.rules import Fired, RuleRunner
from assistant.pairing.score import Score, Sums


class Firing(NamedTuple):
    """One rule that held for one plate and wine: strength 0-1, and a cap if it is a veto."""

    rule: str
    plate: str
    wine: str
    strength: float
    cap: float | None


def ran(runner: RuleRunner, plates: Mapping[str, Plate], glasses: Iterable[Glass]) -> list[Firing]:
    """All firings for these plates (by key) and glasses, rule by rule."""
    down, across = plate_columns(plates), glass_columns(glasses)
    return [one for fired in runner.run(down, across) for one in listed(fired, down, across)]


def listed(fired: Fired, plates: Columns, glasses: Columns) -> Iterator[Firing]:
    """The single firings of a rule."""
    for row, at in np.argwhere(fired.strength > 0).tolist():
        cap = None if fired.cap is None else float(fired.cap[row, at])
        plate, wine = plates.keys[fired.rows[row]], glasses.keys[fired.across[at]]
        yield Firing(fired.rule, plate, wine, float(fired.strength[row, at]), cap)


def scored(
    plates: Mapping[str, Plate], wines: Sequence[str], firings: Iterable[Firing], knowledge: Knowledge
) -> dict[tuple[str, str], Score]:
    """The scores of plates with wines for which just these rules fired."""
    down, across = plate_columns(plates), Columns(wines, [{}] * len(wines), [{}] * len(wines))
    fired = [_alone(firing, down, across) for firing in firings]
    return Sums(down, across, fired, knowledge).scores()


def _alone(firing: Firing, plates: Columns, glasses: Columns) -> Fired:
    rows, across = (np.array([keys.index(key)]) for keys, key in _places(firing, plates, glasses))
    cap = None if firing.cap is None else np.array([[firing.cap]])
    return Fired(firing.rule, rows, across, np.array([[firing.strength]]), cap, ())


def _places(firing: Firing, plates: Columns, glasses: Columns) -> list[tuple[tuple[str, ...], str]]:
    return [(plates.keys, firing.plate), (glasses.keys, firing.wine)]
