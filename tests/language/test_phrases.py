"""Whole phrases replaced by what they stand for."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.knowledge.problems import KnowledgeError
from assistant.language.phrases import Phrases, read_phrases

PHRASES = Phrases({"sav": "sauvignon blanc", "sav blanc": "sauvignon blanc", "Rye sling": "Riesling"})


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("the sav, please", "the sauvignon blanc, please"),
        ("SAV BLANC and rye sling", "sauvignon blanc and Riesling"),
        ("save some savoury sav-ish things", "save some savoury sav-ish things"),
        ("sav blancs", "sauvignon blanc blancs"),
        ("", ""),
    ],
)
def test_the_longest_phrase_that_ends_at_a_word_is_replaced(typed: str, meant: str) -> None:
    assert PHRASES.replaced(typed) == meant


def test_a_line_without_its_meaning_is_told(tmp_path: Path) -> None:
    file = tmp_path / "names.tsv"
    file.write_text("# head\nalbareenyo\n", "utf-8")
    with pytest.raises(KnowledgeError):
        read_phrases(file)


def test_no_heard_name_is_a_name_as_it_stands() -> None:
    from assistant.knowledge.files import corpus_dir
    from assistant.knowledge.store import shipped
    from assistant.language.fold import key
    from assistant.language.lexicon import build_lexicon

    lexicon = build_lexicon(shipped())
    for typed in read_phrases(corpus_dir() / "language" / "heard-names.tsv"):
        stems = list(key(typed))
        found = lexicon.longest(stems, 0)
        whole = bool(found and found[0] == len(stems))
        assert not whole or lexicon.is_slip(stems), typed
