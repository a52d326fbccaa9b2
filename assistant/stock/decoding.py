"""The bytes of a list -> its text. Few encodings come into question, and each can be told from the others.

UTF-16 by its mark or its zero bytes; UTF-8 because hardly anything else is valid UTF-8; else Windows-1252,
in which spreadsheets of Western Europe and America save. So no library has to guess.
"""

from __future__ import annotations

import codecs
from pathlib import Path

from assistant.knowledge.problems import KnowledgeError
from assistant.notebook.reading import read_bytes
from assistant.stock.words import problem, stock_words

_MARKS = ((codecs.BOM_UTF8, "utf-8"), (codecs.BOM_UTF16_LE, "utf-16-le"), (codecs.BOM_UTF16_BE, "utf-16-be"))
_LOOKED_AT = 1000
_MANY = 0.3


def text_of(file: Path) -> str:
    """The text of a file. Raises KnowledgeError where it cannot be read or is no text."""
    try:
        data = read_bytes(file, stock_words().limits["bytes"])
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise KnowledgeError([problem(file.name, "no-file", reason=reason)]) from None
    text = decoded(data)
    if text is None:
        raise KnowledgeError([problem(file.name, "letters")])
    if "\0" in text:
        line = text.count("\n", 0, text.index("\0")) + 1
        raise KnowledgeError([problem(file.name, "nul", line)])
    return text


def decoded(data: bytes) -> str | None:
    """The text in these bytes without its mark, or None where no encoding fits."""
    for mark, encoding in _MARKS:
        if data.startswith(mark):
            return _as(data[len(mark) :], encoding)
    for encoding in (*_by_zeros(data), "utf-8", "cp1252"):
        text = _as(data, encoding)
        if text is not None:
            return text
    return None


def _by_zeros(data: bytes) -> tuple[str, ...]:
    """UTF-16 without a mark: every other byte of most letters is zero."""
    head = data[:_LOOKED_AT]
    odd, even = head[1::2], head[::2]
    if odd and odd.count(0) > _MANY * len(odd) and not even.count(0):
        return ("utf-16-le",)
    return ("utf-16-be",) if even and even.count(0) > _MANY * len(even) and not odd.count(0) else ()


def _as(data: bytes, encoding: str) -> str | None:
    try:
        return data.decode(encoding)
    except UnicodeDecodeError:
        return None
