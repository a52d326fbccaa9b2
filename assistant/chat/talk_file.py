"""A talk as a plain text that people read and the program can be asked again.

`@ FILE` on the first line: the evening that was on the table. `> ` starts a question; the line below it is
what was said aloud; further lines of the answer are indented. `# ` is a remark, an empty line is nothing.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

ASKED, TABLE, REMARK, INDENT = "> ", "@ ", "#", "  "


@dataclass(frozen=True, slots=True)
class Turn:
    """A question, the line said aloud, and the rest of the answer (as read back: empty)."""

    asked: str
    said: str
    rest: str = ""


@dataclass(frozen=True, slots=True)
class TalkText:
    """A talk read back: its turns, and the evening file that was on the table, as it was named."""

    turns: tuple[Turn, ...]
    table: str | None = None


def written(turns: Iterable[Turn], table: str | None = None) -> str:
    """The talk as text."""
    lines = [f"{TABLE}{table}"] if table else []
    for turn in turns:
        lines += ["", f"{ASKED}{' '.join(turn.asked.split())}", turn.said]
        lines += [f"{INDENT}{line}" for line in turn.rest.splitlines()]
    return "\n".join(lines).lstrip("\n") + "\n"


def read(text: str) -> TalkText:
    """The questions of a talk and what was said to each. Raises ValueError, naming the line, for no talk."""
    turns: list[Turn] = []
    table, asked = None, None
    for number, line in enumerate(text.splitlines(), 1):
        if not line.strip() or line.startswith((REMARK, INDENT)):
            continue
        if line.startswith(TABLE) and not turns and asked is None:
            table = line.removeprefix(TABLE).strip()
        elif line.startswith(ASKED) and asked is None:
            asked = line.removeprefix(ASKED).strip()
        elif asked is not None and not line.startswith(ASKED):
            turns.append(Turn(asked, line.strip()))
            asked = None
        else:
            raise ValueError(f"line {number}: a question starts with “{ASKED}”, its answer stands below it")
    if asked is not None:
        raise ValueError(f"nothing was said to “{asked}”")
    return TalkText(tuple(turns), table)
