"""Limits on the wine, and the two ways to deny: what is said of the wine, and the wine itself."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from assistant.language.frame import Preference
from assistant.session import Session
from tests.language.conftest import Parse


@dataclass(frozen=True, slots=True)
class Limit:
    """A limit without its words."""

    on: str
    low: float | None = None
    high: float | None = None


def numbers(found: tuple[Preference, ...]) -> set[Limit]:
    """The limits on numbers."""
    return {Limit(p.property, p.low, p.high) for p in found if p.wanted is None}


def groups(found: tuple[Preference, ...]) -> set[tuple[str | None, bool]]:
    """Kinds, wines and homes with whether they are banned."""
    return {(p.wanted, p.banned) for p in found if p.wanted}


@pytest.mark.parametrize(
    ("text", "limit"),
    [
        ("something dry for brie", Limit("sugar", high=1.6)),
        ("off-dry with curry", Limit("sugar", 1.3, 3.0)),
        ("off dry with curry", Limit("sugar", 1.3, 3.0)),
        ("sweet for brie", Limit("sugar", low=3.0)),
        ("unoaked for crab", Limit("oak", high=1.0)),
        ("no oak for crab", Limit("oak", high=1.0)),
        ("oaky with chicken", Limit("oak", low=2.0)),
        ("full-bodied with steak", Limit("body", low=3.3)),
        ("low tannin with tuna", Limit("tannin", high=2.0)),
        ("tannic with steak", Limit("tannin", low=2.6)),
        ("crisp with oysters", Limit("acid", low=3.2)),
        ("aromatic with curry", Limit("aroma", low=3.7)),
        ("low alcohol with sushi", Limit("alcoholPercent", high=11.5)),
        ("under 12% with oysters", Limit("alcoholPercent", high=12.0)),
        ("less than 12.5 % with oysters", Limit("alcoholPercent", high=12.5)),
        ("at least 14 percent with steak", Limit("alcoholPercent", low=14.0)),
        ("over 13 abv with steak", Limit("alcoholPercent", low=13.0)),
        ("not more than 11 percent with tofu", Limit("alcoholPercent", high=11.0)),
        ("not stronger than 12% for sole", Limit("alcoholPercent", high=12.0)),
        ("sole, 12.5% or lower", Limit("alcoholPercent", high=12.5)),
        ("sole, 12% max", Limit("alcoholPercent", high=12.0)),
        ("14% alcohol or more with steak", Limit("alcoholPercent", low=14.0)),
    ],
)
def test_word_for_a_limit(parse: Parse, text: str, limit: Limit) -> None:
    assert numbers(parse(text).preferences) == {limit}


@pytest.mark.parametrize(
    ("text", "limit"),
    [
        ("chicken, nothing oaky", Limit("oak", high=1.2)),
        ("chicken, not oaky", Limit("oak", high=1.2)),
        ("chicken, not too oaky", Limit("oak", high=1.2)),
        ("chicken, hates oak", Limit("oak", high=1.2)),
        ("chicken, not sweet", Limit("sugar", high=1.6)),
        ("chips, not fizzy", Limit("bubbles", high=1.0)),
        ("steak, I don't like tannins", Limit("tannin", high=2.6)),
        ("steak, not dry", Limit("sugar", low=1.6)),
        ("salmon, not light", Limit("body", low=2.7)),
        ("brie, not too strong", Limit("alcoholPercent", high=13.0)),
    ],
)
def test_a_word_denied_turns_its_limit(parse: Parse, text: str, limit: Limit) -> None:
    assert numbers(parse(text).preferences) == {limit}


def test_denying_ends_at_the_next_clause(parse: Parse) -> None:
    found = parse("no oak, but crisp, for brie").preferences
    assert numbers(found) == {Limit("oak", high=1.0), Limit("acid", low=3.2)}


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("what red for steak", {("kind/red-wine", False)}),
        ("red or white with chicken", {("kind/red-wine", False), ("kind/white-wine", False)}),
        ("something sparkling with chips", {("kind/sparkling-wine", False)}),
        ("steak but no red", {("kind/red-wine", True)}),
        ("steak, not red", {("kind/red-wine", True)}),
        ("anything but red for steak", {("kind/red-wine", True)}),
        ("steak, no merlot", {("grape/merlot", True)}),
        ("wine from Spain with steak", {("region/spain", False)}),
        ("an italian red for pizza", {("region/italy", False), ("kind/red-wine", False)}),
        ("not an italian wine for pizza", {("region/italy", True)}),
        ("alcohol free for steak", {("kind/drink", False)}),
    ],
)
def test_kind_wine_or_home(parse: Parse, text: str, wanted: set[tuple[str, bool]]) -> None:
    assert groups(parse(text).preferences) == wanted


# --- the two negations: `not` speaks of the word behind it, `no` of the thing


def test_not_before_two_words_turns_the_first_alone(parse: Parse) -> None:
    found = parse("a not oaky white with chicken").preferences
    assert numbers(found) == {Limit("oak", high=1.2)}
    assert groups(found) == {("kind/white-wine", False)}


def test_no_before_two_words_bans_what_is_both(parse: Parse) -> None:
    (limit,) = parse("no oaky whites with chicken").preferences
    assert limit == Preference("no oaky white wine", "oak", high=1.2, among="kind/white-wine")


def test_a_ban_on_oaky_whites_leaves_oaky_reds(session: Session) -> None:
    (limit,) = session.parser.parse("no oaky whites with chicken").preferences
    every = session.engine.glasses
    kept = set(session.engine.within(list(every), [limit]))
    whites = {w for w in every if "kind/white-wine" in session.knowledge.wines[w].kinds}
    oaky = {w for w, glass in every.items() if glass.points["oak"] > 1.2}
    assert set(every) - kept == whites & oaky
    assert oaky & kept


@pytest.mark.parametrize(
    "text",
    ["what's good with lamb, a red", "wots good wiv lamb, summat red", "what is nice with lamb, a red?"],
)
def test_a_sort_behind_what_it_is_for_is_wished(parse: Parse, text: str) -> None:
    frame = parse(text)
    assert (frame.intent, frame.wines) == ("wines-for-food", ())
    assert groups(frame.preferences) == {("kind/red-wine", False)}


@pytest.mark.parametrize("text", ["does a red go with cod", "is red good with fish, or white"])
def test_a_sort_that_is_judged_is_no_limit(parse: Parse, text: str) -> None:
    assert "kind/red-wine" in parse(text).wines


@pytest.mark.parametrize(
    "text",
    [
        "wine for lamb, low tannin if red",
        "wine for lamb, if it's a red make it low tannin",
        "wine for lamb, low tannin if it is red",
    ],
)
def test_a_limit_of_one_sort_bans_no_other(parse: Parse, text: str) -> None:
    (limit,) = parse(text).preferences
    assert (limit.property, limit.high, limit.among) == ("tannin", 2.0, "kind/red-wine")


@pytest.mark.parametrize(
    "text",
    [
        "wine for fish, I do not like too sour",
        "wine for fish, not too sour",
        "something not too tart for salad",
        "wine for fish, nothing sour please",
    ],
)
def test_what_is_not_to_be_sour_is_soft_in_acidity(parse: Parse, text: str) -> None:
    assert numbers(parse(text).preferences) == {Limit("acid", high=3.0)}


@pytest.mark.parametrize(
    "text", ["my wine tastes too sour, what do I do", "what goes with a sour cream tart"]
)
def test_a_complaint_or_a_food_that_is_sour_limits_nothing(parse: Parse, text: str) -> None:
    assert parse(text).preferences == ()


def test_another_wine_of_a_home_and_colour_is_no_name(parse: Parse) -> None:
    frame = parse("No Pinotage left. Give me another South African red in its place.")
    assert groups(frame.preferences) == {("region/south-africa", False), ("kind/red-wine", False)}
    assert frame.wines == ("wine/pinotage",)
    assert parse("does a South African red go with steak").wines == ("wine/pinotage",)


@pytest.mark.parametrize("text", ["a white, not oaky, with chicken", "a white with chicken, no oaky ones"])
def test_a_white_that_is_not_oaky(parse: Parse, text: str) -> None:
    found = parse(text).preferences
    assert numbers(found) == {Limit("oak", high=1.2)}
    assert groups(found) == {("kind/white-wine", False)}


# --- what becomes of them


def test_every_limit_is_told(parse: Parse) -> None:
    labels = [p.label for p in parse("a dry red under 13% from Spain, not oaky, with steak").preferences]
    assert len(labels) == len(set(labels)) >= 4


def test_words_of_a_limit_are_used_not_left_out(parse: Parse) -> None:
    assert parse("something grippy and boozy for steak").text.left_out == ()


@pytest.mark.parametrize("text", ["pizza, not italian", "white from the Loire with goat cheese"])
def test_a_place_that_is_named_is_a_limit(parse: Parse, text: str) -> None:
    assert any(p.property == "home" for p in parse(text).preferences)


def test_words_inside_a_name_are_no_limit(parse: Parse) -> None:
    assert parse("dry-cured black olives and sweet potato with sour cream").preferences == ()
    assert parse("off-dry riesling with brie").preferences == ()


def test_a_smell_limits_the_wine_to_its_family(session: Session) -> None:
    (limit,) = session.parser.parse("a wine with vanilla notes").preferences
    (family,) = session.knowledge.broader("aroma/vanilla")
    assert (limit.property, limit.wanted) == ("smell", family)
    session.new_conversation()
    answer = session.ask("a wine with vanilla notes")
    assert answer.clarify
    assert all(family in session.knowledge.wines[item.id].smells for item in answer.picks)


def test_without_a_dish_the_wines_that_fit_are_named(session: Session) -> None:
    session.new_conversation()
    answer = session.ask("something dry and Italian")
    assert answer.picks
    assert {item.wine["sweetness"] for item in answer.picks if item.wine} == {"dry"}
    assert all("region/italy" in session.engine.glasses[item.id].countries for item in answer.picks)


def test_limits_hold_in_the_answer(conversation: Session) -> None:
    for question, keeps in (
        ("a white, not oaky, for chicken", lambda w: w["colour"] == "white" and w["oak"] <= 1.2),
        ("steak under 12.5%", lambda w: w["alcohol_percent"] <= 12.5),
        ("something sparkling for steak", lambda w: w["sparkling"]),
    ):
        conversation.new_conversation()
        picks = conversation.ask(question).picks
        assert picks
        assert all(item.wine is not None and keeps(item.wine) for item in picks), question


def test_a_limit_that_costs_is_told(conversation: Session) -> None:
    assert "The limit costs" in conversation.ask("a red for oysters").text
    conversation.new_conversation()
    assert "The limit costs" not in conversation.ask("oysters").text


def test_limits_that_leave_nothing_are_told(conversation: Session) -> None:
    answer = conversation.ask("oaky, unoaked wine for chicken")
    assert answer.picks == ()
    assert "keeps to that limit" in answer.text


@pytest.mark.parametrize(
    "text",
    [
        "nothing sparkling with crab, bubbles give me hiccups",
        "red for lamb, not from France because the French laughed at me",
    ],
)
def test_what_is_ruled_out_is_not_wanted_as_well(parse: Parse, text: str) -> None:
    found = groups(parse(text).preferences)
    banned = {wanted for wanted, out in found if out}
    assert banned
    assert banned.isdisjoint(wanted for wanted, out in found if not out)


def test_a_food_hates_no_wine(parse: Parse) -> None:
    frame = parse("does the gorgonzola hate the sancerre")
    assert (frame.wines, frame.preferences) == (("wine/sancerre",), ())
    assert groups(parse("she hates sancerre, what with gorgonzola").preferences) == {("wine/sancerre", True)}


def test_a_kind_of_food_is_sought_for_a_kind_of_wine(parse: Parse) -> None:
    frame = parse("snacks for orange wine")
    assert (frame.intent, frame.wines) == ("foods-for-wine", ("kind/orange-wine",))
    assert parse("a red for cheese").intent == "wines-for-food"
