"""Every SHACL shape lets its good fixture pass and reports its bad one with the right message."""

from __future__ import annotations

import re
from functools import lru_cache
from pathlib import Path

import pytest
import rdflib
from rdflib.namespace import SH

from assistant.knowledge.check_shapes import shape_problems, split
from assistant.knowledge.files import ontology_dir
from assistant.knowledge.problems import Problem
from tests.knowledge.cases import as_expected, fixture, ground, names, told, well_told

SHAPES = sorted((ontology_dir() / "shapes").glob("*.ttl"))
QUANTITIES = (
    "fat", "sugar", "titratableAcidity", "pH", "sodium", "glutamate", "scoville", "protein", "starch",
    "bitterness", "smoke", "aroma", "omega3",
)  # fmt: skip


@lru_cache
def problems(name: str, sort: str) -> tuple[Problem, ...]:
    """What the shapes of this name have against their good or bad fixture."""
    shapes = ontology_dir() / "shapes" / f"{name}.ttl"
    return tuple(shape_problems(ground(fixture("shapes", name, sort)), [shapes]))


def messages(file: Path) -> dict[str, str]:
    """Message of every shape in a file, by the shape's IRI."""
    graph = rdflib.Graph().parse(file, format="turtle")
    return {str(shape): str(message) for shape, message in graph.subject_objects(SH.message)}


MESSAGES = [(file.stem, shape, text) for file in SHAPES for shape, text in messages(file).items()]


def test_every_file_of_shapes_has_fixtures() -> None:
    assert names("shapes") == {file.stem for file in SHAPES}
    assert len(MESSAGES) > 100


@pytest.mark.parametrize("name", [file.stem for file in SHAPES])
def test_good_fixture_passes(name: str) -> None:
    assert problems(name, "good") == ()


@pytest.mark.parametrize("name", [file.stem for file in SHAPES])
def test_bad_fixture_is_reported_with_the_right_messages(name: str) -> None:
    bad = fixture("shapes", name, "bad")
    found = told(problems(name, "bad"), bad)
    assert as_expected(found, bad), found
    assert all(map(well_told, problems(name, "bad")))


@pytest.mark.parametrize(("name", "shape", "text"), MESSAGES, ids=[m[1].rsplit("/", 1)[-1] for m in MESSAGES])
def test_every_shape_is_needed_by_its_bad_fixture(name: str, shape: str, text: str) -> None:
    message, remedy = split(text.removeprefix("{$this} "))
    pattern = re.compile(re.escape(message).replace(r"\{\$value\}", ".*"))
    hits = [p for p in problems(name, "bad") if pattern.search(p.message) and p.remedy == remedy]
    assert hits, shape


@pytest.mark.parametrize(("name", "shape", "text"), MESSAGES, ids=[m[1].rsplit("/", 1)[-1] for m in MESSAGES])
def test_message_names_the_term_and_the_remedy(name: str, shape: str, text: str) -> None:
    assert text.startswith("{$this} ")
    wrong, colon, remedy = text.partition(": ")
    assert colon
    assert not wrong.endswith(".")
    assert not remedy.endswith(".") or remedy.endswith("...")
    assert remedy.split()[0] in {"add", "write", "keep", "put", "name"}


@pytest.mark.parametrize("quantity", QUANTITIES)
def test_every_physical_property_is_demanded_of_a_food(quantity: str) -> None:
    remedies = [p.remedy for p in problems("foods", "bad") if p.term == "food:bare"]
    assert f"Add a line gw:{quantity} [ ... ] like its neighbours." in remedies


def test_properties_demanded_are_all_that_the_scales_measure() -> None:
    graph = rdflib.Graph().parse(ontology_dir() / "scales.ttl", format="turtle")
    schema = rdflib.Namespace("https://example.org/goeswith/schema#")
    measured = {
        str(quantity).rsplit("#", 1)[-1]
        for quantity in graph.subjects(rdflib.RDFS.domain, schema.Food)
        if (quantity, schema.usualSpread, None) in graph
    }
    assert measured == set(QUANTITIES)


def test_alike_amounts_are_reported_for_each_food_that_has_them() -> None:
    found = [p.term for p in problems("amounts", "bad") if "how its number is known" in p.message]
    assert sorted(map(str, found)) == ["food:curd", "food:curd", "food:rind"]


def test_problem_of_a_part_stands_on_the_line_of_that_part() -> None:
    lines = [p.line for p in problems("foods", "bad") if p.message.startswith("gw:part")]
    assert len(set(lines)) == len(lines) == 6
