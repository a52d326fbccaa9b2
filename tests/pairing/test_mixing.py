"""Parts are mixed in physical units: what meets the tongue, what is bulk, what is loud, and acidity."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.pairing.mixing import ALL, BULK, CONTACT, FAT, LOUD, NEUTRAL_PH, PH, Portion, mix, touch_shares

FIRST, FULL = 0.35, 0.15


def portion(mass: float, contact: float = 1.0, coats: bool = False, **values: float) -> Portion:
    """A part ready to mix."""
    return Portion(values, mass, contact, coats)


def mixed(*portions: Portion) -> dict[str, float]:
    """The mixture by the shipped constants."""
    return mix(portions, FIRST, FULL)


def test_contact_share_is_mass_times_contact() -> None:
    shares = touch_shares([portion(80.0), portion(20.0, contact=2.5)])
    assert shares == pytest.approx([80 / 130, 50 / 130])


def test_shares_of_nothing_are_nothing() -> None:
    assert touch_shares([portion(0.0), portion(0.0)]) == [0.0, 0.0]


@pytest.mark.parametrize("name", CONTACT)
def test_what_does_not_coat_is_averaged_by_contact(name: str) -> None:
    found = mixed(portion(100.0, **{name: 2.0}), portion(50.0, contact=2.0, **{name: 8.0}))
    assert found[name] == pytest.approx(5.0)


@pytest.mark.parametrize("name", [n for n in CONTACT if n != FAT])
def test_first_contact_is_that_of_the_loudest_coat(name: str) -> None:
    found = mixed(portion(100.0), portion(50.0, contact=2.0, coats=True, **{name: 8.0}))
    assert found[name] == pytest.approx((1 - FIRST) * 4.0 + FIRST * 8.0)


def test_fat_has_no_first_contact() -> None:
    found = mixed(portion(100.0), portion(50.0, contact=2.0, coats=True, fat=8.0))
    assert found["fat"] == pytest.approx(4.0)


def test_a_plain_coat_never_pulls_down() -> None:
    found = mixed(portion(100.0, sodium=900.0), portion(50.0, contact=2.0, coats=True, sodium=100.0))
    assert found["sodium"] == pytest.approx(500.0)


def test_only_the_loudest_of_several_coats_makes_the_first_contact() -> None:
    coats = [portion(25.0, 2.0, coats=True, sugar=s) for s in (4.0, 12.0)]
    found = mixed(portion(100.0), *coats)
    assert found["sugar"] == pytest.approx((1 - FIRST) * 4.0 + FIRST * 12.0)


def test_a_thin_coat_takes_only_part_of_the_first_contact() -> None:
    thin = portion(2.5, contact=2.0, coats=True, sugar=21.0)
    found = mixed(portion(100.0), thin)
    share = 5.0 / 105.0
    first = FIRST * share / FULL
    assert found["sugar"] == pytest.approx((1 - first) * 21.0 * share + first * 21.0)


def test_a_coat_alone_is_itself() -> None:
    alone = mixed(portion(20.0, contact=2.5, coats=True, titratableAcidity=1.5, sugar=3.0, fat=60.0))
    assert alone["titratableAcidity"] == pytest.approx(1.5)
    assert alone["sugar"] == pytest.approx(3.0)


@pytest.mark.parametrize("name", BULK)
def test_bulk_is_averaged_by_mass_whatever_the_contact(name: str) -> None:
    found = mixed(portion(75.0, **{name: 20.0}), portion(25.0, contact=2.5, coats=True, **{name: 4.0}))
    assert found[name] == pytest.approx(16.0)


@pytest.mark.parametrize("name", LOUD)
def test_from_a_share_a_part_is_smelled_in_full(name: str) -> None:
    found = mixed(portion(100.0, **{name: 1.0}), portion(100.0 * FULL / (1 - FULL), **{name: 4.0}))
    assert found[name] == pytest.approx(4.0)


@pytest.mark.parametrize("name", LOUD)
def test_below_that_share_a_part_is_smelled_by_the_square_root(name: str) -> None:
    share = FULL / 4
    found = mixed(portion(100.0, **{name: 1.0}), portion(100.0 * share / (1 - share), **{name: 4.0}))
    assert found[name] == pytest.approx(2.0)


@pytest.mark.parametrize("name", LOUD)
def test_loudness_does_not_add_up(name: str) -> None:
    assert mixed(*(portion(50.0, **{name: 3.0}) for _ in range(3)))[name] == pytest.approx(3.0)


def test_acidity_adds_in_ions_not_in_ph() -> None:
    found = mixed(portion(50.0, pH=3.0), portion(50.0, pH=6.0))
    assert found[PH] == pytest.approx(-math.log10((1e-3 + 1e-6) / 2))
    assert found[PH] < 4.5


def test_a_sharp_coat_makes_the_first_contact_of_acidity_too() -> None:
    found = mixed(portion(100.0, pH=6.0), portion(50.0, contact=2.0, coats=True, pH=3.0))
    blend = (1e-6 + 1e-3) / 2
    assert found[PH] == pytest.approx(-math.log10((1 - FIRST) * blend + FIRST * 1e-3))


def test_a_part_without_ph_is_nearly_neutral() -> None:
    assert mixed(portion(10.0))[PH] == pytest.approx(NEUTRAL_PH)


@st.composite
def portions(draw: st.DrawFn) -> list[Portion]:
    """One to five parts with amounts in any proportion."""
    amount = st.floats(0, 100)
    found = []
    for _ in range(draw(st.integers(1, 5))):
        values = {name: draw(amount) for name in ALL if name != PH} | {PH: draw(st.floats(2, 8))}
        mass, contact = draw(st.floats(0.01, 200)), draw(st.floats(0.5, 2.5))
        found.append(Portion(values, mass, contact, draw(st.booleans())))
    return found


@given(portions())
def test_a_mixture_lies_between_its_parts(parts: list[Portion]) -> None:
    found = mix(parts, FIRST, FULL)
    for name in (*CONTACT, *BULK, PH):
        own = [p.values[name] for p in parts]
        assert min(own) - 1e-6 <= found[name] <= max(own) + 1e-6, name
    for name in LOUD:
        assert 0 <= found[name] <= max(p.values[name] for p in parts) + 1e-9, name


@given(portions(), st.floats(0.1, 10))
def test_only_proportions_count(parts: list[Portion], factor: float) -> None:
    larger = [Portion(p.values, p.mass * factor, p.contact, p.coats) for p in parts]
    assert mix(larger, FIRST, FULL) == pytest.approx(mix(parts, FIRST, FULL), rel=1e-6, abs=1e-9)
