"""The one sanitiser on every way out: nothing that steers a terminal or a reading direction passes."""

from __future__ import annotations

import re
import unicodedata
from typing import Any

_KEPT = {"\n", "\t"}
_STEERING = {"Cc", "Cf", "Cs", "Co", "Zl", "Zp"}
# What is drawn as nothing and is of no category above (Default_Ignorable_Code_Point of the Unicode standard):
# words can be hidden in it. The two selectors that choose between a sign and its emoji stay.
UNSEEN = re.compile(
    "[\u034f\u115f\u1160\u17b4\u17b5\u180b-\u180f\u2065\u3164\ufe00-\ufe0d\uffa0\ufff0-\ufff8\U000e0000-\U000e0fff]"
)


def safe(text: str) -> str:
    """The text without control, format, bidi and unseen characters; new lines and tabs stay."""
    if text.isascii() and text.isprintable():  # the usual case, and quick
        return text
    seen = UNSEEN.sub("", text)
    if seen.isprintable():  # nothing of the categories above is printable
        return seen
    return "".join(c for c in seen if c in _KEPT or unicodedata.category(c) not in _STEERING)


def safe_line(text: str) -> str:
    """The same on one line: what stands in a sentence must not begin a line that looks like ours."""
    return safe(" ".join(text.split()))


def safe_record(value: Any) -> Any:
    """The same as `safe` for every string inside a JSON-like value."""
    if isinstance(value, str):
        return safe(value)
    if isinstance(value, dict):
        return {safe_record(k): safe_record(v) for k, v in value.items()}
    if isinstance(value, list | tuple):
        return [safe_record(v) for v in value]
    return value
