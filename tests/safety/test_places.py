"""Places where nothing can be written or read: one clear line, the old bytes as they were."""

from __future__ import annotations

import os
import resource
from collections.abc import Callable
from pathlib import Path

import pytest

from assistant.evening import kept
from assistant.evening.kept import folder
from assistant.session import Session
from tests.conftest import Run
from tests.users import NOBODY, can_become

SAVE = "save it as friday"
OLD = b'title = "old"\n'
SAID = "on the table tonight: brie, salami and a Malbec"
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
@pytest.mark.parametrize("command", [["plan"], ["ask", "brie", "--evening"]], ids=["plan", "ask"])
def test_evening_that_is_no_plain_file(
    goeswith: Run, tmp_path: Path, spoil: Spoil, command: list[str]
) -> None:
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
    table.ask(f"{SAID} and a Chablis")
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


@pytest.mark.skipif(not can_become(), reason="only root can become another user, where there is one")
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
