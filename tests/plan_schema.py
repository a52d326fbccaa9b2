"""What the published JSON of a plan must hold: the JSON Schema, and sums that a schema cannot state."""

from __future__ import annotations

import json
from functools import lru_cache
from pathlib import Path
from typing import Any

from jsonschema import Draft202012Validator

from assistant import evening

Plan = dict[str, Any]
CENT = 0.005


@lru_cache(maxsize=1)
def validator() -> Draft202012Validator:
    """The validator of the shipped schema, which is itself checked first."""
    schema = json.loads(Path(evening.__file__).with_name("plan.schema.json").read_text("utf-8"))
    Draft202012Validator.check_schema(schema)
    return Draft202012Validator(schema)


def faults(plan: Plan) -> list[str]:
    """Everything that the schema has against a plan, with the place of each."""
    return [f"{error.json_path}: {error.message}" for error in validator().iter_errors(plan)]


def disagreements(plan: Plan) -> list[str]:
    """Fields that speak of the same thing and do not agree."""
    poured, tasks = plan["chosen"], [row["at"] for row in plan["clock"]]
    costs = sum(row["cost"] or 0.0 for row in plan["shopping"])
    foods = [row["food"] for row in plan["foods"]]
    wines = {w["wine"] for row in plan["pairings"] for w in (row["best"], row["worst"])}
    holds = {
        "pour order": [row["wine"] for row in plan["pour_order"]] == poured,
        "flight": [row["wine"] for row in plan["flight"]] == poured,
        "bottles": [row["wine"] for row in plan["bottles"]] == poured,
        "temperatures": [row["wine"] for row in plan["temperatures"]] == poured,
        "why": [row["wine"] for row in plan["why_chosen"]] in (poured, []),
        "pairings": [row["food"] for row in plan["pairings"]] in (foods, []) and wines <= set(poured),
        "food order": sorted(row["food"] for row in plan["food_order"]) == sorted(foods),
        "gaps": set(plan["gaps"]) <= set(foods) and plan["board"]["gaps"] == plan["gaps"],
        "clock": tasks == sorted(tasks),
        "cost": abs(plan["cost"]["total"] - costs) < CENT,
    }
    return [name for name, right in holds.items() if not right]
