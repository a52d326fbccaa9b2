"""`goeswith plan FILE --handout OUT.html`: where it writes, what it refuses, that nothing is lost."""

from __future__ import annotations

import errno
import json
import os
import sys
from pathlib import Path

import pytest

from assistant.handout import write as writing
from assistant.handout.write import HandoutError, target, write
from assistant.knowledge.files import corpus_dir
from tests.conftest import Run

QUAY = corpus_dir() / "evenings" / "quay-house.toml"
OLD = "what stood there before"


@pytest.fixture
def dated(tmp_path: Path) -> str:
    """The example, held far enough in the future for its start not to be past."""
    file = tmp_path / "dated.toml"
    file.write_text(QUAY.read_text("utf-8").replace("2027-", "2999-"), "utf-8")
    return str(file)


def test_it_writes_and_says_where(goeswith: Run, dated: str, tmp_path: Path) -> None:
    out = tmp_path / "sheets.html"
    out.write_text(OLD)
    done = goeswith("plan", dated, "--handout", str(out))
    assert (done.returncode, done.stderr) == (0, "")
    assert str(out) in done.stdout
    assert "Quay House tasting" in out.read_text("utf-8")
    assert sorted(p.name for p in tmp_path.iterdir()) == ["dated.toml", "sheets.html"]


def test_json_stays_one_object(goeswith: Run, dated: str, tmp_path: Path) -> None:
    done = goeswith("plan", dated, "--json", "--handout", "sheets.HTM")
    assert (done.returncode, done.stderr) == (0, "")
    assert json.loads(done.stdout)["title"] == "Quay House tasting"
    assert done.stdout.count("\n") == 1
    assert (tmp_path / "sheets.HTM").exists()


def test_a_plan_with_problems_is_written_and_names_them(goeswith: Run, dated: str, tmp_path: Path) -> None:
    odd = Path(dated)
    odd.write_text(odd.read_text("utf-8").replace("guests = 12", "gests = 12"), "utf-8")
    done = goeswith("plan", dated, "--handout", "sheets.html")
    assert done.returncode == 1
    for told in (done.stdout, (tmp_path / "sheets.html").read_text("utf-8")):
        assert "gests" in told
    assert "Did you mean" in done.stdout


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("sheets.txt", "ends in .html"),
        ("sheets", "ends in .html"),
        ("nowhere/sheets.html", "no folder"),
        ("folder.html", "is a folder"),
        ("loop.html", "no usable place"),
        ("link.html", "ends in .html"),
        ("read-only.html", "read-only"),
        ("a" * 300 + ".html", "no usable place"),
    ],
)
def test_refused_in_one_sentence(goeswith: Run, dated: str, tmp_path: Path, name: str, told: str) -> None:
    _obstacles(tmp_path)
    before = {p.name: p.is_file() and p.read_bytes() for p in tmp_path.iterdir()}
    done = goeswith("plan", dated, "--handout", name)
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.count("\n") == 1
    assert told in done.stderr
    assert "Traceback" not in done.stderr
    assert {p.name: p.is_file() and p.read_bytes() for p in tmp_path.iterdir()} == before


def _obstacles(folder: Path) -> None:
    (folder / "folder.html").mkdir()
    (folder / "loop.html").symlink_to("loop.html")
    (folder / "notes.txt").write_text(OLD)
    (folder / "link.html").symlink_to("notes.txt")
    (folder / "read-only.html").write_text(OLD)
    (folder / "read-only.html").chmod(0o444)


def test_an_unreadable_evening_leaves_the_old_sheets(goeswith: Run, tmp_path: Path) -> None:
    (tmp_path / "odd.toml").write_text("x = ")
    (tmp_path / "sheets.html").write_text(OLD)
    done = goeswith("plan", "odd.toml", "--handout", "sheets.html")
    assert (done.returncode, done.stdout, done.stderr.count("\n")) == (2, "", 1)
    assert (tmp_path / "sheets.html").read_text() == OLD


@pytest.mark.parametrize("step", ["fsync", "replace"])
@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EROFS, errno.EIO])
def test_a_full_or_broken_disk_leaves_the_old_sheets(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, step: str, number: int
) -> None:
    file = tmp_path / "sheets.html"
    file.write_text(OLD)

    def fails(*_: object) -> None:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(writing.os, step, fails)
    with pytest.raises(HandoutError, match=os.strerror(number)):
        write(file, "new")
    assert file.read_text() == OLD
    assert list(tmp_path.iterdir()) == [file]


@pytest.mark.skipif(sys.platform == "win32", reason="limits of a process are set otherwise there")
def test_a_write_cut_short_leaves_the_old_sheets(tmp_path: Path) -> None:
    """A process that may write a thousand bytes only, as a full disk would let it."""
    import subprocess

    file = tmp_path / "sheets.html"
    file.write_text(OLD)
    code = (
        "import resource, sys; resource.setrlimit(resource.RLIMIT_FSIZE, (1000, 1000))\n"
        "from pathlib import Path; from assistant.handout.write import HandoutError, write\n"
        "try:\n    write(Path(sys.argv[1]), 'x' * 100000)\nexcept HandoutError as error:\n    print(error)"
    )
    done = subprocess.run(
        [sys.executable, "-B", "-c", code, str(file)], capture_output=True, encoding="utf-8"
    )
    assert "cannot be written" in done.stdout
    assert file.read_text() == OLD
    assert list(tmp_path.iterdir()) == [file]


def test_a_link_is_followed_to_its_file(tmp_path: Path) -> None:
    real, link = tmp_path / "real.html", tmp_path / "link.html"
    real.write_text(OLD)
    real.chmod(0o640)
    link.symlink_to(real)
    write(target(link), "new")
    assert link.is_symlink()
    assert real.read_text() == "new"
    assert real.stat().st_mode & 0o777 == 0o640


def test_a_link_to_nothing_makes_its_file(tmp_path: Path) -> None:
    link = tmp_path / "link.html"
    link.symlink_to(tmp_path / "new.html")
    write(target(link), "new")
    assert (tmp_path / "new.html").read_text() == "new"


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="there are no pipes with a name here")
def test_a_pipe_is_no_place(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.html")
    with pytest.raises(HandoutError, match="no plain file"):
        target(tmp_path / "pipe.html")


def test_a_name_of_dots_and_a_null_are_no_place(tmp_path: Path) -> None:
    for name in ("\0.html", ".html"):
        with pytest.raises(HandoutError):
            target(tmp_path / name)


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="root may write anywhere")
def test_a_folder_that_may_not_be_written(tmp_path: Path) -> None:
    tmp_path.chmod(0o555)
    try:
        with pytest.raises(HandoutError, match="cannot be written"):
            write(tmp_path / "sheets.html", "new")
    finally:
        tmp_path.chmod(0o755)
