"""Prints corpus/known-failures.toml anew (`python -m assistant.evaluate.known`)."""

from __future__ import annotations

import json

from assistant.evaluate.figures import Results
from assistant.evaluate.read import read_corpus
from assistant.evaluate.run import run
from assistant.session import Session

HEAD = """\
# goeswith known failures: what the program does not read as corpus/questions, dialogues and refusals say,
# and what it read instead. Written by `python -m assistant.evaluate.known`. Licence: CC BY 4.0.

[failures]"""


def known_failures(results: Results) -> str:
    """The file: a line for each failure, in the order of its id."""
    lines = [f"{json.dumps(i)} = {json.dumps(w, ensure_ascii=False)}" for i, w in results.failed().items()]
    return "\n".join([HEAD, *sorted(lines), ""])


if __name__ == "__main__":
    print(known_failures(run(read_corpus(), Session())), end="")
