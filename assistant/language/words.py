"""spaCy's blank English pipeline, taught the trade's shorthand; folded forms stand in `norm_`."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache

import spacy
from spacy.language import Language
from spacy.symbols import ORTH  # type: ignore[import-not-found]
from spacy.tokenizer import Tokenizer  # type: ignore[import-not-found]
from spacy.tokens import Doc
from spacy.util import compile_infix_regex, compile_prefix_regex, compile_suffix_regex

from assistant.language.fold import fold, stem

_SHORTHAND = ("w/", "w/o", "b/c")
_MEANING = {"w/": "with", "w/o": "without", "b/c": "because"}
_HEAP = re.compile(r"(?:[^\w\s]|_){20,}")  # the tokenizer would look at such a heap once for each mark
_SPLIT_INSIDE = (r"(?<=\w)[-–—/+&](?=\w)", r"(?<=[^\W\d_])[,;:.!?]+(?=[^\W\d_])")


@lru_cache(maxsize=1)
def pipeline() -> Language:
    """The blank English pipeline with our tokenizer; contractions stay whole (`don't` is one word)."""
    nlp = spacy.blank("en")
    nlp.tokenizer = Tokenizer(
        nlp.vocab,
        rules={text: [{ORTH: text}] for text in _SHORTHAND},
        prefix_search=compile_prefix_regex(nlp.Defaults.prefixes or ()).search,
        suffix_search=compile_suffix_regex(_suffixes(nlp)).search,
        infix_finditer=compile_infix_regex([*(nlp.Defaults.infixes or ()), *_SPLIT_INSIDE]).finditer,
    )
    return nlp


def _suffixes(nlp: Language) -> list[str]:
    return [s for s in map(str, nlp.Defaults.suffixes or ()) if not s.startswith(("'", "’"))]


@contextmanager
def passing() -> Iterator[None]:
    """Words met in here are forgotten at its end, or every new one would be kept for good.

    No `Doc` made in here may be looked at after it.
    """
    with pipeline().memory_zone():
        yield


def tokens(text: str) -> Doc:
    """The tokens of a cleaned text, with folded stems in `norm_` (punctuation folds to itself)."""
    doc = pipeline().make_doc(_HEAP.sub(lambda heap: " ".join(heap[0]), text))
    for token in doc:
        token.norm_ = _MEANING.get(token.lower_) or stem(fold(token.text)) or token.text
    return doc
