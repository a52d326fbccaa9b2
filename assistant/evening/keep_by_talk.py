"""`save it as Friday` and `load quay house`: tonight's table kept and taken up again by talk."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from assistant.afresh import kept_meant
from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.evening.by_talk import evening_of
from assistant.evening.kept import kept, save, slug
from assistant.evening.records import Evening
from assistant.evening.table import set_table
from assistant.knowledge.problems import KnowledgeError
from assistant.language.follow_lines import behind
from assistant.session import Session
from assistant.table.tonight import Tonight

UNNAMED = "tonight"


def save_by_talk(context: Context, session: Session) -> Answer:
    """Writes the table under the name said, or as tonight's with its date."""
    name = (
        behind(context.frame, "names-evening")
        or behind(context.frame, "save")
        or f"{UNNAMED} {datetime.now():%Y-%m-%d}"
    )
    try:
        file = save(with_reserve(evening_of(context), context.tonight), name)
    except OSError as error:
        return _told(context, "not-saved", False, why=error.strerror or str(error))
    return _told(context, "saved", True, called=slug(name), file=str(file))


def with_reserve(evening: Evening, tonight: Tonight) -> Evening:
    """The evening with the wines of its file that are not poured, and how many of all are."""
    listed_ = tonight.evening.wines if tonight.evening else ()
    spare = tuple(line for line in listed_ if line.wine in tonight.reserve)
    if not spare:
        return evening
    return replace(evening, wines=(*evening.wines, *spare), choose=len(evening.wines))


def load_by_talk(context: Context, session: Session) -> Answer:
    """Puts the evening of the name said on the table."""
    name, files = kept_meant(context.frame) or behind(context.frame, "load"), kept()
    if slug(name) not in files:
        kind = "not-found" if files else "none-kept"
        return _told(context, kind, False, called=name or "?", names=listed(sorted(files)))
    try:
        set_table(session, files[slug(name)])
    except KnowledgeError as error:
        return _told(context, "spoilt", False, called=name, problem=str(error.problems[0]))
    table, label = session.tonight, context.knowledge.label
    things = [*map(label, table.wines), *(context.one_dish(dish) for dish in table.dishes)]
    return _told(context, "loaded", True, title=name.replace("-", " ").title(), things=listed(things))


def _told(context: Context, kind: str, understood: bool, **fields: str) -> Answer:
    text = replace(context.frame.text, readings=())  # what an evening is called by is no food or wine read
    context = replace(context, frame=replace(context.frame, intent="plan", text=text))
    say = context.wording("plan", kind, **fields)
    return replace(compose(context.all_used(), say, [say]), understood=understood)
