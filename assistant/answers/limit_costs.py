"""What a guest's limit costs, and what on the plate makes up for it."""

from __future__ import annotations

from assistant.answers.compose import label
from assistant.answers.context import Context
from assistant.answers.wording import listed
from assistant.language.frame import labels_of
from assistant.pairing.fixes import smallest_fix
from assistant.pairing.match import Match


def limit_lines(context: Context, first: Match, kept: Match) -> list[str]:
    """What the limit costs in a few words, and what on the plate makes up for it where it costs a verdict.

    `first` is named first, `kept` is the best that keeps to the limit.
    """
    if not context.frame.preferences:
        return []
    if context.at_table([first.wine]):
        return [context.wording("line", "limits", limits=listed(labels_of(context.frame.preferences)))]
    wines = [w.id for w in context.knowledge.wines.values() if w.type == "Wine"]
    best = context.engine.rank(context.table(), wines)[0]
    labels = listed(labels_of(context.frame.preferences))
    lines = [context.wording("line", "limits", limits=labels)]
    pours = context.knowledge.wines[first.wine].type == "Wine"  # who drinks no alcohol gives up nothing
    if pours and best.score - kept.score > 2 * context.knowledge.constants["noise"]:
        cost = "limit-cost" if best.verdict == kept.verdict else "limit-costs-verdict"
        fields = {"wine": label(context, best), "now": kept.verdict, "then": best.verdict}
        lines.append(context.wording("line", cost, **fields))
        lines += _plate_fix(context, first) if best.verdict != kept.verdict else []
    return lines


def _plate_fix(context: Context, first: Match) -> list[str]:
    """The smallest thing on the plate that lifts the wine within the limit, or nothing."""
    found = smallest_fix(context.frame.dishes, first.wine, context.engine)
    if found is None:
        return []
    kind = "fix-without" if found.edit.left_off else "fix-with"
    fields = {"edit": found.edit.label, "wine": label(context, first), "verdict": found.after.verdict}
    return [context.wording("line", f"plate-{kind}", **fields)]
