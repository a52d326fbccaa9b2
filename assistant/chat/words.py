"""The words of the chat itself, from corpus/language/chat.toml."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data, telling


@dataclass(frozen=True, slots=True)
class ChatWords:
    """What the chat says, by section and name, and what it listens for besides questions."""

    file: Path
    sections: Mapping[str, Mapping[str, Any]]
    leave: frozenset[str]
    why: str
    save_talk: tuple[str, ...]
    before_file: frozenset[str]

    def __call__(self, section: str, name: str, /, **fields: object) -> str:
        """A filled sentence. Raises KnowledgeError where the file lacks it or it asks for too much."""
        with telling(self.file):
            return str(self.sections[section][name]).format(**fields)

    def tries(self, name: str) -> tuple[str, ...]:
        """Questions to try: `open` or `table`."""
        with telling(self.file):
            return tuple(self.sections["try"][name])


@lru_cache(maxsize=1)
def chat_words() -> ChatWords:
    """The words of corpus/language/chat.toml. Raises KnowledgeError as `read_data` does."""
    file = corpus_dir() / "language" / "chat.toml"
    return read_data(file, lambda tables: _words(file, tables))


def _words(file: Path, tables: Mapping[str, Any]) -> ChatWords:
    sections = {name: tables[name] for name in ("sign", "bottom", "kinds", "said", "try")}
    return ChatWords(
        file,
        sections,
        frozenset(tables["leave"]),
        str(tables["why"]),
        tuple(sorted(tables["save-talk"], key=len, reverse=True)),
        frozenset(tables["before-file"]),
    )
