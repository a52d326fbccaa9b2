"""`what have I taught you`, and `who says that, you or me`."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.notebook import Statement
from assistant.taught.beside import beside
from assistant.taught.describe import described, groups
from assistant.taught.keeper import Keeper
from assistant.taught.telling import date, plain, words

MOST_LISTED = 10


def listing(context: Context, keeper: Keeper) -> Answer:
    """What stands, newest first with its date: ten at most, then how many more."""
    found = groups(keeper.told())
    kind = "standing-none" if not found else "standing-one" if len(found) == 1 else "standing"
    lines = [line for group in found[:MOST_LISTED] for line in _told(group, context, keeper)]
    more = len(found) - MOST_LISTED
    if more > 0:
        lines.append(words(context, "standing-more", count=more))
    return plain(context, words(context, kind, count=len(found)), lines)


def _told(group: Sequence[Statement], context: Context, keeper: Keeper) -> list[str]:
    """The date and what was said; below it the words, the book's word and what it changes."""
    when = date(context, group[0].when)
    line = words(context, "standing-line", date=when, what=described(group, context))
    more = beside(group, context, keeper)
    return [line, f"  {more}"] if more else [line]


def whose(context: Context, keeper: Keeper) -> Answer:
    """Whose word the last answer was: the book's alone, or the host's beside it."""
    last = keeper.last
    if last is None:
        return plain(context, words(context, "whose-nothing"), understood=False)
    if not last.voices:
        return plain(context, words(context, "whose-book"))
    yours = "; ".join(voice["says"].rstrip(".") for voice in last.voices)
    lines = [words(context, "whose-line", book=last.say.rstrip("."), yours=yours)]
    ids = [voice["statement"] for voice in last.voices]
    lines += [line for g in groups(keeper.told()) if g[0].id in ids for line in _told(g, context, keeper)]
    return plain(context, words(context, "whose-both"), lines)
