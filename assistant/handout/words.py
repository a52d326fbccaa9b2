"""The words of the sheets, from corpus/planning/handout/words.toml, and how dates and numbers are written."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import datetime
from functools import lru_cache
from pathlib import Path
from typing import Any

from assistant.answers.wording import Wording, listed, span
from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data, telling


def folder() -> Path:
    """Where words, settings and templates of the sheets lie."""
    return corpus_dir() / "planning" / "handout"


@lru_cache(maxsize=1)
def say() -> Wording:
    """The sentences of the sheets."""
    return Wording(folder() / "words.toml")


def moment(at: str | None, template: str = "date") -> str:
    """`Friday 12 February 2027, 19:00` of an ISO 8601 moment; `template` "day" leaves out the time."""
    if at is None:
        return say()("page", "undated")
    when = datetime.fromisoformat(at)
    weekday, month = _name("weekdays", when.weekday()), _name("months", when.month - 1)
    day = {"day": when.day, "month": month, "year": when.year, "weekday": weekday}
    return say()("page", template, time=f"{when:%H:%M}", **day)


def _name(kind: str, at: int) -> str:
    return say()("calendar", kind).split()[at]


@lru_cache(maxsize=1)
def principles() -> tuple[str, ...]:
    """What guests may try out, a sentence each."""
    return tuple(read_data(folder() / "words.toml", lambda t: [str(row["say"]) for row in t["principle"]]))


@lru_cache(maxsize=1)
def _shorter() -> Mapping[str, str]:
    return read_data(folder() / "words.toml", lambda tables: dict(tables["short"]))


def short(allergens: Iterable[str]) -> list[str]:
    """Allergens as cards name them."""
    return [_shorter().get(name, name) for name in allergens]


def contents(has: Iterable[str], may: Iterable[str], shortly: bool = True) -> str:
    """`milk; check the label for soya`, of the allergens present and unknown."""
    present, unknown = (listed(short(names) if shortly else list(names)) for names in (has, may))
    if not present:
        return say()("guest", "may", may=unknown) if unknown else say()("guest", "none-known")
    return say()("guest", "holds", has=present, may=unknown) if unknown else present


def money(amount: float | None, currency: str | None) -> str:
    """`18.00 USD`; nothing where there is no price."""
    return "" if amount is None else f"{amount:.2f} {currency or ''}".rstrip()


def fahrenheit(celsius: float) -> float:
    """Degrees Fahrenheit, whole. NIST SP 811, B.9: exactly 1.8 times degrees Celsius and 32."""
    return float(round(celsius * 1.8 + 32.0))


def together(low: float, high: float) -> str:
    """`8 to 10`, never broken at the end of a line."""
    return span(low, high).replace(" ", "\u00a0")


def data(key: str) -> Any:
    """A table of settings.toml. Raises KnowledgeError where it is missing."""
    file = folder() / "settings.toml"
    with telling(file):
        return _settings()[key]


@lru_cache(maxsize=1)
def _settings() -> Mapping[str, Any]:
    return read_data(folder() / "settings.toml", dict)
