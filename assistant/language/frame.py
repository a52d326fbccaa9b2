"""What was read: frozen records that pass from stage to stage."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from assistant.language.cues import Cue
from assistant.pairing.dish import Dish


@dataclass(frozen=True, slots=True)
class Reading:
    """A part of the question that was used. `start` and `end` are token positions (end exclusive)."""

    text: str
    kind: str
    label: str
    id: str
    type: str
    start: int
    end: int
    corrected_from: str | None = None
    others: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Preference:
    """A limit on the wines: a property with its range in points or units, or a kind or home.

    `among`: the kind of wine it is about; other wines keep to it.
    """

    label: str
    property: str
    low: float | None = None
    high: float | None = None
    wanted: str | None = None
    banned: bool = False
    among: str | None = None


def labels_of(limits: Iterable[Preference]) -> list[str]:
    """What the limits are called, each once: one word may ask for several things (`fruity`)."""
    return list(dict.fromkeys(limit.label for limit in limits))


@dataclass(frozen=True, slots=True)
class Text:
    """A question as typed, with all that was recognised in it and what was left out.

    `entries`: turns of phrase that name a popular claim or a trouble, the surest first; `elsewhere`: where
    words stand for something else than what they name.
    """

    typed: str
    words: tuple[str, ...]
    stems: tuple[str, ...]
    readings: tuple[Reading, ...]
    cues: frozenset[str]
    left_out: tuple[str, ...]
    topics: tuple[str, ...] = ()
    entries: tuple[Cue, ...] = ()
    notes: tuple[str, ...] = ()
    elsewhere: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True)
class Frame:
    """A question understood. `dishes` are bites in order; `wines` are style or kind ids.

    `because`: the traits of the text that spoke for the intent, strongest first; `again`: gone back,
    the intent that is answered once more; `entries`: ids of the popular claims and troubles meant, the surest
    first; `nearest`: where none is known, those that share most words with what was typed; `barred`: foods
    and kinds that are not to be on the table, `diets`: ids of the diets to keep to;
    `anywhere`: not only what is on the table is meant; `after`: what of after an evening is asked for.
    """

    intent: str
    text: Text
    dishes: tuple[Dish, ...] = ()
    wines: tuple[str, ...] = ()
    preferences: tuple[Preference, ...] = ()
    terms: tuple[str, ...] = ()
    topics: tuple[str, ...] = ()
    numbers: Mapping[str, float] = field(default_factory=dict)
    depth: int = 1
    another: bool = False
    named_before: tuple[str, ...] = ()
    before: tuple[Dish, ...] = ()
    follows: bool = False
    because: tuple[str, ...] = ()
    again: str = ""
    entries: tuple[str, ...] = ()
    nearest: tuple[str, ...] = ()
    barred: tuple[str, ...] = ()
    diets: tuple[str, ...] = ()
    anywhere: bool = False
    after: str = ""
