"""`unlearn what I said about gouda`: the newest statement that is meant is withdrawn, nothing is erased."""

from __future__ import annotations

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.language.fold import key
from assistant.language.frame import Frame
from assistant.notebook import Statement, withdrawal
from assistant.taught.describe import described, groups
from assistant.taught.keeper import AUTHOR, Keeper
from assistant.taught.teach import changes, differing, verdicts
from assistant.taught.telling import not_kept, plain, words
from assistant.taught.words import taught_words

Group = tuple[Statement, ...]


def meant_back(frame: Frame, keeper: Keeper) -> Group | None:
    """The statements that an undoing is about; empty where what was taught is meant but none is found.

    None: it is not about what was taught.
    """
    if not keeper.told():  # nor withdrawals that could be taken back
        return None
    others = _of_author(frame, keeper)
    if others:
        return others
    named = [*(r.id for r in frame.text.readings), *_content(frame)]
    speaks = taught_words().lines["taught"].stand_in(frame.text.stems)
    if speaks and not named and taught_words().sets["all"].intersection(frame.text.stems):
        return tuple(one for one in keeper.told() if not one.withdraws)
    if not named:
        rolled = tuple(one for one in keeper.just if one.withdraws)
        return rolled or (_last(keeper) if keeper.just or speaks else _before(frame, keeper))
    sure = speaks or bool(keeper.just)
    found = _nearest(frame, keeper) if sure else None
    return found or (() if taught_words().lines["surely"].stand_in(frame.text.stems) else None)


def _content(frame: Frame) -> set[str]:
    """The words of an undoing that say what is meant."""
    idle = taught_words().sets["idle"]
    return {stem for stem in frame.text.stems if stem.isalnum() and stem not in idle}


def _of_author(frame: Frame, keeper: Keeper) -> Group:
    """`forget everything from Bea`: all that stands of another host who is named."""
    stems = key(frame.text.typed)  # as typed: a name is no slip of something to eat
    if not taught_words().lines["of_author"].stand_in(stems):
        return ()
    others = {one.author for one in keeper.told()} - {AUTHOR}
    named = {name for name in others if set(key(name)) <= set(stems)}
    return tuple(one for one in keeper.told() if one.author in named)


def _last(keeper: Keeper) -> Group:
    """What was kept just now, all that came in at once, or else the newest of what stands."""
    return keeper.just or next(iter(groups(keeper.told())), ())


def _before(frame: Frame, keeper: Keeper) -> Group | None:
    """What was kept before the last question, where it stands and is said to be forgotten."""
    still = tuple(one for one in keeper.before if one in keeper.told())
    return still if still and taught_words().lines["forgets"].stand_in(frame.text.stems) else None


def _nearest(frame: Frame, keeper: Keeper) -> Group | None:
    """The newest group that shares most with what is named."""
    ids, content = {r.id for r in frame.text.readings}, _content(frame)
    best: Group | None = None
    most = 0
    for group in groups(keeper.told()):
        about = {one for s in group if s.kind not in ("note", "parked", "vote") for one in s.about}
        shared = 2 * len(ids & about) + len(content & _stems(group))
        best, most = (group, shared) if shared > most else (best, most)
    return best


def _stems(group: Group) -> set[str]:
    return {stem for one in group for stem in (*key(one.said), *key(" ".join(one.about)))}


def take_back(context: Context, keeper: Keeper, group: Group) -> Answer:
    """Withdraws the statements and says what they were."""
    if not group:
        return plain(context, words(context, "withdrawn-none"), understood=False)
    before = verdicts(context, keeper)
    problems = keeper.keep(*(withdrawal(one, context.frame.text.typed, AUTHOR) for one in group))
    if problems:
        return not_kept(context, problems)
    keeper.just = keeper.before = ()
    changed = differing(before, verdicts(context, keeper))
    if group[0].withdraws:
        return plain(context, words(context, "stands-again", count=len(group)), changes(context, changed))
    count = len(groups(group))
    said = {"what": described(group, context), "count": count}
    say = words(context, "withdrawn-all" if count > 1 else "withdrawn", **said)
    return plain(context, say, changes(context, changed))
