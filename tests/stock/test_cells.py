"""Single cells as people write them."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.stock.cells import alcohol_of, left_of, number, price_of, vintage_of

NEXT = date.today().year + 1


@pytest.mark.parametrize(
    ("text", "price", "sign"),
    [
        ("14", 14.0, ""),
        ("$14.50", 14.5, "$"),
        ("14,50 €", 14.5, "€"),
        ("€ 1.234,50", 1234.5, "€"),
        ("£1,234.50", 1234.5, "£"),
        ("CHF 1'250.00", 1250.0, "CHF "),
        ("1 250,00 EUR", 1250.0, "€"),
        ("14.-", 14.0, ""),
        ("14,–", 14.0, ""),
        ("US$ 9", 9.0, "$"),
        ("R$ 89,90", 89.9, "R$"),
        ("12.00 per bottle", 12.0, ""),
        ("0", 0.0, ""),
        ("1.250", 1250.0, ""),
        ("n/a", None, ""),
        ("", None, ""),
    ],
)
def test_prices(text: str, price: float | None, sign: str) -> None:
    assert price_of(text) == (price, sign)


@pytest.mark.parametrize(
    "text", ["abc", "14 15", "-5", "1e9", "fourteen", "14 bananas", "99999999", "1 25", "."]
)
def test_what_is_no_price(text: str) -> None:
    with pytest.raises(ValueError, match=r".*"):
        price_of(text)


@pytest.mark.parametrize(
    ("text", "strength"),
    [
        ("13,5 % vol", 13.5),
        ("13.5%", 13.5),
        ("12", 12.0),
        ("alc. 13 % by vol.", 13.0),
        ("0,0 %", 0.0),
        ("-", None),
    ],
)
def test_strengths(text: str, strength: float | None) -> None:
    assert alcohol_of(text) == strength


@pytest.mark.parametrize("text", ["135", "-1", "strong", "13 to 14", "13 cl"])
def test_what_is_no_strength(text: str) -> None:
    with pytest.raises(ValueError, match=r".*"):
        alcohol_of(text)


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("6", 6),
        ("6 bottles", 6),
        ("12 Fl.", 12),
        ("sold out", 0),
        ("Ausverkauft", 0),
        ("1.000", 1000),
        ("yes", None),
    ],
)
def test_numbers_of_bottles(text: str, left: int | None) -> None:
    assert left_of(text) == left


@pytest.mark.parametrize("text", ["-3", "2.5", "a few", "6 crates", "2x6"])
def test_what_is_no_number_of_bottles(text: str) -> None:
    with pytest.raises(ValueError, match=r".*"):
        left_of(text)


@pytest.mark.parametrize(
    ("text", "year"),
    [
        ("2021", 2021),
        ("'21", 2021),
        ("98", 1998),
        ("NV", None),
        ("N.V.", None),
        ("oJ", None),
        ("2019.0", 2019),
    ],
)
def test_vintages(text: str, year: int | None) -> None:
    assert vintage_of(text) == year


@pytest.mark.parametrize("text", ["1200", str(NEXT + 1), "young", "2019/2020"])
def test_what_is_no_vintage(text: str) -> None:
    with pytest.raises(ValueError, match=r".*"):
        vintage_of(text)


@given(st.integers(0, 999_999_99), st.sampled_from(["en", "de", "fr", "ch"]))
def test_a_sum_is_read_as_it_was_written(cents: int, way: str) -> None:
    whole, rest = f"{cents // 100:,}", f"{cents % 100:02}"
    written = {
        "en": f"{whole}.{rest}",
        "de": f"{whole.replace(',', '.')},{rest}",
        "fr": f"{whole.replace(',', chr(0x202F))},{rest}",
        "ch": f"{whole.replace(',', chr(39))}.{rest}",
    }[way]
    assert number(written)[0] == pytest.approx(cents / 100)
