"""Puts an answer together: the record, the lines, and what was read of the question."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.context import Context
from assistant.answers.not_on import not_on
from assistant.answers.record import Answer
from assistant.answers.wording import listed
from assistant.language.clean import MAX_CHARACTERS
from assistant.language.fold import key
from assistant.language.frame import Reading
from assistant.pairing.match import Match

EDIBLE = ("food", "sauce", "dressing", "garnish", "cuisine")


def compose(
    context: Context,
    say: str,
    lines: Sequence[str],
    picks: Sequence[Match] = (),
    avoid: Sequence[Match] = (),
    verdict: str | None = None,
    other: Match | None = None,
    tied: tuple[str, ...] = (),
) -> Answer:
    """An answer with these lines, matches and verdict, the readings appended."""
    return Answer(
        question=context.frame.text.typed,
        intent=context.frame.intent,
        say=say,
        text="\n".join([*(line for line in lines if line), *reading_lines(context)]),
        read_as=context.read_as(),
        left_out=left_out(context),
        dish=context.dish_record(),
        picks=tuple(context.item(m) for m in picks),
        avoid=tuple(context.item(m) for m in avoid),
        verdict=verdict,
        other_colour=context.item(other) if other else None,
        tied=tied,
    )


def left_out(context: Context) -> tuple[str, ...]:
    """The words that could not be used, less the names that are told as read (`swap brie for camembert`)."""
    read = {key(reading.text) for reading in context.frame.text.readings}
    return tuple(word for word in context.frame.text.left_out if key(word) not in read)


def label(context: Context, match: Match) -> str:
    """The name of a match's wine."""
    return context.knowledge.wines[match.wine].label


def _as_read(context: Context, reading: Reading) -> str:
    """The name of what was read; of a wine that is ruled out, that it is."""
    bans = (p for p in context.frame.preferences if p.banned)
    said = reading.text.casefold(), reading.label.casefold()
    own = (p.label for p in bans if p.wanted == reading.id or p.label.casefold().endswith(said))
    return next(own, reading.label)


def _stands_in(context: Context, reading: Reading) -> bool:
    """Whether something else was named, for which the figures of what was read stand in."""
    stems = context.frame.text.stems[reading.start : reading.end]
    near = context.knowledge.entry(reading.id).get("nearLabel", ())
    return bool(near) and " ".join(filter(str.isalnum, stems)) in {" ".join(key(label)) for label in near}


def reading_lines(context: Context) -> list[str]:
    """What was read, what was mended, and what could not be used."""
    text, wording = context.frame.text, context.wording
    lines = []
    if text.readings:
        labels = list(dict.fromkeys(_as_read(context, reading) for reading in text.readings))
        lines.append(wording("line", "read", readings=", ".join(labels)))
    if context.frame.dishes and not any(r.kind in EDIBLE for r in text.readings):
        lines.append(wording("line", "standing", dish=context.dish_name()))
    near = [r for r in text.readings if _stands_in(context, r)]
    lines += [wording("line", "stands-in", typed=r.corrected_from or r.text, meant=r.label) for r in near]
    lines += [
        wording("line", "mended", typed=r.corrected_from, meant=r.label)
        for r in text.readings
        if r.corrected_from and r not in near
    ]
    lines += not_on(context)
    if left_out(context):
        quoted = listed([f"“{word}”" for word in left_out(context)])
        lines.append(wording("line", "left-out", words=quoted))
    lines += [wording("line", note, limit=MAX_CHARACTERS) for note in text.notes]
    return lines
