"""Is this board in balance: what it lacks, what to plate apart, and the one swap that helps most."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.answers.choose import chosen_for
from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.items import food_item
from assistant.answers.record import Answer
from assistant.answers.wording import MAX_SPOKEN_WORDS, capital, listed
from assistant.evening.board import BoardItem, board_item, findings, traps
from assistant.evening.board_change import Change, best_changes
from assistant.evening.board_words import told, wrong
from assistant.evening.choose_make import Chosen
from assistant.evening.coverage import bridges, coverage
from assistant.knowledge.diets import Fit, fit
from assistant.language.counting import Count
from assistant.pairing.dish import Dish, single


def check_board(context: Context) -> Answer:
    """What is wrong with the board, worst first, and what would mend it; within the diets named."""
    diets = context.frame.diets
    dishes = _things(context.frame.dishes)
    if not dishes:
        which = context.wording("say", "which-board")
        return replace(compose(context, which, [which]), clarify=which, understood=False)
    context = replace(context, frame=replace(context.frame, dishes=dishes))
    known = context.knowledge
    items = [board_item(context.one_dish(dish), dish, context.engine) for dish in dishes]
    chosen = chosen_for(context, Count(None))
    changes = best_changes(items, context.engine, chosen.wines if chosen else (), diets)
    said = [told(finding, known, context.wording) for finding in wrong(findings(items, known), known)]
    lines = [*said, *_diet_lines(context, items, diets), *_trap_lines(context, items)]
    lines += [*_wine_lines(context, chosen), *_change_lines(context, changes)]
    say = _spoken(context, said)
    answer = compose(context, say, [say, *(line for line in lines if line != say)])
    return replace(answer, picks=tuple(food_item(change.into.food, context.knowledge) for change in changes))


def _things(dishes: Sequence[Dish]) -> tuple[Dish, ...]:
    """Everything on the board by itself: what was read as one plate with its side lies side by side."""
    return tuple(single(part.food) if len(d.parts) > 1 else d for d in dishes for part in d.parts)


def _spoken(context: Context, said: Sequence[str]) -> str:
    if not said:
        return context.wording("say", "board-sound")
    first = said[0]
    return first if len(first.split()) <= MAX_SPOKEN_WORDS else context.wording("say", "board-some")


def _diet_lines(context: Context, items: Sequence[BoardItem], diets: Sequence[str]) -> list[str]:
    """What on the board does not surely keep to a diet: unknown counts as no."""
    lines = []
    for diet in diets:
        out = [i.label for i in items if fit(i.food, diet, context.knowledge) is not Fit.YES]
        if out:
            fields = {"diet": context.knowledge.label(diet), "foods": listed(out)}
            lines.append(context.wording("line", "board-diet", **fields))
    return lines


def _trap_lines(context: Context, items: Sequence[BoardItem]) -> list[str]:
    apart = [item.label for item in traps(items)]
    return [context.wording("line", "board-apart", foods=listed(apart))] if apart else []


def _wine_lines(context: Context, chosen: Chosen | None) -> list[str]:
    """Bottles for the board, the foods that get on with nearly all of them, and those with none."""
    if chosen is None:
        return []
    scores, label = chosen.task.scores, context.knowledge.label
    lines = [context.wording("line", "board-wines", wines=listed([label(w) for w in chosen.wines]))]
    spans = bridges(scores, chosen.wines, context.knowledge.constants)
    gaps = coverage(scores, chosen.wines).gaps
    lines += [context.wording("line", "board-bridges", foods=listed(spans))] if spans else []
    return lines + ([context.wording("line", "board-gaps", foods=listed(gaps, "or"))] if gaps else [])


def _change_lines(context: Context, changes: Sequence[Change]) -> list[str]:
    lines = []
    for change in changes:
        into = capital(change.into.label) if change.out is None else change.into.label
        fields = {"into": into, "out": change.out.label if change.out else ""}
        lines.append(context.wording("line", "board-swap" if change.out else "board-add", **fields))
    return lines
