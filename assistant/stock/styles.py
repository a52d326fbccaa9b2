"""What the words of a row mean: a wine style, found with the lexicon that reads questions.

Each distinct text is looked up once. Only words of style that no name fits are read by the whole parser,
which mends slips; so many of them at most, for that takes a thousand times as long.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from assistant.knowledge.store import Knowledge
from assistant.language.fold import fold, key
from assistant.language.lexicon import Name
from assistant.language.parse import Parser
from assistant.language.sorting import EDIBLE
from assistant.stock.words import stock_words

POURED = ("Wine", "Drink")
NARROWS = ("Kind", "Grape", "Region")


@dataclass(frozen=True, slots=True)
class Found:
    """The style a row reads as, or why none: `no-wine`, `too-wide` (of `count` styles) or `food`.

    `mended`: a slip in its words was mended.
    """

    wine: str | None = None
    why: str = ""
    count: int = 0
    mended: bool = False


NO_WINE = Found(why="no-wine")


class Styles:
    """Reads the words of rows; what was read before is remembered."""

    def __init__(self, knowledge: Knowledge, parser: Parser) -> None:
        self._knowledge, self._parser, self._lexicon = knowledge, parser, parser.lexicon
        self._known: dict[tuple[str, str], Found] = {}
        self._named: dict[str, tuple[Name, ...]] = {}
        self._styles: dict[str, tuple[str, ...]] = {}
        self._left = stock_words().limits["mended"]

    def of(self, style: str, label: str) -> Found:
        """The style of a row with these words of style (which may be none) and this label."""
        alone = (style, "")
        if alone not in self._known:
            self._known[alone] = self._decide(self._names(style), first=True) if style else NO_WINE
        found = self._known[alone]
        if found.wine or not label:
            return found if found.wine or not style else self._read_again(style, found)
        both = self._labelled(style, label, found)
        return both if both.wine or not style else self._read_again(style, both)

    def _labelled(self, style: str, label: str, found: Found) -> Found:
        """With the label looked at too; its last wine counts, as names of growers come first."""
        names = self._names(label)
        if not names:
            return found if style else NO_WINE
        wider = [n for n in self._names(style) if n.type not in POURED]
        both = self._decide((*wider, *names), first=False)
        return found if both.why == "no-wine" and style else both

    def _read_again(self, style: str, found: Found) -> Found:
        """Words of style that no name fits, read by the parser."""
        again = (style, "\n")
        if found.why != "no-wine":
            return found
        if again not in self._known and self._left > 0:
            self._left -= 1
            frame = self._parser.parse(_in_english(style))
            named = [self._lexicon.name(r.id) for r in frame.text.readings if r.type in (*POURED, *NARROWS)]
            read = self._decide(named, first=True)
            self._known[again] = Found(read.wine, mended=True) if read.wine else found
        return self._known.get(again, found)

    def _decide(self, names: Sequence[Name], first: bool) -> Found:
        wines = [name.id for name in names if name.type in POURED]
        if wines:
            return Found(self._narrowest(wines if first else wines[::-1]))
        narrows = [set(self._of(name.id)) for name in names if name.type in NARROWS and self._of(name.id)]
        if not narrows:
            return Found(why="food") if any(name.kind in EDIBLE for name in names) else NO_WINE
        common = set.intersection(*narrows) or min(narrows, key=len)
        if len(common) > stock_words().limits["styles"]:
            return Found(why="too-wide", count=len(common))
        return Found(max(sorted(common), key=lambda wine: self._knowledge.wines[wine].availability))

    def _narrowest(self, wines: Sequence[str]) -> str:
        """The first wine, or another named that is one of its kind: `Chardonnay, Chablis` is Chablis."""
        best, known = wines[0], self._knowledge.wines
        for wine in wines[1:]:
            if best in known[wine].kinds or (
                self._grapes(wine) & self._grapes(best) and self._homed(wine, best)
            ):
                best = wine
        return best

    def _grapes(self, wine: str) -> set[str]:
        return {kind for kind in self._knowledge.wines[wine].kinds if kind.startswith("grape/")}

    def _homed(self, wine: str, best: str) -> bool:
        """Whether a wine is of a place and the other of none."""
        homes = [any(k.startswith("region/") for k in self._knowledge.wines[w].kinds) for w in (wine, best)]
        return homes == [True, False]

    def _of(self, name: str) -> tuple[str, ...]:
        if name not in self._styles:
            wines = self._knowledge.wines
            self._styles[name] = tuple(s for s in self._knowledge.styles_of(name) if wines[s].type == "Wine")
        return self._styles[name]

    def _names(self, text: str) -> tuple[Name, ...]:
        return tuple(self._read(text))

    def _read(self, text: str) -> Iterator[Name]:
        """What is named in a text from left to right, the longest names first."""
        stems, at = key(_in_english(text)), 0
        while at < len(stems):
            found = self._lexicon.longest(stems, at)
            if found is None:
                at += 1
                continue
            length, names = found
            at += length
            yield min(names, key=_rank)


def _rank(name: Name) -> int:
    """What a word means in a list of wines: a wine, what narrows wines down, or something else."""
    order = [*POURED, *NARROWS]
    poured = name.type != "Kind" or name.kind == "wine"
    return order.index(name.type) if name.type in order and poured else len(order)


def _in_english(text: str) -> str:
    """The text with words of other languages for colour and sweetness as the lexicon has them."""
    means = stock_words().means
    words = [(word, fold(word.strip(".,;()"))) for word in text.split()]
    return " ".join(means.get(folded, word) for word, folded in words)
