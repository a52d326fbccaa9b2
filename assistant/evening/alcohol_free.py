"""The flight without alcohol: drinks chosen and scored for the food just as the wines are."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.evening.choose_make import best_choice, matches_of, scores_from, shortlist, usual_task
from assistant.evening.choose_task import Scores
from assistant.evening.why_chosen import Why, whys
from assistant.pairing.dish import Bite, Table
from assistant.pairing.engine import Engine
from assistant.pairing.flight import pour_order

MOST_ALCOHOL = 0.5


def alcohol_free_drinks(engine: Engine) -> list[str]:
    """Every drink of at most 0.5 % vol, in order of name."""
    drinks = (w for w in engine.knowledge.wines.values() if w.type == "Drink")
    return sorted(d.id for d in drinks if engine.glasses[d.id].alcohol_percent <= MOST_ALCOHOL)


def drinks_for(
    foods: Sequence[Table],
    names: Sequence[str],
    weights: Sequence[float],
    engine: Engine,
    count: int,
    leave_out: Iterable[str] = (),
) -> list[Why]:
    """A flight of at most `count` drinks for foods called `names`, weighing `weights`, in pouring order.

    The `wine` of each Why is the drink. `leave_out` are drinks that a guest may not have.
    """
    banned = set(leave_out)
    drinks = [drink for drink in alcohol_free_drinks(engine) if drink not in banned]
    if not drinks or not foods:
        return []
    most = int(engine.knowledge.constants["choice-candidates"])
    rows = matches_of(foods, drinks, engine)
    scores = shortlist(_suiting(scores_from(rows, names, weights, engine)), most)
    chosen = best_choice(usual_task(whole(foods, scores.weights), scores, engine, count))
    glasses = [engine.glasses[drink] for drink in chosen.wines] if chosen else []
    ordered = [glass.wine for glass in pour_order(glasses, engine.knowledge.constants)]
    return whys(scores, ordered) if ordered else []


def _suiting(scores: Scores) -> Scores:
    """The drinks that are fair with some food at least; all of them where none is."""
    fair = scores.floor("fair")
    return scores.among([drink for drink, row in scores.of.items() if max(row) >= fair] or list(scores.of))


def whole(foods: Sequence[Table], shares: Sequence[float]) -> Table:
    """Foods, each a small table of its own, as one table."""
    pairs = zip(foods, shares, strict=True)
    return tuple(Bite(bite.dish, bite.share * share) for food, share in pairs for bite in food)
