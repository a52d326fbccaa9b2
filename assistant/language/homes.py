"""Whether the name of a place tells of the wine, of people or of a kitchen: `it has to be Spanish`."""

from __future__ import annotations

from assistant.language.alone import PAUSES, seeks_wine, stands_alone
from assistant.language.frame import Reading, Text
from assistant.language.small_words import small_words
from assistant.language.turning import FOODS, negated


def of_people(text: Text, reading: Reading, has_food: bool) -> bool:
    """`my Spanish friend`, `we are cooking Italian, lasagne`: neither is asked of the wine."""
    cooked = has_food and _before(text, reading) in small_words()["not-of-wine"]
    return cooked or _heads_dish(text, reading) or _behind(text, reading) in small_words()["of-people"]


def of_eating(text: Text) -> bool:
    """Whether something to eat is asked for (`something Thai to cook`)."""
    return bool(small_words()["eating"].intersection(text.stems))


def told_to_be(text: Text, reading: Reading) -> bool:
    """`it has to be Spanish`, `Italian please`, `an Austrian for the schnitzel`, `red and French`."""
    words, said, after = small_words(), _before(text, reading), _behind(text, reading)
    joined = said == "and" and any(r.end == reading.start - 1 and r.kind == "wine" for r in text.readings)
    one = said in words["articles"] and (after in words["behind-wish"] or not after)
    asked = one or joined or after in words["asks-for"] or told_alone(text, reading)
    kept = " ".join(text.stems[max(0, reading.start - 2) : reading.start]) in words["keeps-to"]
    told = said in words["to-be"] or asked or kept
    return told and after not in words["kitchen"]


def told_alone(text: Text, reading: Reading) -> bool:
    """`one bottle for lasagne, Italian, 20 dollars`: told by itself beside a wine or the foods of one."""
    if of_eating(text) or not stands_alone(text, reading.start, reading.end):
        return False
    named = any(r.kind == "wine" or r.kind in FOODS for r in text.readings if r is not reading)
    return named and (seeks_wine(text) or negated(text, reading.start))


def _heads_dish(text: Text, reading: Reading) -> bool:
    """`Chinese, sweet and sour pork`: the kitchen of the dish behind it, the first one named."""
    opens = small_words()["opens-kitchen"]  # `it's Italian, lasagne`
    alone = reading.start == 0 or _before(text, reading) in PAUSES or _before(text, reading) in opens
    dish = any(r.start == reading.end + 1 and r.kind in FOODS for r in text.readings)
    return alone and dish and _behind(text, reading) in PAUSES and not _food_before(text, reading)


def _food_before(text: Text, reading: Reading) -> bool:
    return any(r.end <= reading.start and r.kind in FOODS for r in text.readings)


def in_manner(text: Text, reading: Reading) -> bool:
    """Whether a wine or place tells how a food in front is made (`tripe in the style of Porto`)."""
    if reading.kind not in ("wine", "region"):
        return False
    ends = {r.end for r in text.readings if r.kind in FOODS and r.end < reading.start}
    manners = small_words()["in-manner"]
    return any(" ".join(text.stems[end : reading.start]) in manners for end in ends)


def of_a_sort(before: str, last: str, type_: str) -> bool:
    """Whether a sort is meant by what else names one wine (`another South African red` than Pinotage)."""
    return type_ == "Wine" and before in small_words()["others"] and last in small_words()["colours"]


def one_of(text: Text, reading: Reading, follower: Reading | None) -> bool:
    """`Spanish or Portuguese`, of which the last is asked of the wine."""
    if follower is None or follower.kind != "region" or follower.start != reading.end + 1:
        return False
    return _behind(text, reading) == "or" and _behind(text, follower) not in small_words()["kitchen"]


def _before(text: Text, reading: Reading) -> str:
    return text.stems[reading.start - 1] if reading.start else ""


def _behind(text: Text, reading: Reading) -> str:
    return text.stems[reading.end] if reading.end < len(text.stems) else ""
