"""What the published JSON of an answer must hold: the JSON Schema, and sums that a schema cannot state."""

from __future__ import annotations

import json
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path
from typing import Any

from jsonschema import Draft202012Validator

from assistant import answers

Record = dict[str, Any]
CLOSE = 1e-6


@lru_cache(maxsize=1)
def validator() -> Draft202012Validator:
    """The validator of the shipped schema, which is itself checked first."""
    schema = json.loads(Path(answers.__file__).with_name("answer.schema.json").read_text("utf-8"))
    Draft202012Validator.check_schema(schema)
    return Draft202012Validator(schema)


def faults(record: Record) -> list[str]:
    """Everything that the schema has against a record, with the place of each."""
    return [f"{error.json_path}: {error.message}" for error in validator().iter_errors(record)]


def items(record: Record) -> Iterator[Record]:
    """Every item of a record, wherever it stands."""
    yield from (*record["picks"], *record["avoid"])
    if record.get("other_colour"):
        yield record["other_colour"]


def sums_wrong(record: Record) -> list[str]:
    """Items whose path does not add up to their score, or is not strongest first."""
    wrong = []
    for item in items(record):
        effects = [entry["effect"] for entry in item["path"]]
        if abs(sum(effects) - item["score"]) > CLOSE:
            wrong.append(f"{item['id']}: {sum(effects)} is not {item['score']}")
        if effects != sorted(effects, key=lambda effect: -abs(effect)):
            wrong.append(f"{item['id']}: not strongest first: {effects}")
    return wrong
