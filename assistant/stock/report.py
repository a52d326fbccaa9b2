"""What is told of a list as it is opened: how much was read, and every mistake by line, the rest counted."""

from __future__ import annotations

from assistant.answers.wording import listed
from assistant.knowledge.check_report import sentence
from assistant.knowledge.problems import Problem
from assistant.stock.records import Stock
from assistant.stock.words import wording


def lines_of(stock: Stock) -> list[str]:
    """Sentences: the counts first, then what is wrong and what was not read."""
    counted = {"bottles": stock.count, "styles": len(stock.of), "left": stock.left_out}
    counts = {name: _counted("rows" if name == "left" else name, n) for name, n in counted.items()}
    head = wording()("report", "head-left" if stock.left_out else "head", file=stock.source, **counts)
    lines = [head, *map(sentence, stock.told)]
    lines += [wording()("report", "more", kinds=_kinds(stock))] if stock.more else []
    return [*lines, *([wording()("report", "unused", names=listed(stock.unused))] if stock.unused else [])]


def _counted(kind: str, count: int) -> str:
    return wording()("report", kind.removesuffix("s") if count == 1 else kind, count=count)


def more_problems(stock: Stock) -> list[Problem]:
    """Whatever is wrong besides, as one problem."""
    if not stock.more:
        return []
    what, remedy = wording()("report", "more", kinds=_kinds(stock)), wording()("report", "more-do")
    return [Problem(stock.source, what, remedy)]


def _kinds(stock: Stock) -> str:
    """`310 wines not read and 4 prices`."""
    ordered = sorted(stock.more.items(), key=lambda pair: -pair[1])
    return listed([wording()("report", "kind", count=n, kind=wording()("kind", kind)) for kind, n in ordered])
