"""spaCy's blank English pipeline, taught the trade's shorthand; folded forms stand in `norm_`."""

from __future__ import annotations

import re
from functools import lru_cache

import spacy
from spacy.language import Language
from spacy.symbols import ORTH
from spacy.tokens import Doc

from assistant.language.fold import fold, stem

_SHORTHAND = ("w/", "w/o", "b/c")
_MEANING = {"w/": "with", "w/o": "without", "b/c": "because"}
_SPLIT_INSIDE = (r"(?<=\w)[-–—/+&](?=\w)", r"(?<=[^\W\d_])[,;:.!?]+(?=[^\W\d_])")


@lru_cache(maxsize=1)
def pipeline() -> Language:
    """The tokenizer; contractions stay whole, so that `don't` is one word."""
    nlp = spacy.blank("en")
    rules = {k: v for k, v in nlp.tokenizer.rules.items() if "'" not in k and "’" not in k}
    nlp.tokenizer.rules = {k: v for k, v in rules.items() if not k[:1].isalpha()}
    for text in _SHORTHAND:
        nlp.tokenizer.add_special_case(text, [{ORTH: text}])
    infixes = [*(nlp.Defaults.infixes or []), *_SPLIT_INSIDE]
    nlp.tokenizer.infix_finditer = re.compile("|".join(infixes)).finditer
    nlp.tokenizer.suffix_search = _suffixes(nlp)
    return nlp


def _suffixes(nlp: Language):  # type: ignore[no-untyped-def]
    kept = [s for s in (nlp.Defaults.suffixes or []) if not s.startswith(("'", "’"))]
    return re.compile("|".join(f"(?:{s})$" for s in kept)).search


def tokens(text: str) -> Doc:
    """The tokens of a cleaned text, with folded stems in `norm_` (punctuation folds to itself)."""
    doc = pipeline().make_doc(text)
    for token in doc:
        token.norm_ = _MEANING.get(token.lower_) or stem(fold(token.text)) or token.text
    return doc
