"""The words of a question that did no work: what is told as not understood."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable, Mapping, Set

from spacy.lang.en.stop_words import STOP_WORDS
from spacy.tokens import Doc, Token

from assistant.language.fold import fold, key, stem
from assistant.language.frame import Text
from assistant.language.given_names import is_given_name
from assistant.language.neighbours import LONG
from assistant.language.place_names import is_place_name
from assistant.language.slipping import SWAPPED, slip_cost
from assistant.language.small_words import small_words
from assistant.language.spelling import is_english
from assistant.language.vocabulary import Vocabulary
from assistant.language.weighing import SURE

NAMED = "readings"  # the group of spans of what was named


class Unread:
    """Tells which words are left out. `filler`: words without meaning in this job; `plain`: English ones.

    `more`: rarer English words, which may be what is asked for in a question about a word; `people`: given
    names; `places`: towns and countries.
    """

    def __init__(
        self,
        known: Vocabulary,
        filler: frozenset[str],
        plain: frozenset[str],
        more: frozenset[str] = frozenset(),
        people: frozenset[str] = frozenset(),
        places: frozenset[str] = frozenset(),
    ) -> None:
        self._more, self._people, self._places = more, people, places
        self._known, self._filler, self._idle = known, filler, filler | plain
        self._listed, self._passed = known.heard.listed, known.heard.passed_over
        self._eaten, self._closing = known.heard.eaten, known.heard.closing

    def words(
        self, doc: Doc, used: Set[int], mended: Mapping[int, str], asks_meaning: bool = False
    ) -> list[str]:
        """The words as typed; a mended one among them may have been a name that is not known."""
        left = (token for token in doc if token.i not in used)
        return [
            t.text for t in left if self._is_left(t, mended, asks_meaning) or self._in_place(doc, t.i, used)
        ]

    def _is_left(self, token: Token, mended: Mapping[int, str], asks_meaning: bool) -> bool:
        """Whether a word that did no work is told: mended ones too, unless the plain word is sure."""
        if token.i not in mended:
            return self._matters(token, asks_meaning)
        typed = fold(mended[token.i])
        is_word = stem(typed) in self._more or is_given_name(token, self._people)
        return not (is_word or self._surely_plain(typed, token.norm_))

    def _surely_plain(self, typed: str, meant: str) -> bool:
        """Whether a long word is plain but for a likely slip, or two letters of a common one are swapped."""
        cost = slip_cost(typed, meant)
        long = len(typed) >= LONG and cost <= SURE
        return meant in self._known.little and (long or (meant in STOP_WORDS and cost <= SWAPPED))

    def _in_place(self, doc: Doc, at: int, used: Set[int]) -> bool:
        """Whether an idle word stands where a name is due: with what did some work (`steak and a rise`)."""
        if not self._says(doc[at]) or (at and is_place_name(doc[at - 1], self._places, used)):
            return False  # ... but `in a Manchester flat`
        start, end = self._around(doc, at, lambda i: i not in used and self._says(doc[i]))
        while start and doc[start - 1].norm_ in self._passed:
            start -= 1
        ends = end == len(doc) or not doc[end].is_alpha
        listed = ends and start > 1 and doc[start - 1].norm_ in self._listed and start - 2 in used
        return listed or self._beside_name(doc, at)

    def _beside_name(self, doc: Doc, at: int) -> bool:
        """Whether an idle word and the name beside it fill the place of a name (`with olive tapping nod`)."""
        named = {i: span.kb_id_ for span in doc.spans[NAMED] for i in range(span.start, span.end)}
        start, end = self._around(doc, at, lambda i: i in named or self._says(doc[i]))
        ids = {named[i] for i in range(start, end) if i in named}
        if not ids or any(doc[at].norm_ in key(self._known.lexicon.name(id_).label) for id_ in ids):
            return False  # no name, or one that says the word itself: `ruby porto`
        while start and doc[start - 1].norm_ in self._passed:
            start -= 1
        if end < len(doc) and doc[end].norm_ in self._closing:
            return start == 0 or doc[start - 1].norm_ in self._eaten
        ends = end == len(doc) or not doc[end].is_alpha
        return ends and start > 0 and doc[start - 1].norm_ in self._eaten

    def _around(self, doc: Doc, at: int, belongs: Callable[[int], bool]) -> tuple[int, int]:
        """(start, end) of the words around a place that belong to it."""
        start, end = at, at + 1
        while end < len(doc) and belongs(end):
            end += 1
        while start and belongs(start - 1):
            start -= 1
        return start, end

    def _says(self, token: Token) -> bool:
        idle = token.norm_ in self._filler or token.norm_ in self._passed
        return token.is_alpha and not token.is_stop and not idle

    def _tells_how(self, word: str) -> bool:
        """Whether an English word tells how or how much (`lightly`), and is no part of any name."""
        ends = word.endswith(tuple(small_words()["idle-endings"]))
        return ends and word not in self._known.lexicon.words and is_english(word)

    def _matters(self, token: Token, asks_meaning: bool) -> bool:
        word = token.norm_
        if token.is_stop or word in self._idle or (word in self._more and not asks_meaning):
            return False
        if any(c.isdigit() for c in word) or self._tells_how(word) or _run_together(token):
            return False
        named = {i for span in token.doc.spans[NAMED] for i in range(span.start, span.end)}
        if is_given_name(token, self._people) or is_place_name(token, self._places, named):
            return False
        return any(c.isalnum() or (unicodedata.category(c).startswith("S") and not c.isascii()) for c in word)


def _run_together(token: Token) -> bool:
    """Whether a word is another run together with a little one (`why'd`, `it'll`)."""
    head, mark, tail = token.text.lower().replace("’", "'").rpartition("'")
    return bool(mark and head) and tail in small_words()["short-tails"]


def beside_tastes(text: Text) -> tuple[str, ...]:
    """What is left out, less the words for what something is like."""
    tastes = small_words()["tastes"]
    return tuple(word for word in text.left_out if stem(fold(word)) not in tastes)
