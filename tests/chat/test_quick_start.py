"""The prompt is drawn before anything is loaded that only answers need."""

from __future__ import annotations

import subprocess
import sys

FOR_ANSWERS = ("spacy", "pyoxigraph", "assistant.session", "assistant.notebook", "assistant.pairing")
BEFORE_THE_PROMPT = f"""
import sys
from assistant.cli import arguments, notebook_of
notebook_of(arguments().parse_args([]))
import assistant.chat.loop, assistant.chat.prompt
print([name for name in {FOR_ANSWERS!r} if name in sys.modules])
"""


def test_nothing_is_loaded_that_only_answers_need() -> None:
    command = [sys.executable, "-c", BEFORE_THE_PROMPT]
    assert subprocess.run(command, check=True, capture_output=True, text=True).stdout == "[]\n"
