"""Fixtures that every test may use; caches and history of the tests stay out of the user's own folders."""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from subprocess import CompletedProcess, run

import pytest

from assistant.knowledge.files import ontology_dir
from assistant.session import Session

ROOT = Path(__file__).resolve().parent.parent
FOLDERS = ("XDG_CACHE_HOME", "XDG_DATA_HOME")
USUAL = dict(os.environ)
PATIENCE = 60.0

Run = Callable[..., CompletedProcess[str]]


def pytest_configure(config: pytest.Config) -> None:
    """Gives the whole run, and every program it starts, a cache and data folder of its own."""
    config.own_folder = tempfile.mkdtemp(prefix="goeswith-tests-")  # type: ignore[attr-defined]
    for name in FOLDERS:
        os.environ[name] = str(Path(config.own_folder, name.lower()))  # type: ignore[attr-defined]


def pytest_unconfigure(config: pytest.Config) -> None:
    """Takes the folder away again."""
    shutil.rmtree(config.own_folder, ignore_errors=True)  # type: ignore[attr-defined]


@pytest.fixture(scope="session")
def usual_environment() -> dict[str, str]:
    """The environment as it was before the tests took folders of their own."""
    return dict(USUAL)


@pytest.fixture(scope="session")
def session() -> Session:
    """One session on the shipped knowledge for all tests that ask single questions."""
    return Session()


@pytest.fixture
def conversation(session: Session) -> Session:
    """The same session with nothing said before."""
    session.new_conversation()
    session.top = 3
    return session


@pytest.fixture
def cache_folder(tmp_path: Path) -> Path:
    """A cache folder that nobody else uses; it does not exist yet."""
    return tmp_path / "cache"


@pytest.fixture
def knowledge_copy(tmp_path: Path) -> Path:
    """A copy of the shipped Turtle files that a test may break."""
    return Path(shutil.copytree(ontology_dir(), tmp_path / "ontology"))


@pytest.fixture(scope="session")
def environment() -> dict[str, str]:
    """The environment of a program started from outside the checkout."""
    return {**os.environ, "PYTHONPATH": str(ROOT), "COLUMNS": "80", "PYTHONIOENCODING": "utf-8"}


@pytest.fixture
def goeswith(tmp_path: Path, environment: dict[str, str]) -> Run:
    """Runs the command line as a program of its own, in an empty folder."""

    def start(
        *arguments: str, typed: str = "", timeout: float = PATIENCE, **variables: str
    ) -> CompletedProcess[str]:
        return run(
            [sys.executable, "-m", "assistant", *arguments],
            input=typed,
            capture_output=True,
            encoding="utf-8",
            timeout=timeout,
            cwd=tmp_path,
            env=environment | variables,
        )

    return start
