"""What is wrong with a board, in words."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.answers.wording import Wording, listed
from assistant.evening.board import SUPPORT, Finding
from assistant.knowledge import names
from assistant.knowledge.store import Knowledge

NAMED_LACKS = 2


def wrong(found: Iterable[Finding], knowledge: Knowledge) -> list[Finding]:
    """The aspects with faults, those that count most first."""
    faulty = [finding for finding in found if finding.faults]
    return sorted(faulty, key=lambda f: -f.faults * knowledge.entry(f.aspect)["counts"][0])


def told(finding: Finding, knowledge: Knowledge, wording: Wording) -> str:
    """One fault in a sentence."""
    lacks = [knowledge.label(place) for place in finding.lacks]
    fields = {
        "has": listed([knowledge.label(name) for name in finding.has]),
        "first": finding.has[0] if finding.has else "",
        "lacks": listed(lacks) if finding.aspect == SUPPORT else listed(lacks[:NAMED_LACKS], "or"),
    }
    return wording("board", names.local(finding.aspect), **fields)
