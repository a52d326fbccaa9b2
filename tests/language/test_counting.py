"""How many bottles are asked for, in words and in digits."""

from __future__ import annotations

import pytest

from assistant.language.counting import Count, bottles
from assistant.session import Session

RED, WHITE = "kind/red-wine", "kind/white-wine"


@pytest.mark.parametrize(
    ("question", "wanted"),
    [
        ("choose three wines for brie and salami", Count(3)),
        ("pick 4 bottles for cheddar", Count(4)),
        ("choose wines for cheddar", Count(None)),
        ("8 cheeses 2 meats olives pickles, 5 wines, 80 dollars go", Count(5)),
        ("we are 12 people, which wines for 6 pizzas", Count(None)),
        ("pick five different wines for stilton", Count(5)),
        ("two reds one white, for mezze", Count(3, ((RED, 2), (WHITE, 1)))),
        ("choose 3 whites and 2 reds for a seafood board", Count(5, ((WHITE, 3), (RED, 2)))),
        ("which two of these do i open for tacos: malbec, zin", Count(2)),
        ("a trio for cheddar", Count(3)),
        ("wines for cheddar, 30 euro", Count(None)),
        ("choose wines for cheddar, under 5 dollars", Count(None)),
    ],
)
def test_bottles_are_counted(session: Session, question: str, wanted: Count) -> None:
    assert bottles(session.parser.parse(question).text) == wanted
