"""What is told of a list as it is opened: how much was read, and every mistake by line, the rest counted."""

from __future__ import annotations

from assistant.answers.wording import listed
from assistant.knowledge.check_report import sentence
from assistant.stock.records import Stock
from assistant.stock.words import wording


def lines_of(stock: Stock) -> list[str]:
    """Sentences: the counts first, then what is wrong and what was not read."""
    counts = {"count": stock.count, "styles": len(stock.of), "left": stock.left_out}
    head = wording()("report", "head-left" if stock.left_out else "head", file=stock.source, **counts)
    lines = [head, *map(sentence, stock.told)]
    kinds = [
        wording()("report", "kind", count=count, kind=wording()("kind", kind))
        for kind, count in sorted(stock.more.items(), key=lambda pair: -pair[1])
    ]
    lines += [wording()("report", "more", kinds=listed(kinds))] if kinds else []
    return [*lines, *([wording()("report", "unused", names=listed(stock.unused))] if stock.unused else [])]
