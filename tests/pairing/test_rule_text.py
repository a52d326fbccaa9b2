"""The text of a rule is read whole, or refused by name: nothing of it is passed over."""

from __future__ import annotations

import pytest

from assistant.knowledge.store import shipped
from assistant.pairing.rule_steps import Keep, Let, Link, RuleTextError, Shared, Value
from assistant.pairing.rule_text import read_rule

HEAD = "CONSTRUCT { [] a gw:Firing ; gw:strength ?strength ; plate:salt ?salt } WHERE "
RULES = list(shipped().rules.values())


@pytest.mark.parametrize("rule", RULES, ids=lambda r: r.id)
def test_every_shipped_rule_is_read(rule: object) -> None:
    text = read_rule(rule.construct)  # type: ignore[attr-defined]
    lets = [step.variable for step in text.steps if isinstance(step, Let)]
    assert "strength" in lets
    assert ("cap" in lets) == (rule.weight == 0)  # type: ignore[attr-defined]


def test_a_rule_is_read_into_steps_in_its_order() -> None:
    text = read_rule(
        HEAD + "{ ?plate a gw:Plate ; plate:trait trait:herb ; plate:salt ?salt .\n"
        "FILTER(?salt > -2.5)\n"
        "FILTER NOT EXISTS { $this glass:smells ?any . FILTER(?any IN (aroma:lees, aroma:green)) }\n"
        "BIND(1.0 - 0.5 * ?salt AS ?strength) }"
    )
    assert text.steps == (
        Keep(Link("plate", "trait", ("trait/herb",))),
        Value("salt", "plate", "salt"),
        Keep((">", "salt", -2.5)),
        Keep(("not", Link("glass", "smells", ("aroma/lees", "aroma/green")))),
        Let("strength", ("-", 1.0, ("*", 0.5, "salt"))),
    )
    assert text.seen == (("plate", "salt"),)


def test_what_both_sides_have_in_common_is_read() -> None:
    text = read_rule(HEAD + "{ FILTER EXISTS { ?plate plate:home ?home . $this glass:home ?home } }")
    assert text.steps == (Keep(Shared("home", "home")),)


def test_signs_bind_as_in_sparql() -> None:
    (step,) = read_rule(HEAD + "{ FILTER(?a + ?b * 2.0 > 1.0 && ?c < 1.0 || ?d >= ?e - 1.0) }").steps
    assert step == Keep(
        (
            "or",
            ("and", (">", ("+", "a", ("*", "b", 2.0)), 1.0), ("<", "c", 1.0)),
            (">=", "d", ("-", "e", 1.0)),
        )
    )


@pytest.mark.parametrize(
    ("where", "named"),
    [
        ("{ FILTER(?a / 2.0 > 1.0) }", "'/'"),
        ("{ FILTER(?a = 1.0) }", "'='"),
        ("{ FILTER(ABS(?a) > 1.0) }", "'ABS'"),
        ("{ OPTIONAL { ?plate plate:salt ?salt } }", "'OPTIONAL'"),
        ("{ ?other plate:salt ?salt }", "'?other'"),
        ("{ ?plate glass:oak ?oak }", "'glass:oak'"),
        ("{ FILTER EXISTS { ?plate plate:trait ?any } }", "?any"),
        ("{ BIND(IF(?a, 1.0) AS ?b) }", "IF"),
        ("{ BIND(1.0 AS trait:herb) }", "'trait:herb'"),
        ("{ FILTER(?a > 1.0)", "its end"),
        ('{ FILTER(?a > "1") }', '"1"'),
        ("{ } more", "'more'"),
    ],
)
def test_what_rules_are_not_run_in_is_refused_by_name(where: str, named: str) -> None:
    with pytest.raises(RuleTextError) as refused:
        read_rule(HEAD + where)
    assert named in str(refused.value)


def test_another_form_is_refused() -> None:
    with pytest.raises(RuleTextError, match="CONSTRUCT"):
        read_rule("SELECT * WHERE { ?plate plate:salt ?salt }")
