"""Trouble at the table: what to do now, the likeliest cause, and the checks that tell the causes apart."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from assistant.answers.context import Context
from assistant.answers.notes import note_lines, noted
from assistant.answers.record import Answer
from assistant.answers.unnamed import unnamed
from assistant.knowledge.concepts import Entry, first

UNKNOWN = "fault/odd-smell"


def trouble(context: Context) -> Answer:
    """The faults or symptoms named, the surest first; where none is known, what to look at is asked."""
    found = context.frame.entries
    if not found:
        return unnamed(context, "trouble-unknown", "trouble-ask")
    faults = [_fault_of(context, name) for name in found]
    say = str(first(context.knowledge.entry(found[0]), "say"))
    lines = [line for name in found for line in _lines(context, name)]
    answer = noted(context, say, lines, [context.knowledge.entry(fault) for fault in faults])
    return replace(answer, dish=None)


def _fault_of(context: Context, name: str) -> str:
    """The fault itself, or the likeliest one behind a symptom."""
    return str(first(context.knowledge.entry(name), "likeliest", name))


def _lines(context: Context, name: str) -> list[str]:
    """One fault, or a symptom: its likeliest cause and the checks that tell."""
    entry, wording = context.knowledge.entry(name), context.wording
    fault = _fault_of(context, name)
    told = "likeliest" if fault != name else "cause"
    unknown = fault == UNKNOWN and fault != name  # then the checks alone tell
    lines = [] if unknown else _fault_lines(context, fault, told)
    if "check" in entry:
        lines += [wording("line", "checks", symptom=context.knowledge.label(name))]
        lines += _checks(context, entry["check"][0])
    return lines


def _fault_lines(context: Context, fault: str, told: str) -> list[str]:
    """The cause, its sign, the remedy, and whether it can be poured."""
    entry, wording = context.knowledge.entry(fault), context.wording
    lines = [
        wording("line", told, cause=context.knowledge.label(fault), sign=first(entry, "sign")),
        wording("line", "remedy", remedy=first(entry, "remedy")),
    ]
    pour = first(entry, "pour")
    lines += [wording("line", "pour", pour=context.knowledge.label(pour))] if pour else []
    return [*lines, *note_lines(context, entry)]


def _checks(context: Context, check: Entry) -> list[str]:
    """The tree of checks, one line a question, in the order to ask them."""
    yes = _branch(context, check["yes"][0])
    no = _branch(context, check["no"][0])
    last = context.wording("line", "check-no", then=no[0])
    asked = context.wording("line", "check", asks=first(check, "asks"), then=yes[0])
    return [asked, *yes[1:], *([last] if isinstance(check["no"][0], str) else no)]


def _branch(context: Context, target: Any) -> list[str]:
    """A fault in one line, or the checks that follow."""
    if not isinstance(target, str):
        return _checks(context, target)
    say = first(context.knowledge.entry(target), "say")
    return [context.wording("line", "check-fault", cause=context.knowledge.label(target), say=say)]
