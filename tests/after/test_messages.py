"""Texts to guests: two hits, one thing to try, an answer owed, and nothing of anybody's health or diet."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from assistant.evening.needs import _rows
from assistant.language.fold import fold
from assistant.language.guests import Asked
from assistant.session import Session

# A guest for every kind of need that the program knows, under an invented name that is no other word.
NEEDS = {f"Zq{chr(97 + at // 26)}{chr(97 + at % 26)}": row["words"][0] for at, row in enumerate(_rows())}
HEALTH = (
    "pregnan", "allerg", "coeliac", "celiac", "diabet", "medic", "warfarin", "antibiotic", "recover", "sober",
    "alcohol", "vegan", "vegetarian", "halal", "kosher", "intoleran", "breastfeed", "teetotal",
    "doesn't drink", "non-drinker", "driving", "driver", "gluten", "lactose", "diet", "immune", "religio",
)  # fmt: skip


def letters(text: str) -> dict[str, str]:
    """The texts by guest, each from its greeting to its close; what the host is told is left out."""
    found = re.findall(r"^Dear (.+?), .*?^Until next time\.$", text, re.MULTILINE | re.DOTALL)
    blocks = re.findall(r"^Dear .*?^Until next time\.$", text, re.MULTILINE | re.DOTALL)
    return dict(zip(found, blocks, strict=True))


def test_one_text_with_what_was_just_said(evening: Session) -> None:
    answer = evening.ask("write jen's message, she liked the off-dry")
    assert answer.intent == "plan"
    assert "You liked the off-dry Riesling." in answer.text
    assert "One to try next: " in answer.text
    assert evening.taught.told() == ()  # a text is written, nothing is kept


def test_two_hits_and_never_what_was_hated(evening: Session) -> None:
    for said in ("jen gave the malbec 5 out of 5", "jen liked the off-dry", "jen liked the brut sparkling"):
        evening.ask(said)
    evening.ask("jen hated the pinot noir")
    (letter,) = letters(evening.ask("text for jen").text).values()
    assert "You liked the Malbec and the brut sparkling." in letter
    assert "Pinot Noir" not in letter


def test_what_to_try_is_new_near_and_goes_with_what_they_eat(evening: Session) -> None:
    evening.ask("mo loved the malbec")  # Mo is a vegetarian: salami is no food of his
    (letter,) = letters(evening.ask("message for mo").text).values()
    found = re.search(r"to try next: (.+), close to the Malbec and (\w+) with (.+)\.", letter)
    assert found
    assert found[3] in ("garlic cheddar", "Brie", "almond", "plain cracker")
    assert found[1] not in ("brut sparkling", "off-dry Riesling", "oaked Chardonnay", "Pinot Noir", "Malbec")


def test_the_answer_owed_is_in_it(evening: Session) -> None:
    evening.ask("jen loved 2")
    evening.ask("park jen's question: does malbec go with salami")
    letter = letters(evening.ask("write jen a text").text)["Jen"]
    assert "You asked “does malbec go with salami?”" in letter


@pytest.mark.parametrize("question", ["does mo like malbec", "any decaf wine"])
def test_an_answer_that_would_tell_too_much_is_left_out(evening: Session, question: str) -> None:
    evening.ask("jen loved 2")
    evening.ask(f"park jen's question: {question}")
    answer = evening.ask("write jen a text")
    assert question not in answer.text
    assert "answer that one in person" in answer.text


def test_no_text_leaks_any_need_or_any_other_guest(evening: Session) -> None:
    needs = tuple(Asked(name, need) for name, need in NEEDS.items())
    evening.tonight = replace(evening.tonight, needs=needs, title="Zqaa's birthday")
    for name in NEEDS:
        evening.ask(f"{name} loved the riesling")
        evening.ask(f"{name} loved the almonds")
        evening.ask(f"park {name}'s question: is the brie safe with {NEEDS[name]}")
    found = letters(evening.ask("follow-up for everyone").text)
    assert set(found) == set(NEEDS)
    for guest, letter in found.items():
        plain = fold(letter)
        assert not [word for word in HEALTH if word in plain], letter
        assert not [name for name in NEEDS if name != guest and fold(name) in plain], letter
        assert not [need for need in NEEDS.values() if len(need) > 4 and fold(need) in plain], letter


def test_a_guest_who_takes_no_wine_is_written_to_about_food(evening: Session) -> None:
    evening.ask("R. loved the riesling")  # pregnant, by the evening file
    evening.ask("R. loved the brie")
    letter = letters(evening.ask("write R. a message").text)["R."]
    assert "You liked the Brie." in letter
    assert "Riesling" not in letter


def test_without_any_name_it_is_asked_for(bare: Session) -> None:
    answer = bare.ask("follow-up for everyone")
    assert not answer.understood


def test_votes_by_name_and_in_points_of_ten_reach_the_messages(evening: Session) -> None:
    evening.ask("R. loved the riesling")
    evening.ask("Kim didn't like the riesling")
    assert "I know of nothing that Kim liked" in evening.ask("write Kim's thank-you").text
    evening.ask("Kim gave wine 2 a nine out of ten")
    cast = [one for one in evening.taught.told() if one.kind == "vote"]
    assert {one.about for one in cast} == {("wine/off-dry-riesling",)}
    assert [one.value["verdict"] for one in cast] == ["band/good", "band/poor", "band/strong"]
    assert "You liked the off-dry Riesling." in evening.ask("write Kim's thank-you").text


def test_a_guest_who_takes_no_wine_is_told_nothing_of_it_and_the_host_is(evening: Session) -> None:
    evening.ask("R. loved the riesling")
    lines = evening.ask("write R.'s thank-you").text.splitlines()
    end = lines.index("Until next time.")
    assert not any("Riesling" in line for line in lines[:end])
    assert any("R. liked the off-dry Riesling" in line for line in lines[end:])


@pytest.mark.parametrize(
    ("said", "band"),
    [("Kim: riesling 8/10", "good"), ("Kim gave the riesling 3 of 10", "poor"), ("riesling 5/5", "strong")],
)
def test_points_are_told_by_how_many_there_are(evening: Session, said: str, band: str) -> None:
    evening.ask(f"note: {said}")
    (vote,) = [one for one in evening.taught.told() if one.kind == "vote"]
    assert (vote.about, vote.value["verdict"]) == (("wine/off-dry-riesling",), f"band/{band}")


def test_nobody_is_written_to_who_is_no_guest(bare: Session) -> None:
    bare.ask("wines: Cava, dry Riesling, Malbec and ruby port")
    bare.ask("sorry jen loved the port not hated it")
    bare.ask("two of them liked the malbec")
    bare.ask("oops ann liked the riesling")
    bare.ask("two of them are driving")
    text = bare.ask("messages for everyone").text
    assert [line.split(",")[0] for line in text.splitlines() if line.startswith("Dear")] == [
        "Dear Jen",
        "Dear Ann",
    ]
    assert bare.ask("write jens message").say == "For Jen:"


@pytest.mark.parametrize(
    "asked", ["write a text to send the guests", "one text for all please", "and one for everyone"]
)
def test_one_text_for_all_names_nobody(bare: Session, asked: str) -> None:
    bare.ask("wines: Cava, dry Riesling, Malbec and ruby port")
    bare.ask("ann and bob liked the riesling, jen hated the malbec")
    answer = bare.ask(asked)
    assert answer.text.count("Dear") == 1
    assert "The dry Riesling did best" in answer.text
    assert not {"Ann", "Bob", "Jen", "Malbec"} & set(answer.text.replace(",", "").split())


def test_votes_are_read_back(bare: Session) -> None:
    bare.ask("wines: Cava, dry Riesling, Malbec and ruby port")
    text = bare.ask("jen loved the cava, hated the port").text
    assert text.splitlines()[1:] == ["Jen liked Cava.", "Jen did not like ruby port."]


@pytest.mark.parametrize("said", ["the roast", "the roast lamb"])
def test_the_roast_is_what_is_roasted_on_the_table(bare: Session, said: str) -> None:
    bare.ask("wines: Gavi and Chianti")
    bare.ask("foods: roast lamb with rosemary, Gorgonzola and olives")
    assert "You liked the lamb." in bare.ask(f"write a text for lucia, she liked {said}").text


def test_only_names_are_written_to(bare: Session) -> None:
    bare.ask("wines: Cava, dry Riesling, Malbec and ruby port")
    bare.ask("Jeanette liked 4 best and hated 3")
    bare.ask("the boss only drinks red")
    bare.tonight = replace(
        bare.tonight, needs=(*bare.tonight.needs, Asked("you", "shellfish"), Asked("late. sarah", "vegan"))
    )
    text = bare.ask("messages for everyone").text
    assert list(letters(text)) == ["Jeanette"]
    assert "You liked the ruby port." in text


def test_where_names_are_missing_a_text_is_one_for_all(bare: Session) -> None:
    bare.ask("wines: Cava, dry Riesling, Malbec and ruby port")
    bare.ask("we are seven")
    bare.ask("jen loved the cava and voted for two")
    assert bare.tonight.guests == 7
    assert list(letters(bare.ask("text for everyone").text)) == ["all"]
    each = bare.ask("messages for everyone").text
    assert list(letters(each)) == ["Jen"]
    assert "whose names I do not know" in each


@pytest.mark.parametrize(
    ("asked", "opens"),
    [
        ("write a thank you text for jen", "Dear Jen, thank you for coming"),
        ("thank you note to wendy", "Dear Wendy, thank you for coming"),
        ("thank you text for everyone", "Dear all, thank you for coming"),
    ],
)
def test_a_thank_you_text_is_for_whom_it_is_asked(evening: Session, asked: str, opens: str) -> None:
    evening.ask("everybody loved the malbec")
    assert evening.ask(asked).text.splitlines()[1].startswith(opens)


def test_one_for_everybody_follows_a_text_to_one(evening: Session) -> None:
    evening.ask("everybody loved the malbec")
    evening.ask("write a thank you text for jen")
    assert evening.ask("one for everybody").say == "One text for all:"


def test_a_text_is_written_anew_in_another_manner(evening: Session) -> None:
    evening.ask("tom loved the malbec")
    stiff = evening.ask("write a thank you text for tom")
    warm = evening.ask("not so stiff")
    assert stiff.text.splitlines()[1].startswith("Dear Tom, ")
    assert warm.text.splitlines()[1].startswith("Hey Tom, ")
    assert "You liked the Malbec." in warm.text
    assert evening.ask("more formal please").text == stiff.text
    evening.new_conversation()
    assert "Tom" not in evening.ask("not so stiff").text


@pytest.mark.parametrize(
    "asked",
    [
        "write a text for the girls",
        "a message to the group",
        "send a note to the others",
        "text the lads",
        "draft an email to my colleagues",
        "can you do a message for the family",
        "write to all of them",
        "could you write the girls a quick note",
        "write the guests a few lines",
        "make a message to send the ladies",
        "draft a message for everyone who came last night",
    ],
)
def test_a_text_to_a_group_is_one_text_that_tells_nothing_of_anybody(evening: Session, asked: str) -> None:
    answer = evening.ask(asked)
    assert answer.say == "One text for all:"
    sent = fold(answer.text.split("\nRead it")[0])
    needing = [fold(one.guest) for one in evening.tonight.needs if one.guest]
    assert needing
    assert not [word for word in (*HEALTH, *needing) if re.search(rf"\b{re.escape(word)}", sent)]


@pytest.mark.parametrize(
    "asked", ["text for everybody coming", "a message to everyone coming tomorrow", "write an invitation"]
)
def test_who_is_still_to_come_reads_what_awaits_them(bare: Session, asked: str) -> None:
    bare.ask("tonight we have Cava and Rioja with burrata and koftas")
    bare.ask("Megan is pregnant")
    text = bare.ask(asked).text
    assert "Dear all, I look forward to welcoming you." in text
    assert "On the table: burrata and kofta." in text
    assert "Megan" not in text
    assert "for coming" not in text


def test_friends_are_written_to_warmly(evening: Session) -> None:
    assert "Hey everybody, " in evening.ask("write a text for the girls").text
    assert "Dear all, " in evening.ask("more formal please").text


def test_what_the_host_wants_said_is_in_the_text(bare: Session) -> None:
    lines = bare.ask(
        "write a text to the group: half seven Thursday at mine, bring a chair"
    ).text.splitlines()
    assert lines[1:4] == ["Dear all,", "Half seven Thursday at mine, bring a chair.", "See you soon."]


def test_what_tells_of_a_need_is_in_no_text(bare: Session) -> None:
    bare.ask("Moira is allergic to walnuts")
    assert "walnuts" not in bare.ask("message to everyone: no walnuts because of Moira").text
