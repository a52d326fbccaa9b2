"""The bytes of a notebook: a head, blocks with a guard each, and a seal over all of it in the last line.

Turtle that was cut short can still parse, so whether a file is whole is told by its seal alone. The
guards then tell which blocks of an unsound file can still be trusted.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from hashlib import sha256
from itertools import accumulate

from assistant.knowledge.problems import Problem
from assistant.notebook.block import PREFIXES

KEEP = (
    "Put back a sound copy, or export what can be read to a new file and go on with that; "
    "until then nothing is saved into this one."
)
BEGINNING = "# goeswith notebook, format "
_FORMAT = re.compile(rb"# goeswith notebook, format ([1-9][0-9]{0,3})\. [^\n]*\n")
_GUARD = re.compile(rb"\A(.+)\n# guard ([0-9a-f]{16})", re.DOTALL)
_SEAL = re.compile(rb"# goeswith notebook, format (\d+): (\d+) statements?, sha256 ([0-9a-f]{64})\n")
_GAP = b"\n\n"


@dataclass(frozen=True, slots=True)
class Pages:
    """What of a file can be trusted: its format, the blocks with their first lines, and what is wrong."""

    version: int
    blocks: tuple[tuple[int, bytes], ...]
    problems: tuple[Problem, ...]


def head(version: int) -> bytes:
    """The first lines of a file of a format."""
    told = (
        "what the host told. Not to be edited: a changed line is found by its guard and the seal at the end."
    )
    return f"# goeswith notebook, format {version}. This is {told}\n{PREFIXES}".encode()


def whole(version: int, blocks: Sequence[bytes]) -> bytes:
    """A whole new file."""
    return _sealed(version, _GAP.join([head(version), *map(_guarded, blocks)]) + _GAP, len(blocks))


def longer(old: bytes, version: int, count: int, blocks: Sequence[bytes]) -> bytes:
    """A sound file of `count` statements grown: its bytes but the seal, the new blocks, a new seal."""
    kept = old[: old.rindex(_GAP) + len(_GAP)]
    return _sealed(version, kept + b"".join(_guarded(one) + _GAP for one in blocks), count + len(blocks))


def _guarded(block: bytes) -> bytes:
    return block + b"\n# guard " + _short(block)


def _short(block: bytes) -> bytes:
    return sha256(block).hexdigest()[:16].encode()


def _sealed(version: int, data: bytes, count: int) -> bytes:
    plural = "" if count == 1 else "s"
    digest = sha256(data).hexdigest()
    return (
        data + f"# goeswith notebook, format {version}: {count} statement{plural}, sha256 {digest}\n".encode()
    )


def pages(data: bytes, source: str, newest: int) -> Pages:
    """Takes a file apart. Whatever is unsound is left out and stands among the problems with its line."""
    found = _FORMAT.match(data)
    version = int(found[1]) if found else 0
    if not found or version > newest:
        return Pages(version, (), (_foreign(data, source, version),))
    (_, first), *middle, (line, end) = [*_chunks(data), *([] if _GAP in data else [(1, b"")])]
    blocks = [(at, _trusted(chunk)) for at, chunk in middle]
    unsound = [1] * (first != head(version)) + [at for at, one in blocks if one is None]
    last = _trusted(end.rstrip(b"\n"))  # a file that was cut just behind a block
    sound = tuple((at, one) for at, one in [*blocks, (line, last)] if one is not None)
    seal = _SEAL.fullmatch(end)
    problems = [_changed(source, at) for at in unsound]
    if not seal:
        problems.append(_cut(source, line + (end.count(b"\n") if last else 0)))
    elif not problems and not _seals(seal, data[: -len(end)], version, len(sound)):
        problems.append(_unlike(source, line))
    return Pages(version, sound, tuple(problems))


def _chunks(data: bytes) -> list[tuple[int, bytes]]:
    """What stands between empty lines, with the number of its first line."""
    chunks = data.split(_GAP)
    lines = accumulate((chunk.count(b"\n") + 2 for chunk in chunks), initial=1)
    return list(zip(lines, chunks, strict=False))


def _trusted(chunk: bytes) -> bytes | None:
    """The block, where its guard vouches for it."""
    found = _GUARD.fullmatch(chunk)
    return found[1] if found and _short(found[1]) == found[2] else None


def _seals(seal: re.Match[bytes], above: bytes, version: int, count: int) -> bool:
    return (int(seal[1]), int(seal[2]), seal[3].decode()) == (version, count, sha256(above).hexdigest())


def _foreign(data: bytes, source: str, version: int) -> Problem:
    if version:
        what = f"this notebook is of format {version}, which is newer than this program."
        return Problem(source, what, "Install the newest goeswith; the file is left as it is.", 1)
    what = "the file is empty." if not data else "this does not begin as a notebook does."
    return Problem(source, what, KEEP, 1)


def _changed(source: str, line: int) -> Problem:
    what = "from here to the next empty line it is not as it was saved: it was changed, cut or damaged."
    return Problem(source, what, KEEP, line)


def _cut(source: str, line: int) -> Problem:
    return Problem(
        source, "from here on it is not as it was saved: the end is missing or damaged.", KEEP, line
    )


def _unlike(source: str, line: int) -> Problem:
    what = "the last line does not fit what stands above it: something was taken out, put in or changed."
    return Problem(source, what, KEEP, line)
