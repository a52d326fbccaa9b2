"""Looks through the options of a parser, for what is made from them: completion, the manual page.

argparse has no public way to list what a parser holds; the two private names it takes are read here only.
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from dataclasses import dataclass


@dataclass(frozen=True)
class Command:
    """A command of a parser: its name, what the list of commands says of it, and its own options."""

    name: str
    help: str
    parser: argparse.ArgumentParser


def actions(parser: argparse.ArgumentParser) -> tuple[argparse.Action, ...]:
    """The options and arguments of this parser that its help shows, without those of its commands."""
    return tuple(
        action
        for action in parser._actions
        if action.help != argparse.SUPPRESS and not isinstance(action, argparse._SubParsersAction)
    )


def commands(parser: argparse.ArgumentParser) -> tuple[Command, ...]:
    """The commands of a parser in the order in which they were added; none where it has none."""
    return tuple(
        Command(told.dest, told.help or "", action.choices[told.dest])
        for action in parser._actions
        if isinstance(action, argparse._SubParsersAction)
        for told in action._choices_actions
    )


def every_parser(parser: argparse.ArgumentParser) -> Iterator[argparse.ArgumentParser]:
    """The parser and those of its commands, however deep."""
    yield parser
    for command in commands(parser):
        yield from every_parser(command.parser)
