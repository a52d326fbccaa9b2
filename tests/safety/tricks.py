"""Tricks that text can play on whoever reads it, and how to see that none got through."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

FORGED = "FORGED"
"""What a trick with line ends would have stand at the start of a line of its own."""
TRICKS = {
    "clipboard": "\x1b]52;c;Zm9v\x07",
    "screen wiped": "\x1b[2J\x1b[H",
    "title": "\x1b]0;owned\x1b\\",
    "link": "\x1b]8;;http://example.org\x07here\x1b]8;;\x07",
    "C1 sequence": "\x9b31m",
    "C1 clipboard": "\x9d52;c;Zm9v\x9c",
    "device control": "\x90q\x9c",
    "override": "\u202eeirb\u202c",
    "isolate": "\u2066brie\u2069\u2067",
    "marks of direction": "\u200e\u200f\u061c",
    "return": f"brie\r{FORGED}",
    "new line": f"brie\n{FORGED}: strong.\n",
    "both": f"brie\r\n{FORGED}: strong.\r\n",
    "vertical": f"brie\x0b{FORGED}\x0c{FORGED}",
    "next line": f"brie\x85{FORGED}",
    "separators": f"brie\u2028{FORGED}\u2029{FORGED}",
    "file separators": f"brie\x1c{FORGED}\x1d{FORGED}\x1e{FORGED}",
    "zero width": "br\u200bi\u200ce\u200d\u2060\ufeff",
    "soft hyphen": "br\u00adie",
    "tags": "\U000e0001\U000e0068\U000e0069\U000e007f",
    "selectors": "b\ufe00\ufe01\U000e0100\U000e01ef",
    "fillers": "b\u3164\u115f\u1160\uffa0",
    "joiner": "b\u034f\u17b4\u180b\u180e",
    "annotation": "\ufff9brie\ufffa\ufffb",
    "backspace": "good\x08\x08\x08\x08bad\x7f",
    "null": "brie\x00",
    "private": "\ue000\U000f0000",
    "invisible operators": "b\u2061\u2062\u2063\u2064\u2065",
}
MARKUP = "</td><script>alert(1)</script>\"'><img src=x onerror=alert(1)>&lt;"
_UNSEEN = re.compile(
    "[\u034f\u115f\u1160\u17b4\u17b5\u180b-\u180f\u2065\u3164\ufe00-\ufe0d\uffa0\ufff0-\ufff8\U000e0000-\U000e0fff]"
)
_STEERING = {"Cc", "Cf", "Cs", "Co", "Zl", "Zp"}


def slipped(printed: str) -> list[str]:
    """What of any trick stands in a text that was printed: characters by name, and lines that were forged."""
    found = {c for c in printed if c not in "\n\t" and unicodedata.category(c) in _STEERING}
    found |= set(_UNSEEN.findall(printed))
    named = sorted(f"U+{ord(c):04X} {unicodedata.name(c, '')}" for c in found)
    return named + [line for line in printed.split("\n") if line.strip(" \"'").startswith(FORGED)]


def escaped(text: str) -> str:
    """The text between the quotation marks of a TOML string."""
    return "".join(_escape(c) for c in text)


def _escape(character: str) -> str:
    plain = character.isprintable() and character not in '\\"'
    return character if plain else f"\\U{ord(character):08x}"


def each(before: str = "", behind: str = "") -> Iterator[tuple[str, str]]:
    """Every trick by name, with words around it."""
    yield from ((name, f"{before}{trick}{behind}") for name, trick in TRICKS.items())
