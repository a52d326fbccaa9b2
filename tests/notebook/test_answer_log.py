"""The log of answers: what is noted is read again, and a spoilt line spoils no other."""

from __future__ import annotations

import json
import os
import resource
import subprocess
import sys
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest
from filelock import FileLock
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.notebook import Entry, log_place, note_answer, read_log
from assistant.notebook.answer_log import line_of
from tests.conftest import ROOT

WHEN = datetime(2026, 5, 1, 19, 30, tzinfo=UTC)
ONE = Entry(WHEN, "what goes with brie", "wines", ("food/brie", "wine/sancerre"), "good")


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """Where a log is to be."""
    return tmp_path / "answers.jsonl"


def test_missing_log_is_empty_and_is_not_made(file: Path) -> None:
    assert (read_log(file).entries, read_log(file).problems) == ((), ())
    assert not file.exists()


def test_default_place_is_the_users_data_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    assert note_answer(ONE) == ()
    assert log_place() == tmp_path / "data" / "goeswith" / "answers.jsonl"
    assert read_log().entries == (ONE,)


def test_entries_are_read_again_in_their_order(file: Path) -> None:
    told = tuple(replace(ONE, question=f'{n} "quoted"\nand é') for n in range(5))
    for one in told:
        assert note_answer(one, file) == ()
    assert read_log(file) == type(read_log(file))(told)
    assert file.stat().st_mode & 0o777 == 0o600
    assert all(json.loads(line)["intent"] == "wines" for line in file.read_text().splitlines())


def test_hostile_words_are_cleaned(file: Path) -> None:
    assert note_answer(replace(ONE, question="x\x1b]52;c;y\x07\u202e"), file) == ()
    assert read_log(file).entries[0].question == "x]52;c;y"


def test_cut_at_every_byte_spoils_the_last_line_alone(file: Path) -> None:
    lines = [line_of(replace(ONE, question=f"question {n}")) for n in range(3)]
    data = b"".join(lines)
    ends = {len(b"".join(lines[:n])) for n in range(4)}
    for length in range(len(data)):
        file.write_bytes(data[:length])
        found = read_log(file)
        assert len(found.entries) == data[:length].count(b"\n")
        assert [p.line for p in found.problems] == (
            [] if length in ends else [data[:length].count(b"\n") + 1]
        )


def test_entry_behind_a_cut_line_is_sound_and_old_bytes_stay(file: Path) -> None:
    cut = line_of(ONE) + line_of(ONE)[:40]
    file.write_bytes(cut)
    assert note_answer(replace(ONE, question="after"), file) == ()
    found = read_log(file)
    assert [one.question for one in found.entries] == [ONE.question, "after"]
    assert [problem.line for problem in found.problems] == [2]
    assert file.read_bytes().startswith(cut)


@settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.data())
def test_any_changed_byte_of_a_line_is_seen_and_spoils_no_other(file: Path, data: st.DataObject) -> None:
    lines = [line_of(replace(ONE, question=f"question {n}")) for n in range(3)]
    at = data.draw(st.integers(0, len(lines[1]) - 2))
    byte = data.draw(st.integers(0, 255).filter(lambda byte: byte not in (lines[1][at], 10)))
    lines[1] = lines[1][:at] + bytes([byte]) + lines[1][at + 1 :]
    file.write_bytes(b"".join(lines))
    found = read_log(file)
    assert [one.question for one in found.entries] == ["question 0", "question 2"]
    assert [problem.line for problem in found.problems] == [2]


@settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.binary(max_size=600))
def test_any_bytes_are_read_without_a_fault(file: Path, data: bytes) -> None:
    file.write_bytes(data)
    assert read_log(file).entries == ()


@pytest.mark.parametrize("line", [b"[" * 50000, b"{}", b'{"check": 1}', b"null", b"1" * 70000])
def test_harmful_lines_are_unsound(file: Path, line: bytes) -> None:
    file.write_bytes(line + b"\n" + line_of(ONE))
    assert read_log(file).entries == (ONE,)
    assert [problem.line for problem in read_log(file).problems] == [1]


def test_entry_without_zone_or_end_is_refused(file: Path) -> None:
    assert "offset" in note_answer(replace(ONE, time=WHEN.replace(tzinfo=None)), file)[0].message
    assert "longer" in note_answer(replace(ONE, question="x" * 70000), file)[0].message
    assert not file.exists()


def test_held_lock_is_told(file: Path) -> None:
    with FileLock(f"{file}.lock"):
        assert "another goeswith" in note_answer(ONE, file, patience=0.1)[0].message


def test_log_that_may_not_grow_stays_as_it_was(file: Path) -> None:
    note_answer(ONE, file)
    before = file.read_bytes()
    pid = os.fork()
    if not pid:
        try:
            resource.setrlimit(resource.RLIMIT_FSIZE, (len(before) + 9, len(before) + 9))
            os._exit(0 if "may not grow" in note_answer(ONE, file)[0].message else 1)
        finally:
            os._exit(70)
    assert os.waitstatus_to_exitcode(os.waitpid(pid, 0)[1]) == 0
    assert file.read_bytes() == before


WRITER = """
import sys
from pathlib import Path
from dataclasses import replace
from tests.notebook.test_answer_log import ONE
from assistant.notebook import note_answer
for count in range(200):
    assert note_answer(replace(ONE, question=f"{sys.argv[2]} {count}"), Path(sys.argv[1]), 60) == ()
"""


def test_two_writers_lose_nothing(file: Path) -> None:
    command = [sys.executable, "-c", WRITER, str(file)]
    writers = [subprocess.Popen([*command, name], cwd=ROOT) for name in ("Ann", "Bo")]
    assert [writer.wait(timeout=120) for writer in writers] == [0, 0]
    found = read_log(file)
    assert found.problems == ()
    expected = {f"{name} {count}" for name in ("Ann", "Bo") for count in range(200)}
    assert {one.question for one in found.entries} == expected
    assert len(found.entries) == 400
