"""The votes that a note plainly holds: who thought what of which wine, food or pair."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from assistant.answers.wording import capital
from assistant.language.fold import fold
from assistant.language.follow_words import follow_words
from assistant.language.frame import Reading
from assistant.language.small_words import small_words
from assistant.language.sorting import EDIBLE
from assistant.pairing.likeness import unlike
from assistant.table.numbered import in_pouring_order
from assistant.taught.telling import Hearing
from assistant.taught.words import number_of, taught_words

MOST_VOTES = 10000
METHOD = "method"
MOST_NAME = 3
USUAL_POINTS = 5  # of which a vote is where no more is said
OWNS = ("'s", "’s")
Things = Mapping[int, tuple[str, int]]
_PIECES = re.compile(r"\w+|[^\w\s]")


@dataclass(frozen=True, slots=True)
class Vote:
    """What was voted on, the band, by how many, by which guest where one is named, whether by everybody."""

    about: tuple[str, ...]
    verdict: str
    votes: int = 1
    guest: str = ""
    by_all: bool = False


def votes(heard: Hearing) -> list[Vote]:
    """The votes that the words plainly give: a word of liking or not with what stands right behind it, or
    `the zin 4 out of 5`."""
    things = {**places(heard), **named(heard)}
    found: list[Vote] = []
    for at, word in enumerate(heard.stems):
        verdict = _verdict(word)
        about = _about(heard, at + 1, things) if verdict and at else ()
        if verdict and about:
            before = found[-1].guest if found else ""
            turned = _turned(heard.stems, at, verdict)
            if _by_all(heard.stems, at):
                found.append(Vote(about, turned, int(heard.context.tonight.guests or 1), by_all=True))
                continue
            names = guests_before(heard, at) or [before]
            found += [Vote(about, turned, _count(heard.stems, at), name) for name in names]
    return found or list(_rated(heard, things))


def _verdict(word: str) -> str | None:
    said = taught_words()
    return said.verdicts.get(word) or ("band/good" if word in said.sets["wants"] else None)


def named(heard: Hearing) -> Things:
    """Wines and foods by the position at which they are named, with the position behind them.

    A wine told by its kind or taste (`the off-dry`) is the one on the table that is so, if one is.
    """
    found = ((r, _meant(r, heard)) for r in heard.context.frame.text.readings)
    return {**_tasted(heard), **{r.start: (thing, r.end) for r, thing in found if thing}}


def _meant(reading: Reading, heard: Hearing) -> str | None:
    """The wine or food that a reading stands for; a kind on the table once is the wine there."""
    context, wines = heard.context, heard.context.tonight.wines
    if reading.kind in EDIBLE:
        return reading.id
    if reading.kind == METHOD:
        return _cooked_so(reading, heard)
    styles = context.knowledge.styles_of(reading.id)
    alone = [wine for wine in wines if wine in styles] or _of_grape(reading.id, heard)
    return alone[0] if len(alone) == 1 else reading.id if styles else None


def _cooked_so(reading: Reading, heard: Hearing) -> str | None:
    """The food named behind (`the roast lamb`); of `the roast` the one of the table that is cooked so."""
    behind = (r.id for r in heard.context.frame.text.readings if r.start == reading.end and r.kind in EDIBLE)
    mains = [dish.main for dish in heard.context.tonight.dishes]
    so = [main.food for main in mains if reading.id in main.methods]
    return next(behind, so[0] if len(so) == 1 else None)


def _tasted(heard: Hearing) -> Things:
    """The same for wines told by their taste (`the off-dry`), where one on the table is so."""
    context, words = heard.context, [fold(word) for word in heard.context.frame.text.words]
    found = {}
    for limit in context.frame.preferences:
        label = [fold(word) for word in _PIECES.findall(limit.label)]
        places = (at for at in range(len(words)) if words[at : at + len(label)] == label)
        at, wines = next(places, None), list(context.tonight.wines)
        alone = context.engine.within(wines, [limit]) if at is not None and wines else []
        if at is not None and len(alone) == 1:
            found[at] = (alone[0], at + len(label))
    return found


def _of_grape(wine: str, heard: Hearing) -> list[str]:
    """The wine on the table made of a grape of this one, the most alike: `the riesling`, off-dry there.

    Of another colour it is another wine: `the pinot` is no sparkling wine that Pinot Noir went into.
    """
    known, wines = heard.context.knowledge.wines, heard.context.tonight.wines
    grapes = set(known[wine].grapes) if wine in known else set()
    glasses = heard.context.engine.glasses
    kin = [w for w in wines if grapes & set(known[w].grapes) and glasses[w].colour == glasses[wine].colour]
    apart = {one: unlike(glasses[wine], glasses[one], heard.context.knowledge) for one in kin}
    return sorted(kin, key=lambda one: (apart[one], one))[:1]


def places(heard: Hearing) -> Things:
    """The same for numbers that are places in tonight's pouring order."""
    poured = in_pouring_order(heard.context.tonight.wines, heard.context.engine)
    stems, ordinals = heard.stems, follow_words().places
    numbers = (
        (at, ordinals.get(stem) or number_of(stem))
        for at, stem in enumerate(stems)
        if not (at and stems[at - 1] in ordinals)  # `the second one` is no first
    )
    told = ((at, n - 1 if n > 0 else n) for at, n in numbers if n and n <= len(poured))
    return {at: (poured[n], at + 1) for at, n in told} if poured else {}


def _about(heard: Hearing, at: int, things: Things) -> tuple[str, ...]:
    """The things behind a word of liking; with `everything` all wines of the table."""
    stems, sets = heard.stems, taught_words().sets
    whole = stems[at : at + 1] and stems[at] in sets["whole_table"] and sets["apart_from"].isdisjoint(stems)
    return heard.context.tonight.wines if whole else tuple(dict.fromkeys(_behind(stems, at, things)))


def _by_all(stems: tuple[str, ...], at: int) -> bool:
    """Whether who liked it is everybody: `everybody loved`, and not `not everybody loved`."""
    sets = taught_words().sets
    while at and stems[at - 1] in sets["passed"]:
        at -= 1
    return bool(at) and stems[at - 1] in sets["by_all"] and sets["not_all"].isdisjoint(stems[: at - 1])


def _behind(stems: tuple[str, ...], at: int, things: Things) -> Iterator[str]:
    """The things that stand at this place, one after another, with nothing but small words between."""
    between = taught_words().sets["between"]
    while at < len(stems) and (at in things or stems[at] in between):
        thing, at = things.get(at, ("", at + 1))
        if thing:
            yield thing


def _turned(stems: tuple[str, ...], at: int, verdict: str) -> str:
    """The verdict, or the other one where the word before turns it."""
    denied = at > 0 and stems[at - 1] in taught_words().sets["deny"]
    return verdict if not denied else other(verdict)


def other(verdict: str) -> str:
    """The opposite of a verdict."""
    return "band/poor" if verdict == "band/good" else "band/good"


def _count(stems: tuple[str, ...], at: int) -> int:
    """`3 want the white`, `two of them liked it` are so many votes; a number further back is none of them."""
    of_them = stems[max(0, at - 2) : at] in (("of", "them"), ("of", "us")) and at > 2
    people = stems[at - 1] in ("people", "guest") and at > 1
    where = at - 3 if of_them else at - 2 if people else at - 1
    number, first = number_of(stems[where]), where == 0
    return number if number and first and number <= MOST_VOTES else 1


def guests_before(heard: Hearing, at: int) -> list[str]:
    """The guests named right before a word of liking: `tom and priya liked`, `aoife's favourite`."""
    words, skip = heard.context.frame.text.words, taught_words().sets["unnamed"]
    passed = taught_words().sets["passed"]
    taken = {i for r in heard.context.frame.text.readings for i in range(r.start, r.end)}
    names: list[str] = []
    while at and len(names) < MOST_NAME:
        at -= 1
        stem, word = heard.stems[at], words[at].removesuffix(OWNS[0]).removesuffix(OWNS[1])
        if stem in passed:
            continue
        if (
            at in taken
            or stem in skip
            or number_of(stem) is not None
            or not word.replace(".", "").replace("-", "").isalpha()
        ):
            break
        names.append(capital(word))
    return names[::-1]


def _rated(heard: Hearing, things: Things) -> Iterator[Vote]:
    """`mo gave the zin 4 out of 5`: a vote in points, as the band that counts like it."""
    stems = heard.stems
    scores = {at: _scored(stems, at) for at in range(len(stems))}
    taken = {at for start, (band, end) in scores.items() if band for at in range(start, end)}
    for at, (verdict, end) in scores.items():
        about = _nearest(
            at, end, {where: thing for where, (thing, _) in things.items() if where not in taken}
        )
        if not (verdict and about):
            continue
        gave = next((i for i in range(at) if stems[i] in taught_words().sets["gives"]), None)
        names = guests_before(heard, gave or next((i for i in range(at) if stems[i] == ":"), 0))
        yield from (replace(Vote((about,), verdict), guest=n) for n in names or [""])


def _nearest(at: int, end: int, things: Mapping[int, str]) -> str:
    """What points at this place are given to: what stands nearest before them, else first behind."""
    before = [where for where in things if where < at]
    behind = [where for where in things if where >= end]
    where = max(before) if before else min(behind, default=-1)
    return things.get(where, "")


def _scored(stems: tuple[str, ...], at: int) -> tuple[str, int]:
    """The band of the points given at this place and the place behind them; empty where none are."""
    given = number_of(stems[at])
    if given and _alone(stems, at):
        return taught_words().points[USUAL_POINTS].get(given, ""), at + 1
    for places in taught_words().lines["out_of"].at(stems, at + 1) if at + 2 < len(stems) else ():
        end = places[-1] + 1
        most = number_of(stems[end]) if end < len(stems) else None
        band = taught_words().points.get(most or 0, {}).get(-1 if given is None else given, "")
        if band:
            return band, end + 1
    return "", at + 1


def _alone(stems: tuple[str, ...], at: int) -> bool:
    """Whether a number behind a word of rating ends its part: `rated the malbec 4`, `scored it 3, then`."""
    ends = not stems[at + 1 : at + 2] or stems[at + 1] in small_words()["ends"]
    return ends and not taught_words().sets["rates"].isdisjoint(stems[:at])
