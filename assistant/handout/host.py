"""The host's sheet out of a plan: everything the evening takes, what guests need, and what to say aloud."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from assistant.answers.wording import listed, span
from assistant.evening.facts import wording
from assistant.evening.table_text import host_says
from assistant.handout.guest import BEST_FIRST
from assistant.handout.host_rows import Day, Row, clock, purchases, warmths
from assistant.handout.hosts import told_first
from assistant.handout.words import contents, moment, money, say
from assistant.pairing.score import LIKED

Parts = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Cell:
    """A verdict; `best` where no wine does better with the food and this one is fair or better."""

    verdict: str
    best: bool


@dataclass(frozen=True, slots=True)
class HostSheet:
    """What the host prints once. Rows are cells of text, in the order of the columns of their table."""

    facts: str
    problems: tuple[str, ...]
    clock: tuple[Day, ...]
    rescue: tuple[Row, ...]
    aloud: tuple[str, ...]
    purchases: tuple[Row, ...]
    cost: tuple[str, ...]
    sum: str
    must: tuple[str, ...]
    nice: tuple[str, ...]
    warmths: tuple[Row, ...]
    wines: tuple[str, ...]
    matrix: tuple[tuple[str, tuple[Cell, ...]], ...]
    board: tuple[str, ...]
    needs: tuple[Row, ...]
    leftovers: tuple[Row, ...]
    sober: tuple[str, ...]
    alcohol: str
    cautions: tuple[str, ...]


def host_sheet(plan: Parts) -> HostSheet:
    """Every part of the plan that the host needs in hand."""
    return HostSheet(
        facts=say()("host", "facts", when=moment(plan["start"]), **_counts(plan)),
        problems=tuple(plan["problems"]),
        clock=clock(plan["clock"]),
        rescue=tuple((row["at"][-5:], row["task"]) for row in plan["rescue"]),
        aloud=tuple(_aloud(plan)),
        purchases=purchases(plan),
        cost=tuple(_cost(plan)),
        sum=money(plan["cost"]["total"], plan["cost"]["currency"]),
        must=_kit(plan, "must"),
        nice=_kit(plan, "nice"),
        warmths=warmths(plan["temperatures"]),
        wines=tuple(plan["chosen"]),
        matrix=tuple((row["food"], _cells(row, plan)) for row in plan["pairings"]),
        board=tuple(_board(plan)),
        needs=tuple(_need(row) for row in plan["needs"]),
        leftovers=tuple(_leftovers(plan)),
        sober=tuple(_sober(row) for row in plan["alcohol_free"]),
        alcohol=_alcohol(plan["alcohol"]) if plan["chosen"] else "",
        cautions=tuple(plan["cautions"]),
    )


def _counts(plan: Parts) -> dict[str, Any]:
    return {"guests": plan["guests"], "drinkers": plan["drinkers"], "pour": f"{plan['pour_ml']:g}"}


def _aloud(plan: Parts) -> Iterator[str]:
    """A welcome, each wine with its place, its friend and its foe, and a farewell."""
    yield say()("aloud", "welcome")
    yield say()("aloud", "how")
    for number, (row, step) in enumerate(zip(plan["flight"], plan["pour_order"], strict=True), 1):
        reason = step["reason"][:1].upper() + step["reason"][1:]
        said = [say()("aloud", "pour", **row | {"number": number, "wine": _called(row), "reason": reason})]
        loves = row["loves"] if row["loves"] and row["loves"]["verdict"] in LIKED else None
        found = {"loves": loves, "fights": row["fights"], "would-fight": row["would_fight"]}
        yield " ".join([*said, *(say()("aloud", name, **met) for name, met in found.items() if met)])
    yield say()("aloud", "close")


def _called(row: Parts) -> str:
    return f"{row['name']}, {row['wine']}" if row["name"] else str(row["wine"])


def _cost(plan: Parts) -> Iterator[str]:
    """A head, within the budget or not, how to spend less, and what more guests would take."""
    cost, words = plan["cost"], say()
    if cost["per_head"] is not None:
        yield words("host", "per-head", amount=money(cost["per_head"], cost["currency"]))
    if cost["within_budget"] is not None:
        name = "within" if cost["within_budget"] else "over"
        yield words("host", name, amount=money(abs(cost["left"]), cost["currency"]))
    yield from (row["say"] for row in plan["savings"])
    more = plan["if_more"]
    bottles = [words("host", "more-bottles", count=row["more"], wine=row["wine"]) for row in more["bottles"]]
    foods = [
        words("host", "more-grams", grams=f"{row['grams']:g}", food=row["food"]) for row in more["foods"]
    ]
    if bottles or foods:
        yield words("host", "more", guests=more["guests"], items=listed([*bottles, *foods]))
    others = [row for row in plan["flight"] if row["stand_ins"]]
    told = [words("host", "stand-in", others=listed(r["stand_ins"], "or"), wine=r["wine"]) for r in others]
    if told:
        yield words("host", "stand-ins", wines="; ".join(told))


def _kit(plan: Parts, need: str) -> tuple[str, ...]:
    return tuple(f"{row['count']} × {row['item']}" for row in plan["kit"] if row["need"] == need)


def _cells(row: Parts, plan: Parts) -> tuple[Cell, ...]:
    found = told_first(row)
    best = min(found.values(), key=BEST_FIRST.index)
    return tuple(Cell(found[w], found[w] == best and best in LIKED) for w in plan["chosen"])


def _board(plan: Parts) -> Iterator[str]:
    """What the board lacks, the order to eat in, what the wines cover."""
    if not plan["pairings"]:
        return
    yield from (
        host_says(told, row["food"], wording()) for row in plan["pairings"] for told in row.get("host", ())
    )
    yield from plan["board"]["balance"]
    yield from (plan["coverage"]["say"],) if plan["coverage"] else ()
    if len(plan["food_order"]) > 1:
        order = [row["food"] for row in plan["food_order"]]
        yield say()("host", "eat-order", foods=", ".join(order))


def _need(row: Parts) -> Row:
    lists = (row[name] for name in ("needs", "may_have", "keep_away", "check_label"))
    return (row["guest"], *(listed(found) or say()("host", "nothing") for found in lists))


def _leftovers(plan: Parts) -> Iterator[Row]:
    """Foods with all they contain and how they keep; wines once they are open."""
    for row in plan["foods"]:
        yield row["food"], _inside(row), row["storage"] or say()("host", "keep-unknown")
    for row in plan["flight"]:
        days = row["keeps_open_range"]
        keep = say()("host", "wine-keep", days=span(*days)) if days else say()("host", "keep-unknown")
        yield row["wine"], _inside(row), keep


def _inside(row: Parts) -> str:
    return contents(row["allergens_present"], row["allergens_unknown"], shortly=False)


def _sober(row: Parts) -> str:
    name = "suits" if row["foods"] else "suits-one"
    told = {"drink": row["drink"], "food": row["food"], "verdict": row["verdict"]}
    return say()("host", name, foods=listed(row["foods"]), **told)


def _alcohol(row: Parts) -> str:
    drinks = {"us": row["us_drinks"], "uk": row["uk_units"], "au": row["au_drinks"]}
    return say()("host", "alcohol", grams=row["grams_per_drinker"], **drinks)
