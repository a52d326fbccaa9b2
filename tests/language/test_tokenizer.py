"""The tokenizer built by itself is that of spaCy's blank English pipeline with our rules."""

from __future__ import annotations

import tomllib

import pytest
import spacy
from spacy.symbols import ORTH
from spacy.tokenizer import Tokenizer
from spacy.util import compile_infix_regex, compile_prefix_regex, compile_suffix_regex

from assistant.knowledge.files import corpus_dir
from assistant.language import words

ODD = (
    "w/ chips & b/c",
    "don't-you 12.5% ABV",
    "£30/bottle,two",
    "(brie)…“x” 'n' mac'n'cheese",
    "12,5 l 7pm",
    "",
)


@pytest.fixture(scope="module")
def blank() -> Tokenizer:
    """Ours, on the vocabulary and the defaults of the pipeline."""
    nlp = spacy.blank("en")
    suffixes = [s for s in map(str, nlp.Defaults.suffixes or ()) if not s.startswith(("'", "’"))]
    infixes = [*(nlp.Defaults.infixes or ()), *words._SPLIT_INSIDE]
    return Tokenizer(
        nlp.vocab,
        rules={text: [{ORTH: text}] for text in words._SHORTHAND},
        prefix_search=compile_prefix_regex(nlp.Defaults.prefixes or ()).search,
        suffix_search=compile_suffix_regex(suffixes).search,
        infix_finditer=compile_infix_regex(infixes).finditer,
    )


def test_it_reads_the_corpus_alike(blank: Tokenizer) -> None:
    asked = [
        question["ask"]
        for file in sorted((corpus_dir() / "questions").glob("*.toml"))
        for question in tomllib.loads(file.read_text("utf-8"))["question"]
    ]
    assert len(asked) > 500
    for text in (*asked, *ODD):
        assert seen(words.tokenizer(), text) == seen(blank, text), text


def seen(tokenizer: Tokenizer, text: str) -> list[tuple[object, ...]]:
    return [
        (t.text, t.lower_, t.norm_, t.is_alpha, t.is_title, t.is_stop, t.whitespace_) for t in tokenizer(text)
    ]
