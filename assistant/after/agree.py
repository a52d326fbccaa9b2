"""`did they agree with us`, `is n=9 enough to change the rule`, `gouda + Syrah again`: votes and verdicts."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from assistant.after.ballots import Ballot, ballots
from assistant.after.by_hands import Counts, counted, result
from assistant.after.figures import half_interval, points_of, shrunk, spearman, t95, votes_needed
from assistant.after.phrases import said
from assistant.after.telling import told
from assistant.answers.context import Context
from assistant.answers.overview import overview
from assistant.answers.record import Answer
from assistant.answers.wording import capital, listed
from assistant.evening.facts import fact
from assistant.language.follow_lines import says
from assistant.language.quantities import numbers
from assistant.pairing.score import LIKED

if TYPE_CHECKING:
    from assistant.session import Session

MOST_LISTED = 6
_COUNT = re.compile(r"\bn\s*=\s*(\d{1,5})")


def agreed(context: Context, session: Session) -> Answer:
    """Hits and misses of our verdicts, each with mean and interval, and what the votes would do to them."""
    found = _cast(context, session)
    if isinstance(found, Answer):
        return favourite(context, session) if counted(context, session) else found
    called = [ballot for ballot in found if ballot.agrees is not None]
    lines = [_score(called)]
    lines += [line_of(ballot, context) for ballot in (*called, *_uncalled(found))[:MOST_LISTED]]
    first = next((ballot for ballot in called if ballot.votes.n > 1), None)
    lines += [_shrunk(first, context)] if first else []
    lines += [_ranked(found), *_smallness(found), said("votes", "next")]
    return told(context, lines)


def favourite(context: Context, session: Session) -> Answer:
    """What was liked best, and least, by the mean of the votes; of equals what more voted on.

    A show of hands comes first. Without votes, the pair of the table that is best by the rules, and that
    nobody has voted.
    """
    found = _cast(context, session)
    if counts := counted(context, session):
        return _by_hands(counts, found, context)
    if isinstance(found, Answer):
        if not (says(context.frame, "best-pair") and context.tonight.wines and context.tonight.dishes):
            return found
        whole = overview(context)
        return replace(whole, text=f"{whole.text}\n{found.say}")
    return told(context, [*_best(found, context), *_smallness(found)])


def _by_hands(counts: Counts, found: Sequence[Ballot] | Answer, context: Context) -> Answer:
    """Who won the show of hands, then what was liked best by what single guests said, where they did."""
    beside = [] if isinstance(found, Answer) else _best(found, context)
    lines = [said("votes", "hands-beside", line=beside[0]), *beside[1:]] if beside else []
    return told(context, [result(counts, context), *lines])


def _best(found: Sequence[Ballot], context: Context) -> list[str]:
    """What single guests liked best, then the mean of each, the best first."""
    ranked = sorted(found, key=lambda ballot: (-ballot.votes.mean, -ballot.votes.n))
    top = (ranked[0].votes.mean, ranked[0].votes.n)
    best = [ballot for ballot in ranked if (ballot.votes.mean, ballot.votes.n) == top]
    names = listed([thing(ballot, context) for ballot in best])
    say = said("votes", "favourite" if len(best) == 1 else "favourites", things=capital(names))
    lone = [ballot for ballot in ranked[:MOST_LISTED] if ballot.votes.n == 1][1:]  # told of the first of them
    return [
        say,
        *(
            said("votes", "liked", thing=thing(b, context), votes=_mean(b, b in lone))
            for b in ranked[:MOST_LISTED]
        ),
    ]


def enough(context: Context, session: Session) -> Answer:
    """Whether so many votes bear a change of the rule; without a number, the votes told of what is named."""
    k, sure = fact("after", "votes", "k").typical, fact("after", "votes", "sure").typical
    found = _about(ballots(context, session), context) if session.taught.keeps else []
    n = count_said(context) or (found[0].votes.n if found else None)
    own = found[0].votes if found and found[0].votes.own and found[0].votes.n == n else None
    spread = own.spread if own else fact("after", "votes", "spread").typical
    need = {"sure": sure, "count": votes_needed(sure, spread), "k": f"{k:g}"}
    if n is None:
        return told(context, [said("votes", "how-many", **need), said("votes", "next")])
    half = own.half if own else half_interval(spread, n)
    kind = "enough-one" if n == 1 else "enough-yes" if half <= sure else "enough-no"
    lines = [said("votes", kind, n=n, half=half)]
    lines += [said("votes", "t" if own else "z", t=t95(n), n=n, spread=spread)] if n > 1 else []
    lines += [said("votes", "weight", k=f"{k:g}", share=100 * n / (k + n)), said("votes", "need", **need)]
    lines += [_shrunk(found[0], context)] if own and found[0].verdict else []
    return told(context, [*lines, said("votes", "next")])


def again(context: Context, session: Session) -> Answer | None:
    """A pair asked about once more, by our verdict and the votes on it; None where nobody voted on it."""
    found = ballots(context, session) if session.taught.keeps else []
    wines = {style for wine in context.frame.wines for style in context.knowledge.styles_of(wine)}
    foods = {part.food for dish in context.frame.dishes for part in dish.parts}
    of_pair = [b for b in found if b.wine in wines and (b.food in foods or b.food is None)]
    ballot = next(iter(sorted(of_pair, key=lambda b: b.food is None)), None)
    if ballot is None:
        return None
    match = context.engine.judge(context.table(), context.knowledge.style(context.frame.wines[0]))
    n, liked = ballot.votes.n, ballot.liked
    ours, theirs = match.verdict in LIKED, 2 * liked > n
    kind = {(True, True): "yes", (False, False): "no", (True, False): "split"}.get((ours, theirs), "hm")
    lines = [said("votes", f"again-{kind}", verdict=match.verdict, liked=liked, n=n)]
    lines += [line_of(ballot, context), *_smallness([ballot]), said("votes", "next")]
    return told(context, lines)


def count_said(context: Context) -> int | None:
    """The number of votes that a question supposes."""
    equal = _COUNT.search(context.frame.text.typed.lower())
    if equal:
        return int(equal[1]) or None
    found = [value for _, _, value in numbers(context.frame.text.stems)]
    return int(found[0]) if found and found[0] >= 1 else None


def thing(ballot: Ballot, context: Context) -> str:
    """What was voted on, in words."""
    names = [context.knowledge.label(one) for one in (ballot.wine, ballot.food) if one]
    return context.wording("overview", "pair", wine=names[0], food=names[1]) if len(names) > 1 else names[0]


def line_of(ballot: Ballot, context: Context) -> str:
    """Hit, miss or no call, with the votes."""
    kind = {True: "hit", False: "miss", None: "open"}[ballot.agrees]
    verdict = ballot.verdict or said("votes", "nothing")
    return said("votes", kind, thing=thing(ballot, context), verdict=verdict, votes=_mean(ballot))


def _mean(ballot: Ballot, told_before: bool = False) -> str:
    """The mean; what one vote says is not told twice in an answer."""
    votes = ballot.votes
    one = "mean-one-more" if told_before else "mean-one"
    kind = one if votes.n == 1 else "mean"
    return said("votes", kind, mean=votes.mean, n=votes.n, half=votes.half)


def _cast(context: Context, session: Session) -> list[Ballot] | Answer:
    if not session.taught.keeps:
        return told(context, [said("votes", "no-notebook")], understood=False)
    found = ballots(context, session)
    return found or told(context, [said("votes", "none")], understood=False)


def _about(found: Sequence[Ballot], context: Context) -> list[Ballot]:
    """The ballots on what is named; without a name, on anything, where it is the only one."""
    named = {r.id for r in context.frame.text.readings}
    wines = {style for one in named for style in context.knowledge.styles_of(one)} | named
    meant = [ballot for ballot in found if {ballot.wine, ballot.food} & wines]
    return meant or (list(found) if len(found) == 1 else [])


def _uncalled(found: Sequence[Ballot]) -> list[Ballot]:
    return [ballot for ballot in found if ballot.agrees is None]


def _score(called: Sequence[Ballot]) -> str:
    hits = sum(bool(ballot.agrees) for ballot in called)
    if len(called) > 1:
        return said("votes", "agree", hits=hits, all=len(called))
    return said("votes", "agree-one" if hits else "miss-one" if called else "agree-none")


def _shrunk(ballot: Ballot, context: Context) -> str:
    k, votes = fact("after", "votes", "k").typical, ballot.votes
    rule = points_of(ballot.verdict or "neutral")
    told_ = {"rule": rule, "n": votes.n, "mean": votes.mean, "new": shrunk(rule, votes.mean, votes.n, k)}
    return capital(said("votes", "shrunk", thing=thing(ballot, context), k=f"{k:g}", **told_))


def _ranked(found: Sequence[Ballot]) -> str:
    pairs = [(ballot.score, ballot.votes.mean) for ballot in found if ballot.score is not None]
    least = fact("after", "votes", "ranked").typical
    rho = spearman([a for a, _ in pairs], [b for _, b in pairs]) if len(pairs) >= least else None
    return said("votes", "no-rank") if rho is None else said("votes", "rank", rho=rho, n=len(pairs))


def _smallness(found: Sequence[Ballot]) -> list[str]:
    """That no ballot here bears a change, where that is so; and what a vote on a wine alone counts too."""
    sure, most = fact("after", "votes", "sure").typical, max(found, key=lambda b: b.votes.n)
    small = most.votes.half > sure or most.votes.n == 1
    lines = [said("votes", "small-one" if most.votes.n == 1 else "small", n=most.votes.n)] if small else []
    return [*lines, *([said("votes", "alone")] if any(b.food is None and b.wine for b in found) else [])]
