"""Tricks in the terms of a Turtle file and in the names of files: no error sentence passes them on."""

from __future__ import annotations

from pathlib import Path
from unicodedata import category

import pytest

from assistant.knowledge import check
from tests.safety.conftest import Main
from tests.safety.test_ways_out import clean, evening, written
from tests.safety.tricks import TRICKS, each, escaped

PARTS = 3
IN_IRIS = ("Cf", "Mn", "Lo")  # the sorts of characters that an IRI may hold


def _file_names() -> list[str]:
    """All tricks in a few file names."""
    tricks = [trick.replace("\0", "").replace("/", "") for trick in TRICKS.values()]
    return ["".join(tricks[at::PARTS]) for at in range(PARTS)]


def test_terms_of_a_turtle_file(main: Main, tmp_path: Path) -> None:
    rows = []
    for at, (_, trick) in enumerate(each()):
        iri = "".join(f"\\U{ord(c):08X}" for c in trick if category(c) in IN_IRIS and c < "\ufff0")
        rows.append(
            f"<https://example.org/goeswith/food/f{at}{iri}> a gw:Food ; "
            f'skos:prefLabel "x{escaped(trick)}"@en .'
        )
    head = "@prefix gw: <https://example.org/goeswith/schema#> .\n"
    head += "@prefix skos: <http://www.w3.org/2004/02/skos/core#> .\n"
    out, err = main("check", str(written(tmp_path, head + "\n".join(rows), "own.ttl")), "--json")
    assert "f0" in out + err
    assert clean(out, err)


@pytest.mark.parametrize("name", _file_names(), ids=range(PARTS))
def test_names_of_files(main: Main, tmp_path: Path, name: str) -> None:
    there = written(tmp_path, "guests: 12", f"{name}.toml")
    turtle = written(tmp_path, "this is no Turtle", f"{name}.ttl")
    for arguments in (
        ["plan", str(there)],
        ["check", str(there), str(turtle)],
        ["plan", str(tmp_path / f"no{name}.toml")],
        ["ask", "--evening", str(there), "brie"],
        ["evaluate", str(there)],
        ["plan", str(there), "--handout", f"{tmp_path}/{name}.pdf"],
        ["plan", str(there), "--handout", f"{tmp_path}/no{name}/x.html"],
    ):
        out, err = main(*arguments)
        assert out == ""
        assert err.startswith("goeswith: ")
        assert clean(err)
        assert all(line.startswith("goeswith: ") for line in err.splitlines())


@pytest.mark.parametrize("name", _file_names(), ids=range(PARTS))
def test_names_of_files_in_what_is_told_of_them(
    main: Main, tmp_path: Path, name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(check, "shape_problems", lambda *of: [])
    file = written(tmp_path, evening({"one": "Ann"}).replace("guests = 30", "guests = -1"), f"{name}.toml")
    sheets, notebook = tmp_path / f"{name}.html", written(tmp_path, "no notebook", f"{name}.ttl")
    for arguments in (
        ["plan", str(file), "--handout", str(sheets)],
        ["plan", str(file)],
        ["plan", "--json", str(file)],
        ["check", str(file)],
        ["ask", "--notebook", str(notebook), "remember that brie is mild"],
        ["ask", "--json", "--notebook", str(notebook), "remember that brie is mild"],
    ):
        out, err = main(*arguments)
        assert out.strip()
        assert clean(out, err)
    assert clean(sheets.read_text("utf-8"))
