"""Saves that cannot be made: the old file stays byte for byte, and one sentence says why."""

from __future__ import annotations

import os
import resource
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from filelock import FileLock

from assistant.notebook import Saved, add, disk, load, place
from assistant.notebook.disk import LEFT_SECONDS
from tests.conftest import ROOT
from tests.notebook.made import filled, made, untouched
from tests.users import NOBODY, can_become


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """Where a notebook is to be, in a folder of its own."""
    folder = tmp_path / "folder"
    folder.mkdir()
    return folder / "notebook.ttl"


def refused(saved: Saved, why: str) -> bool:
    """Whether nothing was saved, for this reason, told in whole sentences."""
    (problem,) = saved.problems
    assert why in problem.message, problem
    return problem.message.endswith(".") and problem.remedy.endswith(".")


def apart(work: Callable[[], int]) -> int:
    """Does the work in a child and gives what it gave."""
    pid = os.fork()
    if not pid:
        try:
            os._exit(work())
        finally:
            os._exit(70)  # a test that fails in a child must not go on as a second run
    return os.waitstatus_to_exitcode(os.waitpid(pid, 0)[1])


def test_default_place_is_the_users_data_folder_and_is_made_by_a_save_only(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    assert load().statements == ()
    assert not (tmp_path / "data").exists()
    assert add(load(), made()).problems == ()
    assert place() == tmp_path / "data" / "goeswith" / "notebook.ttl"
    assert len(load().statements) == 1
    assert (tmp_path / "data" / "goeswith").stat().st_mode & 0o777 == 0o700


def test_file_and_lock_are_for_their_owner_alone(file: Path) -> None:
    filled(file)
    file.chmod(0o644)
    filled(file, made())
    assert file.stat().st_mode & 0o777 == 0o600
    assert file.with_name("notebook.ttl.lock").stat().st_mode & 0o077 == 0


def test_adding_nothing_or_the_same_again_changes_nothing(file: Path) -> None:
    one = made()
    notebook = filled(file, one)
    before = file.read_bytes()
    assert add(notebook) == Saved(notebook)
    assert add(load(file), one, one).problems == ()
    assert untouched(file, before)


def test_unfit_statement_is_not_saved(file: Path) -> None:
    from dataclasses import replace

    assert add(load(file), made(), replace(made(), said="")).problems
    assert not file.exists()


def test_bytes_and_name_are_on_the_disk_before_it_is_called_saved(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    filled(file)
    done: list[str] = []

    def watch(name: str) -> None:
        real = getattr(os, name)

        def watched(*arguments: object) -> None:
            done.append(name)
            real(*arguments)

        monkeypatch.setattr(os, name, watched)

    watch("fsync")
    watch("replace")
    assert add(load(file), made()).problems == ()
    assert done == ["fsync", "replace", "fsync"]


@pytest.mark.parametrize(("call", "at"), [("fsync", 1), ("replace", 1), ("fdopen", 2)])
def test_failing_call_leaves_the_old_file(
    file: Path, monkeypatch: pytest.MonkeyPatch, call: str, at: int
) -> None:
    notebook = filled(file)
    before, real, times = file.read_bytes(), getattr(os, call), iter(range(1, 9))

    def failing(*arguments: object, **more: object) -> object:
        if next(times) == at:
            raise OSError(28, "No space left on device")
        return real(*arguments, **more)

    monkeypatch.setattr(os, call, failing)
    assert refused(add(notebook, made()), "the disk is full")
    monkeypatch.undo()
    assert untouched(file, before)


def test_folder_that_is_not_confirmed_is_not_called_saved(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    notebook, one = filled(file), made()
    before = file.read_bytes()
    monkeypatch.setattr(disk, "sync_folder", lambda folder: (_ for _ in ()).throw(OSError(5, "I/O error")))
    assert refused(add(notebook, one), "did not confirm")
    monkeypatch.undo()
    assert add(notebook, one).problems == ()
    assert [told.id for told in load(file).statements].count(one.id) == 1
    assert file.read_bytes().startswith(before[: before.rindex(b"\n\n")])


def test_file_that_may_not_grow_stays_as_it_was(file: Path) -> None:
    notebook = filled(file)
    before = file.read_bytes()

    def work() -> int:
        resource.setrlimit(resource.RLIMIT_FSIZE, (len(before), len(before)))
        return 0 if refused(add(notebook, made()), "may not grow") else 1

    assert apart(work) == 0
    assert untouched(file, before)


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of 64 KB; only root can make one."""
    folder = tmp_path / "disk"
    folder.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", str(folder)]
    try:
        done = subprocess.run(mount, capture_output=True, timeout=20)
    except OSError:
        pytest.skip("there is no mount command")
    if done.returncode:
        pytest.skip("a small disk cannot be mounted here")
    yield folder
    subprocess.run(["umount", str(folder)], check=True, timeout=20)


def test_full_disk_leaves_the_old_file(small_disk: Path) -> None:
    file = small_disk / "notebook.ttl"
    notebook = filled(file)
    saved = Saved(notebook)
    for number in range(100):
        before = file.read_bytes()
        saved = add(saved.notebook, made(said=f"{number} " + "x" * 1900))
        if saved.problems:
            break
    assert refused(saved, "the disk is full")
    assert untouched(file, before)
    assert load(file).problems == ()


@pytest.mark.skipif(not can_become(), reason="only root can become another user, where there is one")
@pytest.mark.parametrize("exists", [True, False])
def test_folder_that_can_only_be_read(file: Path, exists: bool) -> None:
    notebook = filled(file) if exists else load(file)
    for folder in (file.parent, *list(file.parents)[1:4]):
        folder.chmod(0o755)

    def work() -> int:
        os.setuid(NOBODY)
        return 0 if refused(add(notebook, made()), "may not be written") else 1

    assert apart(work) == 0
    assert file.exists() == exists


@pytest.mark.skipif(not can_become(), reason="only root can become another user, where there is one")
def test_file_that_cannot_be_read_is_a_problem(file: Path) -> None:
    filled(file)

    def work() -> int:
        os.setuid(NOBODY)
        found = load(file)
        return 0 if "cannot be read" in found.problems[0].message and add(found, made()).problems else 1

    assert apart(work) == 0


def test_no_folder_is_told_and_not_made(tmp_path: Path) -> None:
    assert refused(add(load(tmp_path / "none" / "n.ttl"), made()), "folder does not exist")
    assert not (tmp_path / "none").exists()


def test_folder_in_its_place_is_told(file: Path) -> None:
    file.mkdir()
    assert "cannot be read" in load(file).problems[0].message
    assert refused(add(load(file), made()), "nothing was saved")


@pytest.mark.parametrize("name", ["pipe", "null\0", "x" * 300, "file/n.ttl"])
def test_strange_places_are_problems(tmp_path: Path, name: str) -> None:
    os.mkfifo(tmp_path / "pipe")
    (tmp_path / "file").touch()
    assert add(load(tmp_path / name), made()).problems


def test_link_is_followed_and_stays_a_link(file: Path, tmp_path: Path) -> None:
    link = tmp_path / "link.ttl"
    link.symlink_to(file)
    filled(link)
    assert link.is_symlink()
    assert len(load(file).statements) == 10
    filled(link, made())
    assert load(link).statements == load(file).statements
    assert [one.name for one in tmp_path.iterdir() if one.name.endswith((".lock", ".part"))] == []


def test_link_in_a_circle_is_told(tmp_path: Path) -> None:
    one, two = tmp_path / "one.ttl", tmp_path / "two.ttl"
    one.symlink_to(two)
    two.symlink_to(one)
    assert load(one).problems
    assert add(load(one), made()).problems


def test_old_drafts_of_killed_saves_are_removed_and_nothing_else(file: Path) -> None:
    names = (
        ".notebook.ttl-abc1_x.part",
        ".notebook.ttl-young.part",
        ".other.ttl-abc.part",
        ".notebook.ttl-a.b.part",
    )
    old = time.time() - LEFT_SECONDS - 5
    for name in names:
        (file.parent / name).touch()
        if "young" not in name:
            os.utime(file.parent / name, (old, old))
    filled(file)
    left = {one.name for one in file.parent.iterdir()} - {"notebook.ttl", "notebook.ttl.lock"}
    assert left == set(names[1:])


def test_held_lock_is_named_after_waiting(file: Path) -> None:
    notebook = filled(file)
    before = file.read_bytes()
    with FileLock(f"{file}.lock"):
        saved = add(notebook, made(), patience=0.1)
    assert refused(saved, "another goeswith is holding the file")
    assert "notebook.ttl.lock" in saved.problems[0].remedy
    assert untouched(file, before)


def test_file_beyond_the_largest_is_refused(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from assistant.notebook import reading, saving

    notebook = filled(file)
    before = file.read_bytes()
    monkeypatch.setattr(saving, "LARGEST", len(before) + 10)
    assert refused(add(notebook, made()), "larger than")
    assert untouched(file, before)
    with file.open("ab") as out:
        out.truncate(reading.LARGEST + 1)
    assert "larger than 50 MB" in load(file).problems[0].message


WRITER = """
import sys
from pathlib import Path
from assistant.notebook import add, load, stated

file, name, number = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3])
notebook = load(file)
for count in range(number):
    saved = add(notebook, stated("note", f"{name} {count}", name).statement, patience=60)
    assert not saved.problems, saved.problems
    notebook = saved.notebook
"""


def test_two_writers_lose_nothing(file: Path) -> None:
    command = [sys.executable, "-c", WRITER, str(file)]
    writers = [subprocess.Popen([*command, name, "200"], cwd=ROOT) for name in ("Ann", "Bo")]
    assert [writer.wait(timeout=120) for writer in writers] == [0, 0]
    found = load(file)
    assert found.problems == ()
    for name in ("Ann", "Bo"):
        told = [one.said for one in found.statements if one.author == name]
        assert told == [f"{name} {count}" for count in range(200)]
