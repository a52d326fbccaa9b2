"""What the host teaches: kept as a name, a food, a pair or a taste where it is one, else as a note."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import datetime

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.pairing.dish import table_of
from assistant.taught.alias import alias
from assistant.taught.first import first_voice
from assistant.taught.keeper import Keeper
from assistant.taught.lesson import Lesson
from assistant.taught.new_food import new_food
from assistant.taught.note import as_note
from assistant.taught.pairing import pairing
from assistant.taught.pairs import heard as told_first
from assistant.taught.profile import profile
from assistant.taught.telling import Hearing, date, no_notebook, not_kept, plain, words

WEEK = 7
LESSONS: tuple[Callable[[Hearing], Lesson | None], ...] = (first_voice, alias, new_food, pairing, profile)


def taught(heard: Hearing) -> Answer:
    """Keeps the lesson and tells what was taken, and how many of tonight's pairs change their verdict."""
    if not heard.keeper.keeps:
        return no_notebook(heard.context)
    lesson = next((found for make in LESSONS if (found := make(heard))), None) or _note(heard)
    before = verdicts(heard.context, heard.keeper)
    problems = heard.keeper.keep(*lesson.made)
    if problems:
        return not_kept(heard.context, problems)
    changed = differing(before, verdicts(heard.context, heard.keeper))
    return plain(heard.context, lesson.say, [*lesson.lines, *changes(heard.context, changed)])


def _note(heard: Hearing) -> Lesson:
    line = words(heard.context, "note-line")
    return Lesson((as_note(heard),), words(heard.context, "note"), (line,))


def verdicts(context: Context, keeper: Keeper) -> dict[tuple[int, str], str]:
    """The verdict told first of each wine on the table with each dish, by place of the dish and wine."""
    tonight = context.tonight
    return {
        (at, match.wine): told_first(dish, match.wine, match.verdict, keeper)
        for at, dish in enumerate(tonight.dishes if tonight.wines else ())
        for match in context.engine.rank(table_of([dish]), tonight.wines)
    }


def differing(before: Mapping[tuple[int, str], str], after: Mapping[tuple[int, str], str]) -> int:
    """In how many pairs two hearings of the same table differ."""
    return sum(after[pair] != verdict for pair, verdict in before.items())


def changes(context: Context, count: int) -> list[str]:
    """How many answers change; nothing where none does."""
    if not count:
        return []
    when = evening(context)
    return [words(context, "changes-one" if count == 1 else "changes", count=count, when=when)]


def evening(context: Context, now: datetime | None = None) -> str:
    """When the evening on the table is: `tonight`, `Saturday`, `12 February`."""
    start, today = context.tonight.start, (now or datetime.now()).date()
    if start is None or start.date() == today:
        return words(context, "tonight")
    soon = 0 < (start.date() - today).days < WEEK
    return f"{start:%A}" if soon else date(context, start)
