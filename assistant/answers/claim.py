"""What somebody claims of a wine with a dish, or of air: whether it is so, by our own verdicts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.after.times import minutes_said
from assistant.answers.compose import compose, label
from assistant.answers.context import Context
from assistant.answers.judge import called, forces, judged, repairs, stand_ins
from assistant.answers.record import Answer
from assistant.answers.service import service
from assistant.answers.wording import capital, listed
from assistant.language.claimed import AIR, claim_of
from assistant.pairing import choose
from assistant.pairing.match import Match
from assistant.pairing.score import DISLIKED, LIKED

OTHERS, ONLY, MUST = 2, "only", "must"
WHOLE = {ONLY: "claim-only-whole", "everything": "claim-everything"}


def claim(context: Context) -> Answer | None:
    """Whether the claim is so; None where none is made, or what it is about is not known."""
    sort, frame = claim_of(context.frame), context.frame
    if not sort or not frame.wines:
        return None
    if sort == AIR:
        return _of_air(context)
    dishes = frame.dishes or context.tonight.dishes
    if not dishes:
        return _whole(context, sort)
    used = context.all_used()  # whoever claims it may be named
    return _of_pair(replace(used, frame=replace(used.frame, dishes=dishes)), sort)


def _of_pair(context: Context, sort: str) -> Answer:
    """The claim with the verdict on the wine, other wines that do, and the reasons."""
    match = judged(context, context.frame.wines[0])
    others = [one for one in _others(context, match) if one.verdict in LIKED] if sort in (ONLY, MUST) else []
    told = {"wine": called(context, context.frame.wines[0]), "dish": context.dish_name()}
    told |= {"verdict": match.verdict, "others": listed([f"{label(context, m)} {m.verdict}" for m in others])}
    say = capital(context.wording("say", _way(sort, match, others), **told))
    lines = [*stand_ins(context, [match]), *forces(context, match)]
    mends = repairs(context, match) if match.verdict not in LIKED and not others else []
    return compose(context, say, [say, *lines, *mends], picks=[match, *others], verdict=match.verdict)


def _way(sort: str, match: Match, others: Sequence[Match]) -> str:
    """The template of what is said first."""
    liked, disliked = match.verdict in LIKED, match.verdict in DISLIKED
    if sort == ONLY and (others or liked):
        return "claim-only" if others else "claim-only-alone"
    if sort == MUST and others:
        return "claim-no-must"
    return "claim-no-such" if liked else "claim-some-truth" if disliked else "claim-either-way"


def _others(context: Context, match: Match) -> list[Match]:
    """The wines that do best with the dishes beside the one claimed; of the table, where wines are poured."""
    ranked = context.engine.rank(context.table(), context.candidates())
    same = set(context.knowledge.styles_of(context.frame.wines[0])) | {match.wine}
    return choose.picks([one for one in ranked if one.wine not in same], OTHERS, context.knowledge)


def _whole(context: Context, sort: str) -> Answer:
    """That no such rule is known where no dish is named."""
    say = context.wording("say", WHOLE.get(sort, "claim-which"), wine=called(context, context.frame.wines[0]))
    return compose(context.all_used(), say, [say])


def _of_air(context: Context) -> Answer:
    """Whether the wine wants air, and as long as is claimed; then how it is served."""
    served = service(context)
    wine = context.knowledge.wines.get(context.frame.wines[0])
    if wine is None:
        return served
    most, claimed = (wine.air.high if wine.air else 0.0), minutes_said(context.frame.text.typed)
    way = "no" if not most else "less" if claimed and claimed > most else "some"
    say = capital(context.wording("say", f"claim-{way}-air", wine=wine.label, most=f"{most:g}"))
    return replace(served, say=say, text=f"{say}\n{served.text}")
