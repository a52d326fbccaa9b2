"""The command line: `goeswith` (chat), `goeswith ask`, `goeswith check`, `goeswith evaluate`.

Exit codes: 0 answered or sound, 1 asked back or problems found, 2 wrong usage or unreadable file.
"""

from __future__ import annotations

import argparse
import gc
import json
import shutil
import sys
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from assistant import __version__

if TYPE_CHECKING:
    from assistant.answers.record import Answer
    from assistant.knowledge.problems import KnowledgeError
    from assistant.session import Session

ANSWERED, ASKED_BACK, WRONG_USAGE = 0, 1, 2
SOUND, PROBLEMS = ANSWERED, ASKED_BACK
LONGEST_ERROR = 200


class OneSentence(argparse.ArgumentParser):
    """Tells wrong usage in one sentence."""

    def error(self, message: str) -> NoReturn:
        """Prints what is wrong and where help is, and leaves with 2."""
        plain = message.removeprefix("argument ")
        self.exit(WRONG_USAGE, f"goeswith: {plain[:LONGEST_ERROR]}; see {self.prog} --help.\n")


def arguments() -> argparse.ArgumentParser:
    """The options of every command."""
    parser = OneSentence(
        prog="goeswith",
        description="What goes with what: an offline assistant for wine-and-food tastings.",
        epilog="Without a command, goeswith opens the chat.",
    )
    parser.add_argument("--version", action="version", version=f"goeswith {__version__}")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND")
    ask = commands.add_parser(
        "ask",
        help="answer a question, or one question a line from standard input",
        description="Answers QUESTION. Without it, reads one question a line; "
        "an empty line starts a new conversation.",
    )
    ask.add_argument("question", nargs="*", metavar="QUESTION", help="the question, in plain words")
    ask.add_argument("--json", action="store_true", help="one JSON object a line")
    ask.add_argument("--top", type=_count, default=3, metavar="N", help="how many picks (default 3)")
    check = commands.add_parser(
        "check",
        help="check the knowledge, and Turtle files of your own with it",
        description="Checks the shipped knowledge together with each FILE. A FILE with the name of "
        "a shipped one that declares some of its terms stands in for it.",
    )
    check.add_argument("files", nargs="*", type=Path, metavar="FILE", help="a Turtle file of your own")
    check.add_argument("--json", action="store_true", help="the report as one JSON object")
    evaluate = commands.add_parser(
        "evaluate",
        help="run the question corpus and print how much of it is read right",
        description="Runs the shipped corpus and holds it against its floors, or runs each FILE instead.",
    )
    evaluate.add_argument("files", nargs="*", type=Path, metavar="FILE", help="a corpus file of your own")
    evaluate.add_argument("--json", action="store_true", help="one JSON object a line, the figures last")
    return parser


def _count(text: str) -> int:
    if not (text.isascii() and text.isdigit() and len(text) < 19) or not int(text):
        raise argparse.ArgumentTypeError(f"{text[:20]!r} is not a whole number of 1 or more")
    return int(text)


def main(argv: Sequence[str] | None = None) -> int:
    """Runs a command and returns its exit code."""
    for stream in (sys.stdin, sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="replace")
    options = arguments().parse_args(argv)
    from assistant.knowledge.problems import KnowledgeError

    try:
        if options.command == "check":
            return _check(options.files, options.json)
        if options.command == "evaluate":
            return _evaluate(options.files, options.json)
        return _ask(options) if options.command == "ask" else _chat()
    except KnowledgeError as error:
        for problem in error.problems:
            print(f"goeswith: {problem}", file=sys.stderr)
        return WRONG_USAGE
    except KeyboardInterrupt:
        return 130
    except BrokenPipeError:
        sys.stderr.close()
        return ANSWERED


def _chat() -> int:
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        return _lines(sys.stdin, as_json=False, top=3)
    from assistant.chat.loop import chat

    return chat()


def _ask(options: argparse.Namespace) -> int:
    if not options.question:
        return _lines(sys.stdin, options.json, options.top)
    answer = _session(options.top).ask(" ".join(options.question))
    _print(answer, options.json)
    return ANSWERED if answer.understood else ASKED_BACK


def _check(files: Sequence[Path], as_json: bool) -> int:
    from assistant.answers.sanitise import safe, safe_record
    from assistant.knowledge.check import examine
    from assistant.knowledge.problems import KnowledgeError

    gc.disable()  # a check ends soon, and collecting would take a fifth of it
    try:
        report = examine(files)
    except KnowledgeError as error:
        return _unusable(error)
    finally:
        gc.enable()
    record = safe_record(report.as_json())
    print(json.dumps(record, ensure_ascii=False) if as_json else safe(report.text()), flush=True)
    return PROBLEMS if report.problems else SOUND


def _evaluate(files: Sequence[Path], as_json: bool) -> int:
    from assistant.answers.sanitise import safe, safe_record
    from assistant.evaluate import report
    from assistant.evaluate.run import evaluate
    from assistant.knowledge.problems import KnowledgeError

    try:
        evaluation = evaluate(files)
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


def _lines(lines: Iterable[str], as_json: bool, top: int) -> int:
    """One answer a line; an empty line starts a new conversation."""
    session = _session(top)
    code = ANSWERED
    for line in lines:
        if not line.strip():
            session.new_conversation()
            continue
        answer = session.ask(line)
        _print(answer, as_json)
        code = code if answer.understood else ASKED_BACK
    return code


def _session(top: int) -> Session:
    from assistant.knowledge.collector import loading

    with loading():
        from assistant.session import Session

        return Session(top=top)


def _print(answer: Answer, as_json: bool) -> None:
    from assistant.answers.sanitise import safe, safe_record
    from assistant.answers.wrap import wrapped

    if as_json:
        print(json.dumps(safe_record(answer.as_json()), ensure_ascii=False), flush=True)
    elif sys.stdout.isatty():
        print(wrapped(safe(answer.text), shutil.get_terminal_size().columns), flush=True)
    else:
        print(safe(answer.text), flush=True)
