"""Files changed whole or not at all, by one program at a time.

`held` takes the lock beside a file; `write_whole` returns only when the new file and its name are on the
disk. Only what `write_whole` itself left behind, and only after LEFT_SECONDS, is ever removed.
"""

from __future__ import annotations

import errno
import os
import re
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from assistant.knowledge.problems import Problem

PATIENCE = 10.0
"""Seconds to wait for another program that holds the lock."""
LEFT_SECONDS = 600.0
"""Age in seconds from which a draft belongs to a save that was killed."""
_DRAFT = ".part"
_REASONS = {
    errno.ENOSPC: ("the disk is full", "Free some space and say it again"),
    errno.EDQUOT: ("the disk quota is used up", "Free some space and say it again"),
    errno.EFBIG: ("the file may not grow that large", "Lift the limit on file sizes and say it again"),
    errno.EACCES: ("it may not be written", "Allow writing in its folder, or name a file elsewhere"),
    errno.EPERM: ("it may not be written", "Allow writing in its folder, or name a file elsewhere"),
    errno.EROFS: ("its disk can only be read", "Name a file elsewhere"),
    errno.EISDIR: ("a folder stands in its place", "Name a file"),
    errno.ENOENT: ("its folder does not exist", "Make the folder, or name a file elsewhere"),
    errno.ENOTDIR: ("its folder is a file", "Name a file elsewhere"),
}


PRIVATE = 0o600


class UnsettledError(OSError):
    """The new file has its place, but the system did not confirm that it will keep it after a power cut."""


@contextmanager
def held(target: Path, patience: float = PATIENCE) -> Iterator[None]:
    """Holds the lock beside a file. Raises TimeoutError, or OSError where no lock can be made."""
    from filelock import FileLock  # here, because most programs never lock anything

    os.stat(f"{target.parent}/.")  # FileLock would make the folder
    with FileLock(f"{target}.lock", timeout=patience, mode=0o600):
        yield


def write_whole(target: Path, data: bytes, mode: int = PRIVATE) -> None:
    """Puts the bytes in the place of a file. Raises OSError and leaves the old file as it was.

    `UnsettledError`, where it has its place and only the power must not fail.
    """
    handle, draft = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}-", suffix=_DRAFT)
    try:
        with os.fdopen(handle, "wb") as out:
            out.write(data)
            out.flush()
            os.fsync(out.fileno())
        os.chmod(draft, mode)
        os.replace(draft, target)
    except BaseException:
        Path(draft).unlink(missing_ok=True)
        raise
    try:
        sync_folder(target.parent)
    except OSError as error:
        raise UnsettledError(error.errno, error.strerror) from error


def sync_folder(folder: Path) -> None:
    """Waits until the names in a folder are on the disk, where the system can do that."""
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def make_folder(folder: Path) -> None:
    """Makes a folder of the user's own, and those above it, so that they last. Raises OSError."""
    missing = [one for one in (folder, *folder.parents) if not one.exists()]
    for one in reversed(missing):
        one.mkdir(mode=0o700, exist_ok=True)
        sync_folder(one.parent)


def clear_drafts(target: Path) -> None:
    """Removes old drafts that killed saves of this very file left beside it."""
    ours = re.compile(rf"\.{re.escape(target.name)}-[A-Za-z0-9_]+{re.escape(_DRAFT)}")
    for found in target.parent.iterdir():
        if ours.fullmatch(found.name) and _is_old(found):
            found.unlink(missing_ok=True)


def _is_old(file: Path) -> bool:
    try:
        return file.is_file() and time.time() - file.lstat().st_mtime > LEFT_SECONDS
    except OSError:
        return False


def unsaved(target: Path, error: Exception) -> Problem:
    """What to say where nothing was saved."""
    source = str(target)
    if isinstance(error, TimeoutError):
        remedy = f"Close the other one, or wait, and say it again (the lock beside it is {target.name}.lock)."
        return Problem(source, "nothing was saved: another goeswith is holding the file.", remedy)
    if isinstance(error, UnsettledError):
        what = f"it was written, but the disk did not confirm it ({error.strerror})."
        return Problem(source, what, "Say it again; it will not stand there twice.")
    number = getattr(error, "errno", None)
    why, remedy = _REASONS.get(
        number or 0, (getattr(error, "strerror", None) or str(error), "Mend that and say it again")
    )
    return Problem(source, f"nothing was saved: {why}.", f"{remedy}; what was there is unchanged.")
