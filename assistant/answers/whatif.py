"""What if something is added, left off or cooked otherwise; and what would make a pair work."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.compose import compose, label
from assistant.answers.context import Context, say_reason
from assistant.answers.judge import judged
from assistant.answers.not_on import not_on
from assistant.answers.record import Answer
from assistant.answers.wines import first_choice
from assistant.language.frame import Frame
from assistant.pairing.dish import Dish, table_of
from assistant.pairing.fixes import smallest_fix
from assistant.pairing.match import Match


def what_if(context: Context) -> Answer:
    """The fix asked for, or what the change does to the wine named or to the first choice."""
    if "fix" in context.frame.text.cues and context.frame.wines:
        return _fix(context)
    if _off_nothing(context.frame):
        ask = context.wording("missing", "what-if")
        return replace(compose(context, ask, [ask]), clarify=ask, understood=False, dish=None)
    return _changed_pair(context) if context.frame.wines else _changed_choice(context)


def _off_nothing(frame: Frame) -> bool:
    """Whether only what is left off is named, and no dish stands that it could come off."""
    bare = len(frame.dishes) == 1 and len(frame.dishes[0].parts) == 1 and not frame.dishes[0].main.methods
    return bare and "left-off" in frame.text.cues and not (frame.before or frame.text.left_out)


def _fix(context: Context) -> Answer:
    """The smallest edit that lifts the pair; if none does, the wine that does better."""
    wine = judged(context, context.frame.wines[0]).wine
    name = context.knowledge.wines[wine].label
    found = smallest_fix(context.frame.dishes, wine, context.engine)
    if found is None:
        match = context.engine.judge(context.table(), wine)
        say = context.wording("say", "no-fix", wine=name)
        return compose(context, say, [say], picks=[match], verdict=match.verdict)
    kind = "fix-without" if found.edit.left_off else "fix-with"
    say = context.wording("say", kind, edit=found.edit.label)
    lines = [say, *_change_lines(context, found.before, found.after)]
    return compose(context, say, lines, picks=[found.after], verdict=found.after.verdict)


def _changed_pair(context: Context) -> Answer:
    """How the verdict on the wine moves."""
    after = judged(context, context.frame.wines[0])
    before = context.engine.judge(table_of(list(_before(context))), after.wine)
    gain = after.score - before.score
    noise = context.knowledge.constants["noise"]
    word = "better" if gain > noise else "worse" if gain < -noise else "same"
    say = context.wording("say", f"turns-{word}", wine=label(context, after))
    lines = [say, *_change_lines(context, before, after)]
    if idle := _idle(context):
        say, lines = idle[0], idle
    return compose(context.all_used(), say, lines, picks=[after], verdict=after.verdict)


def _idle(context: Context) -> list[str]:
    """That nothing came off the dish, where nothing of it has changed at all."""
    return not_on(context) if context.frame.before == context.frame.dishes else []


def _change_lines(context: Context, before: Match, after: Match) -> list[str]:
    """The verdicts before and after, and the rule that moved most the way the score went."""
    change = context.wording(
        "line", "from-to", wine=label(context, after), before=before.verdict, after=after.verdict
    )
    moved = most_moved(before, after)
    said = context.knowledge.rules[moved[0]].say if moved else None
    if moved is None or not said:
        return [change]
    word = "now" if moved[1] * (after.score - before.score) > 0 else "less"
    return [change, context.wording("line", word, reason=said)]


def most_moved(before: Match, after: Match) -> tuple[str, float] | None:
    """The rule whose effect changed most in the direction of the score, and its effect, or None.

    The effect is that after the change; where the rule then helps or hurts less, that before it.
    """
    old, new = _effects(before), _effects(after)
    way = 1 if after.score > before.score else -1
    gains = {rule: way * (new.get(rule, 0.0) - old.get(rule, 0.0)) for rule in {**old, **new}}
    rule = max(sorted(gains), key=lambda name: gains[name], default=None)
    if rule is None or gains[rule] <= 0:
        return None
    grew = way * new.get(rule, 0.0) > 0
    return rule, new[rule] if grew else old[rule]


def _effects(match: Match) -> dict[str, float]:
    """The effects of the rules in a path, the limits left aside."""
    found: dict[str, float] = {}
    for effect in match.path:
        if not effect.rule.startswith("limit/"):
            found[effect.rule] = found.get(effect.rule, 0.0) + effect.effect
    return found


def _changed_choice(context: Context) -> Answer:
    """Whether the first choice changes."""
    if not context.candidates():
        none = context.wording("line", "none-left")
        return compose(context, none, [none])
    first = first_choice(context, context.frame.dishes)
    old = first_choice(context, _before(context))
    same = first.wine == old.wine
    say = context.wording("say", "still" if same else "then", wine=label(context, first))
    reason = say_reason(first, context.knowledge, good=True)
    if idle := _idle(context):
        return replace(compose(context.all_used(), idle[0], [*idle, say], picks=[first]), verdict=None)
    lines = [say]
    if reason and context.frame.before != context.frame.dishes:
        lines.append(context.wording("line", "now", reason=reason))
    if not same:
        lines.append(context.wording("line", "before", wine=label(context, old)))
    return replace(compose(context, say, lines, picks=[first]), verdict=None)


def _before(context: Context) -> tuple[Dish, ...]:
    """The dishes before the change: what stood, or the bare bases."""
    if context.frame.before:
        return context.frame.before
    return tuple(Dish((dish.main,)) for dish in context.frame.dishes)
