"""Completion from the lexicon: names of wines and foods, with what they are."""

from __future__ import annotations

from collections.abc import Iterable
from concurrent.futures import Future
from typing import TYPE_CHECKING

from prompt_toolkit.completion import CompleteEvent, Completer, Completion
from prompt_toolkit.document import Document

if TYPE_CHECKING:
    from assistant.session import Session

MOST = 12
SHORTEST = 2


class NameCompleter(Completer):
    """Completes the last words typed to a known name; silent until the knowledge is loaded."""

    def __init__(self, session: Future[Session]) -> None:
        self._session = session
        self._labels: list[tuple[str, str, str]] | None = None

    def get_completions(self, document: Document, event: CompleteEvent) -> Iterable[Completion]:
        """Names that start with the last one, two or three words before the cursor."""
        if not self._session.done() or self._session.exception():
            return
        seen: set[str] = set()
        for typed in _tails(document.text_before_cursor):
            for folded, label, kind in self._names():
                if folded.startswith(typed.lower()) and label not in seen:
                    seen.add(label)
                    yield Completion(label, start_position=-len(typed), display_meta=kind)
                    if len(seen) == MOST:
                        return

    def _names(self) -> list[tuple[str, str, str]]:
        if self._labels is None:
            lexicon = self._session.result().parser.lexicon
            names = [lexicon.name(subject) for subject in lexicon.subjects()]
            self._labels = sorted((n.label.lower(), n.label, n.kind) for n in names)
        return self._labels


def _tails(text: str) -> Iterable[str]:
    """The last three, two and one words, longest first."""
    words = text.split(" ")
    for count in (3, 2, 1):
        tail = " ".join(words[-count:])
        if len(words) >= count and len(tail) >= SHORTEST:
            yield tail
