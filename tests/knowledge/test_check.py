"""Every check in SPARQL and the lint of the rules: good fixtures pass, bad ones are reported."""

from __future__ import annotations

from pathlib import Path

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from assistant.knowledge import check
from assistant.knowledge.check_queries import query_problems, read_query
from assistant.knowledge.check_rules import rule_problems
from assistant.knowledge.files import ontology_dir
from assistant.knowledge.problems import KnowledgeError
from assistant.knowledge.turtle import read_turtle
from tests.knowledge.cases import as_expected, fixture, ground, names, told, well_told

QUERIES = sorted((ontology_dir() / "checks").glob("*.rq"))
PATIENCE = 10.0
"""Seconds that a check of everything may take."""

# --- checks in SPARQL


def test_every_check_has_fixtures() -> None:
    assert names("checks") == {file.stem for file in QUERIES}


@pytest.mark.parametrize("query", QUERIES, ids=lambda file: file.stem)
def test_good_fixture_passes(query: Path) -> None:
    good = fixture("checks", query.stem, "good")
    assert told(query_problems(ground(good, with_context=True), [query]), good) == []


@pytest.mark.parametrize("query", QUERIES, ids=lambda file: file.stem)
def test_bad_fixture_is_reported_with_the_right_messages(query: Path) -> None:
    bad = fixture("checks", query.stem, "bad")
    problems = [p for p in query_problems(ground(bad, with_context=True), [query]) if p.source == bad.name]
    found = told(problems, bad)
    assert as_expected(found, bad), found
    assert all(map(well_told, problems))


@pytest.mark.parametrize("query", QUERIES, ids=lambda file: file.stem)
def test_check_says_what_is_wrong_and_what_to_do(query: Path) -> None:
    said = read_query(query)
    assert said.message.startswith("{this} ")
    assert said.message.endswith(".")
    assert said.remedy.endswith(".")


def test_check_without_a_remedy_is_a_mistake_of_its_author(tmp_path: Path) -> None:
    bare = tmp_path / "bare.rq"
    bare.write_text("# message: {this} is wrong.\nSELECT ?term WHERE { ?term a ?b }", "utf-8")
    with pytest.raises(ValueError, match="remedy"):
        read_query(bare)


# --- the text of the rules


def test_sound_rules_pass_the_lint() -> None:
    good = fixture("rules", "lint", "good")
    assert told(rule_problems(ground(good, with_context=True)), good) == []


def test_lint_reports_what_a_rule_must_not_do() -> None:
    bad = fixture("rules", "lint", "bad")
    problems = rule_problems(ground(bad, with_context=True))
    found = told(problems, bad)
    assert as_expected(found, bad), found
    assert all(map(well_told, problems))


# --- files that would end the parser


def test_statements_nested_without_end_are_refused_before_they_are_parsed(tmp_path: Path) -> None:
    file, depth = tmp_path / "deep.ttl", 60_000
    file.write_text("<a:a> <a:b> " + "<<( <a:a> <a:b> " * depth + "1" + " )>>" * depth + " .", "utf-8")
    with pytest.raises(KnowledgeError, match="without end"):
        read_turtle(file, "deep.ttl")


# --- the whole


def test_shipped_knowledge_is_clean() -> None:
    report = check.examine()
    assert "\n".join(map(str, report.problems)) == ""
    assert report.concepts > 1700
    assert report.rules > 100


def test_check_takes_at_most_ten_seconds(benchmark: BenchmarkFixture) -> None:
    benchmark.pedantic(check.examine, rounds=3)  # type: ignore[no-untyped-call]
    assert benchmark.stats is not None
    assert benchmark.stats.stats.median <= PATIENCE
