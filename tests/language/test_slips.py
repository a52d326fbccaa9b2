"""The corpora of slips and of words that stay are sound, and the speller keeps to its measured standing."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest

from assistant.evaluate.slips import (
    PLACE,
    Slip,
    SlipFigures,
    Stay,
    judge_slip,
    judge_stay,
    later_slips,
    measure_slips,
    measure_stays,
    read_slips,
    read_stays,
    unseen_slips,
)
from assistant.language.parse import Parser
from tests.language.conftest import Parse

SLIPS, STAYS, UNSEEN = read_slips(), read_stays(), unseen_slips()
KINDS = {
    "keyboard neighbour", "doubled letter", "dropped letter", "swapped letters", "phonetic", "split",
    "run together", "misheard", "accent missing", "apostrophe", "text-speak",
}  # fmt: skip


def test_there_are_enough_of_each() -> None:
    assert len(SLIPS) >= 400
    assert len(STAYS) >= 500
    assert {slip.kind for slip in SLIPS} == KINDS


def test_each_slip_stands_once_in_one_context() -> None:
    assert [typed for typed, n in Counter(s.typed for s in SLIPS).items() if n > 1] == []
    assert [typed for typed, n in Counter(s.typed for s in STAYS).items() if n > 1] == []
    assert all(row.context.count(PLACE) == 1 for row in (*SLIPS, *STAYS))


def test_about_half_is_held_back() -> None:
    held_back = sum(slip.held_back for slip in SLIPS)
    assert 0.45 <= held_back / len(SLIPS) <= 0.55


def test_unseen_slips_stand_nowhere_else() -> None:
    assert len(UNSEEN) >= 150
    assert {s.typed for s in UNSEEN}.isdisjoint(s.typed for s in SLIPS)
    assert all(slip.context.count(PLACE) == 1 for slip in UNSEEN)


def test_later_slips_stand_nowhere_else() -> None:
    later = later_slips()
    assert len({slip.typed for slip in later}) >= 60
    assert {slip.typed for slip in later}.isdisjoint(s.typed for s in (*SLIPS, *UNSEEN))
    assert all(slip.context.count(PLACE) == 1 for slip in later)


def test_what_was_meant_is_spelt_right(parser: Parser) -> None:
    """The right spelling is never mended itself, and all but the little words name something."""
    for slip in SLIPS:
        readings = parser.parse(slip.context.replace(PLACE, slip.meant)).text.readings
        assert [r for r in readings if r.corrected_from] == [], slip
        assert readings or slip.kind in ("text-speak", "apostrophe"), slip


@pytest.mark.parametrize(
    ("typed", "meant", "verdict"),
    [("salmon", "salmon", "right"), ("salmon", "beef", "wrong"), ("qwrtzpl", "beef", "not mended")],
)
def test_verdict_on_a_slip(parser: Parser, typed: str, meant: str, verdict: str) -> None:
    assert judge_slip(parser, Slip(typed, meant, "what goes with {}", "")) == verdict


@pytest.mark.parametrize(
    ("typed", "labels", "unknown", "verdict"),
    [
        ("salmon", ("salmon",), False, "stays"),
        ("salmon", ("beef",), False, "misread"),
        ("sammon", (), False, "mended"),
        ("kumbaloo", (), True, "stays"),
        ("please", (), True, "misread"),
    ],
)
def test_verdict_on_what_stays(
    parser: Parser, typed: str, labels: tuple[str, ...], unknown: bool, verdict: str
) -> None:
    assert judge_stay(parser, Stay(typed, labels, "what goes with {}", "", unknown)) == verdict


# Where the speller stands; what it is to reach is 93 % right and at most 1 % wrong.
STANDING = [(False, 93.2, 1.7), (True, 92.5, 2.1)]


@pytest.fixture(scope="module")
def figures(parser: Parser) -> dict[bool, SlipFigures]:
    """The figures of both halves, by whether it is held back."""
    return {half: measure_slips(parser, [s for s in SLIPS if s.held_back == half]) for half in (True, False)}


@pytest.mark.parametrize(("held_back", "right", "wrong"), STANDING)
def test_slips_are_read_as_meant(
    figures: dict[bool, SlipFigures], held_back: bool, right: float, wrong: float
) -> None:
    found = figures[held_back]
    misses = () if held_back else found.misses  # what is held back is not to be looked at
    assert found.share("right") >= right, misses
    assert found.share("wrong") <= wrong, misses


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("what goes with vamembert", "Camembert"),  # the first letter beside the right one
        ("what goes with chckn", "chicken"),  # vowels left away
        ("what goes with vionyay", "Viognier"),  # as it sounds
        ("what goes with ginger bread", "gingerbread"),  # two words for one
        ("what goes with mint jlly", "mint jelly"),  # a short word with a neighbour that is sure
        ("a sparking wine for oysters", "sparkling wine"),  # English, and one letter from a name
        ("is lage-harvest riesling ok", "late-harvest Riesling"),  # across a hyphen
        ("greer cheese please", "Gruyère"),  # a word for the kind behind it
        ("champagne with oysters rockafella", "oysters Rockefeller"),  # by its sound beside a name
        ("wine for swiss heard cheese", "Sbrinz"),  # English, within a name that is whole but for it
        ("lamb tajine with apricots", "lamb tagine with apricots"),  # spelt otherwise than in a longer name
        ("finnish pitty panna and a red", "pyttipanna"),  # two words that are more alike than one of them
        ("what is a barreek", "barrique"),  # a term where it is asked what it is
        ("what goes with fo soup", "pho"),  # the word for the kind is no food of its own
        ("seafood pay a", "seafood paella"),  # two words for the rest of a name
        ("two breis", "Brie"),  # two letters swapped before a plural
        ("what goes with gavee", "Gavi"),  # a plain word is as near, but a name is due
        ("roastchicken", "chicken"),  # a way of cooking and a name
        ("a desert wine for apple pie", "sweet wine"),  # a common slip that is English, beside a name
    ],
)
def test_a_slip_is_mended(parser: Parser, typed: str, meant: str) -> None:
    assert meant in {r.label for r in parser.parse(typed).text.readings}


@pytest.mark.parametrize(
    "typed",
    [
        "larb",
        "a Maroilles",
        "moilee",
        "jamun",
        "berbere",
        "a thali",
        "they are comin' over",
        "cheers bruv",
        "how dry on a scale of desert",
        "best munchies",
        "back from t'sales",
        "show menu",
        "what goes with the meal",
        "find a wine for my brother",
        "my ship and cheese",
        "cheddar with quallaberry chutney",
        "a drop of currothyme",
        "toasted the almonds",
        "lemon sponge with buttercream",
        "sea bath please",
        "shabby lee please",
    ],
)
def test_nothing_is_made_of_another_word(parser: Parser, typed: str) -> None:
    assert [r for r in parser.parse(typed).text.readings if r.corrected_from] == []


def test_letters_swallowed_in_speech_are_read(parser: Parser) -> None:
    assert "coming" not in parser.parse("they are comin' over").text.left_out
    assert parser.parse("boilin potatoes").text.stems == parser.parse("boiling potatoes").text.stems


def test_words_that_stay_are_not_mended(parser: Parser) -> None:
    found = measure_stays(parser)
    assert found.share("mended") + found.share("misread") <= 0.5, found.misses


def test_a_corpus_without_its_columns_is_refused(tmp_path: Path) -> None:
    (tmp_path / "slips.tsv").write_text("typed\tcontext\nx\t{}\n", "utf-8")
    with pytest.raises(KeyError):
        read_slips(tmp_path / "slips.tsv")


def test_shares_of_nothing_are_nothing() -> None:
    assert SlipFigures(Counter()).share("right") == 0


@pytest.mark.parametrize(
    "text",
    [
        "wine nite for 10 people, mostly beginers",
        "cheese for a tastng of 12",
        "my guests arrive in ten minuts",
        "have a gander at my cheese",
        "how much biltong for twelve, my bru",
    ],
)
def test_a_plain_word_that_lacks_a_letter_is_neither_told_nor_a_food(parse: Parse, text: str) -> None:
    found = parse(text).text
    assert (found.left_out, [r for r in found.readings if r.corrected_from]) == ((), [])


def test_how_an_unknown_food_is_made_is_no_slip_of_a_food(parse: Parse) -> None:
    text = parse("I offered Carignan with the smoored hennel").text
    assert [r.id for r in text.readings] == ["wine/carignan"]
    assert text.left_out == ("smoored", "hennel")
    assert [r.id for r in parse("wine for smokked samlon").text.readings] == ["food/smoked-salmon"]
