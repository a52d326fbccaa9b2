"""Wines of an evening that name a bottle of the list take its price, its stock and its strength."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from assistant.evening.records import Evening, WineLine
from assistant.stock.answering import told_bottle
from assistant.stock.records import Bottle, Stock
from assistant.stock.words import wording


def of_the_list(evening: Evening, stock: Stock) -> tuple[Evening, list[dict[str, Any]]]:
    """The evening with what the list says of its wines, and a row for each wine that the list has."""
    if not stock:
        return evening, []
    found = {line.label: _bottle(line, stock) for line in evening.wines}
    wines = tuple(_filled(line, found[line.label]) for line in evening.wines)
    currency = evening.currency or stock.currency.strip() or None
    rows = [_row(line, bottle, stock) for line in evening.wines if (bottle := found[line.label])]
    return replace(evening, wines=wines, currency=currency), rows


def _bottle(line: WineLine, stock: Stock) -> Bottle | None:
    """The bottle a line names, by its name or else by its label."""
    return (stock.named(line.name) if line.name else None) or stock.named(line.label)


def _filled(line: WineLine, bottle: Bottle | None) -> WineLine:
    """The line with what the list says; where it says nothing, as the file has it."""
    if bottle is None:
        return line
    return replace(
        line,
        price=line.price if bottle.price is None else bottle.price,
        owned=line.owned if bottle.left is None else bottle.left,
        alcohol_percent=line.alcohol_percent if bottle.alcohol is None else bottle.alcohol,
    )


def _row(line: WineLine, bottle: Bottle, stock: Stock) -> dict[str, Any]:
    """A row of the plan's `from_list`."""
    told = wording()("plan", "row", wine=line.label, bottle=told_bottle(bottle, stock))
    other = line.price is not None and bottle.price is not None and line.price != bottle.price
    if other:
        told += wording()("plan", "other-price", price=stock.money(line.price or 0.0))
    return {
        "wine": line.label, "bottle": bottle.name, "price": bottle.price, "in_stock": bottle.left,
        "line": bottle.line, "say": f"{told}.",
    }  # fmt: skip
