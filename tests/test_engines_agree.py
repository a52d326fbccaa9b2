"""Three independent engines run the rules as authored and find what the product finds.

The product works the text of a rule out in columns. Here the same facts go to pyoxigraph and rdflib, which
run the text of `sh:construct` itself, and to pySHACL, which runs the rules as SHACL rules.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

import pyoxigraph as ox
import pyshacl
import pytest
import rdflib
from rdflib.namespace import RDF

from assistant.knowledge import names
from assistant.knowledge.files import ontology_dir
from assistant.pairing.dish import Dish
from assistant.pairing.facts import glass_facts
from assistant.pairing.plate import Plate
from assistant.pairing.rules import RuleRunner
from tests.pairing.firings import ran
from tests.pairing.plate_facts import PLATES, plate_facts
from tests.pairing_bench import KNOWLEDGE, RUNNER, dish, engine, glass, glass_with, plate

CLOSE = 1e-4
GW = rdflib.Namespace(names.SCHEMA)
WINES = ("cabernet-sauvignon", "gruner-veltliner", "fino", "champagne", "ruby-port", "mature-barolo")
DISHES: dict[str, Dish] = {
    "hot-wings": dish("chicken-thigh", ("hot-sauce", "sauce", 25.0), methods=("deep-fried",)),
    "mackerel": dish("mackerel", ("salsa-verde", "sauce", 20.0), methods=("grilled",)),
    "goat-salad": dish(
        "crottin-de-chavignol", ("vinaigrette", "dressing", 25.0), ("tomato", "topping", 40.0)
    ),
    "blue-toast": dish("sourdough-bread", ("roquefort", "topping", 50.0), ("walnut", "topping", 15.0)),
    "washed-rind": dish("epoisses"),
    "pepper-steak": dish("steak", ("peppercorn-sauce", "sauce", 20.0), methods=("char-grilled",)),
    "egg-and-greens": dish("egg", ("creamy-mushroom-sauce", "sauce", 30.0), ("artichoke", "topping", 40.0)),
    "chocolate": dish("dark-chocolate-70", ("cherry-sauce", "sauce", 20.0)),
}
LEAST_RULES = 95


@dataclass(frozen=True, slots=True)
class Found:
    """What one engine says of a rule, plate and glass."""

    strength: float
    cap: float | None = None


Key = tuple[str, str, str]
Firings = dict[Key, Found]


@lru_cache(maxsize=1)
def plates() -> dict[str, Plate]:
    """The dishes as eaten."""
    return {key: engine().plate(one) for key, one in DISHES.items()}


@lru_cache(maxsize=1)
def facts() -> bytes:
    """All plates and glasses as N-Triples."""
    quads = [q for key, found in plates().items() for q in plate_facts(key, found)]
    quads += [q for wine in WINES for q in glass_facts(glass(wine))]
    triples = (ox.Triple(q.subject, q.predicate, q.object) for q in quads)
    written = ox.serialize(triples, format=ox.RdfFormat.N_TRIPLES)
    assert written is not None
    return written


def rdflib_graph(data: bytes) -> rdflib.Graph:
    """N-Triples in rdflib, numbers exactly as written."""
    rdflib.NORMALIZE_LITERALS = False
    graph = rdflib.Graph()
    graph.parse(data=data, format="nt")
    return graph


def firings_of(graph: rdflib.Graph) -> Iterator[tuple[Key, Found]]:
    """The firing nodes of a graph."""
    for node in graph.subjects(RDF.type, GW.Firing):
        rule, at, wine = (str(graph.value(node, GW[p])) for p in ("rule", "plate", "glass"))
        cap = graph.value(node, GW.cap)
        strength = float(str(graph.value(node, GW.strength)))
        found = Found(strength, None if cap is None else float(str(cap)))
        yield (names.short(rule), names.short(at).removeprefix(PLATES), names.short(wine)), found


def collected(pairs: Iterable[tuple[Key, Found]]) -> Firings:
    """Firings by rule, plate and glass; no rule fires twice for the same pair."""
    found: Firings = {}
    for key, firing in pairs:
        assert key not in found, key
        found[key] = firing
    return found


@lru_cache(maxsize=1)
def by_product() -> Firings:
    """The product's runner, plate by plate, so that its short cuts are taken."""
    glasses = [glass(wine) for wine in WINES]
    runs = (ran(RUNNER, {key: found}, glasses) for key, found in plates().items())
    return collected(((f.rule, f.plate, f.wine), Found(f.strength, f.cap)) for run in runs for f in run)


def by_pyoxigraph() -> Firings:
    """pyoxigraph with the text of `sh:construct`."""
    store = ox.Store()
    store.load(facts(), format=ox.RdfFormat.N_TRIPLES)
    found: list[tuple[Key, Found]] = []
    for rule in KNOWLEDGE.rules.values():
        made = store.query(f"{names.QUERY_PREFIXES}\n{rule.construct}")
        assert isinstance(made, ox.QueryTriples)
        written = made.serialize(format=ox.RdfFormat.N_TRIPLES)
        found += firings_of(rdflib_graph(written or b""))
    return collected(found)


def by_rdflib() -> Firings:
    """rdflib with the text of `sh:construct`."""
    graph = rdflib_graph(facts())
    found: list[tuple[Key, Found]] = []
    for rule in KNOWLEDGE.rules.values():
        made = graph.query(f"{names.QUERY_PREFIXES}\n{rule.construct}").graph
        assert made is not None
        found += firings_of(made)
    return collected(found)


def by_pyshacl() -> Firings:
    """pySHACL with the rules as they stand in the files."""
    rules = rdflib.Graph()
    rdflib.NORMALIZE_LITERALS = False
    for file in (ontology_dir() / "schema.ttl", *sorted((ontology_dir() / "rules").glob("*.ttl"))):
        rules.parse(file)
    graph = rdflib_graph(facts())
    pyshacl.validate(graph, shacl_graph=rules, advanced=True, inplace=True, inference="none")
    return collected(firings_of(graph))


def test_the_sample_fires_most_of_the_rules() -> None:
    found = by_product()
    assert len({rule for rule, _, _ in found}) >= LEAST_RULES
    assert any(f.cap is not None for f in found.values())
    assert {key for _, key, _ in found} == set(DISHES)


@pytest.mark.parametrize("run", [by_pyoxigraph, by_rdflib, by_pyshacl])
def test_engine_agrees_with_the_product(run: Callable[[], Firings]) -> None:
    found, expected = run(), by_product()
    assert sorted(set(found) ^ set(expected)) == []
    for key, firing in expected.items():
        assert found[key].strength == pytest.approx(firing.strength, abs=CLOSE), key
        assert (found[key].cap is None) == (firing.cap is None), key
        if firing.cap is not None:
            assert found[key].cap == pytest.approx(firing.cap, abs=CLOSE), key


def test_plates_together_and_one_by_one_fire_alike() -> None:
    """A rule is skipped where no plate has what it asks for; with all plates at once few are."""
    together = ran(RUNNER, plates(), [glass(wine) for wine in WINES])
    assert {(f.rule, f.plate, f.wine) for f in together} == set(by_product())


def test_runner_sees_the_glass_it_is_given() -> None:
    """The same wine in another bottle is judged by its own amounts."""
    runner, food = RuleRunner(KNOWLEDGE.rules), plate("steak")
    usual = glass("cabernet-sauvignon")
    other = glass_with(usual, tannin=0.0, acid=0.5)
    first = ran(runner, {"plate": food}, [usual])
    second = ran(runner, {"plate": food}, [replace(other, wine=usual.wine)])
    assert [(f.rule, f.strength) for f in first] != [(f.rule, f.strength) for f in second]
