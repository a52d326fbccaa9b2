"""Rows as bottles: which style they are, and every mistake told with its line."""

from __future__ import annotations

import pytest

from assistant.session import Session
from assistant.stock.report import lines_of, more_problems
from assistant.stock.styles import Styles
from assistant.stock.words import stock_words
from tests.stock.conftest import Read


def test_every_wine_is_read_by_its_own_label(session: Session) -> None:
    known, styles = session.knowledge, Styles(session.knowledge, session.parser)
    found = {wine: styles.of(known.label(wine), "").wine for wine in known.wines}
    assert {wine: got for wine, got in found.items() if got != wine} == {}
    named = {wine: styles.of("", f"Grey Heron {known.label(wine)} 2024").wine for wine in known.wines}
    assert {wine: got for wine, got in named.items() if got != wine} == {}


@pytest.mark.parametrize(
    ("style", "label", "wine"),
    [
        ("Chardonnay, Chablis", "", "wine/chablis"),
        ("Riesling feinherb", "", "wine/off-dry-riesling"),
        ("Chenin Blanc demi-sec", "", "wine/off-dry-chenin-blanc"),
        ("rosado", "Provence", "wine/provence-rose"),
        ("halbtrocken", "Riesling", "wine/off-dry-riesling"),
        ("off-dry", "Grey Heron Riesling 2025", "wine/off-dry-riesling"),
        ("", "Dry Slip Etna white", "wine/etna-white"),
        ("", "Old Port Road Shiraz", "wine/shiraz"),
        ("Malbec", "Riesling Lane", "wine/malbec"),
        ("Reisling troken", "", "wine/dry-riesling"),
        ("alcohol-free sparkling", "", "drink/dealcoholised-sparkling"),
    ],
)
def test_words_of_style(session: Session, style: str, label: str, wine: str) -> None:
    assert Styles(session.knowledge, session.parser).of(style, label).wine == wine


@pytest.mark.parametrize(
    ("style", "why"),
    [("red", "too-wide"), ("goat cheese", "food"), ("corkscrew", "no-wine"), ("", "no-wine")],
)
def test_what_is_no_style(session: Session, style: str, why: str) -> None:
    found = Styles(session.knowledge, session.parser).of(style, "Grey Heron")
    assert (found.wine, found.why) == (None, why)


def test_a_whole_row_in_any_order(read: Read) -> None:
    stock = read(
        "Bestand;Alkohol;Preis;Jahrgang;Weinart;Wein;Erzeuger;Lieferant\n"
        "\n"
        '6 Fl.;11,5 % vol;14,00 €;2025;halbtrocken Riesling;"Grauer\nReiher";Haus Steg;X\n'
    )
    ((bottle,),) = stock.of.values()
    assert (bottle.name, bottle.line) == ("Haus Steg Grauer Reiher 2025", 3)
    assert (bottle.price, bottle.left, bottle.alcohol, bottle.vintage) == (14.0, 6, 11.5, 2025)
    assert (stock.money(14.5), stock.unused) == ("€14.50", ("Lieferant",))


def test_the_currency_may_stand_in_the_header(read: Read) -> None:
    assert read("label,style,Price (GBP)\na,Malbec,12\n").money(12) == "£12"


def test_every_mistake_is_told_with_its_line_and_nothing_is_dropped(read: Read) -> None:
    stock = read(
        "label,style,price,alcohol,stock,vintage\n"
        "Good,Malbec,12,13,6,2023\n"
        "Dear,Malbec,lots,13,6,2023\n"
        "Strong,Malbec,12,99,6,2023\n"
        "Few,Malbec,12,13,some crates,2023\n"
        "Old,Malbec,12,13,6,long ago\n"
        "Spade,corkscrew,5,,1,\n"
        "Plate,goat cheese,5,,1,\n"
        "Wide,red,5,,1,\n"
        ",,5,,1,\n"
        "Good,Malbec,12,13,6,2023\n"
        "Long,Malbec,1,13,6,2023,more\n"
    )
    assert [p.line for p in stock.told] == [3, 4, 5, 6, 7, 8, 9, 10, 11, 12]
    assert (stock.count, stock.left_out) == (7, 4)
    assert "line 2" in next(p.message for p in stock.told if p.line == 11)
    assert all(p.remedy for p in stock.told)


def test_many_mistakes_are_counted(read: Read) -> None:
    rows = "".join(f"Spade {n},corkscrew {n},nine\n" for n in range(300))
    stock = read(f"label,style,price\nGood,Malbec,nine\n{rows}")
    assert len(stock.told) == stock_words().limits["told"]
    assert len(stock.told) + sum(stock.more.values()) == 301
    assert lines_of(stock)[-1] == "And more: 289 wines not read."
    assert len(more_problems(stock)) == 1


def test_text_that_steers_a_terminal_does_not_come_in(read: Read) -> None:
    stock = read("label,style\n\x1b]0;owned\x07Grey\u202e Heron\x1b[31m,Malbec\n")
    assert stock.of["wine/malbec"][0].label == "]0;ownedGrey Heron[31m"


def test_a_formula_is_text(read: Read) -> None:
    stock = read('label,style,price\n"=HYPERLINK(""http://example.org"")",Malbec,=1+1\n')
    assert stock.of["wine/malbec"][0].label.startswith("=HYPERLINK")
    assert [p.line for p in stock.told] == [2]


def test_cheap_ones_first_and_none_left_last(read: Read) -> None:
    stock = read("label,style,price,stock\na,Malbec,20,1\nb,Malbec,9,0\nc,Malbec,12,\nd,Malbec,,5\n")
    assert [b.label for b in stock.of["wine/malbec"]] == ["c", "a", "d", "b"]
    assert [b.label for b in stock.fitting("wine/malbec", high=15)] == ["c"]
    assert (stock.has("wine/malbec", high=10), stock.has("wine/malbec")) == (False, True)


def test_bottles_are_found_by_name(read: Read) -> None:
    stock = read("label,style,vintage\nGrey Heron,off-dry Riesling,2025\n")
    for name in ("Grey Heron", "grey  heron 2025", "GREY HERON"):
        assert stock.named(name) is stock.of["wine/off-dry-riesling"][0]
    assert stock.named("Heron") is None
    assert stock.named("") is None
