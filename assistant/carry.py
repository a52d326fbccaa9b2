"""The commands `export` and `import`: a notebook carried from one host to another.

Exit codes: 0 written or come in, 1 where something was left out or nothing stood, 2 where a file cannot be
read or written.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.commands import PROBLEMS, SOUND, WRONG_USAGE

if TYPE_CHECKING:
    from assistant.answers.context import Context
    from assistant.notebook import Notebook


def send(file: Path, notebook: Path | None, name: str, all_of_it: bool, over: bool) -> int:
    """Writes the notebook, or what stands in it, to a file for other hosts."""
    from assistant.notebook.carrying import HOST
    from assistant.notebook.carrying import send as sent_to
    from assistant.taught.carried import host_name, sent_lines, words

    context = _context()
    own = _own(notebook)
    called = host_name(name) if name else HOST
    if own is None or not called:
        return _told([words(context, "no-name" if own else "no-notebook")], WRONG_USAGE)
    sent = sent_to(own, file, called, all_of_it, over)
    lines, sound = sent_lines(sent, file, context)
    return _told(lines, WRONG_USAGE if sent.problems else SOUND if sound else PROBLEMS)


def bring(file: Path, notebook: Path | None, name: str) -> int:
    """Takes in the notebook of another host and tells what came of it."""
    from assistant.notebook.carrying import bring as brought_in
    from assistant.taught.carried import brought_lines, host_name, words

    context, own, called = _context(), _own(notebook), host_name(name or file.stem)
    if own is None or not called:
        return _told([words(context, "no-name" if own else "no-notebook")], WRONG_USAGE)
    brought = brought_in(own, file, called)
    lines = brought_lines(brought, words(context, "back-command", file=file), context)
    problems = bool(brought.merged.left_out or brought.merged.remarks)
    return _told(lines, WRONG_USAGE if brought.merged.problems else PROBLEMS if problems else SOUND)


def take_back(file: Path, notebook: Path | None) -> int:
    """Takes back in one step what a file brought in."""
    from assistant.notebook.carrying import brought_by, take_out
    from assistant.taught.carried import told, words

    context, own = _context(), _own(notebook)
    if own is None:
        return _told([words(context, "no-notebook")], WRONG_USAGE)
    theirs, found = brought_by(own, file)
    said = words(context, "back-command", file=file.name)
    wrong = theirs.problems or take_out(own, found, said).problems
    if wrong:
        return _told([told(wrong[0])], WRONG_USAGE)
    kind = "back-nothing" if not found else "back-one" if len(found) == 1 else "back"
    return _told([words(context, kind, count=len(found), file=file)], SOUND if found else PROBLEMS)


def _context() -> Context:
    """What words and labels are taken from; nothing is asked."""
    from assistant.answers.context import Context
    from assistant.answers.wording import Wording
    from assistant.knowledge.store import shipped
    from assistant.language.frame import Frame, Text
    from assistant.pairing.engine import Engine

    return Context(Frame("note", Text("", (), (), (), frozenset(), ())), Engine(shipped()), Wording(), {})


def _own(notebook: Path | None) -> Notebook | None:
    from assistant.notebook import load

    return load(notebook) if notebook else None


def _told(lines: Sequence[str], code: int) -> int:
    from assistant.answers.sanitise import safe

    failed = code == WRONG_USAGE
    for line in lines:
        print(safe(f"goeswith: {line}" if failed else line), file=sys.stderr if failed else sys.stdout)
    return code
