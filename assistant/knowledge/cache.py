"""Keeps what is worked out from files as JSON in the user's cache folder, keyed by their content.

Two programs at once are safe: a file is written whole and renamed. A damaged or foreign file
is ignored and rebuilt. Nothing in it is ever executed.
"""

from __future__ import annotations

import hashlib
import json
import os
import tempfile
from collections.abc import Callable, Iterable
from contextlib import suppress
from pathlib import Path
from typing import Any, TypeVar

import platformdirs

from assistant import __version__

Built = TypeVar("Built")
KEPT = 3  # files of one name


def content_key(files: Iterable[Path]) -> str:
    """A key that changes with the name or content of any of the files, and with the version."""
    key = hashlib.sha256(__version__.encode())
    for file in files:
        key.update(file.name.encode() + b"\0" + _bytes(file) + b"\0")
    return key.hexdigest()[:24]


def text_key(text: str) -> str:
    """A key that changes with a text, and with the version."""
    return hashlib.sha256(__version__.encode() + b"\0" + text.encode()).hexdigest()[:24]


def cached(name: str, key: str, build: Callable[[], Built], folder: Path | None = None) -> Built:
    """What `build` returns (JSON-like), from the cache when `key` is the same as last time."""
    folder = folder or Path(platformdirs.user_cache_dir("goeswith", appauthor=False))
    target = folder / f"{name}-{key}.json"
    found: Built | None = _read(target)
    if found is None:
        found = build()
        _write(target, name, found)
    return found


def _bytes(file: Path) -> bytes:
    try:
        return file.read_bytes()
    except OSError:
        return b"unreadable"


def _read(target: Path) -> Any:
    try:
        if not target.is_file():
            return None
        with target.open("rb") as file:
            seal, body = file.readline(), file.read()
    except OSError:
        return None
    if seal.rstrip(b"\n") != hashlib.sha256(body).hexdigest().encode() or not body.isascii():
        return None
    text = body.decode("ascii")
    del body  # two copies of it at once are what a start needs most memory for
    with suppress(ValueError, RecursionError):
        return json.loads(text)
    return None


def _write(target: Path, name: str, built: object) -> None:
    """Writes the file whole or not at all: a cache that cannot be written only costs time."""
    try:
        body = json.dumps(built, separators=(",", ":")).encode("ascii")  # wider characters double its size
    except TypeError:  # TOML has dates, which JSON has not
        return
    seal = hashlib.sha256(body).hexdigest().encode("ascii")
    with suppress(OSError):
        target.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        handle, part = tempfile.mkstemp(dir=target.parent, prefix=f".{name}-")
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(seal + b"\n" + body)
            os.replace(part, target)
        except OSError:
            Path(part).unlink(missing_ok=True)
            raise
        _forget_others(target, name)


def _forget_others(target: Path, name: str) -> None:
    """Removes all but the newest: where two versions take turns, each finds its own again."""
    found = sorted(target.parent.glob(f"{name}-*.json"), key=_written_at, reverse=True)
    for old in found[KEPT:]:
        if old != target:
            old.unlink(missing_ok=True)


def _written_at(file: Path) -> float:
    try:
        return file.stat().st_mtime
    except OSError:  # another program has removed it meanwhile
        return 0.0
