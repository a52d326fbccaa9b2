"""The command line: `goeswith` (chat), and the commands `ask`, `plan`, `check`, `evaluate`,
`export` and `import`.

Exit codes: 0 answered or sound, 1 asked back or problems found, 2 wrong usage or unreadable file.
"""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path
from typing import NoReturn

from assistant import __version__, commands
from assistant.answers.sanitise import safe_line
from assistant.commands import ANSWERED, WRONG_USAGE
from assistant.completion import PrintCompletion

LONGEST_ERROR = 200
ON_THE_TABLE = "an evening file: what is on the table tonight"
KEPT_IN = "the notebook of what you teach (default: your own)"
OF_BOTTLES = "a CSV list of your bottles, to choose out of"
NOT_KEPT = "read and write no notebook"
PLAIN = "a chat for screen readers: nothing is drawn twice"


class OneSentence(argparse.ArgumentParser):
    """Tells wrong usage in one sentence."""

    def error(self, message: str) -> NoReturn:
        """Prints what is wrong and where help is, and leaves with 2."""
        plain = safe_line(message.removeprefix("argument "))
        self.exit(WRONG_USAGE, f"goeswith: {plain[:LONGEST_ERROR]}; see {self.prog} --help.\n")


def arguments() -> argparse.ArgumentParser:
    """The options of every command."""
    parser = OneSentence(
        prog="goeswith",
        usage="goeswith [OPTION ...] [COMMAND ...]",
        description="Which wine with which food, offline. Without a command, the chat opens.",
    )
    parser.add_argument(
        "--version", action="version", version=f"goeswith {__version__}", help="print the version and leave"
    )
    parser.add_argument(
        "--completion", action=PrintCompletion, help="print what bash, zsh or fish completes by"
    )
    parser.add_argument("--evening", type=Path, metavar="FILE", help=ON_THE_TABLE)
    parser.add_argument("--bottles", type=Path, metavar="FILE", help=OF_BOTTLES)
    parser.add_argument("--notebook", type=Path, metavar="FILE", help=KEPT_IN)
    parser.add_argument("--no-notebook", action="store_true", help=NOT_KEPT)
    parser.add_argument("--plain", action="store_true", help=PLAIN)
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", prog="goeswith")
    ask = commands.add_parser(
        "ask",
        help="answer a question, or one a line from standard input",
        description="Answers QUESTION. Without it, reads one question a line; "
        "an empty line starts a new conversation.",
    )
    ask.add_argument("question", nargs="*", metavar="QUESTION", help="the question, in plain words")
    ask.add_argument("--json", action="store_true", help="one JSON object a line")
    ask.add_argument("--top", type=_count, default=3, metavar="N", help="how many picks (default 3)")
    plan = commands.add_parser(
        "plan",
        help="plan the evening in a file",
        description="Plans the evening in FILE (TOML): which wines in which order, each food with its wine, "
        "bottles, shopping, clock, temperatures, kit, needs.",
    )
    plan.add_argument("file", type=Path, metavar="FILE", help="the evening file")
    plan.add_argument("--json", action="store_true", help="the plan as one JSON object")
    plan.add_argument("--handout", type=Path, metavar="OUT.html", help="write sheets to print to this file")
    ask.add_argument("--evening", default=argparse.SUPPRESS, type=Path, metavar="FILE", help=ON_THE_TABLE)
    check = commands.add_parser(
        "check",
        help="check the knowledge, and files of your own",
        description="Checks the shipped knowledge together with each FILE. A Turtle FILE with the name of "
        "a shipped one that declares some of its terms stands in for it; FILE.toml is an evening, "
        "FILE.csv a list of bottles.",
    )
    check.add_argument(
        "files",
        nargs="*",
        type=Path,
        metavar="FILE",
        help="a Turtle file of your own, an evening (.toml) or a list (.csv)",
    )
    check.add_argument("--json", action="store_true", help="the report as one JSON object")
    evaluate = commands.add_parser(
        "evaluate",
        help="print how much of the question corpus is read right",
        description="Runs the shipped corpus and holds it against its floors, or runs each FILE instead.",
    )
    evaluate.add_argument("files", nargs="*", type=Path, metavar="FILE", help="a corpus file of your own")
    evaluate.add_argument("--json", action="store_true", help="one JSON object a line, the figures last")
    export = commands.add_parser(
        "export",
        help="write your notebook to a file for another host",
        description="Writes what stands in the notebook to FILE, a new one.",
    )
    export.add_argument("file", type=Path, metavar="FILE", help="the file to write, as in kim.ttl")
    export.add_argument("--as", dest="name", default="", metavar="NAME", help="what you are called in it")
    export.add_argument("--whole", action="store_true", help="what was taken back too")
    export.add_argument("--replace", action="store_true", help="replace a notebook that is there")
    bring = commands.add_parser(
        "import",
        help="take in the notebook of another host",
        description="Takes in the notebook in FILE; tells what came in, what was there and what is opposed.",
    )
    bring.add_argument("file", type=Path, metavar="FILE", help="the notebook another host exported")
    bring.add_argument(
        "--from", dest="name", default="", metavar="NAME", help="whose it is (default: its file name)"
    )
    bring.add_argument("--back", action="store_true", help="take back what FILE brought")
    for command in (ask, plan):
        command.add_argument(
            "--bottles", default=argparse.SUPPRESS, type=Path, metavar="FILE", help=OF_BOTTLES
        )
    for command in (ask, plan, check, evaluate, export, bring):
        command.add_argument("--notebook", default=argparse.SUPPRESS, type=Path, metavar="FILE", help=KEPT_IN)
        command.add_argument("--no-notebook", default=argparse.SUPPRESS, action="store_true", help=NOT_KEPT)
    return parser


def _count(text: str) -> int:
    if not (text.isascii() and text.isdigit() and len(text) < 19) or not int(text):
        raise argparse.ArgumentTypeError(f"{text[:20]!r} is not a whole number of 1 or more")
    return int(text)


def notebook_of(options: argparse.Namespace) -> Path | None:
    """The file of the notebook that is used, or None where none is."""
    if options.no_notebook:
        return None
    from assistant.notebook_place import place

    return place(options.notebook)


def _carried(options: argparse.Namespace) -> int:
    """Carries the notebook out or in."""
    from assistant import carry

    notebook = notebook_of(options)
    if options.command == "export":
        return carry.send(options.file, notebook, options.name, options.whole, options.replace)
    if options.back:
        return carry.take_back(options.file, notebook)
    return carry.bring(options.file, notebook, options.name)


def main(argv: Sequence[str] | None = None) -> int:
    """Runs a command and returns its exit code."""
    for stream in (sys.stdin, sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="replace")
    from assistant.knowledge.problems import KnowledgeError

    try:
        return _flushed(argv)
    except KnowledgeError as error:
        for problem in error.problems:
            print(f"goeswith: {problem}", file=sys.stderr)
        return WRONG_USAGE
    except KeyboardInterrupt:
        return 130
    except BrokenPipeError:
        sys.stderr.close()
        return ANSWERED
    except OSError as error:
        return _unwritten(error)


def _flushed(argv: Sequence[str] | None) -> int:
    """Runs a command until all it printed is written, also where it leaves early. Raises OSError."""
    try:
        return _run(arguments().parse_args(argv))
    finally:
        sys.stdout.flush()


def _unwritten(error: OSError) -> int:
    """One sentence where the answer has nowhere to go; what could not be written is dropped."""
    with suppress(OSError, ValueError):  # or leaving would try, and complain, once more
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    why = safe_line(error.strerror or str(error))
    print(f"goeswith: the answer cannot be written ({why}); send it elsewhere.", file=sys.stderr)
    return WRONG_USAGE


def _run(options: argparse.Namespace) -> int:
    if options.command == "check":
        return commands.check(options.files, options.json, notebook_of(options))
    if options.command == "plan":
        return commands.plan(
            options.file, options.json, options.handout, notebook_of(options), options.bottles
        )
    if options.command == "evaluate":
        return commands.evaluate(options.files, options.json)
    if options.command == "ask":
        return commands.ask(options, notebook_of(options))
    if options.command in ("export", "import"):
        return _carried(options)
    return commands.chat(options.evening, notebook_of(options), options.bottles, options.plain)
