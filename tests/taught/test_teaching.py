"""Names, pairs, tastes and foods that the host teaches are told back and heard later on."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.taught.told import Talk, told, verdict


@pytest.mark.parametrize(
    ("said", "question", "read"),
    [
        ('From now on when I say "the house fizz" I mean cava', "does the house fizz go with brie", "Cava"),
        ("wendle is what we call the washed rind cheese", "what wine with wendle", "washed-rind cheese"),
        ("call the malbec the brute from here on", "does the brute go with steak", "Malbec"),
    ],
)
def test_a_name_is_read_from_then_on(talk: Talk, said: str, question: str, read: str) -> None:
    answer = talk().ask(said)
    assert answer.say.startswith("Kept: “")
    later = talk().ask(question)
    assert read in [reading["label"] for reading in later.read_as]
    assert later.question == question
    assert later.voices[0]["says"].startswith("By “")


def test_a_name_may_stand_for_what_stands(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("describe sparkling shiraz")
    opened.ask("call it zubzub")
    (kept,) = told(file)
    assert (kept.kind, kept.about) == ("alias", ("wine/sparkling-shiraz",))


def test_a_pair_is_told_beside_the_book_and_scores_stay(talk: Talk) -> None:
    before = talk().ask("does gouda go with syrah")
    answer = talk().ask("i always do gouda with syrah and people love it, remember that")
    assert answer.say == "Kept: good together, Gouda and Syrah."
    assert f"The book says {before.verdict} with Syrah; you say good, one step higher." in answer.text
    after = talk().ask("does gouda go with syrah")
    assert (after.verdict, after.picks) == (before.verdict, before.picks)
    for question in ("does gouda go with syrah", "what goes with gouda", "what food goes with syrah"):
        assert "You say: good with" in talk().ask(question).text.splitlines()[-1]
    assert "You say" not in talk().ask("does brie go with syrah").text


@pytest.mark.parametrize(
    ("said", "band"),
    [
        ("remember for good that lime pickle kills syrah", "band/poor"),
        ("remember that my crowd doesn't like edam with merlot", "band/poor"),
        ("save as mine: edam with merlot never fails", "band/good"),
        (
            "learn this: moscato with lime pickle is fantastic, dont say it clashes",
            "band/good",
        ),
    ],
)
def test_the_verdict_is_the_hosts(talk: Talk, file: Path, said: str, band: str) -> None:
    talk().ask(said)
    (kept,) = told(file)
    assert (kept.kind, kept.value["verdict"]) == ("pairing", band)


def test_a_profile_changes_what_is_tasted(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("got a dry Riesling, a Syrah and a ruby port, and pecorino, gouda")
    questions = [f"does {wine} go with pecorino" for wine in ("dry Riesling", "Syrah", "ruby port")]
    before = [verdict(talk(), question) for question in questions]
    answer = opened.ask("that's wrong, the pecorino i buy is a mild one, save that")
    assert answer.say == "Kept: your Pecorino is milder."
    changed = sum(b != verdict(talk(), q) for b, q in zip(before, questions, strict=True))
    assert changed == 1
    assert "This changes one answer for tonight." in answer.text
    assert "Tasted as you taught: Pecorino milder" in talk().ask(questions[0]).text
    back = opened.ask("forget that")
    assert "This changes one answer for tonight." in back.text
    assert [verdict(talk(), question) for question in questions] == before


def test_that_one_is_the_food_that_stands(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("what goes with pecorino")
    assert opened.ask("that one's mild").say == "Kept: your Pecorino is milder."
    assert opened.ask("our gouda is from ewes' milk").say == "Kept: your Gouda is richer and stronger."


def test_a_new_food_is_read_by_its_name(talk: Talk, file: Path) -> None:
    answer = talk().ask("new cheese: vexley blush, like gouda but garlicky and sweeter")
    assert answer.say == "Kept: “vexley blush”, like Gouda but stronger and sweeter."
    later, gouda = talk().ask("what goes with vexley blush"), talk().ask("what goes with gouda")
    assert later.dish is not None
    assert gouda.dish is not None
    assert later.dish["label"] == "vexley blush"
    assert later.dish["sugar"]["points"] > gouda.dish["sugar"]["points"]
    assert later.left_out == ()


def test_a_food_with_an_unread_word_before_it_is_another_food(talk: Talk) -> None:
    before = talk().ask("what goes with chutney")
    talk().ask("teach you something: quandong chutney is tart, not sweet")
    assert talk().ask("what goes with chutney").dish == before.dish
    assert talk().ask("what goes with quandong chutney").dish != before.dish


def test_what_is_said_of_a_new_food_is_not_said_of_what_it_is_like(talk: Talk, file: Path) -> None:
    before = talk().ask("does brie go with syrah")
    talk().ask("new cheese: vexley, like brie but stronger")
    answer = talk().ask("the vexley we buy is really salty, store that please")
    assert answer.say == "Kept: your vexley is saltier."
    talk().ask("remember that my guests love vexley with syrah")
    after = talk().ask("does brie go with syrah")
    assert (after.text, after.picks) == (before.text, before.picks)
    text = talk().ask("does vexley go with syrah").text
    assert "You say: good with Syrah" in text
    assert "Tasted as you taught: vexley stronger and saltier" in text


def test_a_pair_may_be_what_stands(talk: Talk, file: Path) -> None:
    opened = talk()
    opened.ask("what goes with gouda")
    opened.ask("remember my guests always love it with syrah")
    (kept,) = told(file)
    assert (kept.kind, kept.about) == ("pairing", ("wine/syrah", "food/gouda"))


def test_what_cannot_be_used_is_kept_as_a_note(talk: Talk, file: Path) -> None:
    answer = talk().ask("Learn this: I never serve port before nine o'clock")
    assert answer.say == "Kept as a note: I cannot use it in answers yet."
    assert [one.kind for one in told(file)] == ["note"]
