"""The chat loop: the prompt stands at once, the knowledge loads behind it."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Protocol

import platformdirs

from assistant.chat.background import Background
from assistant.chat.early import shown_early
from assistant.chat.manner import Manner, manner_of
from assistant.chat.show import Shower
from assistant.chat.talk_file import Turn
from assistant.chat.words import ChatWords, chat_words

if TYPE_CHECKING:
    from assistant.answers.record import Answer
    from assistant.chat.history import OwnHistory
    from assistant.session import Session


class Lines(Protocol):
    """Where lines come from."""

    def next(self, draft: str) -> str:
        """The next line, which starts with `draft`. Raises EOFError or KeyboardInterrupt."""


def chat(
    evening: Path | None = None,
    notebook: Path | None = None,
    bottles: Path | None = None,
    plain: bool = False,
) -> int:
    """Runs the chat until Ctrl-D, with the evening of a file on the table; returns the exit code.

    `plain`: nothing is drawn twice, for screen readers.
    """
    background = Background(evening, notebook, bottles)
    manner = manner_of(os.environ, plain, sys.stdout.isatty())
    return Chat(evening, background, manner, chat_words()).run()


class Chat:
    """One talk at the terminal."""

    def __init__(
        self, evening: Path | None, background: Background, manner: Manner, words: ChatWords
    ) -> None:
        self._folder = Path(platformdirs.user_data_dir("goeswith", appauthor=False))
        self._words, self._table = words, evening
        self._background = background
        self._show = Shower(manner, words)
        with shown_early("" if manner.plain else words("sign", "usual")):
            self._history, self._lines = _lines(self._folder, manner, background, words)
        self._turns: list[Turn] = []

    def run(self) -> int:
        """Asks for lines and answers them until the end; the exit code."""
        from assistant.chat.first_time import greeting
        from assistant.knowledge.problems import KnowledgeError

        if first := greeting(self._folder, self._table is not None, self._words):
            self._show.note(first)
        try:
            self._talk()
        except KnowledgeError as error:
            for problem in error.problems:
                print(f"goeswith: {problem}", file=sys.stderr)
            return 2
        return 0

    def _talk(self) -> None:
        draft = ""
        while True:
            try:
                typed = self._lines.next(draft)
            except KeyboardInterrupt:
                draft = ""
                continue
            except EOFError:
                return
            if typed.strip().lower() in self._words.leave:
                return
            draft = self._several(typed)
            self._raise_if_broken()

    def _raise_if_broken(self) -> None:
        future = self._background.future
        if future.done() and (error := future.exception()):
            raise error

    def _several(self, typed: str) -> str:
        """Answers the lines typed or pasted, one after another; what goes onto the next line.

        After Ctrl-C the lines not asked yet are that, so that none is lost.
        """
        lines = [line for line in typed.splitlines() if line.strip()]
        draft = ""
        for at, line in enumerate(lines):
            try:
                if len(lines) > 1:
                    self._show.asked(line)
                draft += self._one(line)
            except KeyboardInterrupt:
                return self._stopped(lines[at + 1 :])
        return draft

    def _stopped(self, left: Sequence[str]) -> str:
        self._show.note(self._words("said", "stopped-some" if left else "stopped", count=len(left)))
        return "\n".join(left)

    def _one(self, line: str) -> str:
        """Answers a line; what was typed meanwhile."""
        from assistant.chat.saving import file_named, save_talk

        named = file_named(line, self._words)
        if named is not None:
            self._show.answer(save_talk(named, self._turns, self._table, self._words))
            return ""
        session = self._session()
        answer = session.ask(line)
        if not answer.private:
            self._history.keep(line)
        first, _, rest = answer.text.partition("\n")
        self._turns.append(Turn(line, first, rest))
        draft = self._show.answer(answer.text)
        if _may_hint(answer):
            self._hint()
        return draft

    def _hint(self) -> None:
        from assistant.chat.first_time import hint

        if told := hint(self._folder, len(self._turns), self._words):
            self._show.note(told)

    def _session(self) -> Session:
        """The session, with a word on a terminal where it is long in coming."""
        meanwhile = self._show.meanwhile()
        try:
            return self._background.wait(meanwhile)
        finally:
            meanwhile.clear()


def _may_hint(answer: Answer) -> bool:
    """Whether the answer leaves room for a hint: it asks nothing back and touches nobody's health."""
    return answer.understood and not answer.clarify and not answer.private


def _lines(
    folder: Path, manner: Manner, background: Background, words: ChatWords
) -> tuple[OwnHistory, Lines]:
    """What was typed before, and where lines come from."""
    from assistant.knowledge.collector import loading

    with loading():
        from assistant.chat.history import own_history

        history = own_history(folder)
        if not manner.plain:
            from assistant.chat.prompt import Prompt

            return history, Prompt(background, history, words, manner)
    from assistant.chat.plain import PlainLines

    background.start()
    return history, PlainLines(words)
