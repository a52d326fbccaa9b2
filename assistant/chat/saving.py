"""`save this talk to FILE`: what was asked and said, kept where the host wants it."""

from __future__ import annotations

import os
from collections.abc import Sequence
from pathlib import Path

from assistant.chat.talk_file import Turn, written
from assistant.chat.words import ChatWords

QUOTES = "\"'“”"


def file_named(line: str, words: ChatWords) -> str | None:
    """The file a line wants the talk kept in; empty where it names none, None where it wants nothing kept."""
    typed = " ".join(line.split())
    for phrase in words.save_talk:
        rest = typed[len(phrase) :]
        if typed.lower().startswith(phrase) and rest[:1] in ("", " ", "."):
            return _name(rest.strip(), words)
    return None


def _name(rest: str, words: ChatWords) -> str:
    """A file name without small words before it and quotes around it."""
    first, _, behind = rest.partition(" ")
    while first.lower() in words.before_file:
        rest = behind.strip()
        first, _, behind = rest.partition(" ")
    return "" if rest == "." else rest.strip(QUOTES)


def save_talk(named: str, turns: Sequence[Turn], table: Path | None, words: ChatWords) -> str:
    """Writes the talk, never over another file; what to say. Turns that began with a space stay out."""
    told = [turn for turn in turns if not turn.asked.startswith(" ")]
    if not named:
        return words("said", "which-file")
    if not told:
        return words("said", "nothing-yet")
    file = Path(os.path.expanduser(named))
    if os.path.lexists(file):
        return words("said", "there-already", file=file)
    return _written(file, told, len(turns) - len(told), table, words)


def _written(file: Path, turns: Sequence[Turn], private: int, table: Path | None, words: ChatWords) -> str:
    from assistant.notebook.disk import UnsettledError, unsaved, write_whole

    try:
        write_whole(file, written(turns, str(table.absolute()) if table else None).encode())
    except UnsettledError:
        pass  # it is there; a power cut at this very moment is not worth a word
    except (OSError, ValueError) as error:  # ValueError: a name no system takes
        return str(unsaved(file, error))
    said = words("said", "saved-one" if len(turns) == 1 else "saved", file=file, turns=len(turns))
    return f"{said}\n{words('said', 'private', count=private)}" if private else said
