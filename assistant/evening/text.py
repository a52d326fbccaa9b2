"""A plan as a sheet for the host: plain text, section by section."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from assistant.answers.wording import listed
from assistant.evening.facts import wording
from assistant.evening.records import Evening
from assistant.evening.table_text import leftovers, on_the_table

Parts = Mapping[str, Any]


def text(evening: Evening, plan: Parts) -> str:
    """Every section with its heading, an empty line between sections; sections without lines are left out.

    Where no choice of wines keeps to the limits, only what is to be put right.
    """
    if evening.wines and not plan["chosen"] and evening.drinkers:
        return "\n\n".join([_heading(evening), _block("problems", plan["problems"])])
    sections = {
        "problems": plan["problems"],
        "rescue": [row["task"] for row in plan["rescue"]],
        **on_the_table(plan),
        "bottles": list(_bottles(plan)),
        "from_list": [row["say"] for row in plan["from_list"]],
        "shopping": [_purchase(row, evening) for row in plan["shopping"]],
        "cost": list(_cost(plan["cost"])),
        "savings": [row["say"] for row in plan["savings"]],
        "temperatures": [_temperature(row) for row in plan["temperatures"]],
        "clock": [f"{row['at'].replace('T', ' ')}  {row['task']}" for row in plan["clock"]],
        "kit": [wording()("text", f"kit-{row['need']}", **row) for row in plan["kit"]],
        "alcohol": [wording()("text", "alcohol", **plan["alcohol"])],
        "needs": [line for row in plan["needs"] for line in _needs(row)],
        "foods": [line for row in plan["foods"] for line in leftovers(row)],
        "cautions": plan["cautions"],
    }
    blocks = [_block(name, lines) for name, lines in sections.items() if lines]
    return "\n\n".join([_heading(evening), *blocks])


def _heading(evening: Evening) -> str:
    when = evening.start.isoformat(" ", "minutes") if evening.start else wording()("text", "unknown")
    told = {"title": evening.title or wording()("text", "untitled"), "when": when}
    counts = {"guests": evening.guests, "drinkers": evening.drinkers, "pour": f"{evening.pour_ml:g}"}
    return wording()("text", "heading", **told, **counts)


def _block(name: str, lines: list[str]) -> str:
    return "\n".join([wording()("heading", name), *(f"  {line}" for line in lines)])


def _bottles(plan: Parts) -> Iterator[str]:
    """The bottles of each wine, and what a refill of the favourite takes."""
    yield from (wording()("text", "bottle", **_known(row)) for row in plan["bottles"])
    more = plan["refill"]["bottles"]
    if plan["bottles"] and plan["drinkers"]:
        unit = wording()("unit", "bottle" if more == 1 else "bottle-many")
        yield wording()("text", "refill", ml=f"{plan['refill']['ml']:g}", more=more, unit=unit)


def _purchase(row: Parts, evening: Evening) -> str:
    unit = wording()("unit", row["unit"] if row["amount"] == 1 else f"{row['unit']}-many")
    amount = f"{row['amount']:g} {unit}"
    if row["cost"] is None:
        return wording()("text", "purchase", item=row["item"], amount=amount)
    cost = evening.money(row["cost"])
    return wording()("text", "priced", item=row["item"], amount=amount, cost=cost)


def _cost(cost: Parts) -> Iterator[str]:
    currency = f" {cost['currency']}" if cost["currency"] else ""
    head = "?" if cost["per_head"] is None else f"{cost['per_head']:.2f}"
    yield wording()("text", "cost", total=f"{cost['total']:.2f}{currency}", head=f"{head}{currency}")
    if cost["unpriced"]:
        yield wording()("text", "unpriced", items=listed(cost["unpriced"]))
    if cost["within_budget"] is not None:
        name = "within" if cost["within_budget"] else "over"
        yield wording()("text", name, left=f"{abs(cost['left']):.2f}{currency}")


def _temperature(row: Parts) -> str:
    low, high = (f"{degrees:g}" for degrees in row["celsius"])
    return wording()("text", "temperature", low=low, high=high, **_known(row))


def _needs(row: Parts) -> Iterator[str]:
    yield wording()("text", "guest", guest=row["guest"], needs=listed(row["needs"]))
    for name in ("may_have", "keep_away", "check_label"):
        if row[name]:
            yield wording()("text", name, items=listed(row[name]))


def _known(row: Parts) -> dict[str, Any]:
    """The fields of a row; what is None is told as a dash."""
    return {name: "-" if value is None else value for name, value in row.items()}
