"""What spaCy would bring along is left out until somebody asks for it, and works then."""

from __future__ import annotations

import json
import subprocess
import sys

import pytest

NOT_NEEDED = ("requests", "urllib3", "httpx", "typer", "weasel", "spacy.cli")
LOADED = f"print(json.dumps([name for name in {NOT_NEEDED!r} if name in sys.modules]))"


def loaded(code: str) -> list[str]:
    """Which of these modules a program has loaded in the end."""
    code = f"import json, sys\n{code}\n{LOADED}"
    done = subprocess.run([sys.executable, "-c", code], check=True, capture_output=True, text=True)
    return list(json.loads(done.stdout))


def test_an_answer_loads_nothing_that_talks_to_a_network() -> None:
    assert loaded("from assistant.session import Session\nSession().ask('steak')") == []


def test_spacy_alone_loads_them() -> None:
    assert loaded("import spacy") == list(NOT_NEEDED)


USES = (
    "import spacy\nassert spacy.info(silent=True)['spacy_version'] == spacy.__version__",
    "import spacy, spacy.cli\nassert spacy.cli.app and spacy.cli.info(silent=True)",
    "from spacy.cli.info import info_spacy\nassert info_spacy()",
)


@pytest.mark.parametrize("use", USES)
def test_what_was_left_out_is_there_for_who_asks(use: str) -> None:
    assert loaded(f"import assistant.language\n{use}") == list(NOT_NEEDED)
