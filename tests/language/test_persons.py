"""Who stands in the place of a person is no slip for the name of a food or a wine."""

from __future__ import annotations

import pytest

from assistant.knowledge.store import shipped
from assistant.language.parse import Parser


@pytest.fixture(scope="module")
def parser() -> Parser:
    return Parser(shipped())


@pytest.mark.parametrize(
    "typed",
    [
        "Bo rated the malbec 4",
        "bo rated the malbec 4",
        "Barbra hated the malbec",
        "Ali rated the malbec 2, Bo rated the malbec 3",
        "and Bo rated the malbec 3",
    ],
)
def test_a_person_is_no_food(parser: Parser, typed: str) -> None:
    assert {r.id for r in parser.parse(typed).text.readings} == {"wine/malbec"}


@pytest.mark.parametrize("typed", ["chedar and malbec", "gogonzola with malbec"])
def test_a_slip_elsewhere_is_mended(parser: Parser, typed: str) -> None:
    assert any(r.corrected_from for r in parser.parse(typed).text.readings)


@pytest.mark.parametrize(
    "typed",
    [
        "my uncle ray is diabetic",
        "ray is diabetic",
        "Ray's diabetic",
        "uncle ray feels shaky",
        "can ray have the malbec",
        "uncle basil wants the malbec",
        "ray never eats pork",
    ],
)
def test_a_name_that_is_a_word_too_is_no_food(parser: Parser, typed: str) -> None:
    assert not {"food/skate", "food/basil"} & {r.id for r in parser.parse(typed).text.readings}


@pytest.mark.parametrize(
    "typed", ["wine for ray with butter", "what goes with ray", "grilled ray and a salad"]
)
def test_what_is_eaten_under_such_a_name_stays_food(parser: Parser, typed: str) -> None:
    assert "food/skate" in {r.id for r in parser.parse(typed).text.readings}
