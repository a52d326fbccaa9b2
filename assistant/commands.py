"""What each command does once its options are read; heavy modules are loaded by the one that needs them."""

from __future__ import annotations

import argparse
import gc
import json
import shutil
import sys
from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from assistant.opening import noting, session_with

if TYPE_CHECKING:
    from assistant.answers.record import Answer
    from assistant.evening.records import Evening
    from assistant.knowledge.problems import KnowledgeError, Problem
    from assistant.session import Session

ANSWERED, ASKED_BACK, WRONG_USAGE = 0, 1, 2
SOUND, PROBLEMS = ANSWERED, ASKED_BACK
EVENING, LISTS = ".toml", (".csv", ".tsv")


def chat(
    evening: Path | None, notebook: Path | None = None, bottles: Path | None = None, plain: bool = False
) -> int:
    """The chat on a terminal; elsewhere one question a line. Without a notebook nothing is taught."""
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        return _lines(sys.stdin, False, noting(session_with(3, evening, notebook, bottles), notebook))
    from assistant.knowledge.collector import loading

    with loading():
        from assistant.chat.loop import chat as talk

    return talk(evening, notebook, bottles, plain)


def ask(options: argparse.Namespace, notebook: Path | None = None) -> int:
    """Answers the question, or one a line from standard input."""
    session = noting(session_with(options.top, options.evening, notebook, options.bottles), notebook)
    if not options.question:
        return _lines(sys.stdin, options.json, session)
    answer = session.ask(" ".join(options.question))
    _print(answer, options.json)
    return ANSWERED if answer.understood else ASKED_BACK


def check(files: Sequence[Path], as_json: bool, notebook: Path | None = None) -> int:
    """Checks the knowledge, files of the host's own, and the notebook with what in it is at odds."""
    from assistant.answers.sanitise import safe, safe_record
    from assistant.knowledge.check import examine
    from assistant.knowledge.problems import KnowledgeError

    gc.disable()  # a check ends soon, and collecting would take a fifth of it
    try:
        own = [notebook] if notebook and notebook.exists() and notebook not in files else []
        turtle = [file for file in files if file.suffix.lower() not in (EVENING, *LISTS)]
        report = examine([*own, *turtle])
        conflicts, remarks = _at_odds([*own, *turtle])
        report = replace(report, conflicts=conflicts, remarks=remarks)
        evenings = [file for file in files if file.suffix.lower() == EVENING]
        lists = [file for file in files if file.suffix.lower() in LISTS]
        found = (*_of_evenings(evenings), *_of_lists(lists))
        report = replace(report, problems=(*report.problems, *found))
    except KnowledgeError as error:
        return _unusable(error)
    finally:
        gc.enable()
    record = safe_record(report.as_json())
    print(json.dumps(record, ensure_ascii=False) if as_json else safe(report.text()), flush=True)
    return PROBLEMS if report.problems else SOUND


def _at_odds(files: Sequence[Path]) -> tuple[tuple[str, ...] | None, tuple[str, ...]]:
    """What the notebooks among these files say against one another and the book; None where none is one.

    Then what was not looked at.
    """
    from assistant.knowledge.check import is_notebook

    notebooks = [file for file in files if is_notebook(file)]
    if not notebooks:
        return None, ()
    from assistant.rehearse.checking import at_odds

    return at_odds(notebooks)


def _of_evenings(files: Sequence[Path]) -> tuple[Problem, ...]:
    """The problems of evening files, as a plan would name them."""
    if not files:
        return ()
    from assistant.evening.validate import evening_problems

    return evening_problems(files, session_with(top=3), datetime.now().astimezone())


def _of_lists(files: Sequence[Path]) -> tuple[Problem, ...]:
    """The problems of lists of bottles."""
    if not files:
        return ()
    from assistant.stock.opening import list_problems

    return list_problems(files, session_with(top=3))


def plan(
    file: Path,
    as_json: bool,
    handout: Path | None = None,
    notebook: Path | None = None,
    bottles: Path | None = None,
) -> int:
    """Plans the evening in a file; `handout` is where its sheets to print go."""
    from assistant.answers.sanitise import safe, safe_line, safe_record
    from assistant.evening.text import text
    from assistant.handout.write import HandoutError, written
    from assistant.knowledge.problems import KnowledgeError

    try:
        evening, record = _planned(file, handout, notebook, bottles)
    except KnowledgeError as error:
        return _unusable(error)
    except HandoutError as error:
        print(f"goeswith: {safe_line(str(error))}", file=sys.stderr)
        return WRONG_USAGE
    if as_json:
        print(json.dumps(safe_record(record), ensure_ascii=False), flush=True)
    else:
        _show(safe(written(record, handout) if handout else text(evening, record)))
    return PROBLEMS if record["problems"] else SOUND


def _planned(
    file: Path, handout: Path | None, notebook: Path | None, bottles: Path | None
) -> tuple[Evening, dict[str, Any]]:
    """The evening and its plan, its sheets written where they are asked for.

    Raises KnowledgeError for the file or the list, HandoutError where the sheets cannot be written.
    """
    from assistant.evening.facts import wording
    from assistant.evening.numbers import local
    from assistant.evening.plan import plan as planned
    from assistant.evening.read import read_evening
    from assistant.handout.write import target, write
    from assistant.stock.evening import of_the_list
    from assistant.waiting import Waiting

    place = target(handout) if handout else None
    session, now = session_with(3, None, notebook, bottles), datetime.now().astimezone()
    evening, of_list = of_the_list(read_evening(file, session, now), session.stock)
    waiting = Waiting(wording()("text", "tasting", done="{done}", of="{of}"))
    record = planned(evening, session, local(now, evening), waiting)
    record |= {"from_list": of_list}
    waiting.clear()
    if place:
        from assistant.handout.page import sheets

        write(place, sheets(record, local(now, evening)))
    return evening, record


def evaluate(files: Sequence[Path], as_json: bool) -> int:
    """Puts the corpus, or files of the host's own, to the parser."""
    from assistant.answers.sanitise import safe, safe_record
    from assistant.evaluate import report
    from assistant.evaluate.run import evaluate as evaluated
    from assistant.knowledge.problems import KnowledgeError

    try:
        evaluation = evaluated(files)
    except KnowledgeError as error:
        return _unusable(error)
    for row in report.rows(evaluation) if as_json else ():
        print(json.dumps(safe_record(row), ensure_ascii=False))
    if not as_json:
        print(safe(report.text(evaluation)), flush=True)
    return PROBLEMS if evaluation.problems else SOUND


def _unusable(error: KnowledgeError) -> int:
    """One sentence on standard error for each file that cannot be used."""
    from assistant.answers.sanitise import safe
    from assistant.knowledge.check_report import sentence

    for problem in error.problems:
        print(f"goeswith: {safe(sentence(problem))}", file=sys.stderr)
    return WRONG_USAGE


def _lines(lines: Iterable[str], as_json: bool, session: Session) -> int:
    """One answer a line; an empty line starts a new conversation."""
    code = ANSWERED
    for line in lines:
        if not line.strip():
            session.new_conversation()
            continue
        answer = session.ask(line)
        _print(answer, as_json)
        code = code if answer.understood else ASKED_BACK
    return code


def _print(answer: Answer, as_json: bool) -> None:
    from assistant.answers.sanitise import safe, safe_record

    if as_json:
        print(json.dumps(safe_record(answer.as_json()), ensure_ascii=False), flush=True)
    else:
        _show(safe(answer.text))


def _show(text: str) -> None:
    """Prints text, broken at words where a terminal reads it."""
    from assistant.answers.wrap import wrapped

    width = shutil.get_terminal_size().columns
    print(wrapped(text, width) if sys.stdout.isatty() else text, flush=True)
