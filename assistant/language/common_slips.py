"""What common slips of a word or a name stand for, as the knowledge tells them (`cauliflour cheese`)."""

from __future__ import annotations

from collections.abc import Sequence, Set

from spacy.tokens import Doc

from assistant.language.lexicon import Lexicon

MOST_SLIP = 4  # words of a name that is known to be misspelt


class CommonSlips:
    """The slips of a lexicon; `plain`: English words, `eaten`: words before something to eat."""

    def __init__(self, lexicon: Lexicon, plain: Set[str], eaten: Set[str]) -> None:
        self._lexicon, self._plain, self._eaten = lexicon, plain, eaten
        self._starts = lexicon.slip_starts

    def words(self, doc: Doc, at: int) -> Sequence[str]:
        """The words that common slips of one word or of a name of several stand for, or none."""
        slip = self._slip(doc, at)
        if slip or doc[at].norm_ not in self._starts:
            return [slip] if slip else ()
        spans = ([t.norm_ for t in doc[at : at + size]] for size in range(MOST_SLIP, 1, -1))
        return next((right for words in spans if (right := self._lexicon.righted(words))), ())

    def _slip(self, doc: Doc, at: int) -> str | None:
        """What a common slip stands for; one that is English is a slip only where food may stand."""
        word = doc[at].norm_
        slip = self._lexicon.slips.get(word)
        sure = slip and (
            word not in self._plain or self._may_be_eaten(doc, at) or self._completes(doc, at, slip)
        )
        return slip if sure else None

    def _completes(self, doc: Doc, at: int, word: str) -> bool:
        found = self._lexicon.longest([word, *(t.norm_ for t in doc[at + 1 : at + 3])], 0)
        return bool(found and found[0] > 1)

    def _may_be_eaten(self, doc: Doc, at: int) -> bool:
        beside = [doc[i].norm_ for i in (at - 1, at + 1) if 0 <= i < len(doc)]
        return at == 0 or beside[0] in self._eaten or any(map(self._edible, beside))

    def _edible(self, word: str) -> bool:
        found = self._lexicon.longest([word], 0)
        return bool(found and found[1][0].kind in ("food", "wine"))
