"""From a ranking to the few wines that are named: not three of a kind, both colours offered."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from assistant.knowledge.concepts import Wine
from assistant.knowledge.store import Knowledge
from assistant.pairing.match import Match
from assistant.pairing.score import DISLIKED, LIKED

VARIED_UP_TO = 5
COMMONEST, RAREST = 3.0, 1.0
SPARKLING, FORTIFIED, FORTIFIED_DRY = "kind/sparkling-wine", "kind/fortified-wine", "kind/fortified-dry"
INFINITE = float("inf")
_RED, _WHITE = ("colour/red",), ("colour/white", "colour/rose", "colour/orange")


def picks(
    ranked: Sequence[Match],
    count: int,
    knowledge: Knowledge,
    foods: frozenset[str] = frozenset(),
    at_hand: bool = False,
) -> list[Match]:
    """The first `count` of a ranking, best first; `foods` are what it was made for.

    A short list holds at most two of a kind, and names a wine that is hard to find only where
    it is clearly better than one that is sold everywhere; of wines that do about as well,
    one that custom pours with the food goes before another, and where the rules find one fair or
    better it opens the list, and the others that custom pours come next: what is left of the ranking
    behind it is not the best of it. `at_hand`: all of them are there.
    """
    if count > VARIED_UP_TO:
        return list(ranked[:count])
    opening = INFINITE if at_hand else _opening(ranked, foods, knowledge)
    custom = knowledge.constants["custom-first" if opening < INFINITE else "custom"]
    open_to = [m for m in ranked if m.score <= opening]
    worth = {m.wine: m.score if at_hand else _worth(m, foods, custom, knowledge) for m in open_to}
    chosen: list[Match] = []
    while len(chosen) < min(count, len(open_to)):
        left = [m for m in open_to if m not in chosen]
        adding = [m for m in left if _adds(m, chosen, knowledge)] or left
        chosen.append(min(adding, key=lambda m: (_repeats(m, chosen, knowledge) - worth[m.wine], m.wine)))
    return sorted(chosen, key=lambda m: (-m.score, m.wine))


def _worth(match: Match, foods: frozenset[str], custom: float, knowledge: Knowledge) -> float:
    """The score less the trouble of finding the wine, and with what is allowed to `custom`.

    A dry fortified wine that custom does not ask for is no host's first thought beside a dish.
    """
    if match.verdict in LIKED and knowledge.pours(match.wine, foods):
        return _handy(match, knowledge) + custom
    unasked = FORTIFIED_DRY in knowledge.wines[match.wine].kinds
    return _handy(match, knowledge) - unasked * knowledge.constants["fortified-unasked"]


def _repeats(match: Match, chosen: Sequence[Match], knowledge: Knowledge) -> float:
    """What a sparkling wine costs that is named beside others: a host wants something else to choose from."""
    if SPARKLING not in knowledge.wines[match.wine].kinds:
        return 0.0
    others = sum(SPARKLING in knowledge.wines[m.wine].kinds for m in chosen)
    return others * knowledge.constants["more-bubbles"]


def _handy(match: Match, knowledge: Knowledge) -> float:
    """The score less the trouble of finding the wine."""
    missing = COMMONEST - knowledge.wines[match.wine].availability
    return match.score - missing * knowledge.constants["harder-to-find"]


def _opening(ranked: Sequence[Match], foods: frozenset[str], knowledge: Knowledge) -> float:
    """The score with which a short list opens: that of the best wine that custom pours, where it is liked."""
    poured = [m for m in ranked if m.verdict in LIKED and knowledge.pours(m.wine, foods)]
    first = max(poured, key=lambda m: (_handy(m, knowledge), m.wine), default=None)
    near = first and ranked[0].score - first.score <= knowledge.constants["custom-first"]
    return first.score if first and near else INFINITE


def _adds(match: Match, chosen: Sequence[Match], knowledge: Knowledge) -> bool:
    """Whether a wine says something the chosen ones do not."""
    kind = style_kind(knowledge.wines[match.wine])
    alike = [m for m in chosen if style_kind(knowledge.wines[m.wine]) == kind]
    return len(alike) < 2 and not _same_style(match, chosen, knowledge)


def style_kind(wine: Wine) -> str:
    """The kind a wine is first of all (light red, bottle-fermented sparkling ...)."""
    return next((kind for kind in wine.kinds if kind.startswith("kind/")), wine.colour)


def worth_telling(match: Match, instead: Match, knowledge: Knowledge) -> bool:
    """Whether a host gains by hearing of one besides another: of another kind, and sold everywhere."""
    wine, other = knowledge.wines[match.wine], knowledge.wines[instead.wine]
    return wine.availability >= COMMONEST and style_kind(wine) != style_kind(other)


def _same_style(match: Match, chosen: Sequence[Match], knowledge: Knowledge) -> bool:
    """A wine and its parent style would be one advice said twice."""
    wine = knowledge.wines[match.wine]
    return any(m.wine in wine.kinds or wine.id in knowledge.wines[m.wine].kinds for m in chosen)


def other_colour(ranked: Sequence[Match], chosen: Sequence[Match], knowledge: Knowledge) -> Match | None:
    """The best fair wine of the colour that the picks lack: sold in a wine shop at least, not fortified."""
    have = {knowledge.wines[m.wine].colour in _RED for m in chosen}
    if len(have) != 1:
        return None
    wanted = _WHITE if True in have else _RED
    fair = [
        m
        for m in ranked
        if m.verdict in LIKED
        and knowledge.wines[m.wine].colour in wanted
        and knowledge.wines[m.wine].availability > RAREST
        and FORTIFIED not in knowledge.wines[m.wine].kinds
    ]
    return max(fair, key=lambda m: (_handy(m, knowledge), m.wine), default=None)


def avoided(
    ranked: Sequence[Match], count: int, knowledge: Knowledge, sweetness: Mapping[str, float]
) -> list[Match]:
    """Up to `count` wines that hurt, the worst first, no two of the same kind.

    Only wines a guest might really pour are warned of: sold everywhere, and dry where the best
    wine is dry. `sweetness` holds the points by wine.
    """
    sweet = knowledge.constants["dessert-sweet"]
    dry = sweetness[ranked[0].wine] < sweet
    tempting = [
        m
        for m in ranked
        if knowledge.wines[m.wine].availability >= COMMONEST and (not dry or sweetness[m.wine] < sweet)
    ]
    chosen: list[Match] = []
    kinds: set[str] = set()
    for match in reversed(tempting):
        kind = style_kind(knowledge.wines[match.wine])
        if match.verdict not in DISLIKED or len(chosen) == count:
            break
        if kind not in kinds:
            chosen.append(match)
            kinds.add(kind)
    return chosen
