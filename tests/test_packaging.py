"""The wheel: built, installed into a clean environment outside the checkout, and asked a question."""

from __future__ import annotations

import os
import subprocess
import sys
import sysconfig
import venv
import zipfile
from collections.abc import Sequence
from pathlib import Path

import pytest

import assistant
from tests.conftest import ROOT

pytestmark = pytest.mark.packaging

BUILD_SECONDS, ASK_SECONDS = 300.0, 60.0
QUESTION = "what goes with garlic cheddar"
NO_NETWORK = (
    "NewConnectionError",
    "NameResolutionError",
    "ConnectTimeoutError",
    "ProxyError",
    "Network is unreachable",
)
Output = subprocess.CompletedProcess[str]


def run(command: Sequence[str | Path], folder: Path, environment: dict[str, str], seconds: float) -> Output:
    """A program's output."""
    return subprocess.run(
        [str(part) for part in command],
        cwd=folder,
        env=environment,
        capture_output=True,
        encoding="utf-8",
        timeout=seconds,
    )


@pytest.fixture(scope="module")
def wheel(usual_environment: dict[str, str], tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel of the checkout; its build tool comes from the network unless it is kept."""
    folder = tmp_path_factory.mktemp("wheel")
    pip = (sys.executable, "-m", "pip", "--disable-pip-version-check", "--no-input", "--retries", "1")
    built = run(
        [*pip, "wheel", "--no-deps", "--wheel-dir", folder, ROOT], folder, usual_environment, BUILD_SECONDS
    )
    if built.returncode and any(sign in built.stderr for sign in NO_NETWORK):
        pytest.skip("the build tool cannot be fetched: no network")
    assert built.returncode == 0, built.stderr
    (found,) = folder.glob("goeswith-*.whl")
    return found


@pytest.fixture(scope="module")
def names(wheel: Path) -> list[str]:
    """The names of the files in the wheel."""
    with zipfile.ZipFile(wheel) as packed:
        return packed.namelist()


@pytest.fixture(scope="module")
def clean(
    wheel: Path, usual_environment: dict[str, str], tmp_path_factory: pytest.TempPathFactory
) -> tuple[Path, dict[str, str]]:
    """The programs of an environment with the wheel in it, and variables that add what it depends on.

    The dependencies are those that the tests run with; the checkout is not among them.
    """
    home = tmp_path_factory.mktemp("clean")
    venv.create(home / "venv", with_pip=True)
    programs = home / "venv" / ("Scripts" if sys.platform == "win32" else "bin")
    bare = {k: v for k, v in usual_environment.items() if k not in ("PYTHONPATH", "VIRTUAL_ENV")}
    python = programs / "python"
    install = [python, "-m", "pip", "install", "--no-deps", "--no-index", wheel]
    installed = run(install, home, bare, BUILD_SECONDS)
    assert installed.returncode == 0, installed.stderr
    where = [python, "-c", "import sysconfig; print(sysconfig.get_path('purelib'))"]
    own = run(where, home, bare, ASK_SECONDS).stdout.strip()
    folders = {name: str(home / name.lower()) for name in ("XDG_CACHE_HOME", "XDG_DATA_HOME")}
    return programs, bare | folders | {"PYTHONPATH": os.pathsep.join((own, sysconfig.get_path("purelib")))}


def test_wheel_is_named_after_package_and_version(wheel: Path) -> None:
    assert wheel.name == f"goeswith-{assistant.__version__}-py3-none-any.whl"


def test_wheel_holds_the_knowledge_and_the_corpus(names: list[str]) -> None:
    for folder in ("ontology", "corpus", "assistant"):
        files = [
            file.relative_to(ROOT)
            for file in (ROOT / folder).rglob("*")
            if file.is_file() and "__pycache__" not in file.parts
        ]
        assert files
        missing = {str(f if folder == "assistant" else Path("assistant") / f) for f in files} - set(names)
        assert missing == set(), folder


def test_wheel_holds_nothing_else(names: list[str]) -> None:
    tops = {name.split("/")[0] for name in names}
    assert tops == {"assistant", f"goeswith-{assistant.__version__}.dist-info"}
    unwanted = ("test", "__pycache__", ".pyc", ".venv")
    assert [name for name in names if any(part in name for part in unwanted)] == []


def test_wheel_holds_the_licence_and_the_program(wheel: Path, names: list[str]) -> None:
    assert any(name.endswith("licenses/LICENSE") for name in names)
    with zipfile.ZipFile(wheel) as packed:
        entry = next(name for name in names if name.endswith("entry_points.txt"))
        assert "goeswith = assistant.cli:main" in packed.read(entry).decode()
        metadata = packed.read(next(n for n in names if n.endswith("METADATA"))).decode()
    assert "An offline assistant for hosts" in metadata
    assert str(ROOT) not in metadata


def test_installed_program_answers_outside_the_checkout(
    clean: tuple[Path, dict[str, str]], tmp_path: Path
) -> None:
    programs, environment = clean
    done = run([programs / "goeswith", "ask", QUESTION], tmp_path, environment, ASK_SECONDS)
    assert (done.returncode, done.stderr) == (0, "")
    assert "I read: garlic cheddar." in done.stdout


def test_installed_program_reads_its_own_knowledge(
    clean: tuple[Path, dict[str, str]], tmp_path: Path
) -> None:
    programs, environment = clean
    code = (
        "import assistant; from assistant.knowledge.files import corpus_dir, ontology_dir; "
        "print(assistant.__file__, ontology_dir(), corpus_dir(), sep='\\n')"
    )
    done = run([programs / "python", "-c", code], tmp_path, environment, ASK_SECONDS)
    inside = str(programs.parent)
    assert [path for path in done.stdout.split() if not path.startswith(inside)] == []
    assert len(done.stdout.split()) == 3


def test_installed_program_has_the_version_of_the_checkout(
    clean: tuple[Path, dict[str, str]], tmp_path: Path
) -> None:
    programs, environment = clean
    done = run([programs / "goeswith", "--version"], tmp_path, environment, ASK_SECONDS)
    assert done.stdout == f"goeswith {assistant.__version__}\n"
