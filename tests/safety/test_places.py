"""Places where nothing can be written or read: one clear line, the old bytes as they were, nothing left behind."""

from __future__ import annotations

import os
import resource
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from assistant.evening import kept
from assistant.evening.kept import folder
from assistant.handout.write import HandoutError, target, write
from assistant.knowledge.cache import cached
from assistant.knowledge.files import corpus_dir
from assistant.session import Session
from tests.conftest import ROOT, Run

SAVE = "save it as friday"
OLD = b'title = "old"\n'
SAID = "on the table tonight: brie, salami and a Malbec"
NOBODY = 65534
Spoil = Callable[[Path], None]


def _directory(place: Path) -> None:
    place.mkdir(parents=True)
    (place / "inside").write_bytes(OLD)


def _fifo(place: Path) -> None:
    place.parent.mkdir(parents=True, exist_ok=True)
    os.mkfifo(place)


def _full_device(place: Path) -> None:
    place.parent.mkdir(parents=True, exist_ok=True)
    place.symlink_to("/dev/full")


def _endless_device(place: Path) -> None:
    place.parent.mkdir(parents=True, exist_ok=True)
    place.symlink_to("/dev/zero")


def _circle(place: Path) -> None:
    place.parent.mkdir(parents=True, exist_ok=True)
    place.symlink_to(place.name)


def _no_folder(place: Path) -> None:
    place.parent.parent.mkdir(parents=True, exist_ok=True)
    place.parent.write_bytes(OLD)


IN_ITS_PLACE: dict[str, Spoil] = {
    "directory": _directory,
    "pipe": _fifo,
    "full device": _full_device,
    "endless device": _endless_device,
    "link to itself": _circle,
    "file for a folder": _no_folder,
}
SPOILT = pytest.mark.parametrize("spoil", IN_ITS_PLACE.values(), ids=IN_ITS_PLACE)


def one_line(error: str) -> bool:
    """Whether an error is one clear line, and no traceback."""
    return error.startswith("goeswith: ") and error.count("\n") == 1 and "Traceback" not in error


def apart(work: Callable[[], bool]) -> bool:
    """Does the work in a child of its own, and gives whether it went well."""
    pid = os.fork()
    if not pid:
        try:
            os._exit(0 if work() else 1)
        finally:
            os._exit(70)
    return os.waitstatus_to_exitcode(os.waitpid(pid, 0)[1]) == 0


def no_larger(bytes_: int) -> None:
    """Lets no file of this process grow beyond so many bytes."""
    resource.setrlimit(resource.RLIMIT_FSIZE, (bytes_, bytes_))


# --- read


@SPOILT
@pytest.mark.parametrize("command", [["plan"], ["check"], ["ask", "brie", "--evening"]], ids=["plan", "check", "ask"])
def test_evening_that_is_no_plain_file(goeswith: Run, tmp_path: Path, spoil: Spoil, command: list[str]) -> None:
    place = tmp_path / "in" / "odd.toml"
    spoil(place)
    done = goeswith(*command, str(place), timeout=60)
    assert (done.returncode, done.stdout) == (2, "")
    assert one_line(done.stderr), done.stderr


@SPOILT
def test_turtle_and_corpus_that_are_no_plain_files(goeswith: Run, tmp_path: Path, spoil: Spoil) -> None:
    place = tmp_path / "in" / "odd.ttl"
    spoil(place)
    for command in ("check", "evaluate"):
        done = goeswith(command, str(place), timeout=60)
        assert (done.returncode, done.stdout) == (2, "")
        assert one_line(done.stderr), done.stderr


@SPOILT
def test_notebook_that_is_no_plain_file(goeswith: Run, tmp_path: Path, spoil: Spoil) -> None:
    place = tmp_path / "in" / "notebook.ttl"
    spoil(place)
    done = goeswith("ask", "--notebook", str(place), "remember that brie is mild", timeout=60)
    assert done.stdout.strip()
    assert "Traceback" not in done.stderr


# --- evenings kept by talk


@pytest.fixture
def table(session: Session, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Session:
    """A conversation with a table laid, and a data folder of its own."""
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    session.new_conversation()
    session.ask(SAID)
    return session


def refused(session: Session) -> str:
    """What is said where the table was not kept."""
    answer = session.ask(SAVE)
    assert not answer.understood
    assert answer.text.count("\n") <= 1
    return answer.text


def test_evening_is_kept_and_replaced_whole(table: Session) -> None:
    file = folder() / "friday.toml"
    assert table.ask(SAVE).understood
    first = file.read_bytes()
    table.ask("and a Chablis")
    assert table.ask(SAVE).understood
    assert file.read_bytes() != first
    assert [one.name for one in file.parent.iterdir()] == ["friday.toml"]


@pytest.mark.parametrize("name", ["directory", "file for a folder"])
def test_evening_that_cannot_be_kept(table: Session, name: str) -> None:
    file = folder() / "friday.toml"
    IN_ITS_PLACE[name](file)
    assert refused(table)
    left = file if name == "directory" else file.parent
    assert (left / "inside" if name == "directory" else left).read_bytes() == OLD


@pytest.mark.parametrize("name", ["pipe", "full device", "endless device", "link to itself"])
def test_evening_takes_the_place_of_what_is_no_file(table: Session, name: str) -> None:
    """A link is not followed out of the folder: the name is given to the new file."""
    file = folder() / "friday.toml"
    IN_ITS_PLACE[name](file)
    assert table.ask(SAVE).understood
    assert file.is_file()
    assert not file.is_symlink()


@pytest.mark.parametrize("name", ["directory", "pipe", "full device", "endless device", "link to itself"])
def test_evening_that_is_no_file_is_not_loaded(table: Session, name: str) -> None:
    IN_ITS_PLACE[name](folder() / "friday.toml")
    answer = table.ask("load friday")
    assert not answer.understood
    assert answer.say.strip()


def test_evening_on_a_full_disk(table: Session) -> None:
    assert table.ask(SAVE).understood
    file = folder() / "friday.toml"
    before = file.read_bytes()
    table.ask("and a Chablis, olives and almonds")

    def work() -> bool:
        no_larger(len(before) // 2)
        return bool(refused(table))

    assert apart(work)
    assert file.read_bytes() == before
    assert [one.name for one in file.parent.iterdir()] == ["friday.toml"]


@pytest.mark.skipif(os.geteuid() != 0, reason="only root can become another user")
def test_evening_in_a_folder_that_can_only_be_read(table: Session) -> None:
    assert table.ask(SAVE).understood
    file = folder() / "friday.toml"
    before = file.read_bytes()
    for place in (file.parent, *list(file.parents)[1:5]):
        place.chmod(0o755)

    def work() -> bool:
        os.setuid(NOBODY)
        return bool(refused(table))

    assert apart(work)
    assert file.read_bytes() == before


def test_names_of_strange_files_are_not_told(table: Session) -> None:
    folder().mkdir(parents=True)
    (folder() / "zq\x1b[2J\nFORGED.toml").write_bytes(OLD)
    assert all(name == kept.slug(name) for name in kept.kept())
    assert "FORGED" not in table.ask("load zqxv").text


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
    start = "import resource as r, runpy, sys; r.setrlimit(r.RLIMIT_FSIZE, (8, 8)); sys.argv = sys.argv[:1] + {!r}; "
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
    for arguments in (["ask", "brie"], ["ask", "--json", "brie"], ["--version"], ["--help"]):
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
