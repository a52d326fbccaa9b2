"""Completion: names of what is on the table tonight, then of the whole world, with what they are."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from concurrent.futures import Future
from typing import TYPE_CHECKING

from prompt_toolkit.completion import CompleteEvent, Completer, Completion
from prompt_toolkit.document import Document

from assistant.chat.bottom import standing
from assistant.chat.words import ChatWords

if TYPE_CHECKING:
    from assistant.session import Session

MOST = 12
SHORTEST = 2
HELP = "help "
Named = tuple[str, str]


class NameCompleter(Completer):
    """Completes the last words typed to a known name; silent until the knowledge is loaded."""

    def __init__(self, session: Future[Session], words: ChatWords) -> None:
        self._session, self._words = session, words
        self._world: list[tuple[str, str, str]] | None = None

    def get_completions(self, document: Document, event: CompleteEvent) -> Iterable[Completion]:
        """Names that start with the last one, two or three words before the cursor.

        Tonight's come first; right behind a space, or on an empty line, only they are offered.
        """
        if not self._session.done() or self._session.exception():
            return
        before, seen = document.text_before_cursor, set[str]()
        for typed, (label, kind) in self._found(before):
            if label not in seen:
                seen.add(label)
                yield Completion(label, start_position=-len(typed), display_meta=kind)
            if len(seen) == MOST:
                return

    def _found(self, before: str) -> Iterator[tuple[str, Named]]:
        """Each name found with what was typed of it."""
        if before.lower().startswith(HELP):
            typed = before[len(HELP) :]
            yield from ((typed, topic) for topic in self._topics() if topic[0].startswith(typed.lower()))
        tonight = list(self._tonight())
        if before[-1:].isspace() or not before:
            yield from (("", name) for name in tonight)
            return
        for typed in _tails(before):
            yield from ((typed, name) for name in tonight if _starts(name[0], typed))
        for typed in _tails(before):
            yield from ((typed, name) for name in self._starting(typed.lower()))

    def _tonight(self) -> Iterator[Named]:
        now = standing(self._session.result())
        for kind, labels in (("wine", now.wines), ("food", now.foods)):
            shown = self._words("kinds", "tonight", kind=self._words("kinds", kind))
            yield from ((label, shown) for label in labels)

    def _starting(self, typed: str) -> Iterator[Named]:
        if self._world is None:
            lexicon = self._session.result().parser.lexicon
            names = [lexicon.name(subject) for subject in lexicon.subjects()]
            found = [(n.label.lower(), n.label, n.kind) for n in names]
            self._world = sorted(found, key=lambda name: name[0])  # `Malbec` stays a wine before a grape
        for folded, label, kind in self._world:
            if folded.startswith(typed):
                yield label, self._words("kinds", kind)

    def _topics(self) -> Iterator[Named]:
        from assistant.answers.help import topics

        shown = self._words("kinds", "topic")
        yield from ((topic.words[0], shown) for topic in topics())


def _starts(label: str, typed: str) -> bool:
    """Whether a word of a name tonight, with what follows it, starts with what was typed."""
    words = label.lower().split()
    return any(" ".join(words[at:]).startswith(typed.lower()) for at in range(len(words)))


def _tails(text: str) -> Iterable[str]:
    """The last three, two and one words, longest first."""
    words = text.split(" ")
    for count in (3, 2, 1):
        tail = " ".join(words[-count:])
        if len(words) >= count and len(tail) >= SHORTEST:
            yield tail
