"""Published pairings: good ones are found fair and stand high, bad ones are not, and not all is liked.

The bounds are what the model is meant to reach, not what it happened to reach.
"""

from __future__ import annotations

import pytest

from assistant.pairing.match import Match
from tests import pairing_facts as published
from tests.pairing_facts import Judge, Outcome

FAIR_AT_LEAST, ANY_STYLE_AT_MOST = 0.90, 0.60
PERCENTILE_AT_LEAST, WITHIN_CLASS_AT_LEAST = 0.72, 0.67


@pytest.fixture(scope="module")
def judge() -> Judge:
    """One judge for all tests: it keeps the ranking of each food."""
    return Judge()


@pytest.fixture(scope="module")
def good(judge: Judge) -> list[Outcome]:
    """The good rows that can be asked for."""
    return judge.outcomes("good")


@pytest.fixture(scope="module")
def bad(judge: Judge) -> list[Outcome]:
    """The bad rows that nothing contradicts."""
    return judge.outcomes("bad")


def test_every_row_has_names(judge: Judge) -> None:
    names = judge.names
    asked = [fact for fact in judge.facts if fact.key not in names.untested]
    assert {fact.food for fact in asked} == set(names.foods)
    assert {fact.wine for fact in asked} == set(names.wines)
    assert set(names.assumed) <= set(names.foods)


def test_named_wines_are_styles(judge: Judge) -> None:
    named = {wine for wines in judge.names.wines.values() for wine in wines}
    assert named <= set(judge.styles)


def test_exceptions_are_rows(judge: Judge) -> None:
    names = judge.names
    keys = {relation: {f.key for f in judge.facts if f.relation == relation} for relation in ("good", "bad")}
    assert set(names.untested) | set(names.contested) <= keys["good"] | keys["bad"]
    assert set(names.bad) == keys["bad"] - set(names.contested) - set(names.untested)


def test_every_food_is_read(judge: Judge) -> None:
    unread = judge.unread()
    assert not unread, "\n" + "\n".join(unread)


def test_good_pairs_are_fair(good: list[Outcome]) -> None:
    """Most good pairs are fair or better, and clearly more of them than of any styles."""
    found = published.figures(good)
    print(f"{found.rows} good pairs: fair or better {found.fair:.3f}; any style {found.any_style:.3f}")
    assert found.fair >= FAIR_AT_LEAST, f"{found}\n{published.misses(good)}"
    assert found.any_style <= ANY_STYLE_AT_MOST, f"{found}\n{published.table(good)}"


def test_bad_pairs_are_not_fair(bad: list[Outcome]) -> None:
    """No bad pair is fair or better; a stray food or wine of a row is printed."""
    print(published.liked_bad(bad))
    liked = [outcome for outcome in bad if outcome.fair]
    assert not liked, "\n" + published.liked_bad(liked)


def test_good_wines_stand_high(good: list[Outcome]) -> None:
    found = published.figures(good)
    print(f"place of the named wine among all styles: {found.percentile:.3f}")
    assert found.percentile >= PERCENTILE_AT_LEAST, f"{found}\n{published.lowest(good)}"


def test_good_wines_stand_high_in_their_class(good: list[Outcome]) -> None:
    found = published.figures(good)
    print(f"place of the named wine among dry or sweet styles: {found.within_class:.3f}")
    lowest = published.lowest(good, within_class=True)
    assert found.within_class >= WITHIN_CLASS_AT_LEAST, f"{found}\n{lowest}"


def test_percentile_counts_ties_half() -> None:
    first, second, third = (Match(f"wine/{i}", score, "fair") for i, score in enumerate((9.0, 5.0, 5.0)))
    assert published.percentile(first, [first, second, third]) == 1.0
    assert published.percentile(second, [first, second, third]) == 0.25
