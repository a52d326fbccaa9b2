"""Handout, cache, the whole program where nothing can be written: one clear line, old bytes kept."""

from __future__ import annotations

import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.handout.write import HandoutError, target, write
from assistant.knowledge.cache import cached
from assistant.knowledge.files import corpus_dir
from tests.conftest import ROOT
from tests.safety.test_places import IN_ITS_PLACE, OLD, SAID, SAVE, SPOILT, Spoil, apart, no_larger, one_line

# --- the handout


@SPOILT
def test_handout_where_no_file_can_be(tmp_path: Path, spoil: Spoil) -> None:
    place = tmp_path / "in" / "sheets.html"
    spoil(place)
    with pytest.raises(HandoutError) as caught:
        write(target(place), "<p>new</p>")
    assert "\n" not in str(caught.value)


def test_handout_on_a_full_disk(tmp_path: Path) -> None:
    place = tmp_path / "sheets.html"
    place.write_bytes(OLD)

    def work() -> bool:
        no_larger(100)
        with pytest.raises(HandoutError, match="cannot be written"):
            write(target(place), "x" * 10_000)
        return True

    assert apart(work)
    assert place.read_bytes() == OLD
    assert [one.name for one in tmp_path.iterdir()] == ["sheets.html"]


def test_handout_through_a_link(tmp_path: Path) -> None:
    there, link = tmp_path / "there.html", tmp_path / "link.html"
    there.write_bytes(OLD)
    link.symlink_to(there)
    write(target(link), "<p>new</p>")
    assert link.is_symlink()
    assert there.read_text() == "<p>new</p>"


# --- the cache


@pytest.mark.parametrize("name", [name for name in IN_ITS_PLACE if name != "file for a folder"])
def test_cache_that_is_no_plain_file(tmp_path: Path, name: str) -> None:
    IN_ITS_PLACE[name](tmp_path / "in" / "thing-key.json")
    assert apart(lambda: cached("thing", "key", lambda: [1], tmp_path / "in") == [1])


@pytest.mark.parametrize("body", [b"no json", b"[" * 200_000, b"\xff", b"9" * 5000, b"NaN x"])
def test_cache_with_a_seal_that_fits_and_nothing_sound_in_it(tmp_path: Path, body: bytes) -> None:
    from hashlib import sha256

    file = tmp_path / "thing-key.json"
    file.write_bytes(sha256(body).hexdigest().encode() + b"\n" + body)
    assert cached("thing", "key", lambda: [1], tmp_path) == [1]


def test_cache_on_a_full_disk(tmp_path: Path) -> None:
    def work() -> bool:
        no_larger(10)
        return cached("thing", "key", lambda: ["x" * 100], tmp_path) == ["x" * 100]

    assert apart(work)
    assert list(tmp_path.iterdir()) == []


# --- the whole program where nothing can be written


def limited(*arguments: str, typed: str, environment: dict[str, str]) -> subprocess.CompletedProcess[str]:
    """The program, unable to write a file of more than a few bytes; pipes are no files."""
    start = "import resource as r, runpy, sys; r.setrlimit(r.RLIMIT_FSIZE, (8, 8)); "
    start += "sys.argv = sys.argv[:1] + {!r}; "
    code = start.format(list(arguments)) + "runpy.run_module('assistant', run_name='__main__')"
    return subprocess.run(
        [sys.executable, "-c", code], input=typed, capture_output=True, encoding="utf-8",
        timeout=120, env=environment, cwd=ROOT,
    )  # fmt: skip


def test_nothing_can_be_written_at_all(tmp_path: Path, environment: dict[str, str]) -> None:
    own = environment | {"XDG_CACHE_HOME": str(tmp_path / "c"), "XDG_DATA_HOME": str(tmp_path / "d")}
    typed = f"brie\n{SAID}\n{SAVE}\nwhen I say the white one I mean brie\n"
    done = limited("ask", typed=typed, environment=own)
    assert (done.returncode, done.stderr) == (1, "")
    assert "may not grow that large" in done.stdout or "File too large" in done.stdout
    demo = str(corpus_dir() / "evenings" / "quay-house.toml")
    done = limited("plan", demo, "--handout", str(tmp_path / "s.html"), typed="", environment=own)
    assert done.returncode == 2
    assert one_line(done.stderr)
    assert not (tmp_path / "s.html").exists()


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="there is no /dev/full")
def test_standard_output_on_a_full_device(environment: dict[str, str]) -> None:
    for arguments in (["ask", "brie"], ["ask", "--json", "brie"]):
        with open("/dev/full", "w") as full:
            done = subprocess.run(
                [sys.executable, "-m", "assistant", *arguments], stdout=full, stderr=subprocess.PIPE,
                encoding="utf-8", timeout=120, env=environment,
            )  # fmt: skip
        assert done.returncode == 2, arguments
        assert one_line(done.stderr), done.stderr


@pytest.fixture
def closed_home(tmp_path: Path) -> Iterator[Path]:
    """A folder in which a file stands where each folder of the program would be."""
    for name in ("c", "d"):
        (tmp_path / name).write_bytes(OLD)
    yield tmp_path
    shutil.rmtree(tmp_path, ignore_errors=True)


def test_files_in_place_of_the_folders_of_the_program(closed_home: Path, environment: dict[str, str]) -> None:
    own = environment | {"XDG_CACHE_HOME": str(closed_home / "c"), "XDG_DATA_HOME": str(closed_home / "d")}
    done = subprocess.run(
        [sys.executable, "-m", "assistant", "ask"], input=f"brie\n{SAID}\n{SAVE}\nload zq\n",
        capture_output=True, encoding="utf-8", timeout=120, env=own,
    )  # fmt: skip
    assert "Traceback" not in done.stderr
    assert len(done.stdout.splitlines()) > 4
    assert (closed_home / "d").read_bytes() == OLD
