"""What a shell completes the words of a command line by, made from the options themselves."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from assistant.options import actions, commands, every_parser

SHELLS = ("bash", "zsh", "fish")


class PrintCompletion(argparse.Action):
    """An option that prints the completion for a shell and leaves with 0."""

    def __init__(self, option_strings: Sequence[str], dest: str, help: str | None = None) -> None:
        nowhere = argparse.SUPPRESS
        super().__init__(option_strings, nowhere, default=nowhere, choices=SHELLS, metavar="SHELL", help=help)

    def __call__(
        self, parser: argparse.ArgumentParser, namespace: argparse.Namespace, values: Any, option: Any = None
    ) -> None:
        """Prints what `completion` gives for the whole parser."""
        print(completion(parser, values), end="")
        parser.exit()


def completion(parser: argparse.ArgumentParser, shell: str) -> str:
    """The text that `shell`, one of SHELLS, reads to complete every command and option of the parser.

    It changes the parser, which is of no further use but for this.
    """
    import shtab  # read only here: it is no part of answering

    for command in commands(parser):
        command.parser.description = command.help  # a menu has room for the short text only
    for action in (action for each in every_parser(parser) for action in actions(each)):
        if action.type is Path:
            action.complete = shtab.FILE  # type: ignore[attr-defined]
    text: str = shtab.complete(parser, shell)
    return text.rstrip("\n") + "\n"
