"""What every pairing rule must keep to: its text, its words, its strength, and that it is needed."""

from __future__ import annotations

import re
from collections import Counter
from functools import lru_cache

import pytest

from assistant.knowledge.concepts import Rule
from assistant.knowledge.files import ontology_dir
from assistant.pairing.plate import Plate
from assistant.pairing.rules import RuleRunner
from tests.pairing.firings import Firing, ran
from tests.pairing_bench import KNOWLEDGE, RUNNER, engine

RULES = list(KNOWLEDGE.rules.values())
CONFIDENCE = {"strong", "moderate", "weak", "contested"}
KEYWORDS = {
    "CONSTRUCT", "WHERE", "FILTER", "NOT", "EXISTS", "BIND", "AS", "IF", "IN", "BOUND", "ROUND", "a",
}  # fmt: skip
FORBIDDEN = re.compile(r"(?<![?$\w:-])(SERVICE|FROM|LOAD|RAND|NOW|UUID|GRAPH|INSERT|DELETE)\b", re.IGNORECASE)
TOKEN = re.compile(
    r"""(?P<variable>[?$][A-Za-z]\w*)
      | (?P<name>[a-z]+:[A-Za-z][\w-]*)
      | (?P<number>\d+\.\d+|\d+)
      | (?P<word>[A-Za-z]+)
      | (?P<sign>\[\]|&&|\|\||[<>]=?|=|[-+*(){}.,;])
      | (?P<space>\s+)""",
    re.VERBOSE,
)
PREFIXES = {"gw", "plate", "glass", "rule", "trait", "kind", "aroma", "course", "colour", "region"}
SAMPLE, BATCH = 60, 24


def test_there_are_rules() -> None:
    assert len(RULES) > 100


# The text of a rule


def tokens(text: str) -> list[tuple[str, str]]:
    """The tokens of a query, by kind. Anything a rule has no use for is an error."""
    found, at = [], 0
    while at < len(text):
        match = TOKEN.match(text, at)
        assert match, f"not a token of a rule: {text[at : at + 20]!r}"
        found.append((str(match.lastgroup), match.group()))
        at = match.end()
    return [(kind, token) for kind, token in found if kind != "space"]


def only_what_rules_need(text: str) -> None:
    """Names, numbers and comparisons: no strings, no division, nothing from outside or by chance."""
    assert not FORBIDDEN.search(text)
    for kind, token in tokens(text):
        if kind == "word":
            assert token in KEYWORDS, token
        if kind == "name":
            assert token.split(":")[0] in PREFIXES, token


@pytest.mark.parametrize("rule", RULES, ids=lambda r: r.id)
def test_text_holds_only_what_rules_need(rule: Rule) -> None:
    only_what_rules_need(rule.construct)


@pytest.mark.parametrize(
    "bad",
    ["?a / 2.0", "SERVICE <x>", '"typed"', "'typed'", "{0}/{1}", "%s", "#x", "RAND()", "FROM x", "now()"],
)
def test_lint_notices(bad: str) -> None:
    with pytest.raises(AssertionError):
        only_what_rules_need(bad)


@pytest.mark.parametrize("rule", RULES, ids=lambda r: r.id)
def test_names_in_the_text_are_declared(rule: Rule) -> None:
    for kind, token in tokens(rule.construct):
        if kind != "name":
            continue
        prefix, local = token.split(":")
        short = {"gw": local, "plate": f"plate#{local}", "glass": f"glass#{local}"}.get(
            prefix, f"{prefix}/{local}"
        )
        declared = short in KNOWLEDGE.digest or (prefix, local) in BOUND_IN_THE_STORE
        assert declared, token


BOUND_IN_THE_STORE = {
    ("gw", n) for n in ("Firing", "Plate", "Glass", "rule", "plate", "glass", "strength", "cap")
}


@pytest.mark.parametrize("rule", RULES, ids=lambda r: r.id)
def test_numbers_are_compared_never_joined_on(rule: Rule) -> None:
    """A value is read once from the plate and once from the glass."""
    where = rule.construct.split("WHERE", 1)[1]
    read = re.findall(r"(?:plate|glass):\w+ (\?(?:dish|wine)\w+)", where)
    assert not [name for name, times in Counter(read).items() if times > 1]


@pytest.mark.parametrize("rule", RULES, ids=lambda r: r.id)
def test_template_tells_what_the_rule_saw(rule: Rule) -> None:
    template, where = rule.construct.split("WHERE", 1)
    assert f"gw:rule {rule.id.replace('/', ':')} ;" in template
    for part in ("a gw:Firing", "gw:plate ?plate", "gw:glass $this", "gw:strength ?strength"):
        assert part in template
    seen = set(re.findall(r"(?:plate|glass):\w+ \?(?:dish|wine)\w+", where))
    told = set(re.findall(r"(?:plate|glass):\w+ \?(?:dish|wine)\w+", template))
    assert told <= seen
    assert ("gw:cap ?cap" in template) == (rule.weight == 0)


# The words of a rule


@pytest.mark.parametrize("rule", RULES, ids=lambda r: r.id)
def test_rule_says_who_what_and_why(rule: Rule) -> None:
    assert rule.label
    assert rule.label != rule.id
    assert rule.family in KNOWLEDGE.families
    assert rule.detail.endswith(".")
    assert rule.confidence in CONFIDENCE
    assert "Source" in KNOWLEDGE.entry(rule.source)["type"]
    assert rule.source_kind in KNOWLEDGE.digest
    assert rule.order > 0


@pytest.mark.parametrize("rule", RULES, ids=lambda r: r.id)
def test_words_are_few_and_plain(rule: Rule) -> None:
    assert 0 < len(rule.because.split()) <= 14
    assert 0 < len(rule.say.split()) <= 8
    for words in (rule.because, rule.say, rule.fix or "x"):
        assert words == words.strip()
        assert not words.endswith(".")
        assert not re.search(r"\d|[{}<>]", words), words


@pytest.mark.parametrize("rule", RULES, ids=lambda r: r.id)
def test_rule_stands_on_taste_science_only_with_a_study(rule: Rule) -> None:
    sources = KNOWLEDGE.entry(rule.id)["source"]
    studies = [s for s in sources if s not in ("source/common-practice", "source/judged")]
    assert bool(studies) or rule.source_kind != "tasteScience"


@pytest.mark.parametrize("rule", [r for r in RULES if r.weight < 0], ids=lambda r: r.id)
def test_what_hurts_has_a_fix(rule: Rule) -> None:
    assert rule.fix


def test_no_two_rules_share_a_name() -> None:
    assert not [label for label, n in Counter(rule.label for rule in RULES).items() if n > 1]


def test_one_file_holds_rules_of_one_family_and_names_them_in_its_shape() -> None:
    for file in sorted((ontology_dir() / "rules").glob("*.ttl")):
        text = file.read_text("utf-8")
        made = set(re.findall(r"^(rule:[\w-]+) a sh:SPARQLRule", text, re.MULTILINE))
        head = re.search(r"sh:rule\s+([^.]*)\.", text)
        assert head is not None, file.name
        assert set(re.findall(r"rule:[\w-]+", head.group(1))) == made, file.name
        families = {KNOWLEDGE.rules[name.replace(":", "/")].family for name in made}
        assert len(families) == 1, file.name


# Strengths


@lru_cache(maxsize=1)
def sample() -> dict[str, Plate]:
    """Shipped foods spread evenly over the files, by key."""
    foods = KNOWLEDGE.of_type("Food")
    return {f.replace("/", "--"): engine().plate_of_food(f) for f in foods[:: len(foods) // SAMPLE]}


def runs(plates: dict[str, Plate], runner: RuleRunner = RUNNER) -> list[Firing]:
    """Firings of plates with every wine and drink."""
    return ran(runner, plates, engine().glasses.values())


def test_strengths_lie_between_none_and_full() -> None:
    plates = sample()
    assert len(plates) >= SAMPLE
    keys = list(plates)
    for start in range(0, len(keys), BATCH):
        for firing in runs({key: plates[key] for key in keys[start : start + BATCH]}):
            assert 0.0 < firing.strength <= 1.0, firing


def test_every_rule_fires_for_something_shipped() -> None:
    """A rule that no food or dish with any wine sets off is dead weight."""
    waiting = dict(KNOWLEDGE.rules)
    foods = KNOWLEDGE.of_type("Food")
    step = len(foods) // BATCH + 1
    batches = [{f.replace("/", "--"): engine().plate_of_food(f) for f in foods[i::step]} for i in range(step)]
    for batch in batches:
        for firing in runs(batch, RuleRunner(waiting)):
            waiting.pop(firing.rule, None)
        if not waiting:
            break
    assert not sorted(waiting)
