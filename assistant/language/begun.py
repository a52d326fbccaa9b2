"""Whether what stands for a longer name is the beginning of one as it is typed (`gruner veltliner`)."""

from __future__ import annotations

from assistant.language.fold import key
from assistant.language.lexicon import Lexicon
from assistant.language.slipping import slip_cost
from assistant.language.spelling import SHORTEST

ONE_SLIP = 1.2  # what a slip may cost in the next word of a name
BEHIND, MOST_BEHIND = 40, 3  # letters and words behind what may go on with a name


def begins_longer(lexicon: Lexicon, phrase: str, meant: str, behind: str) -> bool:
    """Whether a phrase is the beginning of a known name (`touriga` of Touriga Franca), be it with a slip."""
    words, more = key(phrase), key(behind[:BEHIND])[:MOST_BEHIND]
    if not more:
        return False
    rest = key(meant)[len(words) : len(words) + 1]
    if rest and len(more[0]) >= SHORTEST and slip_cost(more[0], rest[0]) <= ONE_SLIP:
        return True  # `gruner veltiner`
    found = lexicon.longest([*words, *more], 0)
    return bool(found and found[0] > len(words))
