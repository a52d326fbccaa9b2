"""What was tasted is held against the verdict: `we tried it, it's lovely`, `no, it was horrible`."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.judge import called, judged, repairs
from assistant.answers.record import Answer
from assistant.answers.wording import capital
from assistant.language.follow_lines import says
from assistant.pairing.score import LIKED


def tasted(context: Context) -> Answer | None:
    """What the taste of those at the table counts beside the rules; None where no pair stands."""
    frame = context.frame
    bad = says(frame, "tasted-bad")
    if not (frame.wines and frame.dishes) or not (bad or says(frame, "tasted-good")):
        return None
    match = judged(context, frame.wines[0])
    liked = match.verdict in LIKED
    way = "tasted-same" if liked != bad else "tasted-bad" if bad else "tasted-good"
    pair = {"wine": called(context, frame.wines[0]), "dish": context.dish_name(), "verdict": match.verdict}
    say = capital(context.wording("say", way, **pair))
    lines = [say, *(repairs(context, match) if bad and not liked else [])]
    return replace(compose(context.all_used(), say, lines, verdict=match.verdict), dish=None)
