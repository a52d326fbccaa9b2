"""Talks of tests/chat/transcripts asked again; `python -m tests.chat.replay --write` writes what is said now.

Read what changed before it is kept: a talk says what was right when it was written.
"""

from __future__ import annotations

import sys
from pathlib import Path

from assistant.chat.talk_file import TalkText, Turn, read, written
from assistant.evening.table import set_table
from assistant.session import Session
from assistant.table.tonight import Tonight

FOLDER = Path(__file__).parent / "transcripts"
ROOT = Path(__file__).resolve().parent.parent.parent


def talks() -> list[Path]:
    """The files of talks."""
    return sorted(FOLDER.glob("*.txt"))


def said(session: Session, talk: TalkText) -> tuple[Turn, ...]:
    """What is said to each question of a talk today."""
    session.lay(Tonight())
    if talk.table:
        set_table(session, ROOT / talk.table)
    session.new_conversation()
    answers = [(turn.asked, session.ask(turn.asked)) for turn in talk.turns]
    session.lay(Tonight())
    return tuple(Turn(asked, answer.text.partition("\n")[0]) for asked, answer in answers)


def main() -> int:
    """Tells what is said otherwise than it is written; with `--write` the files are written anew."""
    session, changed = Session(), 0
    for file in talks():
        talk = read(file.read_text("utf-8"))
        now = said(session, talk)
        for old, new in zip(talk.turns, now, strict=True):
            if old != new:
                changed += 1
                print(f"{file.name}: {old.asked}\n  was: {old.said}\n  now: {new.said}")
        if "--write" in sys.argv[1:]:
            remark = [line for line in file.read_text("utf-8").splitlines() if line.startswith("#")]
            file.write_text("\n".join([*remark, written(now, talk.table)]), "utf-8")
    return 1 if changed else 0


if __name__ == "__main__":
    raise SystemExit(main())
