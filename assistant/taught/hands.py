"""`rosé 4 votes, beaujolais 3, cava 2`: a show of hands, counted for each wine."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from assistant.language.fold import key
from assistant.language.quantities import numbers
from assistant.notebook import Statement
from assistant.taught.telling import Hearing
from assistant.taught.votes import MOST_VOTES, Things, Vote, named, places
from assistant.taught.words import taught_words

VOTE, FOR_IT, LINE, NO_LINE = "vote", "band/good", "hands", "no_hands"


def hands(heard: Hearing) -> list[Vote]:
    """The hands told for each wine, the last count of each; empty where no hands are counted."""
    if not _counts(heard.stems):
        return []
    by_name, by_place = named(heard), places(heard)
    told = (_told(heard.stems, start, end, by_name, by_place) for start, end in _parts(heard.stems))
    counts = {thing: count for thing, count in filter(None, told) if 0 < count <= MOST_VOTES}
    if not taught_words().sets["more_hands"].isdisjoint(heard.stems):
        counts = {thing: count + _held(thing, heard) for thing, count in counts.items()}
    return [Vote((thing,), FOR_IT, count) for thing, count in counts.items()]


def _held(thing: str, heard: Hearing) -> int:
    """The hands that were counted for a wine before, this evening."""
    told = (one for one in heard.keeper.told() if one.evening == heard.evening and of_hands(one))
    counts = [int(one.value.get("votes", 1)) for one in told if thing in one.about]
    return counts[-1] if counts else 0


def of_hands(one: Statement) -> bool:
    """Whether a vote that was kept is a count of hands, and not what single guests said."""
    counted = one.kind == VOTE and "guest" not in one.value and one.value["verdict"] == FOR_IT
    return counted and _counts(tuple(key(one.said)))


def _counts(stems: Sequence[str]) -> bool:
    lines = taught_words().lines
    return lines[LINE].stand_in(stems) and not lines[NO_LINE].stand_in(stems)


def _parts(stems: Sequence[str]) -> Iterator[tuple[int, int]]:
    """Where each part of the text begins and ends, each of them about one wine."""
    start, parting = 0, taught_words().sets["parting"]
    for at, stem in enumerate((*stems, ",")):
        if at == len(stems) or stem in parting:
            yield start, at
            start = at + 1


def _told(
    stems: Sequence[str], start: int, end: int, by_name: Things, by_place: Things
) -> tuple[str, int] | None:
    """The wine of a part with its count: its name and a number, or two numbers of which one is a place."""
    found = [at for at in by_name if start <= at < end]
    taken = {at for one in found for at in range(one, by_name[one][1])}
    counts = [
        (at + start, int(value)) for at, _, value in numbers(stems[start:end]) if at + start not in taken
    ]
    if len(found) == len(counts) == 1:
        return by_name[found[0]][0], counts[0][1]
    if found or len(counts) != 2:
        return None
    (first, _), (second, _) = counts
    turned = not taught_words().sets["votes_for"].isdisjoint(stems[first:second])
    place, count = (second, counts[0][1]) if turned else (first, counts[1][1])
    apart = second > first + 1 and place in by_place
    return (by_place[place][0], count) if apart else None
