"""Questions that tell an expert from a table of foods and wines, asked in plain words.

Each case says which wines stand above which, which are welcome and which are not. The order is
what counts; no score is expected. A failure prints the rule paths of the wines it is about.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache, lru_cache

import pytest

from assistant.answers.record import Answer, Item
from assistant.session import Session
from tests.pairing_bench import KNOWLEDGE

ALL = 10_000
GOOD = ("strong", "good")
WELCOME = (*GOOD, "fair")
UNWELCOME = ("poor", "clash")
PATH_SHOWN = 7


@dataclass(frozen=True)
class Case:
    """What an expert says of one question.

    Each of `above` beats each of `below`; `good` work well at least, `welcome` are fair at
    least, `lost` are no better than neutral, `poor` are poor or a clash.
    """

    name: str
    question: str
    above: tuple[str, ...] = ()
    below: tuple[str, ...] = ()
    good: tuple[str, ...] = ()
    welcome: tuple[str, ...] = ()
    lost: tuple[str, ...] = ()
    poor: tuple[str, ...] = ()


CRISP = ("sauvignon-blanc", "loire-sauvignon-blanc")
BIG_REDS = ("cabernet-sauvignon", "zinfandel")
CASES = (
    Case(
        "a sharp dressing wants a crisp white, not an oaked one",
        "green salad with vinaigrette",
        above=CRISP,
        below=("oaked-chardonnay", "cabernet-sauvignon"),
        good=CRISP,
    ),
    Case(
        "a creamy dressing makes a round white right",
        "green salad with ranch dressing",
        above=("oaked-chardonnay", "white-burgundy", "sauvignon-blanc"),
        below=("cabernet-sauvignon",),
        good=("oaked-chardonnay", "white-burgundy", "sauvignon-blanc"),
    ),
    Case(
        "the same said without a name for the dressing",
        "green salad with a creamy dressing",
        above=("oaked-chardonnay", "white-burgundy"),
        below=("cabernet-sauvignon",),
        good=("oaked-chardonnay", "white-burgundy"),
    ),
    Case(
        "honey in the dressing wants an off-dry wine and undoes dry reds",
        "green salad with honey mustard dressing",
        above=("off-dry-riesling",),
        below=("sauvignon-blanc", "oaked-chardonnay", "cabernet-sauvignon"),
        good=("off-dry-riesling",),
        poor=("cabernet-sauvignon", "malbec"),
    ),
    Case(
        "at a holiday table the sweet sides decide, not the bird",
        "thanksgiving dinner",
        above=(
            "off-dry-chenin-blanc",
            "off-dry-riesling",
            "dry-sparkling-red",
            "brut-sparkling",
            "pinot-noir",
        ),
        below=BIG_REDS,
        welcome=("off-dry-chenin-blanc", "off-dry-riesling", "dry-sparkling-red", "brut-sparkling"),
        lost=BIG_REDS,
    ),
    Case(
        "the sweet sides named one by one",
        "roast turkey with cranberry sauce and sweet potato",
        above=("off-dry-chenin-blanc", "off-dry-riesling", "dry-sparkling-red", "brut-sparkling"),
        below=("pinot-noir", *BIG_REDS),
        welcome=("off-dry-chenin-blanc", "off-dry-riesling", "dry-sparkling-red", "brut-sparkling"),
        lost=BIG_REDS,
    ),
    Case(
        "tomato, milky cheese and basil want a crisp southern white or a pink",
        "caprese salad",
        above=("vermentino", "greco-di-tufo", "provence-rose"),
        below=("cabernet-sauvignon", "oaked-chardonnay"),
        good=("vermentino",),
        welcome=("provence-rose",),
    ),
    Case(
        "a sweet glaze on it calls for some sugar or light red bubbles",
        "caprese with balsamic glaze",
        above=("off-dry-riesling", "dry-sparkling-red"),
        below=("vermentino", "cabernet-sauvignon"),
        good=("off-dry-riesling", "dry-sparkling-red"),
    ),
    Case(
        "lime-cured fish wants sharp whites; oak and reds fail",
        "ceviche",
        above=("sauvignon-blanc", "albarino", "off-dry-riesling"),
        below=("oaked-chardonnay", "gamay", "pinot-noir", "syrah", "cabernet-sauvignon"),
        good=("sauvignon-blanc", "off-dry-riesling"),
        poor=("oaked-chardonnay", "syrah", "cabernet-sauvignon"),
    ),
    Case(
        "mushroom and truffle want an aged wine; young fruit loses them",
        "mushroom risotto with truffle",
        above=("mature-chardonnay", "mature-pinot-noir"),
        below=("marlborough-sauvignon-blanc", "cabernet-sauvignon"),
        good=("mature-chardonnay", "mature-pinot-noir"),
        lost=("cabernet-sauvignon",),
    ),
    Case(
        "the same with the truffle in the name of the dish",
        "mushroom truffle risotto",
        above=("mature-chardonnay", "mature-pinot-noir"),
        below=("marlborough-sauvignon-blanc", "cabernet-sauvignon"),
        good=("mature-chardonnay", "mature-pinot-noir"),
        lost=("cabernet-sauvignon",),
    ),
    Case(
        "soft cheese of cashews: bubbles or a round white",
        "cashew cheese",
        above=("brut-sparkling", "white-burgundy"),
        below=("cabernet-sauvignon", "syrah"),
        good=("brut-sparkling", "white-burgundy"),
    ),
    Case(
        "hummus: bubbles or a round white, little to hold grip",
        "hummus",
        above=("brut-sparkling", "unoaked-chardonnay"),
        below=("cabernet-sauvignon", "syrah"),
        good=("brut-sparkling",),
    ),
    Case(
        "pepper and nut sauce: a sharp red with little grip",
        "romesco",
        above=("barbera",),
        below=("pinot-grigio", "cabernet-sauvignon"),
        good=("barbera",),
    ),
    Case(
        "mushroom pâté: an aged white",
        "mushroom pate",
        above=("mature-chardonnay",),
        below=("marlborough-sauvignon-blanc", "cabernet-sauvignon"),
        good=("mature-chardonnay",),
    ),
    Case(
        "ice cream: a late harvest in the glass, raisin wine over the top",
        "vanilla ice cream",
        above=("late-harvest-riesling",),
        below=(
            "pedro-ximenez",
            "off-dry-riesling",
            "sauvignon-blanc",
            "brut-sparkling",
            "cabernet-sauvignon",
        ),
        good=("late-harvest-riesling",),
        poor=("sauvignon-blanc", "brut-sparkling", "cabernet-sauvignon"),
    ),
    Case(
        "garlic in a hard cheese: a firm red",
        "garlic cheddar",
        above=BIG_REDS,
        below=("pinot-grigio", "sauvignon-blanc"),
        good=BIG_REDS,
        poor=("pinot-grigio",),
    ),
    Case(
        "garlic in a fresh cheese: a crisp herbal white",
        "garlic and herb cream cheese",
        above=CRISP,
        below=(*BIG_REDS, "sweet-jurancon", "icewine"),
        good=CRISP,
    ),
    Case(
        "salmon from the grill: light reds pass, firm ones do not",
        "grilled salmon",
        above=("oaked-chardonnay",),
        below=("pinot-noir", "gamay", "cabernet-sauvignon"),
        welcome=("oaked-chardonnay", "pinot-noir", "gamay"),
        poor=("cabernet-sauvignon",),
    ),
    Case(
        "mackerel: a lean sharp white does what lemon does",
        "grilled mackerel",
        above=("muscadet", "albarino", "assyrtiko"),
        below=("oaked-chardonnay", "pinot-noir", "cabernet-sauvignon"),
        welcome=("muscadet", "albarino", "assyrtiko"),
        poor=("cabernet-sauvignon",),
    ),
    Case(
        "egg yolk wants bubbles",
        "poached eggs with hollandaise",
        above=("champagne", "brut-sparkling"),
        below=("cabernet-sauvignon", "pinot-noir", "sauvignon-blanc"),
        good=("champagne", "brut-sparkling"),
        lost=("cabernet-sauvignon",),
    ),
    Case(
        "asparagus wants a green crisp white",
        "asparagus",
        above=CRISP,
        below=("oaked-chardonnay", "cabernet-sauvignon"),
        good=CRISP,
        lost=("oaked-chardonnay",),
        poor=("cabernet-sauvignon",),
    ),
    Case(
        "artichoke leaves razor-sharp and bone-dry aged wines",
        "artichoke",
        above=("txakoli", "loire-sauvignon-blanc", "fino"),
        below=("oaked-chardonnay", "cabernet-sauvignon"),
        good=("txakoli",),
        welcome=("fino",),
        lost=("oaked-chardonnay",),
        poor=("cabernet-sauvignon",),
    ),
    Case(
        "one bottle for all three: traditional sparkling",
        "eggs benedict, asparagus and artichoke",
        above=("brut-sparkling", "champagne"),
        below=("sauvignon-blanc", "oaked-chardonnay", "fino", "pinot-noir", "cabernet-sauvignon"),
        welcome=("brut-sparkling", "champagne"),
    ),
    Case(
        "fragrant coconut curry: aromatic whites",
        "thai green curry",
        above=("off-dry-chenin-blanc", "off-dry-gewurztraminer"),
        below=("oaked-chardonnay", *BIG_REDS),
        good=("off-dry-chenin-blanc", "off-dry-gewurztraminer"),
    ),
    Case(
        "fiery curry: off-dry and light in alcohol",
        "vindaloo",
        above=("off-dry-riesling",),
        below=("sauvignon-blanc", "syrah", *BIG_REDS),
        good=("off-dry-riesling",),
        poor=("syrah", *BIG_REDS),
    ),
    Case(
        "the same said in two words",
        "hot curry",
        above=("off-dry-riesling",),
        below=("sauvignon-blanc", "syrah", *BIG_REDS),
        good=("off-dry-riesling",),
        poor=("syrah", *BIG_REDS),
    ),
    Case(
        "pepper is not chilli: strong reds are fine",
        "pepper steak",
        above=("syrah", "cabernet-sauvignon"),
        below=("off-dry-riesling", "sauvignon-blanc"),
        good=("syrah", "cabernet-sauvignon"),
    ),
    Case(
        "numbing heat: gentle sweetness, with or without bubbles",
        "mapo tofu",
        above=("off-dry-riesling", "demi-sec-sparkling"),
        below=("syrah", *BIG_REDS),
        good=("off-dry-riesling",),
    ),
    Case(
        "plain steak is made for a firm red",
        "steak",
        above=("cabernet-sauvignon",),
        below=("gamay", "white-burgundy", "champagne", "sauvignon-blanc"),
        good=("cabernet-sauvignon",),
    ),
    Case(
        "raw garlic and herbs on it: fruit rather than oak",
        "steak with chimichurri",
        above=("syrah", "malbec"),
        below=("cabernet-sauvignon",),
        good=("syrah", "malbec"),
    ),
    Case(
        "butter and yolk on it: a round white or bubbles do better than grip",
        "steak with bearnaise",
        above=("white-burgundy", "champagne"),
        below=("cabernet-sauvignon",),
        good=("white-burgundy", "champagne"),
    ),
    Case(
        "blue cheese on it: a sweet edge, not grip",
        "steak with blue cheese sauce",
        above=("sauternes", "ruby-port"),
        below=("cabernet-sauvignon", "syrah", "sangiovese"),
        good=("sauternes",),
    ),
)


@lru_cache(maxsize=1)
def session() -> Session:
    """One session that names every wine."""
    return Session(KNOWLEDGE, top=ALL)


@cache
def answered(question: str) -> Answer:
    """The answer to a question that does not follow on from another."""
    session().new_conversation()
    return session().ask(question)


def wines(question: str) -> dict[str, Item]:
    """Every wine of the answer by its local name."""
    return {item.id.removeprefix("wine/"): item for item in answered(question).picks}


def told(question: str, names: Iterable[str]) -> str:
    """The wines with their scores and the strongest steps of their paths."""
    lines = [f"read as {[(r['text'], r['label']) for r in answered(question).read_as]}"]
    for name in names:
        item = wines(question)[name]
        steps = [f"{e.rule.removeprefix('rule/')} {e.effect:+.1f}" for e in item.path[:PATH_SHOWN]]
        lines.append(f"{name} {item.score:.1f} {item.verdict}: {', '.join(steps)}")
    return "\n".join(lines)


def which(case: Case, names: tuple[str, ...], verdicts: tuple[str, ...]) -> list[str]:
    """The wines of the case whose verdict is none of these."""
    found = wines(case.question)
    return [name for name in names if found[name].verdict not in verdicts]


def cases(*fields: str) -> pytest.MarkDecorator:
    """Runs a test on the cases that say something in one of these fields."""
    chosen = [case for case in CASES if any(getattr(case, field) for field in fields)]
    return pytest.mark.parametrize("case", chosen, ids=lambda case: case.question)


@cases("above", "good", "welcome", "lost", "poor")
def test_question_is_read_in_full(case: Case) -> None:
    answer = answered(case.question)
    assert answer.intent == "wines-for-food"
    assert answer.left_out == ()


@cases("above")
def test_order(case: Case) -> None:
    found = wines(case.question)
    wrong = [(a, b) for a in case.above for b in case.below if found[a].score <= found[b].score]
    assert not wrong, told(case.question, dict.fromkeys(name for pair in wrong for name in pair))


@cases("good", "welcome")
def test_welcome_wines(case: Case) -> None:
    missed = which(case, case.good, GOOD) + which(case, case.welcome, WELCOME)
    assert not missed, told(case.question, missed)


@cases("lost", "poor")
def test_unwelcome_wines(case: Case) -> None:
    missed = which(case, case.lost, ("neutral", *UNWELCOME)) + which(case, case.poor, UNWELCOME)
    assert not missed, told(case.question, missed)


# What one change on the plate does


@pytest.mark.parametrize(
    ("wine", "lower", "higher"),
    [
        ("oaked-chardonnay", "green salad with vinaigrette", "green salad with ranch dressing"),
        ("cabernet-sauvignon", "green salad with honey mustard dressing", "green salad with ranch dressing"),
        ("zinfandel", "garlic and herb cream cheese", "garlic cheddar"),
        ("sauvignon-blanc", "garlic cheddar", "garlic and herb cream cheese"),
        ("syrah", "vindaloo", "pepper steak"),
        ("cabernet-sauvignon", "steak with bearnaise", "steak"),
        ("cabernet-sauvignon", "steak with blue cheese sauce", "steak"),
        ("malbec", "steak", "steak with chimichurri"),
        ("cabernet-sauvignon", "grilled salmon", "grilled steak"),
    ],
)
def test_the_change_moves_the_wine(wine: str, lower: str, higher: str) -> None:
    assert wines(lower)[wine].score < wines(higher)[wine].score, (
        f"{told(lower, [wine])}\n{told(higher, [wine])}"
    )


def test_a_sweet_glaze_moves_the_plate_towards_sugar() -> None:
    lead = [
        wines(question)["off-dry-riesling"].score - wines(question)["vermentino"].score
        for question in ("caprese salad", "caprese with balsamic glaze")
    ]
    assert lead[1] > lead[0], lead


@pytest.mark.parametrize("question", ["plain rice", "plain bread"])
def test_plain_food_decides_nothing(question: str) -> None:
    """No wine is better than neutral; the one that heads the list all the same is light."""
    found = wines(question)
    liked = [name for name, item in found.items() if item.verdict in WELCOME]
    assert not liked, told(question, liked[:3])
    first = next(iter(found.values()))
    assert first.wine is not None
    assert first.wine["body"] < 2.5


@pytest.mark.parametrize("question", ["sushi with wasabi", "steak with mustard", "pepper steak"])
def test_nasal_heat_and_pepper_are_not_chilli(question: str) -> None:
    rules = KNOWLEDGE.rules
    burnt = [
        (name, entry.rule)
        for name, item in wines(question).items()
        for entry in item.path
        if entry.rule in rules and rules[entry.rule].family == "family/heat"
    ]
    assert not burnt


@pytest.mark.parametrize("question", ["eggs benedict", "asparagus", "artichoke"])
def test_the_one_bottle_is_welcome_with_each_of_the_three(question: str) -> None:
    assert wines(question)["brut-sparkling"].verdict in WELCOME
    assert wines(question)["cabernet-sauvignon"].verdict not in WELCOME
