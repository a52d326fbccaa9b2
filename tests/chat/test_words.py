"""A broken file of the chat's words is told in a sentence."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from assistant.chat import words
from assistant.knowledge.files import corpus_dir
from assistant.knowledge.problems import KnowledgeError


@pytest.fixture
def file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of the words that is read instead of the shipped one."""
    shutil.copytree(corpus_dir() / "language", tmp_path / "language")
    monkeypatch.setattr(words, "corpus_dir", lambda: tmp_path)
    monkeypatch.setattr(words, "chat_words", words.chat_words.__wrapped__)
    return tmp_path / "language" / "chat.toml"


@pytest.mark.parametrize("text", [None, "", "leave = [", "leave = 3"])
def test_a_broken_file_is_told(file: Path, text: str | None) -> None:
    file.unlink() if text is None else file.write_text(text, "utf-8")
    with pytest.raises(KnowledgeError, match=r"language/chat\.toml: "):
        words.chat_words()


def test_a_template_that_asks_for_what_is_not_there(file: Path) -> None:
    text = file.read_text("utf-8").replace("{lines} more", "{moons} more")
    file.write_text(text, "utf-8")
    with pytest.raises(KnowledgeError, match="has no 'moons'"):
        words.chat_words()("said", "more", lines=3)


def test_every_kind_of_name_is_called_something() -> None:
    from assistant.session import Session

    lexicon = Session().parser.lexicon
    kinds = {lexicon.name(subject).kind for subject in lexicon.subjects()}
    assert all(words.chat_words()("kinds", kind) for kind in kinds)
