"""The knowledge, loaded behind the prompt."""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import Future, wait
from pathlib import Path
from threading import Event, Thread
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from assistant.session import Session

A_WHILE = 0.05  # seconds between looks, so that Ctrl-C is heard on every system
WARMING = "brie"


class Background:
    """Loads a session in a thread of its own once it is told to start; `future` holds it then."""

    def __init__(self, evening: Path | None, notebook: Path | None, bottles: Path | None = None) -> None:
        self.future: Future[Session] = Future()
        self._files = evening, notebook, bottles
        self._begun, self._wanted = False, Event()

    def start(self) -> None:
        """Starts loading; a second time does nothing."""
        if not self._begun:
            self._begun = True
            Thread(target=self._run, name="loading", daemon=True).start()

    def wait(self, meanwhile: Callable[[], None]) -> Session:
        """The session, once it is there. Raises KnowledgeError where it cannot be had."""
        self._wanted.set()
        self.start()
        while not wait([self.future], A_WHILE).done:
            meanwhile()
        return self.future.result()

    def _run(self) -> None:
        try:
            session = _loaded(*self._files, self._wanted)
        except BaseException as error:  # told by whoever waits for it
            self.future.set_exception(error)
            return
        self.future.set_result(session)
        if not self._wanted.is_set():
            _warm(session)


def _warm(session: Session) -> None:
    """Makes what the first slip, many foods and the first board would wait for; no answer hangs on it."""
    from assistant.evening.board_change import best_changes

    session.parser.warm()
    session.engine.lay()
    best_changes((), session.engine, ())


def _loaded(evening: Path | None, notebook: Path | None, bottles: Path | None, wanted: Event) -> Session:
    from assistant.knowledge.collector import loading
    from assistant.opening import laid, noting, opened

    with loading():
        from assistant.session import Session

        session = Session(notebook=opened(notebook))
        if not wanted.is_set():
            session.ask(WARMING)  # the first answer pays for what loads late, unless somebody waits for it
            session.new_conversation()
        noting(session, notebook)
    return laid(session, evening, bottles)
