"""Rule weights keep to their bounds, and what is said of fits to published pairings can be repeated."""

from __future__ import annotations

import copy
from dataclasses import replace

import pytest

from assistant.knowledge.collector import loading
from assistant.knowledge.store import Knowledge, shipped
from assistant.pairing.engine import Engine
from assistant.session import Session
from tests import w3c_courses as w3c
from tests.calibration.bounds import Settings, read_settings, refusals
from tests.calibration.fit import Fit, changed, furthest, sources, unseen
from tests.calibration.scores import Moves, Scores, reweighed
from tests.calibration.table import NOTHING, PAGE, agrees, page, read_moves
from tests.pairing_facts import Judge
from tests.test_w3c_courses import DEFENDED
from tests.w3c_courses import COLOUR, PLACES, SUGAR

MOVES: Moves = (("rule/acid-cuts-fat", 0.5), ("rule/grip-meets-protein", 1.5), ("rule/sweetness-floor", 0.7))
SAMPLE = 12
WISHED = "rule/sweetness-floor"


@pytest.fixture(scope="module")
def settings() -> Settings:
    """Bounds and search as written."""
    return read_settings()


@pytest.fixture(scope="module")
def scores(session: Session) -> Scores:
    """Every food read and every rule run, once for all tests."""
    with loading():
        found = Scores(Judge(session))
        found.figures()
    return found


@pytest.fixture(scope="module")
def written() -> str:
    """The page on disk."""
    return PAGE.read_text(encoding="utf-8")


@pytest.fixture(scope="module")
def moves(written: str) -> dict[str, Moves]:
    """What moves in each fit, as the page has it."""
    return read_moves(written)


# Bounds


def test_shipped_weights_keep_to_their_bounds(settings: Settings) -> None:
    assert not refusals(shipped().rules, settings)


@pytest.mark.parametrize(
    ("weight", "said"),
    [
        (-60.0, "rule/sweetness-floor weighs -60, which is not between -35 and -17.9."),
        (25.0, "rule/sweetness-floor weighs 25, which is not between -35 and -17.9."),
        (0.0, "rule/sweetness-floor weighs 0, which is not between -35 and -17.9."),
    ],
)
def test_weight_out_of_bounds_is_refused(weight: float, said: str, settings: Settings) -> None:
    """The bounds follow from a judged weight of -25 and a factor of 1.4."""
    rule = replace(shipped().rules["rule/sweetness-floor"], weight=weight, confidence="strong")
    known = replace(settings, judged={rule.id: -25.0}, factors={"strong": 1.4})
    assert refusals({rule.id: rule}, known) == [said]


def test_rules_and_judged_weights_go_together(settings: Settings) -> None:
    rule = shipped().rules["rule/sweetness-floor"]
    (unjudged,) = refusals({rule.id: rule}, replace(settings, judged={}))
    assert unjudged == "rule/sweetness-floor weighs -25 and has no judged weight in calibration.toml."
    (gone,) = refusals({}, replace(settings, judged={rule.id: -25.0}))
    assert gone == "rule/sweetness-floor has a judged weight but is no rule."


def test_a_fit_may_not_leave_the_bounds(settings: Settings) -> None:
    rule = shipped().rules["rule/sweetness-floor"]
    known = replace(settings, judged={rule.id: rule.weight}, factors={rule.confidence: 1.2})
    assert [known.allows(rule, m) for m in (0.8, 0.9, 1.0, 1.1, 1.25)] == [False, True, True, True, False]


# Scores from firings that are kept


def test_kept_firings_score_as_the_engine_does(scores: Scores) -> None:
    """Shipped and moved weights, foods eaten in several bites among the sample."""
    words = sorted({w for fact in scores.facts("good") for w in scores.judge.names.foods[fact.food]})
    sample = [w for w in words if len(scores.tasting(w).shares) > 1][:2] + words[:: len(words) // SAMPLE]
    for moved in ((), MOVES):
        engine = Engine(reweighed(scores.engine.knowledge, moved))
        for food in sample:
            table = scores.judge.context(food).table()
            expected = [(m.wine, m.score, m.verdict) for m in engine.rank(table, scores.judge.styles)]
            assert [(m.wine, m.score, m.verdict) for m in scores.ranking(food, moved)] == expected, food


def test_moves_change_scores_and_leave_the_knowledge_alone(scores: Scores) -> None:
    before = dict(scores.engine.knowledge.rules)
    moved, shipped = ([m.score for m in scores.ranking("fatty red meat", moves)] for moves in (MOVES, ()))
    assert moved != shipped
    assert scores.engine.knowledge.rules == before


def without_customs(knowledge: Knowledge) -> Knowledge:
    """The same knowledge, of which no wine is poured by custom; the one given stays as it is."""
    bare = copy.copy(knowledge)
    bare.pours = lambda wine, foods: frozenset()  # type: ignore[method-assign]
    return bare


def test_rows_and_picks_are_those_of_the_reports(scores: Scores) -> None:
    for fact in scores.facts("good")[::SAMPLE]:
        found = scores.judge.outcome(fact)
        expected = (found.fair, found.any_style, found.percentile, found.within_class)
        assert scores.row(fact, ()) == expected, fact
    session = Session(without_customs(scores.engine.knowledge), top=PLACES)
    for course in scores.courses[::4]:
        answered = [w3c.answer(course, session)]
        places = {aspect: w3c.counted(answered, aspect, DEFENDED[aspect]) for aspect in (COLOUR, SUGAR)}
        expected_right = [n for a, p in places.items() for n in (len(p), sum(x.right(a) for x in p))]
        assert list(scores.right(course, ())) == expected_right, course


# The page


def test_page_is_up_to_date(
    scores: Scores, settings: Settings, written: str, moves: dict[str, Moves]
) -> None:
    assert set(moves) == {NOTHING, *sources(scores)}
    found = page(scores, settings, moves)
    assert agrees(written, found), f"run python -m tests.calibration --write\n{found}"


def test_pages_agree_but_for_rounding() -> None:
    assert agrees("| fair | 0.951 |", "| fair | 0.952 |")
    assert not agrees("| fair | 0.951 |", "| fair | 0.954 |")
    assert not agrees("| fair | 0.951 |", "| bad | 0.951 |")
    assert not agrees("| 0.951 | 0.1 |", "| 0.951 |")


def test_every_fit_gains(scores: Scores, settings: Settings, moves: dict[str, Moves]) -> None:
    fit = Fit(scores, settings)
    for source, found in moves.items():
        without = "" if source == NOTHING else source
        assert not found or fit.objective(found, without) > fit.objective((), without), source


def test_every_move_earns_its_price(scores: Scores, settings: Settings, moves: dict[str, Moves]) -> None:
    """With nothing left out, taking any one move back leaves less after the price than keeping it."""
    fit, found = Fit(scores, settings), moves[NOTHING]
    for rule, _ in found:
        gain = fit.objective(found, "") - fit.objective(changed(found, rule, 1.0), "")
        assert gain >= settings.search.least_gain, rule


class Wishing(Fit):
    """A fit to which one rule is worth more the nearer it comes to half as much again."""

    def worth(self, moves: Moves, without: str) -> float:
        """The nearness; nothing else counts."""
        return -abs(dict(moves).get(WISHED, 1.0) - 1.5)


@pytest.mark.parametrize(
    ("price", "factor", "expected"),
    [(0.0, 2.0, ((WISHED, 1.25),)), (0.0, 1.15, ((WISHED, 1.1),)), (10.0, 2.0, ())],
)
def test_fit_takes_what_gains_within_bounds(
    price: float, factor: float, expected: Moves, scores: Scores, settings: Settings
) -> None:
    search, judged = replace(settings.search, price=price), {r.id: r.weight for r in shipped().rules.values()}
    known = replace(settings, search=search, judged=judged, factors=dict.fromkeys(settings.factors, factor))
    assert Wishing(scores, known).moves() == expected


def test_no_source_decides_the_figures(scores: Scores, settings: Settings, moves: dict[str, Moves]) -> None:
    """Without any one source, weights are fitted that give nearly the same figures for all facts."""
    fit, start = Fit(scores, settings), scores.figures(moves[NOTHING])
    found = [fit.left_out(source, moves[source]) for source in sources(scores)]
    apart = {each.source: furthest(each.figures, start) for each in found}
    assert not {source: far for source, far in apart.items() if far > settings.close}
    assert furthest(unseen(scores, found), start) <= settings.close
