"""Smells: families that rules and wines name, single smells below them, thresholds with their source."""

from __future__ import annotations

import re
from typing import Any

import pytest

from assistant.knowledge.concepts import Amount, Entry, Rule
from assistant.knowledge.store import Knowledge, shipped
from assistant.language.fold import key
from assistant.language.lexicon import Lexicon, build_lexicon

KNOWLEDGE = shipped()
DIGEST = KNOWLEDGE.digest
AROMAS: dict[str, Entry] = {name: DIGEST[name] for name in KNOWLEDGE.of_type("Aroma")}
FAMILIES = {name for name, entry in AROMAS.items() if "topConceptOf" in entry}
SINGLE = {name: entry for name, entry in AROMAS.items() if name not in FAMILIES}
THRESHOLDS = {name: entry for name, entry in AROMAS.items() if "threshold" in entry}
SAYS_SMELL = {"smell", "note"}
"""Stems of words that show that the smell is meant, not the food."""


@pytest.fixture(scope="module")
def knowledge() -> Knowledge:
    """The shipped knowledge."""
    return KNOWLEDGE


@pytest.fixture(scope="module")
def lexicon(knowledge: Knowledge) -> Lexicon:
    """The shipped names."""
    return build_lexicon(knowledge)


def asked(rule: Rule, prefix: str) -> set[str]:
    """Names with this prefix in the query of a rule: `aroma/green`."""
    return {f"{prefix}/{name}" for name in re.findall(rf"\b{prefix}:([a-z-]+)", rule.construct)}


def threshold(entry: Entry) -> Amount:
    """The threshold of a smell."""
    found: Amount = entry["threshold"][0]
    return found


# --- the thesaurus


def test_every_aroma_is_a_family_or_has_one() -> None:
    assert len(FAMILIES) == 27
    assert {tuple(AROMAS[name]["topConceptOf"]) for name in FAMILIES} == {("scheme/aromas",)}
    assert not [name for name in FAMILIES if "broader" in AROMAS[name]]
    for name, entry in SINGLE.items():
        assert entry["inScheme"] == ["scheme/aromas"], name
        assert len(entry["broader"]) == 1, name
        assert entry["broader"][0] in FAMILIES, name


@pytest.mark.parametrize("family", sorted(FAMILIES))
def test_every_family_has_three_smells_below_it(family: str) -> None:
    assert len([name for name, entry in SINGLE.items() if family in entry["broader"]]) >= 3


def test_every_aroma_is_explained_and_has_synonyms() -> None:
    assert not [name for name, entry in AROMAS.items() if not entry.get("definition")]
    assert not [name for name, entry in AROMAS.items() if not entry.get("altLabel")]
    definitions = [entry["definition"][0] for entry in AROMAS.values()]
    assert len(set(definitions)) == len(definitions)


def test_what_smells_alike_is_a_food() -> None:
    matches = [(name, food) for name, entry in AROMAS.items() for food in entry.get("closeMatch", ())]
    assert len(matches) > 100
    assert not [(name, food) for name, food in matches if "Food" not in DIGEST.get(food, {}).get("type", ())]


# --- wines and rules


def test_wines_smell_of_families(knowledge: Knowledge) -> None:
    smelt = {smell for wine in knowledge.wines.values() for smell in wine.smells}
    assert smelt == FAMILIES


def test_rules_ask_for_families(knowledge: Knowledge) -> None:
    asking = {rule.id: asked(rule, "aroma") for rule in knowledge.rules.values()}
    assert sum(1 for names in asking.values() if names) > 10
    assert {rule: names - FAMILIES for rule, names in asking.items() if names - FAMILIES} == {}


def test_only_families_meet_food() -> None:
    assert not [name for name, entry in SINGLE.items() if "meets" in entry]


@pytest.mark.parametrize(
    ("family", "trait"),
    [(name, trait) for name in sorted(FAMILIES) for trait in AROMAS[name].get("meets", ())],
)
def test_what_meets_is_paired_by_a_rule(family: str, trait: str, knowledge: Knowledge) -> None:
    assert "Trait" in DIGEST[trait]["type"]
    assert [
        rule.id
        for rule in knowledge.rules.values()
        if rule.weight > 0 and family in asked(rule, "aroma") and trait in asked(rule, "trait")
    ]


def test_whatever_a_bridge_praises_meets_something(knowledge: Knowledge) -> None:
    for rule in knowledge.rules.values():
        if rule.family != "family/bridge" or rule.weight <= 0 or "NOT EXISTS { $this" in rule.construct:
            continue
        for family in asked(rule, "aroma"):
            assert set(AROMAS[family].get("meets", ())) & asked(rule, "trait"), (rule.id, family)


# --- thresholds


@pytest.mark.parametrize("name", sorted(THRESHOLDS))
def test_threshold_has_compound_unit_basis_and_source(name: str) -> None:
    entry: dict[str, Any] = THRESHOLDS[name]
    found = threshold(entry)
    assert 0 < found.low <= found.typical <= found.high
    assert len(entry["compound"]) == len(entry["threshold"]) == 1
    unit, _, liquid = entry["unitText"][0].partition(" in ")
    assert unit in {"ng/l", "µg/l", "mg/l"}
    assert entry["perceivedFrom"] == [liquid]
    assert liquid in {"water", "model wine", "white wine", "red wine", "wine"}
    read = DIGEST[found.source]["read"][0]
    assert (found.basis, read) in {("published", True), ("recalled", False)}


def test_nothing_but_a_threshold_has_a_unit() -> None:
    assert {name for name, entry in AROMAS.items() if "unitText" in entry or "perceivedFrom" in entry} == set(
        THRESHOLDS
    )
    assert len(THRESHOLDS) > 40


def test_rotundone_is_noticed_from_16_ng_a_litre() -> None:
    """Wood and others 2008: detected in red wine from about 16 ng/l; one taster in five misses it."""
    entry = AROMAS["aroma/black-pepper"]
    found = threshold(entry)
    assert (entry["compound"], entry["unitText"]) == (["rotundone"], ["ng/l in red wine"])
    assert (found.typical, found.basis, found.source) == (16.0, "published", "source/wood-2008")
    assert "16 ng/l" in DIGEST[found.source]["finding"][0]


def test_only_what_was_read_is_published() -> None:
    published = [name for name, entry in THRESHOLDS.items() if threshold(entry).basis == "published"]
    assert published == ["aroma/black-pepper"]


# --- names


def test_no_smell_takes_a_word_from_anything_else(lexicon: Lexicon) -> None:
    """Neither a whole name nor a name inside a longer one, unless the words say that a smell is meant."""
    stolen = []
    for name, entry in AROMAS.items():
        own = entry["prefLabel"] if name in SINGLE else []
        for label in (*own, *entry["altLabel"]):
            taken = [] if SAYS_SMELL & set(key(label)) else _named_inside(key(label), lexicon)
            stolen += [(label, other) for other in taken if not other.startswith("aroma/")]
    assert stolen == []


def test_family_named_like_a_food_comes_after_it(lexicon: Lexicon) -> None:
    for family in FAMILIES:
        first, *others = lexicon.find(AROMAS[family]["prefLabel"][0])
        assert (first == family and not others) or not first.startswith("aroma/"), family


@pytest.mark.parametrize(
    ("words", "meant"),
    [
        ("lemon", "food/lemon"),
        ("smells of lemon", "aroma/lemon"),
        ("vanilla", "food/vanilla"),
        ("vanilla notes", "aroma/vanilla"),
        ("struck match", "term/reduction-fault"),
        ("smell of struck match", "aroma/struck-match"),
        ("leather", "aroma/leather"),
        ("forest floor", "aroma/forest-floor"),
    ],
)
def test_plain_word_is_the_food(words: str, meant: str, lexicon: Lexicon) -> None:
    assert lexicon.find(words)[0] == meant


def test_coconut_is_no_smell_until_it_is_said(lexicon: Lexicon) -> None:
    """A remark in parentheses is not dropped from a smell, or words for food not yet known would vanish."""
    assert "aroma/coconut" not in lexicon.find("coconut")


def _named_inside(stems: tuple[str, ...], lexicon: Lexicon) -> list[str]:
    """All meanings of the whole and the first meaning of every name inside it."""
    spans = {(s, e) for s in range(len(stems)) for e in range(s + 1, len(stems) + 1)} - {(0, len(stems))}
    inside = [i for s, e in sorted(spans) for i in lexicon.find(" ".join(stems[s:e]))[:1]]
    return [*lexicon.find(" ".join(stems)), *inside]
