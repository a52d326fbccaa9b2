"""A notebook carried between hosts, in words: what went out, what came in, what of it is opposed.

`by_talk` hears `export my notebook to kim.ttl` and `import Bea's notebook bea.ttl`; a file is never
overwritten by talk.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from pathlib import Path

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.knowledge.check_report import sentence
from assistant.knowledge.problems import Problem
from assistant.language.clean import clean
from assistant.notebook import Statement
from assistant.notebook.carrying import HOST, Brought, Sent
from assistant.notebook.statement import name
from assistant.taught.describe import described
from assistant.taught.keeper import Keeper
from assistant.taught.telling import date, no_notebook, plain
from assistant.taught.words import taught_words

MOST_TOLD, LONGEST_NAME = 5, 60
SEND, BRING = "send", "bring"


def by_talk(typed: str, keeper: Keeper, context: Context) -> Answer | None:
    """The answer where a text carries the notebook out or in, or None."""
    text = clean(typed).text.strip().rstrip(".!")
    for way in (SEND, BRING):
        found = next((m for p in taught_words().carries[way] if (m := p.fullmatch(text))), None)
        if found is None:
            continue
        said = found.groupdict()
        if not keeper.keeps:
            return no_notebook(context)
        if not said.get("file"):
            example = words(context, f"example-{way}")
            return plain(context, words(context, "which-file", example=example), understood=False)
        file = Path(said["file"]).expanduser()
        if way == SEND:
            lines, sound = sent_lines(keeper.send(file), file, context)
        else:
            lines, sound = _brought(keeper, file, said.get("whose") or "", context)
        return plain(context, lines[0], lines[1:], understood=sound)
    return None


def _brought(keeper: Keeper, file: Path, whose: str, context: Context) -> tuple[list[str], bool]:
    who = host_name(whose or file.stem)
    brought = keeper.bring(file, who) if who else None
    if brought is None:
        return [words(context, "no-name")], False
    how = words(context, "back-say", who=who)
    return brought_lines(brought, how, context), not brought.merged.problems


def host_name(said: str) -> str:
    """A name another host can have, or an empty text."""
    found = capital(name(said)[:LONGEST_NAME])
    return found if any(c.isalnum() for c in found) and found.casefold() != HOST else ""


def words(context: Context, template: str, /, **fields: object) -> str:
    """A sentence of this part of the wording."""
    return context.wording("carry", template, **fields)


def sent_lines(sent: Sent, file: Path, context: Context) -> tuple[list[str], bool]:
    """What was written, or why nothing was; whether all is well."""
    if sent.problems:
        return [told(sent.problems[0])], False
    if not (sent.count or sent.back):
        return [words(context, "sent-nothing")], False
    lines = [words(context, "sent-one" if sent.count == 1 else "sent", count=sent.count, file=file)]
    lines += [words(context, "sent-back", count=sent.back)] if sent.back else []
    return [*lines, *([words(context, "sent-damaged")] if sent.damaged else [])], not sent.damaged


def brought_lines(brought: Brought, how: str, context: Context) -> list[str]:
    """What came in and from whom, what was there, what is opposed, what did not come in."""
    merged = brought.merged
    if merged.problems:
        return [words(context, "problem", problem=told(merged.problems[0]))]
    by = Counter(one.author for one in merged.added)
    who = [words(context, "came-by", count=n, author=author) for author, n in by.most_common(MOST_TOLD)]
    lines = [words(context, "came", who=listed(who)) if who else words(context, "came-nothing")]
    for kind, count in (("there", brought.there), ("stay-back", brought.stay_back), ("idle", brought.idle)):
        lines += [words(context, kind, count=count)] if count else []
    lines += _taken_back(merged.taken_back, context) + _against(brought, context)
    lines += [told(problem) for problem in merged.remarks[:1]] + _left_out(merged.left_out, context)
    return [*lines, *([words(context, "back-how", how=how)] if who else [])]


def _taken_back(gone: Sequence[Statement], context: Context) -> list[str]:
    return [words(context, "taken-back", what=described([one], context)) for one in gone[:MOST_TOLD]]


def _against(brought: Brought, context: Context) -> list[str]:
    found, lines = brought.against, []
    for theirs, mine in found[:MOST_TOLD]:
        own = mine.author == HOST
        fields = {"theirs": described([theirs], context), "mine": described([mine], context)}
        fields |= {"other": words(context, "you") if own else mine.author, "who": theirs.author}
        verb = words(context, "say-you" if own else "say-other")
        lines.append(words(context, "against", verb=verb, date=date(context, mine.when), **fields))
    more = len(found) - MOST_TOLD
    lines += [words(context, "against-more", count=more)] if more > 0 else []
    return lines + ([words(context, "yours-first")] if found else [])


def _left_out(problems: Sequence[Problem], context: Context) -> list[str]:
    lines = [words(context, "left-out", problem=told(one)) for one in problems[:MOST_TOLD]]
    more = len(problems) - MOST_TOLD
    return lines + ([words(context, "left-out-more", count=more)] if more > 0 else [])


def told(problem: Problem) -> str:
    """A problem in a sentence."""
    return sentence(problem)
