"""What each wine of a choice is there for, on boards whose scores are written out."""

from __future__ import annotations

import pytest

from assistant.evening.why_chosen import ALSO, FOODS, VARIETY, whys
from assistant.pairing.score import verdict
from tests.evening.made import BANDS, scores

FLOOR = {band.verdict: band.floor for band in BANDS}
GOOD, NEUTRAL = FLOOR["good"], FLOOR["neutral"]


def test_a_wine_is_there_for_the_foods_it_does_best_with() -> None:
    found = whys(
        scores({"wine/x": [GOOD + 2, 0.0, GOOD], "wine/y": [GOOD, GOOD + 1, 0.0]}), ["wine/y", "wine/x"]
    )
    assert [why.wine for why in found] == ["wine/y", "wine/x"]
    assert [why.foods for why in found] == [("b",), ("a", "c")]
    assert {why.kind for why in found} == {FOODS}


@pytest.mark.parametrize(("own", "kind"), [(GOOD, ALSO), (NEUTRAL, VARIETY), (NEUTRAL - 0.1, VARIETY)])
def test_a_wine_that_another_beats_everywhere_is_also_good_or_there_for_variety(
    own: float, kind: str
) -> None:
    found = whys(scores({"wine/x": [60.0, 60.0], "wine/y": [own, own - 30.0]}), ["wine/x", "wine/y"])[1]
    assert (found.foods, found.kind) == ((), kind)
    assert (found.own.food, found.own.score) == ("a", own)
    assert found.own.verdict == verdict(own, BANDS)


def test_the_food_it_does_best_with_itself_is_the_one_of_the_highest_score() -> None:
    found = whys(scores({"wine/x": [60.0, 60.0, 60.0], "wine/y": [1.0, 8.0, 3.0]}), ["wine/y", "wine/x"])
    assert [why.own.food for why in found] == ["b", "a"]
