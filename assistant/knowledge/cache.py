"""Keeps the digest as JSON in the user's cache folder, keyed by the content of the files.

Two programs at once are safe: a file is written whole and renamed. A damaged or
foreign file is ignored and rebuilt. Nothing in it is ever executed.
"""

from __future__ import annotations

import hashlib
import json
import os
import tempfile
from collections.abc import Iterable
from pathlib import Path
from typing import Any

import platformdirs

from assistant import __version__
from assistant.knowledge.digest import Digest, read_digest


def cached_digest(files: list[Path], folder: Path | None = None) -> Digest:
    """The digest of `files`, from the cache when their content is unchanged."""
    folder = folder or Path(platformdirs.user_cache_dir("goeswith", appauthor=False))
    target = folder / f"digest-{_content_key(files)}.json"
    found = _read(target)
    if found is not None:
        return found
    digest = read_digest(files)
    _write(target, digest)
    return digest


def _content_key(files: Iterable[Path]) -> str:
    key = hashlib.sha256(__version__.encode())
    for file in files:
        key.update(file.name.encode())
        key.update(_bytes(file))
    return key.hexdigest()[:24]


def _bytes(file: Path) -> bytes:
    try:
        return file.read_bytes()
    except OSError:
        return b"unreadable"


def _read(target: Path) -> Digest | None:
    try:
        raw = target.read_bytes()
    except OSError:
        return None
    seal, _, body = raw.partition(b"\n")
    if seal.decode("ascii", "replace") != hashlib.sha256(body).hexdigest():
        return None
    found: Digest = json.loads(body)
    return found


def _write(target: Path, digest: dict[str, Any]) -> None:
    body = json.dumps(digest, ensure_ascii=False, separators=(",", ":")).encode()
    seal = hashlib.sha256(body).hexdigest().encode("ascii")
    try:
        target.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=target.parent, prefix=".digest-")
        with os.fdopen(handle, "wb") as file:
            file.write(seal + b"\n" + body)
        os.replace(name, target)
        _forget_others(target)
    except OSError:
        return  # a cache that cannot be written only costs time


def _forget_others(target: Path) -> None:
    for old in target.parent.glob("digest-*.json"):
        if old != target:
            old.unlink(missing_ok=True)
