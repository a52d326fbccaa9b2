"""What is published: built, installed into a clean environment outside the checkout, and put to use."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import sysconfig
import tarfile
import venv
import zipfile
from collections.abc import Sequence
from datetime import date
from pathlib import Path

import pytest

import assistant
from tests.conftest import ROOT

pytestmark = pytest.mark.packaging

BUILD_SECONDS, RUN_SECONDS = 300.0, 120.0
LARGEST, LARGEST_SOURCE = 3 * 2**20, 5 * 2**20  # the source holds what the weights are fitted to as well
QUESTION = "what goes with garlic cheddar"
FOLDERS = ("assistant", "ontology", "corpus", "tests")
CHECKOUT_ONLY = ("corpus", "fitting")
BESIDE = {"CHANGELOG.md", "DEVELOPERS.md", "LICENSE", "PKG-INFO", "README.md", "pyproject.toml", ".gitignore"}
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


def build(folder: Path, environment: dict[str, str], *what: str) -> None:
    """Builds the checkout into a folder, without looking at the network."""
    command = [sys.executable, "-m", "build", "--no-isolation", "--outdir", folder, *what, ROOT]
    done = run(command, folder, environment, BUILD_SECONDS)
    assert done.returncode == 0, done.stderr


@pytest.fixture(scope="module")
def wheel(usual_environment: dict[str, str], tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel of the checkout."""
    folder = tmp_path_factory.mktemp("wheel")
    build(folder, usual_environment, "--wheel")
    (found,) = folder.glob("goeswith-*.whl")
    return found


@pytest.fixture(scope="module")
def source(usual_environment: dict[str, str], tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The source archive of the checkout; beside it lies the wheel that was built from the archive."""
    folder = tmp_path_factory.mktemp("source")
    build(folder, usual_environment)
    (found,) = folder.glob("goeswith-*.tar.gz")
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
    own = run(where, home, bare, RUN_SECONDS).stdout.strip()
    folders = {name: str(home / name.lower()) for name in ("XDG_CACHE_HOME", "XDG_DATA_HOME")}
    return programs, bare | folders | {"PYTHONPATH": os.pathsep.join((own, sysconfig.get_path("purelib")))}


def files_of(folder: str) -> list[Path]:
    """The files in a folder of the checkout, as they are named from its top."""
    files = [file.relative_to(ROOT) for file in (ROOT / folder).rglob("*") if file.is_file()]
    kept = [file for file in files if "__pycache__" not in file.parts]
    assert kept
    return kept


def test_what_only_the_fit_reads_is_in_no_wheel(names: list[str]) -> None:
    assert [name for name in names if "fitting" in name] == []


def test_wheel_is_named_after_package_and_version(wheel: Path) -> None:
    assert wheel.name == f"goeswith-{assistant.__version__}-py3-none-any.whl"


def test_wheel_holds_the_knowledge_and_the_corpus(names: list[str]) -> None:
    for folder in ("ontology", "corpus", "assistant"):
        files = [file for file in files_of(folder) if file.parts[:2] != CHECKOUT_ONLY]
        missing = {str(f if folder == "assistant" else Path("assistant") / f) for f in files} - set(names)
        assert missing == set(), folder


def test_wheel_holds_nothing_else(names: list[str]) -> None:
    tops = {name.split("/")[0] for name in names}
    own = f"goeswith-{assistant.__version__}"
    assert tops == {"assistant", f"{own}.dist-info", f"{own}.data"}
    assert [name for name in names if f"{own}.data/" in name] == [
        f"{own}.data/data/share/man/man1/goeswith.1"
    ]
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


def test_wheel_runs_on_the_pythons_it_names(wheel: Path, names: list[str]) -> None:
    with zipfile.ZipFile(wheel) as packed:
        metadata = packed.read(next(n for n in names if n.endswith("METADATA"))).decode().splitlines()
    assert "Requires-Python: >=3.11" in metadata
    assert f"Classifier: Programming Language :: Python :: 3.{sys.version_info.minor}" in metadata


def test_what_is_published_is_small(wheel: Path, source: Path) -> None:
    assert wheel.stat().st_size < LARGEST
    assert source.stat().st_size < LARGEST_SOURCE


def test_source_archive_holds_the_tests_and_the_data(source: Path) -> None:
    with tarfile.open(source) as packed:
        held = {Path(*Path(name).parts[1:]) for name in packed.getnames()}
    assert [file for folder in FOLDERS for file in files_of(folder) if file not in held] == []
    assert {str(file) for file in held if file.parts[0] not in FOLDERS} == BESIDE
    assert [file for file in held if "__pycache__" in file.parts] == []


def test_source_archive_builds_the_same_wheel(source: Path, wheel: Path) -> None:
    assert (source.parent / wheel.name).read_bytes() == wheel.read_bytes()


def test_changes_begin_with_this_version() -> None:
    headings = re.findall(r"^## (\S+), (\S+)$", (ROOT / "CHANGELOG.md").read_text(encoding="utf-8"), re.M)
    assert headings[0][0] == assistant.__version__
    assert [date.fromisoformat(day) for _, day in headings] == sorted(
        (date.fromisoformat(day) for _, day in headings), reverse=True
    )


def test_installed_program_answers_outside_the_checkout(
    clean: tuple[Path, dict[str, str]], tmp_path: Path
) -> None:
    programs, environment = clean
    done = run([programs / "goeswith", "ask", QUESTION], tmp_path, environment, RUN_SECONDS)
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
    done = run([programs / "python", "-c", code], tmp_path, environment, RUN_SECONDS)
    inside = str(programs.parent)
    assert [path for path in done.stdout.split() if not path.startswith(inside)] == []
    assert len(done.stdout.split()) == 3


def test_installed_program_has_the_version_of_the_checkout(
    clean: tuple[Path, dict[str, str]], tmp_path: Path
) -> None:
    programs, environment = clean
    done = run([programs / "goeswith", "--version"], tmp_path, environment, RUN_SECONDS)
    assert done.stdout == f"goeswith {assistant.__version__}\n"


def test_installed_program_plans_and_checks_an_evening(
    clean: tuple[Path, dict[str, str]], tmp_path: Path
) -> None:
    programs, environment = clean
    evening = shutil.copy(ROOT / "corpus" / "evenings" / "quay-house.toml", tmp_path)
    planned = run([programs / "goeswith", "plan", evening], tmp_path, environment, RUN_SECONDS)
    assert (planned.returncode, planned.stderr) == (0, "")
    assert planned.stdout.startswith("Quay House tasting")
    checked = run([programs / "goeswith", "check", evening], tmp_path, environment, RUN_SECONDS)
    assert (checked.returncode, checked.stderr) == (0, "")


def test_installed_manual_page_is_that_of_the_checkout(clean: tuple[Path, dict[str, str]]) -> None:
    installed = clean[0].parent / "share" / "man" / "man1" / "goeswith.1"
    assert installed.read_bytes() == (ROOT / "assistant" / "manual" / "goeswith.1").read_bytes()
