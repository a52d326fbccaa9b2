"""What stands on the guests' sheet, the host's sheet and the cards, and what must not."""

from __future__ import annotations

import copy
import re
from random import Random
from typing import Any

import pytest
from jinja2 import DictLoader, Environment, StrictUndefined

from assistant.handout.page import PAGE, sheets
from assistant.handout.words import principles
from assistant.knowledge.problems import KnowledgeError
from assistant.knowledge.store import shipped
from assistant.language.data import read_data
from tests.handout import made
from tests.handout.made import NOW
from tests.handout.reading import read, sheet

Plan = dict[str, Any]
HOSTILE = "<script>alert(1)</script> \u202egnp\u202c \x1b[31m \"quoted\" 'x' & {{ 7*7 }} {wine} \n line"
TIDY = "<script>alert(1)</script> gnp [31m \"quoted\" 'x' & {{ 7*7 }} {wine} line"


def test_the_flight_stands_in_pouring_order(demo: Plan, page: str) -> None:
    rows = sheet(page, "guest").all("table", "flight")[0].all("tbody")[0].all("tr")
    assert len(rows) == len(demo["chosen"])
    for number, (row, wine) in enumerate(zip(rows, demo["flight"], strict=True), 1):
        assert row.text.startswith(f"{number} {wine['name'] or wine['wine']}")
        for told in (wine["wine"], wine["style"], wine["loves"]["food"], wine["loves"]["why"]):
            assert told in row.text
        low, high = wine["celsius"]
        assert f"{low:g} to {high:g} °C" in row.text
        assert [p.text for p in row.all("p", "write")] == ["Smell", "Taste", "With food"]


def test_a_foe_off_the_table_is_said_to_be_elsewhere(demo: Plan, page: str) -> None:
    text = sheet(page, "guest").text
    for wine in demo["flight"]:
        assert wine["fights"] is None
        assert f"Fights {wine['would_fight']['food']} (not here)" in text


@pytest.mark.parametrize("verdict", ["neutral", "poor", "clash"])
def test_nothing_below_fair_is_loved(demo: Plan, verdict: str) -> None:
    changed = copy.deepcopy(demo)
    for wine in changed["flight"]:
        wine["loves"]["verdict"] = verdict
    for food in changed["pairings"]:
        food["best"]["verdict"] = verdict
        for told in food["verdicts"]:
            told["verdict"] = verdict
    found = sheets(changed, NOW)
    guest = sheet(found, "guest")
    assert guest.text.count("Loves no food here.") == len(changed["flight"])
    assert [b.text for b in guest.all("table")[1].all("b")] == []
    cards = [card.text for card in sheet(found, "cards").all("section")]
    assert not [
        text for text in cards[: -len(changed["alcohol_free"])] if "Loves" in text or f"({verdict})" in text
    ]
    assert "Try it with" not in sheet(found, "host").text


def test_every_food_with_its_verdicts_allergens_and_days(demo: Plan, page: str) -> None:
    table = sheet(page, "guest").all("table")[1]
    rows = {
        row.all("th")[0].text: [cell.text for cell in row.all("td")]
        for row in table.all("tbody")[0].all("tr")
    }
    verdicts = {row["food"]: [v["verdict"] for v in row["verdicts"]] for row in demo["pairings"]}
    assert list(rows) == [row["food"] for row in demo["food_order"]]
    for food, cells in rows.items():
        assert cells[: len(demo["chosen"])] == verdicts[food]
    assert rows["salami"][-3:] == ["none known", "milk, sulphites", "2 to 4"]
    assert rows["plain crackers"][-3:] == ["gluten", "milk, soya", "1 to 3"]


def test_the_best_verdict_is_bold_and_no_other(page: str) -> None:
    for table in (sheet(page, "guest").all("table")[1], sheet(page, "host").all("table", "matrix")[0]):
        for row in table.all("tbody")[0].all("tr"):
            cells = [c.text for c in row.all("td")]
            bold = [b.text for b in row.all("b")]
            best = next((v for v in ("strong", "good", "fair") if v in cells), None)
            assert bold == [best] * cells.count(best or "")


def test_guests_read_nothing_of_what_others_need(demo: Plan, page: str) -> None:
    public = f"{sheet(page, 'guest').text} {sheet(page, 'cards').text}"
    host = sheet(page, "host").text
    for row in demo["needs"]:
        for need in row["needs"]:
            assert need in host
            assert need not in public
        assert re.search(rf"\b{row['guest']}(\s|$)", host)
        assert not re.search(rf"\b{row['guest']}(\s|$)", public)
    for word in ("pregnan", "vegetarian", "USD", "NHS"):
        assert word not in public


def test_a_secret_need_stays_with_the_host(demo: Plan) -> None:
    changed = copy.deepcopy(demo)
    changed["needs"] = [
        {"guest": "Zebedee", "needs": ["xyzzy"], "may_have": [], "keep_away": [], "check_label": []}
    ]
    found = sheets(changed, NOW)
    assert "Zebedee xyzzy nothing nothing nothing" in sheet(found, "host").text
    for word in ("Zebedee", "xyzzy"):
        assert found.count(word) == 1


def test_the_host_has_everything_of_the_plan(demo: Plan, page: str) -> None:
    text = sheet(page, "host").text
    told = [row["task"] for row in demo["clock"]] + [row["item"] for row in demo["kit"]]
    told += [f"{row['item']}" for row in demo["shopping"]] + demo["cautions"] + demo["board"]["balance"]
    told += [row["note"] for row in demo["temperatures"]] + [row["storage"] for row in demo["foods"]]
    told += [row["say"] for row in demo["savings"]] + [demo["coverage"]["say"]]
    assert [t for t in told if " ".join(t.split()) not in text] == []
    assert f"Sum {demo['cost']['total']:.2f} USD" in text
    assert "Local rules come first" in text


def test_the_sum_stands_once_and_last(demo: Plan, page: str) -> None:
    rows = sheet(page, "host").all("table", "shopping")[0].all("tr")
    assert [row.text.startswith("Sum") for row in rows] == [False] * len(demo["shopping"]) + [False, True]


def test_problems_are_named_for_the_host_alone(demo: Plan) -> None:
    changed = copy.deepcopy(demo) | {"problems": ["odd.toml, line 3: guests is a dozen."]}
    found = sheets(changed, NOW)
    assert "To put right first odd.toml, line 3: guests is a dozen." in sheet(found, "host").text
    assert "odd.toml" not in sheet(found, "guest").text


def test_a_card_for_each_food_and_drink(demo: Plan, page: str) -> None:
    names = [card.all("h3")[0].text for card in sheet(page, "cards").all("section", "card")]
    wines = [f"{n}. {row['name'] or row['wine']}" for n, row in enumerate(demo["flight"], 1)]
    foods = [row["food"] for row in demo["food_order"]]
    assert names == [*wines, *foods, *(row["drink"] for row in demo["alcohol_free"])]
    for card in sheet(page, "cards").all("section", "card"):
        assert "What is in it:" in card.text


def test_the_figure_says_in_words_what_it_draws(demo: Plan, page: str) -> None:
    (svg,) = sheet(page, "guest").all("svg")
    assert svg.attributes["role"] == "img"
    ids = svg.attributes["aria-labelledby"].split()
    assert [p.attributes["id"] for tag in ("title", "desc") for p in svg.all(tag)] == ids
    told = svg.all("desc")[0].text
    by_body = sorted(demo["flight"], key=lambda row: row["profile"]["body"])
    places = [told.index(row["wine"]) for row in by_body]
    assert places == sorted(places)
    assert len(svg.all("circle")) == 2 * len(demo["flight"])


def test_principles_follow_rules_of_the_knowledge(page: str) -> None:
    from assistant.handout.words import folder

    rows = read_data(folder() / "words.toml", lambda tables: list(tables["principle"]))
    rules = shipped().rules
    assert [rule for row in rows for rule in row["rules"] if f"rule/{rule}" not in rules] == []
    assert all(row["rules"] for row in rows)
    assert len(principles()) == 5
    items = sheet(page, "guest").all("ol")[0].all("li")
    assert [item.text for item in items] == list(principles())


def test_hostile_names_are_only_text(demo: Plan) -> None:
    changed = _renamed(
        demo, {"off-dry Riesling": HOSTILE, "Quay House tasting": HOSTILE, "brie": f"{HOSTILE}!"}
    )
    changed["needs"][0]["guest"] = HOSTILE
    found = sheets(changed, NOW)
    assert not set(found) & set("\x1b\u202e\u202c")
    read_back = read(found)
    assert read_back.all("script") == []
    (head,) = read_back.all("title")[:1]
    assert TIDY in head.text
    for name in ("guest", "host", "cards"):
        assert TIDY[:20] in sheet(found, name).text
    assert "49" not in sheet(found, "guest").text


def _renamed(value: Any, names: dict[str, str]) -> Any:
    """The record with names changed wherever they stand."""
    if isinstance(value, dict):
        return {_renamed(k, names): _renamed(v, names) for k, v in value.items()}
    if isinstance(value, list):
        return [_renamed(v, names) for v in value]
    return names.get(value, value) if isinstance(value, str) else value


def test_the_file_needs_nothing_beside_it(page: str) -> None:
    assert "default-src 'none'" in page
    for sign in ("http://", "https://", "src=", "href=", "@import", "url(", "<script", "<link", "<img"):
        assert sign not in page.replace("http://www.w3.org/2000/svg", "")


def test_sober_evening_has_a_flight_of_its_own() -> None:
    plan = made.plan(Random(1), wines=0, foods=4)
    guest = sheet(sheets(plan, NOW), "guest")
    (flight,) = guest.all("table", "flight")
    drinks = [row["drink"] for row in plan["alcohol_free"]]
    assert [row.all("b")[0].text for row in flight.all("tbody")[0].all("tr")] == [
        f"{number} {drink}" for number, drink in enumerate(drinks, 1)
    ]
    assert guest.all("svg") == []


def test_an_empty_plan_still_prints() -> None:
    plan = made.plan(Random(1), wines=0, foods=0) | {"alcohol_free": [], "start": None, "title": None}
    found = sheets(plan, NOW)
    assert "The evening" in sheet(found, "guest").text
    assert "no date yet" in sheet(found, "guest").text


@pytest.mark.parametrize("template", ["{% if %}", "{{ nothing_by_this_name }}", None])
def test_a_damaged_template_is_told(
    demo: Plan, template: str | None, monkeypatch: pytest.MonkeyPatch
) -> None:
    pages = Environment(
        loader=DictLoader({PAGE: template} if template else {}), autoescape=True, undefined=StrictUndefined
    )
    monkeypatch.setattr("assistant.handout.page._pages", lambda: pages)
    with pytest.raises(KnowledgeError, match=r"handout\.html\.j2"):
        sheets(demo, NOW)


def test_no_marks_out_of_anything(page: str) -> None:
    text = read(page).all("body")[0].text
    assert not re.search(r"[★☆●○◆%]\s?match|\d+\s?/\s?(5|10|20|100)\b|★|☆", text)
