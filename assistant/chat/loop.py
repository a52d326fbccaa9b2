"""The chat loop: the prompt stands at once, the knowledge loads behind it."""

from __future__ import annotations

import os
import shutil
import sys
from concurrent.futures import Future, ThreadPoolExecutor
from pathlib import Path
from typing import TYPE_CHECKING

import platformdirs
from prompt_toolkit import PromptSession
from prompt_toolkit.auto_suggest import AutoSuggestFromHistory
from prompt_toolkit.formatted_text import FormattedText
from prompt_toolkit.history import History, InMemoryHistory
from prompt_toolkit.output.color_depth import ColorDepth
from prompt_toolkit.patch_stdout import patch_stdout
from prompt_toolkit.styles import Style

from assistant.answers.wrap import wrapped
from assistant.chat.completion import NameCompleter
from assistant.chat.history import SafeHistory

if TYPE_CHECKING:
    from assistant.session import Session

PROMPT = "you › "
PLAIN_PROMPT = "you> "
STYLE = Style.from_dict({"prompt": "bold", "say": "bold", "rest": ""})
LEAVE = {"quit", "exit", "bye", ":q"}


def chat(evening: Path | None = None, notebook: Path | None = None) -> int:
    """Runs the chat until Ctrl-D, with the evening of a file on the table; returns the exit code."""
    loading = ThreadPoolExecutor(1)
    session = loading.submit(_load, evening, notebook)
    prompt = _prompt_session(session)
    try:
        return _talk(prompt, session)
    finally:
        loading.shutdown(wait=False, cancel_futures=True)


def _load(evening: Path | None, notebook: Path | None = None) -> Session:
    from assistant.commands import opened
    from assistant.knowledge.collector import loading

    with loading():
        from assistant.session import Session

        ready = Session(notebook=opened(notebook))
        ready.ask("brie")  # the first answer pays for what loads late
        ready.new_conversation()
    if evening is not None:
        from assistant.evening.table import set_table

        set_table(ready, evening)
    return ready


def _talk(prompt: PromptSession[str], session: Future[Session]) -> int:
    while True:
        try:
            with patch_stdout():
                line = prompt.prompt(_prompt_text())
        except KeyboardInterrupt:
            continue
        except EOFError:
            return 0
        if line.strip().lower() in LEAVE:
            return 0
        if line.strip() and not _answer(line, session):
            return 2


def _answer(line: str, session: Future[Session]) -> bool:
    """Prints the answers to one or several pasted lines; False if the knowledge is broken."""
    from assistant.answers.sanitise import safe
    from assistant.knowledge.problems import KnowledgeError

    try:
        for question in line.splitlines():
            if question.strip():
                _show(safe(session.result().ask(question).text))
    except KnowledgeError as error:
        for problem in error.problems:
            print(f"goeswith: {problem}", file=sys.stderr)
        return False
    return True


def _show(text: str) -> None:
    """The spoken line first and bold, the rest below it."""
    from prompt_toolkit import print_formatted_text

    text = wrapped(text, shutil.get_terminal_size().columns)
    first, _, rest = text.partition("\n")
    if os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb":
        print(text)
        return
    parts = FormattedText([("class:say", first), ("class:rest", f"\n{rest}" if rest else "")])
    print_formatted_text(parts, style=STYLE)


def _prompt_text() -> FormattedText:
    plain = os.environ.get("TERM") == "dumb" or not (sys.stdout.encoding or "").lower().startswith("utf")
    return FormattedText([("class:prompt", PLAIN_PROMPT if plain else PROMPT)])


def _prompt_session(session: Future[Session]) -> PromptSession[str]:
    depth = ColorDepth.DEPTH_1_BIT if os.environ.get("NO_COLOR") else None
    return PromptSession(
        history=_history(),
        auto_suggest=AutoSuggestFromHistory(),
        completer=NameCompleter(session),
        complete_while_typing=False,
        style=STYLE,
        color_depth=depth,
        enable_open_in_editor=False,
    )


def _history() -> History:
    """The history file, readable by its owner only; in memory where no file can be kept."""
    folder = Path(platformdirs.user_data_dir("goeswith", appauthor=False))
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        file = folder / "history"
        file.touch(mode=0o600, exist_ok=True)
        return SafeHistory(str(file)) if file.is_file() else InMemoryHistory()
    except OSError:
        return InMemoryHistory()
