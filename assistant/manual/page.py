"""Writes the options of a parser as a page for man(7).

What no parser knows (exit status, files, examples) stands in `ending.man`, in the language of man(7).
"""

from __future__ import annotations

import argparse
import re
from collections.abc import Iterable
from pathlib import Path

from assistant.options import Command, actions, commands

ENDING = Path(__file__).with_name("ending.man")
PAGE = Path(__file__).with_name("goeswith.1")
SENTENCE = re.compile(r"(?<=\.)\s+(?=[A-Z])")


def page(parser: argparse.ArgumentParser, version: str) -> str:
    """The whole page. The first sentence of the description names the program, the rest describes it."""
    first, *rest = SENTENCE.split(parser.description or "")
    told = commands(parser)
    lines = [
        f'.TH {plain(parser.prog).upper()} 1 "" "{plain(parser.prog)} {plain(version)}" "User Commands"',
        ".SH NAME",
        rf"{plain(parser.prog)} \- {plain(first[:1].lower() + first[1:].rstrip('.'))}",
        *synopsis(parser, told),
        ".SH DESCRIPTION",
        *map(plain, rest),
        ".SH OPTIONS",
        *table(actions(parser)),
        ".SH COMMANDS",
        *(line for command in told for line in of_command(command)),
    ]
    return "\n".join(lines) + "\n" + ENDING.read_text(encoding="utf-8")


def synopsis(parser: argparse.ArgumentParser, told: Iterable[Command]) -> list[str]:
    """How the program and each of its commands is typed, the options before the arguments."""
    lines = [".SH SYNOPSIS"]
    for each in (parser, *(command.parser for command in told)):
        typed = sorted(actions(each), key=lambda action: not action.option_strings)
        usages = (usage(action) for action in typed if action.dest != "help")
        lines += [f".SY {quoted(each.prog)}", *usages, ".YS"]
    return lines


def usage(action: argparse.Action) -> str:
    """An option or argument as the synopsis shows it: in brackets where it may be left out."""
    longest = max(action.option_strings, key=len, default="")
    word = r"\ ".join(part for part in (longest and bold(longest), value(action)) if part)
    return f"[{word}]" if action.option_strings or action.nargs in ("?", "*") else word


def of_command(command: Command) -> list[str]:
    """What a command does, its arguments and its options."""
    description = SENTENCE.split(command.parser.description or "")
    return [f".SS {quoted(command.parser.prog)}", *map(plain, description), *table(actions(command.parser))]


def table(shown: Iterable[argparse.Action]) -> list[str]:
    """Each option or argument in a paragraph of its own."""
    return [line for action in shown for line in (".TP", heading(action), plain(said(action)))]


def heading(action: argparse.Action) -> str:
    """The names of an option with its value, or the name of an argument."""
    names = ", ".join(map(bold, action.option_strings))
    return " ".join(part for part in (names, value(action)) if part)


def value(action: argparse.Action) -> str:
    """What is written for the value of an action, empty for a mere switch."""
    if action.nargs == 0:
        return ""
    word = action.metavar if isinstance(action.metavar, str) else action.dest
    return rf"\fI{plain(word)}\fP" + (r"\ ..." if action.nargs in ("*", "+") else "")


def said(action: argparse.Action) -> str:
    """The help of an action as a sentence."""
    text = action.help or ""
    return text[:1].upper() + text[1:] + "."


def bold(text: str) -> str:
    """Text in bold."""
    return rf"\fB{plain(text)}\fP"


def plain(text: str) -> str:
    """Text that troff prints as it stands."""
    safe = text.replace("\\", r"\e").replace("-", r"\-")
    return rf"\&{safe}" if safe[:1] in (".", "'") else safe


def quoted(text: str) -> str:
    """An argument of a request, blanks and all."""
    return '"' + plain(text).replace('"', r"\(dq") + '"'
