"""What the host teaches: kept as a name, a food, a pair or a taste where it is one, else as a note."""

from __future__ import annotations

from collections.abc import Callable

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.pairing.dish import table_of
from assistant.taught.alias import alias
from assistant.taught.lesson import Lesson
from assistant.taught.new_food import new_food
from assistant.taught.note import as_note
from assistant.taught.pairing import pairing
from assistant.taught.profile import profile
from assistant.taught.telling import Hearing, no_notebook, not_kept, plain, words

LESSONS: tuple[Callable[[Hearing], Lesson | None], ...] = (alias, new_food, pairing, profile)


def taught(heard: Hearing) -> Answer:
    """Keeps the lesson and tells what was taken, and how many of tonight's pairs change their verdict."""
    if not heard.keeper.keeps:
        return no_notebook(heard.context)
    lesson = next((found for make in LESSONS if (found := make(heard))), None) or _note(heard)
    before = verdicts(heard.context)
    problems = heard.keeper.keep(*lesson.made)
    if problems:
        return not_kept(heard.context, problems)
    after = verdicts(heard.context)
    changed = sum(after[pair] != verdict for pair, verdict in before.items())
    return plain(heard.context, lesson.say, [*lesson.lines, *changes(heard.context, changed)])


def _note(heard: Hearing) -> Lesson:
    line = words(heard.context, "note-line")
    return Lesson((as_note(heard),), words(heard.context, "note"), (line,))


def verdicts(context: Context) -> dict[tuple[int, str], str]:
    """The verdict of every wine on the table with every dish on it, by place of the dish and wine."""
    tonight = context.tonight
    return {
        (at, match.wine): match.verdict
        for at, dish in enumerate(tonight.dishes if tonight.wines else ())
        for match in context.engine.rank(table_of([dish]), tonight.wines)
    }


def changes(context: Context, count: int) -> list[str]:
    """How many answers change; nothing where none does."""
    if not count:
        return []
    return [words(context, "changes-one" if count == 1 else "changes", count=count)]
