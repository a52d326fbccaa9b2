"""The lists of small-words.toml: code asks for those that are there, each stands under its own comment."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

import assistant
from assistant.knowledge.files import corpus_dir
from assistant.knowledge.problems import KnowledgeError
from assistant.language.small_words import small_words

ASKED = re.compile(r"""(?:small_words\(\)|\bwords)\[f?"([a-z-]+)(\{where\})?"\]""")
WHERE = ("", "-behind")  # the ends of names that are put together


def asked_for() -> set[str]:
    """The lists that any module looks at."""
    modules = [file.read_text("utf-8") for file in Path(assistant.__file__).parent.rglob("*.py")]
    found = [ASKED.findall(text) for text in modules if "small_words()" in text]
    return {name + end for row in found for name, open_end in row for end in (WHERE if open_end else ("",))}


def test_each_list_is_asked_for_and_no_other() -> None:
    assert asked_for() == set(small_words())


def test_each_list_stands_under_its_own_comment() -> None:
    lines = (corpus_dir() / "language" / "small-words.toml").read_text("utf-8").splitlines()
    lists = [at for at, line in enumerate(lines) if re.match(r"[a-z-]+ = \[", line)]
    assert len(lists) == len(small_words())
    assert all(lines[at - 1].startswith("# ") and lines[at - 2 : at - 1] == [""] for at in lists)


def test_a_list_that_is_not_there_is_told_with_the_file() -> None:
    with pytest.raises(KnowledgeError, match=r"small-words\.toml: has no 'moons'"):
        small_words()["moons"]
