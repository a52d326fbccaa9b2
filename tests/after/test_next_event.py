"""The next evening starts from the one before, and repeats nothing unless asked."""

from __future__ import annotations

import pytest

from assistant.after.next_foods import next_foods
from assistant.evening.choose_make import scores_of, usual_task
from assistant.evening.choose_task import value
from assistant.pairing.dish import table_of
from assistant.session import Session
from tests.evening.made import exhaustive


def foods_of(session: Session) -> set[str]:
    """The foods of the evening proposed."""
    assert session.proposed
    return {part.food for dish in session.proposed.dishes for part in dish.parts}


@pytest.mark.parametrize(
    "said", ["plan the next one with nothing repeated", "same but autumn", "theme: Italy"]
)
def test_nothing_is_repeated(evening: Session, said: str) -> None:
    old = evening.tonight
    answer = evening.ask(said)
    assert (answer.intent, answer.understood) == ("plan", True)
    assert evening.proposed
    assert len(evening.proposed.wines) == 4
    assert not set(evening.proposed.wines) & set(old.wines)
    assert not foods_of(evening) & {part.food for dish in old.dishes for part in dish.parts}
    assert evening.proposed.guests == 12
    assert evening.tonight == old  # only proposed


def test_a_season_brings_its_foods(evening: Session) -> None:
    answer = evening.ask("same but autumn")
    assert foods_of(evening) <= set(next_foods().foods["autumn"])
    assert "Stilton for garlic cheddar: in season in autumn." in answer.text


def test_a_country_brings_its_wines(evening: Session) -> None:
    answer = evening.ask("theme: one country")
    assert evening.proposed
    known = evening.knowledge
    homes = [known.countries(known.wines[wine].homes) for wine in evening.proposed.wines]
    assert frozenset.intersection(*homes)
    assert "its wines do best with these foods" in answer.text
    evening.ask("theme: Italy")
    assert all("region/italy" in known.countries(known.wines[w].homes) for w in evening.proposed.wines)


def test_what_is_asked_to_stay_stays(evening: Session) -> None:
    evening.ask("same but winter, keep the riesling")
    assert evening.proposed
    assert "wine/off-dry-riesling" in evening.proposed.wines


def test_what_is_not_to_come_back_does_not_stay(evening: Session) -> None:
    answer = evening.ask("same again but no riesling")
    assert evening.proposed
    assert "wine/off-dry-riesling" not in evening.proposed.wines
    assert "stays, as asked" not in answer.text


def test_the_choice_is_the_best_of_its_country(evening: Session) -> None:
    evening.ask("theme: Portugal")
    assert evening.proposed
    table = table_of(list(evening.proposed.dishes))
    engine = evening.engine
    names = [dish.main.food for dish in evening.proposed.dishes]
    wines = list(evening.proposed.wines)
    task = usual_task(table, scores_of(table, names, wines, engine), engine, 3)
    best = exhaustive(task)
    assert best is not None
    assert value(task, best) >= max(value(task, wines[:3]), value(task, wines[1:]))


def test_a_cheaper_version_costs_less_a_head(evening: Session) -> None:
    answer = evening.ask("cheaper version for 20")
    now, before = (float(word) for word in answer.text.split("\n")[2].split() if word[0].isdigit())
    assert now <= 0.75 * before + 0.01
    assert evening.proposed
    assert evening.proposed.guests == 20
    assert set(evening.proposed.wines) < set(evening.tonight.wines)


def test_it_is_put_on_the_table_when_taken(evening: Session) -> None:
    evening.ask("same but autumn")
    proposed = evening.proposed
    assert evening.ask("take that").say.count("On the table: ") == 1
    assert evening.tonight == proposed
    assert evening.ask("plan it").understood


@pytest.mark.parametrize("said", ["same but autumn", "cheaper version for 20", "theme: one country"])
def test_without_an_evening_it_says_what_to_do(bare: Session, said: str) -> None:
    answer = bare.ask(said)
    assert not answer.understood
    assert answer.say.startswith("From which evening?")
    assert answer.intent == "plan"


def test_a_cheaper_wine_for_a_dish_is_no_next_evening(bare: Session) -> None:
    bare.ask("what goes with brie")
    assert bare.ask("same but cheaper").intent != "plan"


def test_the_foods_to_choose_from_exist(session: Session) -> None:
    listed = {food for foods in next_foods().foods.values() for food in foods}
    assert not [food for food in listed if food not in session.knowledge.digest]


def test_a_question_takes_no_proposal_and_next_time_counts_nobody_now(evening: Session) -> None:
    old = evening.tonight
    assert "Next: " in evening.ask("next time for 15, without the riesling").text
    evening.ask("what goes with it")
    assert (evening.tonight.wines, evening.tonight.guests) == (old.wines, old.guests)
    evening.ask("go with that")
    assert evening.tonight.wines != old.wines


@pytest.mark.parametrize(
    ("typed", "gone"),
    [
        ("next year I want to do the same but without the malbec", "Malbec"),
        ("same again next year but skip the riesling", "off-dry Riesling"),
    ],
)
def test_what_is_left_out_next_year_is_noted_and_plans_nothing(
    evening: Session, typed: str, gone: str
) -> None:
    old = evening.tonight
    answer = evening.ask(typed)
    assert gone in answer.say
    assert answer.say.startswith("Noted for next time: the same without")
    assert len(answer.text.splitlines()) <= 5
    assert evening.tonight == old
    assert evening.proposed
    assert len(evening.proposed.wines) == len(old.wines) - 1
    assert evening.proposed.dishes == old.dishes
    evening.ask("take that")
    assert len(evening.tonight.wines) == len(old.wines) - 1
