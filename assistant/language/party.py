"""What is said of a party in passing: `eight of us, two vegetarians, 120 euros to spend`."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

from assistant.knowledge.files import corpus_dir
from assistant.language.aged import tells_age
from assistant.language.corrected import as_corrected
from assistant.language.data import read_data
from assistant.language.drinks_only import dislikes, sort_drunk
from assistant.language.fold import fold, stem
from assistant.language.follow_lines import opens, says
from assistant.language.frame import Frame, Text
from assistant.language.guest_named import has_name
from assistant.language.guests import Asked, Told, all_asked, all_told, guest_words
from assistant.language.not_brought import not_brought
from assistant.language.quantities import counts, numbers
from assistant.language.run_on import tells_need
from assistant.language.small_words import small_words
from assistant.language.sober import is_sober

SAFETY = "safety"
FURTHEST = 4  # words between a number and what so many guests ask to be spared


@dataclass(frozen=True, slots=True)
class PartyWords:
    """The table `party` of corpus/language/guests.toml, its words as stems."""

    needs: Mapping[tuple[str, ...], str]
    between: frozenset[str]
    one: str
    many: str
    one_other: str
    many_other: str
    behind: frozenset[str]
    money: frozenset[str]
    spend: frozenset[str]
    whole: frozenset[str]
    sober: frozenset[str]
    instead: frozenset[str]
    within: frozenset[str]

    @classmethod
    def of(cls, tables: Mapping[str, Any]) -> PartyWords:
        """The words of the file. Raises KeyError for a key that is missing."""
        table = tables["party"]
        needs = {_stems(words): need for need, said in table["needs"].items() for words in said}
        between, money, spend, whole, behind = (
            frozenset(stem(fold(word)) for word in table[key])
            for key in ("between", "money", "spend", "whole", "behind")
        )
        sober = frozenset(table["sober"]["needs"])
        one, many, one_other, many_other = (table[key] for key in ("one", "many", "one_other", "many_other"))
        instead, within = (frozenset(table[key]["needs"]) for key in ("instead", "within"))
        return cls(
            needs,
            between,
            one,
            many,
            one_other,
            many_other,
            behind,
            money,
            spend,
            whole,
            sober,
            instead,
            within,
        )


@lru_cache(maxsize=1)
def party_words() -> PartyWords:
    """The shipped words. Raises KnowledgeError for a broken file."""
    return read_data(corpus_dir() / "language" / "guests.toml", PartyWords.of)


def party_needs(stems: Sequence[str]) -> tuple[Asked, ...]:
    """What so many guests ask to be spared, each need once for each number said."""
    known = party_words()
    found = dict.fromkeys((_counted(stems, at), need) for at, need in _needs(stems))
    counted = [(count, need) for count, need in found if count]
    return tuple(
        Asked(known.one if count == 1 else known.many.format(number=f"{count:g}"), need)
        for count, need in counted
    )


def party_of(text: Text) -> tuple[Asked, ...]:
    """The needs of a party where they are not told guest by guest (`two are vegan and one is coeliac`)."""
    needs = party_needs(text.stems)
    return needs if len(needs) > len(all_asked(text.typed)) else ()


def only_told(frame: Frame) -> bool:
    """Whether no more is told than needs of so many guests that call for a caution, and nothing is asked."""
    asks = guest_words().asks.intersection(frame.text.typed.lower().split()) or opens(frame, "yes-no")
    total = any(
        c.name == "people" and c.number not in need_counts(frame.text.stems) for c in counts(frame.text.stems)
    )
    told = bool(frame.topics) and frame.intent == SAFETY and opening_total(frame.text.stems) is None
    return told and not (total or asks or "?" in frame.text.typed)


def needs_told(frame: Frame) -> Told:
    """The guests told of one by one, where what is said of them may be a need."""
    party = party_of(frame.text)
    if party:
        return Told(party) if only_told(frame) else Told()
    told = all_told(as_corrected(frame.text.typed))
    she = says(frame, "guest-she")
    sober = any((has_name(one.guest) or (she and not one.guest)) and is_sober(one.need) for one in told.asked)
    only = bool(frame.preferences or frame.wines) and any(sort_drunk(one.need) for one in told.asked)
    disliked = any(has_name(one.guest) and dislikes(one.need) for one in told.asked)
    counted = any(tells_need(f"{one.guest} {one.need}") and not is_sober(one.need) for one in told.asked)
    counted |= any(tells_age(one.need) for one in told.asked)
    known = (frame.topics or frame.diets or frame.barred or counted) and not not_brought(frame)
    return told if known or sober or only or (frame.preferences and disliked) else Told()


def need_counts(stems: Sequence[str]) -> set[float]:
    """The numbers of guests with needs."""
    return {_counted(stems, at) for at, _ in _needs(stems)}


def party_counts(stems: Sequence[str]) -> set[float]:
    """The numbers that count only some of the guests (`two vegetarians`, not `for two vegetarians`).

    Those who drink no wine are counted as that.
    """
    known = party_words()
    counts = {_counted(stems, at) for at, need in _needs(stems) if need not in known.sober}
    led = ((stems[start - 1], number) for start, _, number in numbers(stems) if start)
    return counts - {number for before, number in led if before in known.whole}


def opening_total(stems: Sequence[str]) -> float | None:
    """The number of all guests where it opens what is told of a party (`eight, two vegetarians`)."""
    found = numbers(stems)
    if not found or found[0][0] or not (some := need_counts(stems) | _drinkless(stems)):
        return None
    _, end, total = found[0]
    while end < len(stems) and stems[end] in party_words().behind:
        end += 1
    ends = end < len(stems) and stems[end] in small_words()["ends"]
    return total if ends and total > max(some) else None


def _drinkless(stems: Sequence[str]) -> set[float]:
    return {found.number for found in counts(stems) if found.name == "non_drinkers" and found.start}


def money_said(stems: Sequence[str]) -> float | None:
    """The money that is named once, beside a currency or a word for a budget."""
    known, coins = party_words(), small_words()["money"]
    found = []
    for start, end, number in numbers(stems):
        beside = {*stems[max(0, start - 1) : start], *stems[end : end + 1]}
        before = set(stems[max(0, start - 2) : start])
        if not beside.isdisjoint({*coins, *known.money}) or not before.isdisjoint(known.spend):
            found.append(number)
    return found[0] if len(found) == 1 else None


def without_party(frame: Frame) -> Frame:
    """The frame without words that are taken down with the party, which are no unknown names."""
    known, coins = party_words(), small_words()["money"]
    used = {*known.between, *known.money, *known.spend, *coins, *(w for words in known.needs for w in words)}

    def taken(said: str) -> bool:
        words = _stems(said)
        return all(word in used or word[:1].isdigit() for word in words)

    left = tuple(said for said in frame.text.left_out if not taken(said))
    return replace(frame, text=replace(frame.text, left_out=left))


def _needs(stems: Sequence[str]) -> list[tuple[int, str]]:
    known = party_words().needs
    return [
        (at, need)
        for at in range(len(stems))
        for words, need in known.items()
        if tuple(stems[at : at + len(words)]) == words
    ]


def _counted(stems: Sequence[str], at: int) -> float:
    """The number right before a need, words between left aside; 0 where none is."""
    ends = {end: number for _, end, number in numbers(stems)}
    for back in range(FURTHEST):
        here = at - back
        if here in ends:
            return ends[here]
        if here < 1 or stems[here - 1] not in party_words().between:
            return 0.0
    return 0.0


def _stems(said: str) -> tuple[str, ...]:
    return tuple(stem(fold(word)) for word in said.split())
