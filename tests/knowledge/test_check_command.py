"""`goeswith check` as its users meet it: report, counts, exit codes, own files, unreadable files."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from assistant import cli
from assistant.knowledge import check, turtle
from assistant.knowledge.files import ontology_dir
from assistant.knowledge.problems import KnowledgeError, Problem
from tests.knowledge.cases import FIXTURES

SOUND, PROBLEMS, REFUSED = 0, 1, 2
SMALL = ("schema.ttl", "scales.ttl", "sources.ttl", "sources-care.ttl")
PATIENCE = 60.0

Command = Callable[..., tuple[int, str, str]]

OWN = """@prefix g: <https://example.org/goeswith/schema#> .
@prefix f: <https://example.org/goeswith/food/> .
@prefix s: <https://example.org/goeswith/source/> .
@prefix dcterms: <http://purl.org/dc/terms/> .
@prefix skos: <http://www.w3.org/2004/02/skos/core#> .

f:my-pie a g:Food ;
    skos:prefLabel "my pie"@en ;
    g:fat [ g:low 9.0 ; g:typical 12.0 ; g:high 11.0 ; g:basis g:judged ; dcterms:source s:judged ] ;
    g:home f:nowhere .
"""


@pytest.fixture
def small(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A small sound knowledge with all shapes and checks, taken for the shipped one."""
    root = tmp_path / "ontology"
    for folder in ("shapes", "checks"):
        shutil.copytree(ontology_dir() / folder, root / folder)
    for name in SMALL:
        shutil.copy(ontology_dir() / name, root / name)
    monkeypatch.setattr(check, "ontology_dir", lambda: root)
    return root


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Command:
    """Runs `goeswith check` in this process: exit code, standard output and standard error."""

    def command(*arguments: str | Path) -> tuple[int, str, str]:
        code = cli.main(["check", "--no-notebook", *map(str, arguments)])
        said = capsys.readouterr()
        return code, said.out, said.err

    return command


def own_file(folder: Path, text: str, name: str = "own.ttl") -> Path:
    """A file of the user's."""
    file = folder / name
    file.write_text(text, "utf-8")
    return file


def test_sound_knowledge_leaves_with_0_and_the_counts(small: Path, run: Command) -> None:
    code, out, err = run()
    assert (code, err) == (SOUND, "")
    assert re.fullmatch(r"\d+ concepts, 0 rules, 0 problems\n", out)


def test_problems_are_told_file_by_file_with_line_term_and_remedy(small: Path, run: Command) -> None:
    own = own_file(small.parent, OWN)
    schema = small / "schema.ttl"
    broken = schema.read_text("utf-8").replace("gw:trait a owl:ObjectProperty", "gw:trait gw:traits 1")
    schema.write_text(broken, "utf-8")
    code, out, err = run(own)
    lines = out.splitlines()
    assert (code, err) == (PROBLEMS, "")
    assert f"{own}, line 9: food:my-pie: gw:fat has a typical value 12 above its high end. Put the" in out
    assert f"{own}, line 10: food:my-pie: points at food:nowhere, which is not declared in any file." in out
    assert lines[0].startswith("ontology/schema.ttl, line ")
    assert lines.index("") < lines.index(next(line for line in lines if line.startswith(str(own))))
    assert lines[-1].endswith(f"{sum(', line ' in line for line in lines)} problems")


def test_report_as_json_holds_the_same(small: Path, run: Command) -> None:
    own = own_file(small.parent, OWN)
    _, text, _ = run(own)
    code, out, err = run("--json", own)
    record = json.loads(out)
    assert (code, err) == (PROBLEMS, "")
    assert record.keys() == {"concepts", "rules", "problems", "conflicts", "remarks"}
    assert [str(Problem(**problem)) for problem in record["problems"]] == text.splitlines()[:-2]


def test_own_file_that_is_sound_is_checked_with_the_shipped_ones(small: Path, run: Command) -> None:
    text = OWN.split("f:my-pie")[0] + 's:my-book a g:Source ; dcterms:title "My book"@en ;\n'
    text += '    dcterms:bibliographicCitation "Mine" ; g:read true ; g:finding "Pies are good."@en .\n'
    code, out, _ = run(own_file(small.parent, text))
    assert code == SOUND, out


def test_shipped_file_named_is_checked_once(small: Path, run: Command) -> None:
    assert run(small / "scales.ttl") == run()


def test_copy_of_a_shipped_file_stands_in_for_it(small: Path, run: Command, tmp_path: Path) -> None:
    folder = tmp_path / "mine"
    folder.mkdir()
    text = (small / "sources.ttl").read_text("utf-8").replace("gw:read true", "gw:read 1", 1)
    code, out, _ = run(own_file(folder, text, "sources.ttl"))
    assert code == PROBLEMS
    assert out.startswith(str(folder / "sources.ttl"))
    assert out.endswith(" 1 problem\n")


def test_term_declared_in_two_places_is_the_only_problem_told_of_it(small: Path) -> None:
    twice = FIXTURES / "syntax" / "twice.ttl"
    found = [p for p in check.check([twice]) if p.term == "food:curd"]
    assert [(p.line, p.message) for p in found] == [
        (4, f"is declared more than once ({twice} line 4, {twice} line 9).")
    ]


# --- files that cannot be read


def refused(done: tuple[int, str, str]) -> str:
    """The one sentence on standard error of a run that was refused."""
    code, out, err = done
    assert (code, out) == (REFUSED, "")
    assert len(err.splitlines()) == 1
    assert err.endswith(".\n")
    return err


def test_broken_turtle_gives_one_clear_sentence(small: Path, run: Command) -> None:
    broken = FIXTURES / "syntax" / "broken.ttl"
    err = refused(run(broken))
    assert err.startswith(f"goeswith: {broken}, line 5: this is not Turtle (")
    assert "; mend the line." in err


def test_broken_turtle_is_a_problem_with_its_line(small: Path) -> None:
    broken = FIXTURES / "syntax" / "broken.ttl"
    assert [(p.source, p.line) for p in check.check([broken])] == [(str(broken), 5)]


def test_broken_shipped_file_is_told_in_the_same_way(small: Path, run: Command) -> None:
    own_file(small, "gw:a gw:b", "scales.ttl")
    assert "ontology/scales.ttl, line 1: this is not Turtle" in refused(run())


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b"\xef\xbb\xbf@prefix a: <http://a.example/> .", "byte order mark; save it as UTF-8 without one."),
        (b"@prefix a: <http://a.example/> .\na:b a:c '\xff' .", "line 2: this is not Turtle"),
        (b"PK\x03\x04\x00", "line 1: this is not Turtle"),
        (b"#" * 2001, "larger than 0 MB"),
    ],
    ids=["mark", "bytes", "archive", "large"],
)
def test_file_that_is_no_turtle_is_refused(
    content: bytes, sentence: str, small: Path, run: Command, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = small.parent / "odd.ttl"
    file.write_bytes(content)
    if content.startswith(b"#"):
        monkeypatch.setattr(turtle, "LARGEST", 2000)
        monkeypatch.setattr(check, "knowledge_files", lambda root: [])
    err = refused(run(file))
    assert sentence in err
    assert "\x03" not in err


def test_files_of_twenty_megabytes_are_the_largest() -> None:
    assert turtle.LARGEST == 20_000_000


def test_missing_file_and_folder_are_refused(small: Path, run: Command) -> None:
    missing = refused(run("nowhere.ttl"))
    assert "nowhere.ttl: there is no file of this name; check how it is written." in missing
    assert "this is no plain file" in refused(run(small))


def test_every_file_that_cannot_be_read_is_named(small: Path) -> None:
    with pytest.raises(KnowledgeError) as raised:
        check.examine([Path("one.ttl"), Path("two.ttl")])
    assert [p.source for p in raised.value.problems] == ["one.ttl", "two.ttl"]


# --- what files may hold


STRANGE = (
    'f:pie g:fat [ g:low "1E+999999999"^^x:decimal ; g:typical "abc"^^x:decimal ; g:high 1e999 ] .',
    "f:pie g:part f:pie, [ g:part [ g:part [ ] ] ] .",
    "_:a g:food _:a .",
    'f:pie g:share "NaN"^^x:double, "-INF"^^x:double, "P1D"^^x:duration ; a g:Food .',
    "f:pie a g:Food ; g:fat <<( f:a f:b f:c )>> .",
    'f:pie skos:prefLabel "\\u001b[31mpie\\u202e"@en , "pie"@en--ltr ; a g:Food .',
    "<http://other.example/pie> a g:Wine .",
    'f:pie <http://www.w3.org/ns/shacl#construct> f:pie, "", [ ] .',
)


@pytest.mark.parametrize("statement", STRANGE)
def test_strange_statements_are_reported_not_stumbled_on(statement: str, small: Path, run: Command) -> None:
    prefixes = OWN.split("f:my-pie")[0] + "@prefix x: <http://www.w3.org/2001/XMLSchema#> .\n"
    own = own_file(small.parent, f"{prefixes}{statement}\n")
    code, out, err = run(own)
    assert (code, err) == (PROBLEMS, "")
    assert "\x1b" not in out
    assert "\u202e" not in out


def test_long_numbers_are_reported(small: Path, run: Command) -> None:
    own = own_file(small.parent, OWN.replace("11.0", "9" * 6000))
    code, out, err = run(own)
    assert (code, err) == (PROBLEMS, "")
    assert "gw:fat needs exactly one number as its high end." in out


def test_line_is_found_whatever_the_prefixes_and_line_ends(tmp_path: Path) -> None:
    file = tmp_path / "crlf.ttl"
    file.write_bytes(OWN.replace("\n", "\r\n").encode())
    read = turtle.read_turtle(file, "crlf.ttl")
    pie, schema = "https://example.org/goeswith/food/my-pie", "https://example.org/goeswith/schema#"
    assert read.line(pie) == 7
    assert read.line(pie, schema + "fat") == 9
    assert read.line(pie, schema + "sugar") == 7
    assert read.line("https://example.org/goeswith/food/nowhere") == 10
    assert read.line("https://example.org/goeswith/food/brie") is None


def test_questions_are_answered_without_the_libraries_of_the_check() -> None:
    code = "import sys, assistant.cli, assistant.session; print({'rdflib', 'pyshacl'} & {*sys.modules})"
    done = subprocess.run([sys.executable, "-c", code], timeout=PATIENCE, check=True, capture_output=True)
    assert done.stdout == b"set()\n"
