"""`eight, two vegetarians`, then `Jo is vegetarian`: who is counted and who is named may be the same."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.language.fold import key
from assistant.language.guest_named import has_name
from assistant.language.guests import Asked
from assistant.language.party import party_words
from assistant.language.quantities import numbers

MOST_AROUND, ALONE = 4, frozenset(("and", "not", "no", ","))


def with_need(needs: Sequence[Asked], asked: Asked) -> tuple[Asked, ...]:
    """The needs with one more, once; of guests who are only counted no more than those not named.

    A diet counted anew counts instead of what was counted before. The order of telling does not matter.
    """
    diet, kept = _sort_of(asked.need), [one for one in needs if one != asked and not _instead(one, asked)]
    if not diet:
        return (*kept, asked)
    anew = bool(_counts(asked))
    told = [*(one for one in kept if not (anew and _counts(one) == diet)), asked]
    named = {one.guest for one in told if has_name(one.guest) and _sort_of(one.need) == diet}
    if not anew:  # those named before came off the count then
        named -= {one.guest for one in needs if _sort_of(one.need) == diet}
    less = (_less(one, len(named)) if named and _counts(one) == diet else one for one in told)
    return tuple(one for one in less if one)


def _instead(one: Asked, asked: Asked) -> bool:
    """Whether a guest eats by another diet now than was told before (`she is pescatarian`)."""
    diets = party_words().instead
    same = one.guest == asked.guest and has_name(asked.guest)
    return same and diet_of(one.need) in diets and diet_of(asked.need) in diets


def _less(asked: Asked, named: int) -> Asked | None:
    """The guests who are counted without so many who are named as well; None where nobody is left."""
    left = _number(asked) - named
    if left <= 0:
        return None
    known = party_words()
    return replace(asked, guest=known.one_other if left == 1 else known.many_other.format(number=f"{left:g}"))


def _counts(asked: Asked) -> str:
    """The diet of guests who have no name and are counted; empty for any other."""
    return _sort_of(asked.need) if not has_name(asked.guest) and _number(asked) else ""


def _sort_of(need: str) -> str:
    """The need that these words name, told in more of them too (`seven months pregnant`), or nothing."""
    words = key(need)
    told = party_words().within.intersection(words) if len(words) <= MOST_AROUND else frozenset()
    return diet_of(need) or ("" if ALONE.intersection(words) else next(iter(told), ""))


def _number(asked: Asked) -> float:
    """How many guests these are; who is only called one is one."""
    return number_of(asked.guest) if asked.guest else 1.0


def number_of(guest: str) -> float:
    """How many guests are counted by what they are called (`two of them`); 0 where none are."""
    found = numbers(key(guest))
    return found[0][2] if found else 0.0


def diet_of(need: str) -> str:
    """The need of corpus/language/guests.toml that these words name; empty where none does."""
    return party_words().needs.get(tuple(key(need)), "")
