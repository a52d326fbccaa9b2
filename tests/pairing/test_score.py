"""Scores are plain sums: family limits, quiet food and vetoes stand in the path as entries of their own."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.knowledge.store import Band, Knowledge
from assistant.pairing.dish import Bite, single
from assistant.pairing.engine import Engine
from assistant.pairing.match import Match
from assistant.pairing.score import Score, verdict
from assistant.session import Session
from tests.pairing.firings import Firing, scored
from tests.pairing.made import firing, plate

CLOSE = 1e-7  # effects are rounded to nine places


@pytest.fixture(scope="module")
def knowledge(session: Session) -> Knowledge:
    """The shipped knowledge."""
    return session.knowledge


@pytest.fixture(scope="module")
def engine(session: Session) -> Engine:
    """The engine on the shipped knowledge."""
    return session.engine


def score(knowledge: Knowledge, *fired: Firing, aroma: float = 3.0) -> Score:
    """The score of a plate of this loudness for which these rules fired."""
    plates = {"plate": plate(aroma=aroma)}
    return scored(plates, ["wine/made"], fired, knowledge)["plate", "wine/made"]


def rules_of(knowledge: Knowledge, family: str, sign: int) -> list[str]:
    """Rules of a family that help (1) or hurt (-1), strongest first."""
    found = [r for r in knowledge.rules.values() if r.family == family and r.weight * sign > 0]
    return [r.id for r in sorted(found, key=lambda r: -abs(r.weight))]


def families_that_can_burst(knowledge: Knowledge, sign: int) -> list[str]:
    """Families whose rules of this sign can add up to more than the family's limit."""

    def reach(family: str) -> float:
        return sum(abs(knowledge.rules[r].weight) for r in rules_of(knowledge, family, sign))

    def limit(family: str) -> float:
        found = knowledge.families[family]
        return found.ceiling if sign > 0 else -found.floor

    return [family for family in knowledge.families if reach(family) > limit(family) + 0.01]


def veto_rule(knowledge: Knowledge) -> str:
    """A rule that caps instead of counting."""
    return next(r.id for r in knowledge.rules.values() if r.weight == 0)


def by_rule(found: Score) -> dict[str, float]:
    """The effects of a path by rule."""
    return {effect.rule: effect.effect for effect in found.path}


# --- sums


def test_no_rule_no_score(knowledge: Knowledge) -> None:
    found = score(knowledge)
    assert (found.total, found.verdict, found.path, found.vetoed) == (0.0, "neutral", (), False)


def test_an_effect_is_weight_times_strength(knowledge: Knowledge) -> None:
    rule = next(r for r in knowledge.rules.values() if r.weight > 1)
    assert score(knowledge, firing(rule.id, 0.5)).total == pytest.approx(rule.weight / 2)


def test_effects_of_several_families_add_up_strongest_first(knowledge: Knowledge) -> None:
    chosen = [rules_of(knowledge, f, 1)[0] for f in ("family/acid", "family/oak", "family/sweet")]
    found = score(knowledge, *(firing(r, 0.25 * (i + 1)) for i, r in enumerate(chosen)))
    assert set(by_rule(found)) == set(chosen)
    effects = [effect.effect for effect in found.path]
    assert effects == sorted(effects, key=lambda e: -abs(e))
    assert found.total == pytest.approx(sum(effects))


# --- family limits


@pytest.mark.parametrize("sign", [1, -1], ids=["ceiling", "floor"])
def test_a_family_is_held_in_its_limit_by_an_entry_of_its_own(knowledge: Knowledge, sign: int) -> None:
    families = families_that_can_burst(knowledge, sign)
    assert families
    for family in families:
        limit = knowledge.families[family].ceiling if sign > 0 else knowledge.families[family].floor
        rules = rules_of(knowledge, family, sign)
        found = score(knowledge, *(firing(rule) for rule in rules))
        assert found.total == pytest.approx(limit), family
        assert by_rule(found)[f"limit/{family}"] == pytest.approx(
            limit - sum(knowledge.rules[rule].weight for rule in rules)
        )


def test_a_family_inside_its_limit_has_no_such_entry(knowledge: Knowledge) -> None:
    rule = rules_of(knowledge, "family/sweet", 1)[0]
    assert list(by_rule(score(knowledge, firing(rule, 0.5)))) == [rule]


def test_one_family_at_its_limit_leaves_the_others_alone(knowledge: Knowledge) -> None:
    family = families_that_can_burst(knowledge, 1)[0]
    other = next(f for f in knowledge.families if f != family and rules_of(knowledge, f, -1))
    hurting = rules_of(knowledge, other, -1)[0]
    found = score(knowledge, *(firing(r) for r in rules_of(knowledge, family, 1)), firing(hurting, 0.1))
    ceiling = knowledge.families[family].ceiling
    assert found.total == pytest.approx(ceiling + 0.1 * knowledge.rules[hurting].weight)


def test_what_hurts_and_what_helps_in_a_family_are_weighed_before_the_limit(knowledge: Knowledge) -> None:
    family = next(f for f in families_that_can_burst(knowledge, 1) if rules_of(knowledge, f, -1))
    helping, hurting = rules_of(knowledge, family, 1), rules_of(knowledge, family, -1)[0]
    over = sum(knowledge.rules[r].weight for r in helping) - knowledge.families[family].ceiling
    strength = min(1.0, over / 2 / -knowledge.rules[hurting].weight)
    found = score(knowledge, *(firing(r) for r in helping), firing(hurting, strength))
    assert found.total == pytest.approx(knowledge.families[family].ceiling)


# --- quiet food


@pytest.mark.parametrize(("aroma", "loud"), [(0.0, 0.0), (1.0, 0.0), (1.25, 0.5), (1.5, 1.0), (4.0, 1.0)])
@pytest.mark.parametrize("sign", [1, -1], ids=["helps", "hurts"])
def test_quiet_food_takes_part_of_the_whole_away(
    knowledge: Knowledge, aroma: float, loud: float, sign: int
) -> None:
    """From 1 point of aroma the damping fades out over half a point."""
    least = knowledge.constants["quiet-factor"]
    assert 0 < least < 1
    assert knowledge.constants["quiet-aroma"] == 1.0
    rule = rules_of(knowledge, "family/tannin", sign)[0]
    full, left = knowledge.rules[rule].weight, least + (1 - least) * loud
    found = score(knowledge, firing(rule), aroma=aroma)
    assert found.total == pytest.approx(left * full)
    assert by_rule(found).get("limit/quiet-food", 0.0) == pytest.approx((left - 1) * full)


# --- vetoes


def test_a_veto_caps_the_score_by_an_entry_of_its_own(knowledge: Knowledge) -> None:
    helping, veto = rules_of(knowledge, "family/sweet", 1)[0], veto_rule(knowledge)
    found = score(knowledge, firing(helping), firing(veto, cap=-12.0))
    assert found.vetoed
    assert found.total == pytest.approx(-12.0)
    assert by_rule(found) == pytest.approx(
        {helping: knowledge.rules[helping].weight, veto: -12.0 - knowledge.rules[helping].weight}
    )


def test_a_veto_never_lifts_a_score(knowledge: Knowledge) -> None:
    hurting, veto = rules_of(knowledge, "family/tannin", -1)[0], veto_rule(knowledge)
    found = score(knowledge, firing(hurting), firing(veto, cap=-0.5))
    assert not found.vetoed
    assert list(by_rule(found)) == [hurting]


def test_the_strictest_of_several_vetoes_holds(knowledge: Knowledge) -> None:
    veto = veto_rule(knowledge)
    found = score(knowledge, firing(veto, cap=-3.0), firing(veto, cap=-15.0), firing(veto, cap=2.0))
    assert found.total == pytest.approx(-15.0)


def test_a_veto_holds_in_full_on_quiet_food(knowledge: Knowledge) -> None:
    found = score(knowledge, firing(veto_rule(knowledge), cap=-12.0), aroma=0.0)
    assert found.total == pytest.approx(-12.0)


@settings(max_examples=300, deadline=None)
@given(st.data())
def test_any_path_adds_up(session: Session, data: st.DataObject) -> None:
    knowledge = session.knowledge
    rules = st.sampled_from([r.id for r in knowledge.rules.values() if r.weight])
    fired = data.draw(st.lists(st.builds(firing, rules, st.floats(0, 1)), max_size=20))
    veto = st.builds(firing, st.just(veto_rule(knowledge)), st.just(1.0), st.floats(-30, 10))
    fired += data.draw(st.lists(veto, max_size=2))
    found = score(knowledge, *fired, aroma=data.draw(st.floats(0, 5)))
    assert sum(e.effect for e in found.path) == pytest.approx(found.total, abs=CLOSE)
    assert all(e.effect for e in found.path)
    assert found.verdict == verdict(found.total, knowledge.bands)


# --- verdicts


def test_bands_cover_every_score_without_a_gap(knowledge: Knowledge) -> None:
    names = ["strong", "good", "fair", "neutral", "poor", "clash"]
    assert [band.verdict for band in knowledge.bands] == names
    floors = [band.floor for band in knowledge.bands]
    assert floors == sorted(floors, reverse=True)
    worst = sum(family.floor for family in knowledge.families.values())
    assert verdict(worst, knowledge.bands) == "clash"
    assert verdict(0.0, knowledge.bands) == "neutral"


def test_a_floor_earns_its_band(knowledge: Knowledge) -> None:
    for upper, lower in zip(knowledge.bands, knowledge.bands[1:], strict=False):
        assert verdict(upper.floor, knowledge.bands) == upper.verdict
        assert verdict(upper.floor - 1e-6, knowledge.bands) == lower.verdict


def test_bands_are_tried_from_the_best(knowledge: Knowledge) -> None:
    bands = (Band("good", 5.0, ""), Band("poor", -5.0, ""), Band("clash", -1e9, ""))
    assert [verdict(total, bands) for total in (6.0, 0.0, -6.0)] == ["good", "poor", "clash"]


# --- tables of several bites


def vetoed_pair(engine: Engine) -> tuple[str, str]:
    """A food and a wine that shipped knowledge vetoes."""
    for food in ("food/oyster", "food/mackerel", "food/artichoke", "food/dark-chocolate-85", "food/caviar"):
        for found in engine.rank((Bite(single(food), 1.0),), [g.wine for g in engine.cellar]):
            if found.bites[0].vetoed:
                return food, found.wine
    raise AssertionError("no veto in the shipped knowledge")


def beside(engine: Engine, food: str, share: float, wine: str) -> Match:
    """A wine with a food that is this share of the bites, the rest being cheddar."""
    return engine.judge((Bite(single("food/cheddar"), 1 - share), Bite(single(food), share)), wine)


def test_a_veto_of_few_bites_becomes_a_warning(engine: Engine) -> None:
    food, wine = vetoed_pair(engine)
    few = beside(engine, food, 0.24, wine)
    vetoes = [e.rule for e in few.warnings]
    assert len(vetoes) == 1
    assert engine.knowledge.rules[vetoes[0]].weight == 0
    assert vetoes[0] not in [e.rule for e in few.path]


def test_a_veto_of_a_quarter_of_the_bites_counts(engine: Engine) -> None:
    food, wine = vetoed_pair(engine)
    veto = beside(engine, food, 0.24, wine).warnings[0].rule
    many = beside(engine, food, 0.25, wine)
    assert many.warnings == ()
    assert {e.rule: e.effect for e in many.path}[veto] < 0
    assert many.score < beside(engine, food, 0.24, wine).score


def test_a_veto_of_all_bites_is_the_score(engine: Engine) -> None:
    food, wine = vetoed_pair(engine)
    whole = engine.judge((Bite(single(food), 1.0),), wine)
    assert whole.bites[0].vetoed
    assert whole.warnings == ()
    weights = {r.id: r.weight for r in engine.knowledge.rules.values()}
    assert 0 in [weights.get(e.rule) for e in whole.path]


def test_a_table_is_the_mean_of_its_bites(engine: Engine) -> None:
    foods, shares = ("food/brie", "food/steak", "food/cheddar"), (0.5, 0.3, 0.2)
    table = tuple(Bite(single(f), s) for f, s in zip(foods, shares, strict=True))
    for found in engine.rank(table, ["wine/pinot-noir", "wine/chablis", "wine/ruby-port"]):
        own = [engine.judge((Bite(single(f), 1.0),), found.wine) for f in foods]
        assert [b.total for b in found.bites] == pytest.approx([m.score for m in own])
        if not found.warnings:
            assert found.score == pytest.approx(sum(m.score * s for m, s in zip(own, shares, strict=True)))
        assert sum(e.effect for e in found.path) == pytest.approx(found.score)


def test_a_whole_cellar_and_a_few_wines_are_scored_alike(engine: Engine) -> None:
    table = (Bite(single("food/brie"), 0.6), Bite(single("food/prosciutto"), 0.4))
    everything = engine.rank(table, [g.wine for g in engine.cellar])
    for found in everything[::40]:
        alone = engine.judge(table, found.wine)
        assert (alone.score, alone.verdict) == (pytest.approx(found.score), found.verdict)
        assert [e.rule for e in alone.path] == [e.rule for e in found.path]


def test_ranking_is_best_first_and_repeatable(engine: Engine) -> None:
    table = (Bite(single("food/comte"), 1.0),)
    wines = [g.wine for g in engine.cellar]
    once, again = engine.rank(table, wines), engine.rank(table, wines[::-1])
    assert [m.wine for m in once] == [m.wine for m in again]
    assert [m.score for m in once] == sorted((m.score for m in once), reverse=True)


def test_a_food_scores_the_same_from_the_larder_and_from_the_cellar(engine: Engine) -> None:
    foods = ["food/brie", "food/steak", "food/tiramisu"]
    for food, found in engine.rank_foods("wine/chablis", foods):
        assert engine.judge((Bite(single(food), 1.0),), "wine/chablis").score == pytest.approx(found.total)
