"""Separators, encodings, headers: what was written comes back; what is no list is told in a sentence."""

from __future__ import annotations

import csv
import io
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.knowledge.problems import KnowledgeError
from assistant.session import Session
from assistant.stock.decoding import decoded
from assistant.stock.reading import read_stock
from assistant.stock.rows import DELIMITERS, rows_of
from assistant.stock.words import stock_words
from tests.stock.conftest import Read

ENCODINGS = ("utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252")
WRITABLE = "".join(chr(c) for c in range(32, 127)) + "éèüößñçãœŒ€’“\n\t"
CELLS = st.text(WRITABLE, max_size=30)
HEADERS = st.permutations(["label", "style", "price", "stock"])


def written(rows: list[list[str]], delimiter: str, encoding: str) -> bytes:
    """A list as a spreadsheet writes it."""
    out = io.StringIO()
    csv.writer(out, delimiter=delimiter).writerows(rows)
    text = out.getvalue()
    mark = "\ufeff" if encoding == "utf-16-le-marked" else ""
    return (mark + text).encode(encoding)


@given(
    HEADERS,
    st.lists(st.lists(CELLS, min_size=4, max_size=4), max_size=5),
    st.sampled_from(DELIMITERS),
    st.sampled_from(ENCODINGS),
)
def test_rows_come_back_by_any_separator_and_encoding(
    header: list[str], rows: list[list[str]], delimiter: str, encoding: str
) -> None:
    text = decoded(written([header, *rows], delimiter, encoding))
    assert text is not None
    columns, found = rows_of(text, "list.csv")
    assert [header[at] for at in columns.places.values()] == list(columns.places)
    cells = [row for _, row in found]
    assert cells == [row for row in rows if any(map(str.strip, row))]


def test_each_row_knows_the_line_it_begins_on() -> None:
    text = 'label,style\r\n\r\na,"two\nlines"\r\nb,one\r\n,\r\n"c\n\nd",x'
    _, found = rows_of(text, "list.csv")
    assert [(line, row[0]) for line, row in found] == [(3, "a"), (5, "b"), (7, "c\n\nd")]


@pytest.mark.parametrize("text", ["\x00;", ";;", ",\n,\n"])
def test_nothing_but_separators_is_an_empty_list(text: str) -> None:
    with pytest.raises(KnowledgeError):
        rows_of(text, "list.csv")


@settings(max_examples=200, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(st.binary(max_size=300))
def test_any_bytes_are_a_list_or_one_problem(tmp_path: Path, session: Session, data: bytes) -> None:
    file = tmp_path / "any.csv"
    file.write_bytes(b"label,style\n" * (len(data) % 2) + data)
    problems, rows = 0, 0
    try:
        stock = read_stock(file, session.knowledge, session.parser)
        rows = stock.count + stock.left_out
    except KnowledgeError as error:
        problems = len(error.problems)
    assert (problems == 1) != (rows > 0)


@pytest.mark.parametrize(
    ("header", "field"),
    [
        ("Prix (€)", "price"),
        ("PVP", "price"),
        ("Preço", "price"),
        ("VK-Preis", "price"),
        ("Millésime", "vintage"),
        ("Añada", "vintage"),
        ("Jahrgang", "vintage"),
        ("Annata", "vintage"),
        ("Alkohol % vol", "alcohol"),
        ("Graduación", "alcohol"),
        ("Cépage", "grape"),
        ("Rebsorte", "grape"),
        ("Castas", "grape"),
        ("Bestand", "stock"),
        ("Giacenza", "stock"),
        ("In stock", "stock"),
        ("Süße", "sweetness"),
        ("COULEUR", "colour"),
    ],
)
def test_headers_of_the_trade(header: str, field: str) -> None:
    columns, _ = rows_of(f"label;{header}\nx;y\n", "list.csv")
    assert columns.places == {"label": 0, field: 1}


def test_of_two_names_for_one_column_the_surer_is_read(read: Read) -> None:
    stock = read("wine,label,style\nignored,Grey Heron,Malbec\n")
    assert (stock.of["wine/malbec"][0].label, stock.unused) == ("Grey Heron", ("wine",))


def test_the_separator_may_be_said(read: Read) -> None:
    assert read("sep=|\nlabel|style\nGrey, Heron|Malbec\n").of["wine/malbec"][0].line == 3


LONG = stock_words().limits["row"]
WRONG = {
    "": "the list is empty",
    " \n\n": "the list is empty",
    "label,style\n": "no bottle below it",
    "Grey Heron,14\nSalt Stair,16\n": "names no column",
    "price,stock\n14,6\n": "neither the bottles nor their style",
    "label,style,Style\nx,y,z\n": "two columns are called style",
    "label,style\n\0,x\n": "NUL byte",
    'label,style\nx,Malbec\n"open,' + "x" * 3 * LONG: "longer than",
    "label," + "a," * 300 + "\n": "more than 200 columns",
}


@pytest.mark.parametrize("text", WRONG, ids=[text[:12] for text in WRONG])
def test_what_is_no_list_is_told_in_one_sentence(read: Read, text: str) -> None:
    with pytest.raises(KnowledgeError) as raised:
        read(text)
    (problem,) = raised.value.problems
    assert WRONG[text] in problem.message
    assert problem.remedy.endswith(".")


def test_an_open_quotation_mark_is_told_with_its_line(read: Read) -> None:
    with pytest.raises(KnowledgeError) as raised:
        read('label,style\nx,Malbec\n"open,' + "x" * 3 * LONG)
    assert raised.value.problems[0].line == 3


def test_folders_missing_files_and_odd_letters(tmp_path: Path, session: Session) -> None:
    (tmp_path / "odd.csv").write_bytes(b"label\n\x81\x8d\n")
    for name, told in ((".", "directory"), ("none.csv", "No such file"), ("odd.csv", "no letters")):
        with pytest.raises(KnowledgeError) as raised:
            read_stock(tmp_path / name, session.knowledge, session.parser)
        assert told.lower() in raised.value.problems[0].message.lower()


def test_a_file_that_is_too_large(tmp_path: Path, session: Session) -> None:
    file = tmp_path / "large.csv"
    with file.open("wb") as out:
        out.truncate(stock_words().limits["bytes"] + 1)
    with pytest.raises(KnowledgeError, match="larger than 60 MB"):
        read_stock(file, session.knowledge, session.parser)
