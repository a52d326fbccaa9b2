"""The few wines that are named: not three of a kind, easy to find, in both colours; and what to avoid."""

from __future__ import annotations

from collections import Counter

import pytest

from assistant.knowledge.store import Knowledge
from assistant.pairing import choose
from assistant.pairing.engine import Engine, board
from assistant.pairing.match import Match
from assistant.session import Session
from tests.pairing.made import match

FOODS = (
    "brie", "steak", "oyster", "salmon", "pad-thai", "tiramisu", "cheddar", "green-salad", "stilton",
    "lettuce",
)  # fmt: skip


@pytest.fixture(scope="module")
def engine(session: Session) -> Engine:
    """The engine on the shipped knowledge."""
    return session.engine


@pytest.fixture(scope="module")
def knowledge(session: Session) -> Knowledge:
    """The shipped knowledge."""
    return session.knowledge


def ranked(engine: Engine, food: str) -> list[Match]:
    """All wines for a food, best first."""
    return engine.rank(board([f"food/{food}"]), [glass.wine for glass in engine.cellar])


def made(knowledge: Knowledge, *pairs: tuple[str, float]) -> list[Match]:
    """A ranking of these wines with these scores."""
    return sorted((match(f"wine/{w}", s, knowledge) for w, s in pairs), key=lambda m: (-m.score, m.wine))


def names(matches: list[Match]) -> list[str]:
    """Local names of the wines."""
    return [m.wine.removeprefix("wine/") for m in matches]


# --- picks


@pytest.mark.parametrize("food", FOODS)
@pytest.mark.parametrize("count", [3, 5])
def test_a_short_list_is_not_three_of_a_kind(
    engine: Engine, knowledge: Knowledge, food: str, count: int
) -> None:
    chosen = choose.picks(ranked(engine, food), count, knowledge)
    kinds = Counter(choose.style_kind(knowledge.wines[m.wine]) for m in chosen)
    assert len(chosen) == count
    assert max(kinds.values()) <= 2
    assert [m.score for m in chosen] == sorted((m.score for m in chosen), reverse=True)


def test_a_wine_and_its_parent_style_are_one_advice(engine: Engine, knowledge: Knowledge) -> None:
    for food in FOODS:
        chosen = {m.wine for m in choose.picks(ranked(engine, food), 5, knowledge)}
        assert not any(chosen & set(knowledge.wines[wine].kinds) for wine in chosen), food


def test_a_long_list_is_the_plain_ranking(engine: Engine, knowledge: Knowledge) -> None:
    everything = ranked(engine, "brie")
    assert choose.picks(everything, 6, knowledge) == everything[:6]
    assert choose.picks(everything, 10_000, knowledge) == everything


def test_one_pick_is_one_wine(engine: Engine, knowledge: Knowledge) -> None:
    assert len(choose.picks(ranked(engine, "brie"), 1, knowledge)) == 1


def test_fewer_wines_than_asked_for_are_all_there_is(knowledge: Knowledge) -> None:
    assert names(choose.picks(made(knowledge, ("merlot", 5.0)), 3, knowledge)) == ["merlot"]
    assert choose.picks([], 3, knowledge) == []


def rare_and_common(knowledge: Knowledge) -> tuple[str, str, float]:
    """A wine hard to find, one sold everywhere of another kind, and what the difference must be worth."""
    wines = [w for w in knowledge.wines.values() if w.type == "Wine"]
    rare = next(w for w in wines if w.availability == choose.RAREST)
    common = next(
        w
        for w in wines
        if w.availability == choose.COMMONEST and choose.style_kind(w) != choose.style_kind(rare)
    )
    worth = (choose.COMMONEST - choose.RAREST) * knowledge.constants["harder-to-find"]
    return rare.id.removeprefix("wine/"), common.id.removeprefix("wine/"), worth


@pytest.mark.parametrize(("lead", "named"), [(-0.5, "common"), (0.5, "rare")])
def test_a_wine_hard_to_find_is_named_only_where_clearly_better(
    knowledge: Knowledge, lead: float, named: str
) -> None:
    rare, common, worth = rare_and_common(knowledge)
    found = choose.picks(made(knowledge, (common, 10.0), (rare, 10.0 + worth + lead)), 1, knowledge)
    assert names(found) == [{"rare": rare, "common": common}[named]]


# --- the other colour


def test_other_colour_is_a_fair_wine_of_the_colour_that_is_missing(
    engine: Engine, knowledge: Knowledge
) -> None:
    for food in FOODS:
        everything = ranked(engine, food)
        chosen = choose.picks(everything, 3, knowledge)
        red = {knowledge.wines[m.wine].colour == "colour/red" for m in chosen}
        other = choose.other_colour(everything, chosen, knowledge)
        if len(red) == 2:
            assert other is None, food
        elif other is not None:
            assert (knowledge.wines[other.wine].colour == "colour/red") not in red, food
            assert other.verdict in ("strong", "good", "fair"), food
            assert knowledge.wines[other.wine].availability > choose.RAREST, food


def test_no_other_colour_that_is_less_than_fair(knowledge: Knowledge) -> None:
    reds = made(knowledge, ("merlot", 12.0), ("malbec", 11.0))
    for score, found in ((0.0, None), (12.0, "wine/chablis")):
        other = choose.other_colour([*reds, match("wine/chablis", score, knowledge)], reds, knowledge)
        assert (other.wine if other else None) == found


# --- what to avoid


def avoided(knowledge: Knowledge, *pairs: tuple[str, float], sweet: str = "") -> list[str]:
    """Local names of what is warned of in a ranking of these wines."""
    sweetness = dict.fromkeys((f"wine/{w}" for w, _ in pairs), 0.5) | {f"wine/{sweet}": 4.0}
    return names(choose.avoided(made(knowledge, *pairs), 3, knowledge, sweetness))


def common_kinds(knowledge: Knowledge) -> list[list[str]]:
    """Wines sold everywhere, by the kind they are first of all; several kinds with two at least."""
    kinds: dict[str, list[str]] = {}
    for wine in knowledge.wines.values():
        if wine.type == "Wine" and wine.availability >= choose.COMMONEST:
            kinds.setdefault(choose.style_kind(wine), []).append(wine.id.removeprefix("wine/"))
    return [wines for wines in kinds.values() if len(wines) > 1]


def test_only_wines_that_hurt_are_warned_of_the_worst_first(knowledge: Knowledge) -> None:
    (best, *_), (second, *_), (bad, *_), (worst, *_), *_ = common_kinds(knowledge)
    found = avoided(knowledge, (best, 12.0), (second, 0.0), (bad, -15.0), (worst, -30.0))
    assert found == [worst, bad]


def test_no_two_of_a_kind_are_warned_of(knowledge: Knowledge) -> None:
    (best, *_), (bad, alike, *_), *_ = common_kinds(knowledge)
    assert avoided(knowledge, (best, 12.0), (bad, -20.0), (alike, -25.0)) == [alike]


def test_at_most_so_many_are_warned_of(knowledge: Knowledge) -> None:
    firsts = [wines[0] for wines in common_kinds(knowledge)]
    assert len(firsts) >= 5
    pairs = [(firsts[0], 12.0), *((wine, -20.0 - i) for i, wine in enumerate(firsts[1:5]))]
    assert len(avoided(knowledge, *pairs)) == 3


def test_nobody_is_warned_of_a_wine_that_is_hard_to_find(knowledge: Knowledge) -> None:
    rare, common, _ = rare_and_common(knowledge)
    assert avoided(knowledge, (common, 12.0), (rare, -30.0)) == []


def test_nobody_is_warned_of_sweet_wine_where_the_best_is_dry(knowledge: Knowledge) -> None:
    (best, *_), (bad, *_), *_ = common_kinds(knowledge)
    assert avoided(knowledge, (best, 12.0), (bad, -30.0), sweet=bad) == []
    assert avoided(knowledge, (best, 12.0), (bad, -30.0), sweet=best) == [bad]


@pytest.mark.parametrize("food", FOODS)
def test_what_is_warned_of_is_poor_and_never_picked(engine: Engine, knowledge: Knowledge, food: str) -> None:
    everything = ranked(engine, food)
    sweetness = {wine: glass.points["sweetness"] for wine, glass in engine.glasses.items()}
    bad = choose.avoided(everything, 3, knowledge, sweetness)
    assert {m.verdict for m in bad} <= {"poor", "clash"}
    assert not {m.wine for m in bad} & {m.wine for m in choose.picks(everything, 3, knowledge)}
