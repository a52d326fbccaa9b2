"""spaCy's English tokenizer, taught the trade's shorthand; folded forms stand in `norm_`."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache

from spacy.attrs import IS_ALPHA, IS_STOP, IS_TITLE, LOWER, NORM  # type: ignore[import-not-found]
from spacy.lang.en import EnglishDefaults
from spacy.symbols import ORTH  # type: ignore[import-not-found]
from spacy.tokenizer import Tokenizer  # type: ignore[import-not-found]
from spacy.tokens import Doc
from spacy.util import compile_infix_regex, compile_prefix_regex, compile_suffix_regex
from spacy.vocab import Vocab, create_vocab

from assistant.language.fold import fold, stem

_SHORTHAND = ("w/", "w/o", "b/c")
_MEANING = {"w/": "with", "w/o": "without", "b/c": "because"}
_LOOKED_AT = (NORM, LOWER, IS_ALPHA, IS_STOP, IS_TITLE)
_HEAP = re.compile(r"(?:[^\w\s]|_){20,}")  # the tokenizer would look at such a heap once for each mark
_SPLIT_INSIDE = (r"(?<=\w)[-–—/+&](?=\w)", r"(?<=[^\W\d_])[,;:.!?]+(?=[^\W\d_])")


@lru_cache(maxsize=1)
def tokenizer() -> Tokenizer:
    """The tokenizer of the blank English pipeline with our rules; contractions stay whole (`don't`).

    It is built without that pipeline, which would set up some thousand exceptions only to drop them.
    """
    defaults = EnglishDefaults
    return Tokenizer(
        _vocab(),
        rules={text: [{ORTH: text}] for text in _SHORTHAND},
        prefix_search=compile_prefix_regex(defaults.prefixes or ()).search,
        suffix_search=compile_suffix_regex(_suffixes()).search,
        infix_finditer=compile_infix_regex([*(defaults.infixes or ()), *_SPLIT_INSIDE]).finditer,
    )


def _vocab() -> Vocab:
    """The English vocabulary, working out of each new word what is looked at and no more."""
    vocab: Vocab = create_vocab("en", EnglishDefaults)
    getters = vocab.lex_attr_getters  # type: ignore[attr-defined]
    vocab.lex_attr_getters = {name: getters[name] for name in _LOOKED_AT}  # type: ignore[attr-defined]
    return vocab


def _suffixes() -> list[str]:
    return [s for s in map(str, EnglishDefaults.suffixes or ()) if not s.startswith(("'", "’"))]


@contextmanager
def passing() -> Iterator[None]:
    """Words met in here are forgotten at its end, or every new one would be kept for good.

    No `Doc` made in here may be looked at after it.
    """
    with tokenizer().vocab.memory_zone():
        yield


def tokens(text: str) -> Doc:
    """The tokens of a cleaned text, with folded stems in `norm_` (punctuation folds to itself)."""
    doc: Doc = tokenizer()(_HEAP.sub(lambda heap: " ".join(heap[0]), text))
    for token in doc:
        token.norm_ = _MEANING.get(token.lower_) or stem(fold(token.text)) or token.text
    return doc
