"""Names are found by longest match, whatever their hyphens, accents, plurals and gaps."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.knowledge.store import Knowledge, load
from assistant.language.fold import key
from assistant.language.lexicon import NAMED, Lexicon, build_lexicon, labels
from assistant.language.parse import Parser
from assistant.session import Session
from tests.language.conftest import Parse


@pytest.fixture(scope="module")
def lexicon(parser: Parser) -> Lexicon:
    """The shipped names."""
    return parser.lexicon


@pytest.fixture(scope="module")
def knowledge(session: Session) -> Knowledge:
    """The shipped knowledge."""
    return session.knowledge


def read(parse: Parse, text: str) -> list[str]:
    """Ids of what was read, in order."""
    return [reading.id for reading in parse(text).text.readings]


# --- the lexicon itself


def test_the_longest_name_wins(lexicon: Lexicon) -> None:
    wanted = {"garlic cheddar cheese": 3, "garlic cheddar and": 2, "garlic bread": 2, "garlic x": 1}
    for words, length in wanted.items():
        found = lexicon.longest(key(words), 0)
        assert found is not None
        assert found[0] == length, words


def test_a_name_may_start_anywhere(lexicon: Lexicon) -> None:
    stems = key("what goes with blue cheese dressing tonight")
    found = lexicon.longest(stems, 3)
    assert found is not None
    assert (found[0], found[1][0].id) == (3, "food/blue-cheese-dressing")
    assert lexicon.longest(stems, 0) is None
    assert lexicon.longest(stems, 6) is None


def test_a_name_never_reaches_past_the_text(lexicon: Lexicon) -> None:
    found = lexicon.longest(key("garlic"), 0)
    assert found is not None
    assert (found[0], found[1][0].id) == (1, "food/garlic")


def test_every_name_is_found(lexicon: Lexicon, knowledge: Knowledge) -> None:
    missing = [(label, subject) for label, subject in labels(knowledge) if subject not in lexicon.find(label)]
    assert missing == []


def test_every_name_is_the_longest_match_of_itself(lexicon: Lexicon, knowledge: Knowledge) -> None:
    for label, _ in labels(knowledge):
        stems = key(label)
        found = lexicon.longest(stems, 0)
        assert found is not None, label
        assert found[0] == len(stems), label


def test_of_one_spelling_for_several_things_the_likeliest_class_comes_first(
    lexicon: Lexicon, knowledge: Knowledge
) -> None:
    shared = {label: lexicon.find(label) for label, _ in labels(knowledge) if len(lexicon.find(label)) > 1}
    assert len(shared) > 20
    for label, subjects in shared.items():
        ranks = [min(NAMED.index(t) for t in knowledge.entry(s)["type"] if t in NAMED) for s in subjects]
        assert ranks == sorted(ranks), label


def test_a_grape_and_its_wine_read_as_the_wine(lexicon: Lexicon) -> None:
    assert lexicon.find("Sangiovese")[0] == "wine/sangiovese"
    assert "grape/sangiovese" in lexicon.find("Sangiovese")


@pytest.mark.parametrize(
    ("label", "kind"),
    [
        ("Merlot", "wine"),
        ("tonic water", "wine"),
        ("red wine", "wine"),
        ("Brie", "food"),
        ("blue cheese", "food"),
        ("vinaigrette", "dressing"),
        ("ranch dressing", "dressing"),
        ("hollandaise", "sauce"),
        ("chives", "garnish"),
        ("grilled", "method"),
        ("Tuscany", "region"),
        ("tannin", "term"),
    ],
)
def test_kind_of_reading(lexicon: Lexicon, label: str, kind: str) -> None:
    assert lexicon.name(lexicon.find(label)[0]).kind == kind


def test_unknown_words_find_nothing(lexicon: Lexicon) -> None:
    assert lexicon.find("qwrtzp") == ()
    assert lexicon.find("") == ()


def test_the_kept_table_reads_like_the_built_one(knowledge_copy: Path, cache_folder: Path) -> None:
    first = build_lexicon(load(knowledge_copy, cache_folder))
    again = build_lexicon(load(knowledge_copy, cache_folder))
    assert len(list(cache_folder.glob("lexicon-*.json"))) == 1
    assert first.subjects() == again.subjects()
    assert first.words == again.words


# --- names in questions


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("garlic-cheddar", ["food/garlic-cheddar"]),
        ("garlic - cheddar", ["food/garlic-cheddar"]),
        ("garlic\u2013cheddar", ["food/garlic-cheddar"]),
        ("garlic cheddar", ["food/garlic-cheddar"]),
        ("cheddar garlic", ["food/cheddar", "food/garlic"]),
        ("off dry Riesling", ["wine/off-dry-riesling"]),
        ("late-harvest riesling", ["wine/late-harvest-riesling"]),
        ("sea bass", ["food/sea-bass"]),
        ("seabass", ["food/sea-bass"]),
        ("sea-bass", ["food/sea-bass"]),
        ("goatcheese", ["food/fresh-goat-cheese"]),
        ("creme brulee", ["food/creme-brulee"]),
        ("Crème Brûlée", ["food/creme-brulee"]),
        ("cre\u0300me bru\u0302le\u0301e", ["food/creme-brulee"]),
        ("EPOISSES", ["food/epoisses"]),
        ("époisses", ["food/epoisses"]),
        ("jalapeños", ["food/jalapeno"]),
        ("salade nicoise", ["food/salade-nicoise"]),
        ("fish & chips", ["food/fish-and-chips"]),
        ("fish n chips", ["food/fish-and-chips"]),
        ("goat's cheese", ["food/fresh-goat-cheese"]),
        ("goats\u2019 cheese", ["food/fresh-goat-cheese"]),
        ("olives", ["food/mixed-olives"]),
        ("MERLOTS", ["wine/merlot"]),
        ("blue cheese butter", ["food/blue-cheese-butter"]),
        ("pinot noir rosé", ["wine/pinot-noir-rose"]),
        ("brie, gouda/manchego", ["food/brie", "food/gouda", "food/manchego"]),
        ("brie;gouda", ["food/brie", "food/gouda"]),
        ("(brie)", ["food/brie"]),
        ("brie?!", ["food/brie"]),
    ],
)
def test_names_are_read(parse: Parse, text: str, found: list[str]) -> None:
    assert read(parse, text) == found


@pytest.mark.parametrize(
    ("text", "food"),
    [
        ("veggie lasagna", "food/vegetable-lasagne"),
        ("veg lasagna", "food/vegetable-lasagne"),
        ("vegetable lasagna", "food/vegetable-lasagne"),
        ("stuffed zucchini", "food/stuffed-pepper"),
        ("prawn and grits", "food/shrimp-and-grits"),
    ],
)
def test_a_name_is_read_as_it_is_spelt_elsewhere(parse: Parse, text: str, food: str) -> None:
    (reading,) = parse(text).text.readings
    assert (reading.id, reading.corrected_from) == (food, None)


def test_a_place_after_from_is_a_place(parse: Parse) -> None:
    assert read(parse, "wine from champagne with oysters")[0] == "region/france-champagne"
    assert read(parse, "champagne with oysters")[0] == "wine/champagne"


@pytest.mark.parametrize(
    ("text", "found"),
    [("savvy b", "wine/sauvignon-blanc"), ("shar donnay", "wine/chardonnay"), ("go da", "food/gouda")],
)
def test_what_speech_makes_of_a_name_is_read(parse: Parse, text: str, found: str) -> None:
    assert read(parse, f"{text} please") == [found]


def test_everything_of_a_question_is_accounted_for(parse: Parse) -> None:
    text = parse("what goes with brie and xyzzyx on a zorbital").text
    assert [r.label for r in text.readings] == ["Brie"]
    assert text.left_out == ("xyzzyx", "zorbital")
