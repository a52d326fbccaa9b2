"""A statement in a few words, as it is listed or taken back."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.context import Context
from assistant.answers.sanitise import safe_line
from assistant.answers.wording import listed
from assistant.notebook import Statement
from assistant.taught.overlay import SCHEMA
from assistant.taught.profile import how
from assistant.taught.telling import words

LONGEST = 80
USED = ("alias", "pairing", "profile", "new-food")


def groups(statements: Sequence[Statement]) -> list[tuple[Statement, ...]]:
    """Statements that were made of the same words one after another, newest first; withdrawals left out."""
    found: list[tuple[Statement, ...]] = []
    for one in reversed([s for s in statements if not s.withdraws]):
        if found and (found[-1][0].said, found[-1][0].evening) == (one.said, one.evening):
            found[-1] = (one, *found[-1])
        else:
            found.append((one,))
    return found


def described(group: Sequence[Statement], context: Context) -> str:
    """What a group of statements says; words that are only kept stand in quotation marks."""
    first = group[0]
    fields = {
        "things": listed([thing(one, context) for one in reversed(first.about)]),
        "thing": thing(first.about[0], context) if first.about else "",
        "name": f"“{first.value.get('alias', '')}”",
        "verdict": context.knowledge.label(str(first.value.get("verdict", ""))),
        "how": how(amounts(group)),
        "like": thing(str(first.value.get("like", "")), context),
        "said": first.said if len(first.said) <= LONGEST else first.said[:LONGEST] + "…",
    }
    return safe_line(words(context, f"what-{_sort(first, str(fields['how']))}", **fields))


def _sort(first: Statement, how_it_is: str) -> str:
    """The name of the sentence that describes a statement."""
    if first.kind == "first-voice":
        return f"first-{first.value['first']}" + ("-of" if first.about else "")
    if first.kind == "new-food" and how_it_is:
        return "new-food-but"
    return first.kind if first.kind in USED else "said"


def thing(name: str, context: Context) -> str:
    """A term by its label, another name as it is."""
    return context.knowledge.label(name) if name in context.knowledge.digest else name


def amounts(group: Sequence[Statement]) -> dict[str, float]:
    """The amounts that a group of profile statements gives."""
    profiles = (one for one in group if one.kind == "profile")
    return {str(p.value["dimension"]).removeprefix(SCHEMA): float(p.value["amount"]) for p in profiles}
