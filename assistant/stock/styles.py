"""What the words of a row mean: a wine style, found with the lexicon that reads questions.

Each distinct text is looked up once. Only words of style that no name fits are read by the whole parser,
which mends slips; so many of them at most, for that takes a thousand times as long.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from assistant.knowledge.store import Knowledge
from assistant.language.fold import key
from assistant.language.lexicon import Lexicon, Name
from assistant.language.parse import Parser
from assistant.language.sorting import EDIBLE
from assistant.stock.words import stock_words

POURED = ("Wine", "Drink")
NARROWS = ("Kind", "Grape", "Region")
_ORDER = (*POURED, *NARROWS)


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
        if not style:
            return self._decide(self._names(label), first=False)
        both = self._decide(self._names(f"{style} {label}"), first=False)
        return found if both.why == "no-wine" else both

    def _read_again(self, style: str, found: Found) -> Found:
        """Words of style that no name fits, read by the parser."""
        again = (style, "\n")
        if found.why != "no-wine":
            return found
        if again not in self._known and self._left > 0:
            self._left -= 1
            frame = self._parser.parse(style)
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
            of_grape = self._is_grape(best) and not self._is_grape(wine) and self._share_a_grape(wine, best)
            if best in known[wine].kinds or of_grape:
                best = wine
        return best

    def _is_grape(self, wine: str) -> bool:
        """Whether a wine is called by its grape alone."""
        label = self._knowledge.label
        return label(wine) in map(label, self._knowledge.entry(wine).get("grape", ()))

    def _share_a_grape(self, wine: str, other: str) -> bool:
        entry = self._knowledge.entry
        return bool(set(entry(wine).get("grape", ())) & set(entry(other).get("grape", ())))

    def _of(self, name: str) -> tuple[str, ...]:
        """The styles of a kind or a grape, or those at home in a region."""
        if name not in self._styles:
            known = self._knowledge
            found = known.styles_of(name) or [w for w in known.wines if name in self._homes(w)]
            self._styles[name] = tuple(w for w in found if known.wines[w].type == "Wine")
        return self._styles[name]

    def _homes(self, wine: str) -> set[str]:
        homes = self._knowledge.entry(wine).get("home", ())
        return {place for home in homes for place in (home, *self._knowledge.broader(home))}

    def _names(self, text: str) -> tuple[Name, ...]:
        return tuple(self._read(text))

    def _read(self, text: str) -> Iterator[Name]:
        """What is named in a text from left to right, the longest names first.

        A sweetness behind a name is read before it: `Riesling feinherb` is an off-dry Riesling.
        """
        stems, at = _in_english(list(key(text)), self._lexicon), 0
        while at < len(stems):
            found = self._lexicon.longest(stems, at)
            at += found[0] if found else 1
            if found:
                yield min(found[1], key=_rank)


def _rank(name: Name) -> int:
    """What a word means in a list of wines: a wine, what narrows wines down, or something else."""
    poured = name.type != "Kind" or name.kind == "wine"
    return _ORDER.index(name.type) if name.type in _ORDER and poured else len(_ORDER)


def _in_english(stems: list[str], lexicon: Lexicon) -> list[str]:
    """The stems with colours and sweetnesses of other languages as the lexicon has them.

    Words inside a longer name stay; a sweetness goes before everything else where that makes a name.
    """
    means, at = stock_words().means, 0
    while at < len(stems):
        found = lexicon.longest(stems, at)
        length = next((n for n in (2, 1) if " ".join(stems[at : at + n]) in means), 0)
        if length and (found is None or (found[0] <= length and _rank(found[1][0]) >= len(_ORDER))):
            meant = list(key(means[" ".join(stems[at : at + length])]))
            stems[at : at + length] = meant
            at += len(meant)
        else:
            at += found[0] if found else 1
    return _sweetness_first(stems, lexicon)


def _sweetness_first(stems: list[str], lexicon: Lexicon) -> list[str]:
    for sweetness in stock_words().sweetness:
        count = len(sweetness)
        for at in range(len(stems) - count + 1):
            if tuple(stems[at : at + count]) == sweetness:
                return _before_a_name(list(sweetness), [*stems[:at], *stems[at + count :]], lexicon) or stems
    return stems


def _before_a_name(sweetness: list[str], rest: list[str], lexicon: Lexicon) -> list[str]:
    """The stems with the sweetness where it makes the name of a wine with what follows, or none."""
    for at in range(len(rest)):
        moved = [*rest[:at], *sweetness, *rest[at:]]
        found = lexicon.longest(moved, at)
        if found and found[0] > len(sweetness) and min(found[1], key=_rank).type in POURED:
            return moved
    return []
