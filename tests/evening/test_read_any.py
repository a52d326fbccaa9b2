"""Whatever stands in an evening file, it is told and never raised."""

from __future__ import annotations

import tomllib
from datetime import datetime
from pathlib import Path
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.evening.numbers import numbers
from assistant.knowledge.problems import KnowledgeError
from assistant.session import Session
from tests.evening.test_read import GOOD, NOW, read

slow = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])

VALUES: Any = st.one_of(
    st.integers(), st.floats(), st.booleans(), st.text(max_size=20), st.datetimes(), st.none(),
    st.lists(st.text(max_size=5), max_size=2), st.just({"a": 1}),
)  # fmt: skip


def toml(value: Any) -> str:
    """A value as TOML writes it; what it cannot write becomes bare nonsense."""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, datetime):
        return value.isoformat()
    if isinstance(value, dict):
        return "{ a = 1 }"
    if isinstance(value, list):
        return f"[{', '.join(map(toml, value))}]"
    return '"' + value.replace("\\", "").replace('"', "") + '"' if isinstance(value, str) else str(value)


def parses(text: str) -> bool:
    """Whether a text is still TOML."""
    try:
        tomllib.loads(text.lstrip("\ufeff").replace("\r", "\n"))
    except tomllib.TOMLDecodeError:
        return False
    return True


KEYS = ("title", "start", "guests", "non_drinkers", "meal", "pour_ml", "budget", "currency", "choose",
        "room_celsius", "wines", "foods", "needs", "measured", "odd")  # fmt: skip


def told(text: str, folder: Path, session: Session) -> list[str]:
    """The problems of a file with this text, planned or not."""
    try:
        found: list[str] = numbers(read(text, folder, session), session, now=NOW)["problems"]
    except KnowledgeError as error:
        return [str(problem) for problem in error.problems]
    return found


@slow
@given(fields=st.dictionaries(st.sampled_from(KEYS), VALUES, max_size=6))
def test_any_value_is_told_never_raised(tmp_path: Path, session: Session, fields: dict[str, Any]) -> None:
    """Whatever stands in the file, there is a problem: at the least, no wines are listed."""
    text = "\n".join(f"{key} = {toml(value)}" for key, value in fields.items())
    assert told(text, tmp_path, session)


@slow
@given(at=st.integers(0, len(GOOD)), junk=st.text(max_size=8), cut=st.integers(0, 20))
def test_a_damaged_file_is_told_never_raised(
    tmp_path: Path, session: Session, at: int, junk: str, cut: int
) -> None:
    text = GOOD[:at] + junk + GOOD[at + cut :]
    problems = told(text, tmp_path, session)
    assert all("evening.toml" in problem for problem in problems)
    assert problems or parses(text)
