"""The one sanitiser on every way out: nothing that steers a terminal or a reading direction passes."""

from __future__ import annotations

import unicodedata
from typing import Any

_KEPT = {"\n", "\t"}
_STEERING = {"Cc", "Cf", "Cs", "Co", "Zl", "Zp"}


def safe(text: str) -> str:
    """The text without control, format and bidi characters; new lines and tabs stay."""
    if text.isprintable():  # the usual case, and quick: nothing of the categories below is printable
        return text
    return "".join(c for c in text if c in _KEPT or unicodedata.category(c) not in _STEERING)


def safe_record(value: Any) -> Any:
    """The same for every string inside a JSON-like value."""
    if isinstance(value, str):
        return safe(value)
    if isinstance(value, dict):
        return {safe_record(k): safe_record(v) for k, v in value.items()}
    if isinstance(value, list | tuple):
        return [safe_record(v) for v in value]
    return value
