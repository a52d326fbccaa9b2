"""The sections of the host's sheet that speak of wines and foods."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from assistant.answers.wording import Wording, listed, span
from assistant.evening.facts import wording
from assistant.taught.keeper import AUTHOR

Parts = Mapping[str, Any]
SAID = ("wine", "verdict", "book")


def on_the_table(plan: Parts) -> dict[str, list[str]]:
    """The lines of each section by the name of its heading."""
    return {
        "wines": [line for number in range(len(plan["flight"])) for line in _wine(number, plan)],
        "pairings": [line for row in plan["pairings"] for line in _voices(row)],
        "coverage": list(_coverage(plan)),
        "food_order": [_eat(number, row) for number, row in enumerate(plan["food_order"], 1)],
        "board": list(_board(plan["board"])) if plan["pairings"] else [],
        "alcohol_free": [_drink(row) for row in plan["alcohol_free"]],
    }


def leftovers(row: Parts) -> Iterator[str]:
    """The allergens of a food and how what is left of it keeps."""
    has, may = row["allergens_present"], row["allergens_unknown"]
    name = (
        "allergens"
        if has and may
        else "allergens-has"
        if has
        else "allergens-may"
        if may
        else "allergens-none"
    )
    yield wording()("text", name, food=row["food"], has=listed(has), may=listed(may))
    if row["storage"]:
        yield wording()("text", "kept", storage=row["storage"])


def _wine(at: int, plan: Parts) -> Iterator[str]:
    """A wine in four lines or more: what it is, why it is in and here, its friend and its foe."""
    say, row = wording(), plan["flight"][at]
    named = say("text", "named", **row) if row["name"] else row["wine"]
    degrees = span(*row["celsius"])
    yield say("text", "wine", number=at + 1, named=named, style=row["style"], degrees=degrees)
    yield from (say("text", "chosen", **why) for why in plan["why_chosen"][at : at + 1])
    yield say("text", "order", **plan["pour_order"][at])
    if plan["pour_order"][at]["if_swapped"]:
        yield say("text", "if-swapped", **plan["pour_order"][at])
    for name in ("loves", "fights"):
        if row[name]:
            yield say("text", name, **row[name])
    if row["stand_ins"]:
        yield say("text", "stand-ins", wines=listed(row["stand_ins"], "or"))
    if row["keeps_open_range"]:
        yield say("text", "open", days=span(*row["keeps_open_range"]))


def _voices(row: Parts) -> list[str]:
    """The book's line of a food and those of the host, whoever is to be heard first in front."""
    found = row.get("host", ())
    lines = [host_says(told, row["food"], wording()) for told in found]
    first = sum(told["first"] for told in found)
    return [*lines[:first], _pairing(row), *lines[first:]]


def host_says(told: Parts, food: str, say: Wording) -> str:
    """`Gouda with Syrah: you say good, the book fair, one step lower`."""
    steps = abs(told["apart"])
    way = "same" if not steps else "lower" if told["apart"] > 0 else "higher"
    count = say("steps", str(steps)) if steps else ""
    who = say("text", "you") if told["author"] == AUTHOR else say("text", "other", who=told["author"])
    return say("text", f"host-{way}", food=food, who=who, steps=count, **{n: told[n] for n in SAID})


def _pairing(row: Parts) -> str:
    """The best wine and, where it is another, the worst."""
    best, worst = row["best"], row["worst"]
    name = "pairing-one" if best["wine"] == worst["wine"] else "pairing"
    told = {"best": best["wine"], "best_verdict": best["verdict"]}
    told |= {"worst": worst["wine"], "worst_verdict": worst["verdict"]}
    return wording()("text", name, food=row["food"], **told)


def _coverage(plan: Parts) -> Iterator[str]:
    if plan["coverage"] is None:
        return
    yield plan["coverage"]["say"]
    if not plan["chosen_is_best"]:
        yield wording()("coverage", "unproven")
    if plan["gaps"]:
        yield wording()("text", "gaps", foods=listed(plan["gaps"], "or"))
    else:
        yield wording()("text", "weakest", **plan["weakest"])
    more = plan["one_more"]
    if more and not (more["saturated"] and plan["coverage"]["saturates_at"]):
        yield more["say"]


def _eat(number: int, row: Parts) -> str:
    return wording()("text", "eat", number=number, **row)


def _board(board: Parts) -> Iterator[str]:
    """What is wrong, what bridges and what does not, what to plate apart, what would help."""
    say = wording()
    yield from board["balance"] or [say("text", "balanced")]
    for name, template in (("bridges", "bridges"), ("gaps", "board-gaps"), ("traps", "traps")):
        if board[name]:
            yield say("text", template, foods=listed(board[name], "or" if name == "gaps" else "and"))
    if board["lonely"]:
        yield say("text", "lonely", wines=listed(board["lonely"]))
    for name in ("swap", "add"):
        if board[name]:
            yield say("text", name, **board[name])


def _drink(row: Parts) -> str:
    """A drink with the foods it serves best of all, else with the one it suits best."""
    name = "drink" if row["foods"] else "drink-also"
    return wording()(
        "text", name, foods=listed(row["foods"]), **{n: row[n] for n in ("drink", "food", "verdict")}
    )
