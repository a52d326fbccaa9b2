"""Nothing is asked of a network: the system calls of whole runs show no socket of the internet's kinds."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from assistant.knowledge.files import corpus_dir
from tests.conftest import ROOT

DEMO = str(corpus_dir() / "evenings" / "quay-house.toml")
TALK = "brie\nwhy?\nplan it\nI'm pregnant, is the brie safe?\nhttp://127.0.0.1:9/x goes\nload quay house\n"
FETCHING = """@base <http://127.0.0.1:9/x> .
@prefix owl: <http://www.w3.org/2002/07/owl#> .
@prefix sh: <http://www.w3.org/ns/shacl#> .
<> owl:imports <http://127.0.0.1:9/x> ; sh:shapesGraph <http://127.0.0.1:9/shapes> .
"""
RUNS: dict[str, tuple[tuple[str, ...], str]] = {
    "ask": (("ask", "what goes with garlic cheddar"), ""),
    "plan": (("plan", DEMO, "--handout", "sheets.html"), ""),
    "check": (("check", DEMO, "own.ttl"), ""),
    "chat": (("--evening", DEMO, "--notebook", "n.ttl"), TALK),
}


def traced(arguments: tuple[str, ...], typed: str, folder: Path, environment: dict[str, str]) -> list[str]:
    """The system calls of a run and of all it started that make or join a socket."""
    trace = folder / "trace"
    command = ["strace", "-f", "-qq", "-e", "trace=socket,connect", "-o", str(trace), sys.executable]
    done = subprocess.run(
        [*command, "-m", "assistant", *arguments], input=typed, capture_output=True, encoding="utf-8",
        cwd=folder, timeout=300, env=environment,
    )  # fmt: skip
    if not trace.exists() or "ptrace" in done.stderr:
        pytest.skip("strace may not attach to a process here")
    assert done.stdout.strip()
    return trace.read_text().splitlines()


@pytest.mark.skipif(shutil.which("strace") is None, reason="strace is not installed")
@pytest.mark.parametrize("name", RUNS)
def test_no_socket_of_the_internet(name: str, tmp_path: Path, environment: dict[str, str]) -> None:
    (tmp_path / "own.ttl").write_text(FETCHING)
    calls = traced(*RUNS[name], tmp_path, environment)
    assert [call for call in calls if "AF_INET" in call] == []


@pytest.mark.skipif(shutil.which("strace") is None, reason="strace is not installed")
def test_the_trace_sees_a_socket(tmp_path: Path) -> None:
    trace, code = tmp_path / "trace", "import socket; socket.socket().close()"
    subprocess.run(
        ["strace", "-f", "-qq", "-e", "trace=socket", "-o", str(trace), sys.executable, "-c", code], cwd=ROOT
    )
    if not trace.exists() or not trace.read_text():
        pytest.skip("strace may not attach to a process here")
    assert "AF_INET" in trace.read_text()
