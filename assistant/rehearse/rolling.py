"""`undo everything since Friday`: all that was told from a moment on is taken back in one step.

What stood then and was taken back since stands again, so that the notebook is as it was at that moment. The
step is kept like any other and can be taken back itself.
"""

from __future__ import annotations

from datetime import datetime

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.language.frame import Frame
from assistant.notebook import Statement, withdrawal
from assistant.rehearse.moments import moment, names_moment
from assistant.rehearse.words import rehearse_words
from assistant.taught.describe import described, groups
from assistant.taught.keeper import AUTHOR, Keeper
from assistant.taught.teach import changes, differing, verdicts
from assistant.taught.telling import not_kept, plain, words

MOST_TOLD = 10
MEANT = ("undo", "unclear", "teach", "note", "smalltalk", "help")


def rolls(frame: Frame, keeper: Keeper) -> bool:
    """Whether a frame takes back all that was told since some moment, one that is named or the evening's."""
    if not rehearse_words().lines["rolls"].stand_in(frame.text.stems):
        return False
    bounded = rehearse_words().bounds.intersection(frame.text.stems)
    if frame.intent not in MEANT or "?" in frame.text.typed or not bounded:
        return False
    return keeper.keeps and names_moment(frame.text.stems, datetime.now().date())


def roll_back(context: Context, keeper: Keeper, now: datetime | None = None) -> Answer:
    """Takes it back and tells what it was."""
    now = now or datetime.now().astimezone()
    since = moment(context.frame.text.stems, now, context.tonight.start, keeper.told())
    if since is None:
        return plain(context, words(context, "roll-when"), understood=False)
    group = _since(since, keeper)
    date = context.wording.date(since)
    if not group:
        return plain(context, words(context, "roll-none", date=date), understood=False)
    return _withdrawn(group, date, context, keeper)


def _since(moment: datetime, keeper: Keeper) -> tuple[Statement, ...]:
    """What stands of what was told since, and what took back something older."""
    made = keeper.made()
    older = {id for id, one in made.items() if one.when < moment}
    found = (one for one in keeper.told() if one.when >= moment)
    return tuple(one for one in found if not one.withdraws or one.withdraws in older)


def _withdrawn(group: tuple[Statement, ...], date: str, context: Context, keeper: Keeper) -> Answer:
    before, told = verdicts(context, keeper), groups(group)
    problems = keeper.keep(*(withdrawal(one, context.frame.text.typed, AUTHOR) for one in group))
    if problems:
        return not_kept(context, problems)
    lines = [f"- {described(one, context)}" for one in told[:MOST_TOLD]]
    lines += [words(context, "standing-more", count=len(told) - MOST_TOLD)] if len(told) > MOST_TOLD else []
    again = sum(bool(one.withdraws) for one in group)
    lines += [words(context, "roll-again", count=again)] if again else []
    lines += changes(context, differing(before, verdicts(context, keeper)))
    name = "rolled-one" if len(told) == 1 else "rolled"
    say = words(context, name, count=len(told) or words(context, "nothing"), date=date)
    return plain(context, say, [*lines, words(context, "rolled-undo")])
