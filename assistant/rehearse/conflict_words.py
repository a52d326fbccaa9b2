"""A conflict in a sentence: who said what and when, and which of the two answers go by."""

from __future__ import annotations

from assistant.answers.sanitise import safe
from assistant.answers.wording import Wording, capital, listed
from assistant.knowledge.store import Knowledge
from assistant.notebook import Statement
from assistant.rehearse.conflicts import BOOK, NAME, PROFILE, Conflict
from assistant.taught.keeper import AUTHOR
from assistant.taught.overlay import SCHEMA
from assistant.taught.pairs import verdict_of
from assistant.taught.profile import how


def told_of(conflict: Conflict, knowledge: Knowledge, wording: Wording) -> str:
    """The sentence."""
    older, newer = conflict.older, conflict.newer or conflict.older
    fields = {
        "things": listed([label(one, knowledge) for one in reversed(older.about)]),
        "name": str(older.value.get("alias", older.about[0] if older.about else "")),
        **{f"older_{name}": said for name, said in _of(older, conflict.kind, knowledge, wording).items()},
        **{f"newer_{name}": said for name, said in _of(newer, conflict.kind, knowledge, wording).items()},
    }
    if conflict.kind == BOOK:
        way = "beside-lower" if conflict.apart > 0 else "beside-higher"
        fields |= {"book": conflict.verdict or "", "score": f"{conflict.score:+.1f}"}
        fields |= {"steps": wording("taught-steps", str(abs(conflict.apart))), "way": wording("taught", way)}
    return capital(safe(wording("rehearse", f"conflict-{conflict.kind}", **fields)))


def label(name: str, knowledge: Knowledge) -> str:
    """A term by its label, another name as it is."""
    return knowledge.label(name) if name in knowledge.digest else name


def _of(one: Statement, kind: str, knowledge: Knowledge, wording: Wording) -> dict[str, str]:
    """Who said it, when, and what of it is at odds."""
    who = wording("taught", "by-you") if one.author == AUTHOR else one.author
    when = wording.date(one.when)
    return {"who": who, "date": when, "what": _what(one, kind, knowledge)}


def _what(one: Statement, kind: str, knowledge: Knowledge) -> str:
    if kind == PROFILE:
        dimension = str(one.value["dimension"]).removeprefix(SCHEMA)
        return how({dimension: float(one.value["amount"])}) or f"{dimension} {one.value['amount']:+}"
    if kind == NAME:
        return label(str(one.value.get("like", one.about[0])), knowledge)
    return verdict_of(one)
