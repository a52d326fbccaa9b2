"""spaCy's English tokenizer, taught the trade's shorthand; folded forms stand in `norm_`."""

from __future__ import annotations

from functools import lru_cache

from spacy.lang.en import EnglishDefaults
from spacy.symbols import ORTH  # type: ignore[import-not-found]
from spacy.tokenizer import Tokenizer  # type: ignore[import-not-found]
from spacy.tokens import Doc
from spacy.util import compile_infix_regex, compile_prefix_regex, compile_suffix_regex
from spacy.vocab import create_vocab

from assistant.language.fold import fold, stem

_SHORTHAND = ("w/", "w/o", "b/c")
_MEANING = {"w/": "with", "w/o": "without", "b/c": "because"}
_SPLIT_INSIDE = (r"(?<=\w)[-–—/+&](?=\w)", r"(?<=[^\W\d_])[,;:.!?]+(?=[^\W\d_])")


@lru_cache(maxsize=1)
def tokenizer() -> Tokenizer:
    """The tokenizer of the blank English pipeline with our rules; contractions stay whole (`don't`).

    It is built without that pipeline, which would set up some thousand exceptions only to drop them.
    """
    defaults = EnglishDefaults
    return Tokenizer(
        create_vocab("en", defaults),
        rules={text: [{ORTH: text}] for text in _SHORTHAND},
        prefix_search=compile_prefix_regex(defaults.prefixes or ()).search,
        suffix_search=compile_suffix_regex(_suffixes()).search,
        infix_finditer=compile_infix_regex([*(defaults.infixes or ()), *_SPLIT_INSIDE]).finditer,
    )


def _suffixes() -> list[str]:
    return [s for s in map(str, EnglishDefaults.suffixes or ()) if not s.startswith(("'", "’"))]


def tokens(text: str) -> Doc:
    """The tokens of a cleaned text, with folded stems in `norm_` (punctuation folds to itself)."""
    doc: Doc = tokenizer()(text)
    for token in doc:
        token.norm_ = _MEANING.get(token.lower_) or stem(fold(token.text)) or token.text
    return doc
