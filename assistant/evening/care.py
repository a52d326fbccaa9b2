"""Each guest and each thing on the table: may have, keep away, or read the label first."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from assistant.answers.items import source_text
from assistant.answers.safety import for_food
from assistant.answers.wording import capital, listed
from assistant.evening.facts import wording
from assistant.evening.made_for import RENNET
from assistant.evening.needs import WINE, Need, understood
from assistant.evening.records import Evening, GuestNeeds
from assistant.knowledge.diets import Fit, holds, lineage, only_in
from assistant.knowledge.store import Knowledge
from assistant.session import Session

ALWAYS = ("caution/driving", "caution/minors", "caution/non-drinker")
PERISHABLE, ALCOHOL_FREE = "caution/left-out", "caution/alcohol-free"
ALLERGY = ("caution/allergy", "caution/cross-contact")
WORST = (Fit.NO, Fit.UNKNOWN, Fit.YES)


@dataclass(frozen=True, slots=True)
class GuestCare:
    """What a guest may have, by label; `unknown`: needs that nobody here understands."""

    guest: str
    needs: tuple[str, ...]
    may_have: tuple[str, ...]
    keep_away: tuple[str, ...]
    check_label: tuple[str, ...]
    unknown: tuple[str, ...]
    sober: bool
    allergy: bool
    topics: tuple[str, ...]


def care(evening: Evening, session: Session, drinks: Iterable[str] = ()) -> list[GuestCare]:
    """Every guest of the file with the foods and wines of the evening, and with these drinks."""
    table = {line.label: tuple(p.food for d in line.dishes for p in d.parts) for line in evening.foods}
    table |= {line.label: (line.wine,) for line in evening.wines}
    table |= {session.knowledge.label(drink): (drink,) for drink in drinks}
    return [_guest(need, table, session) for need in evening.needs]


def _guest(guest: GuestNeeds, table: Mapping[str, Sequence[str]], session: Session) -> GuestCare:
    meant = {said: understood(said, session) for said in guest.needs}
    unknown = tuple(said for said, found in meant.items() if not found)
    needs = [need for found in meant.values() for need in found]
    fits = {label: _worst([stands(f, n, session.knowledge) for f in foods for n in needs])
            for label, foods in table.items()}  # fmt: skip
    fits = {label: _as_made(fit, table[label], needs, session) for label, fit in fits.items()}
    fits = {label: Fit.NO if _disliked(table[label], needs, session) else fit for label, fit in fits.items()}
    if unknown:
        fits = {label: _worst([fit, Fit.UNKNOWN]) for label, fit in fits.items()}
    may, away, check = (tuple(x for x, f in fits.items() if f is w) for w in (Fit.YES, Fit.NO, Fit.UNKNOWN))
    topics = tuple(dict.fromkeys(t for need in needs for t in need.topics))
    sober, allergy = any(n.sober for n in needs), any(n.allergy for n in needs)
    return GuestCare(guest.guest, guest.needs, may, away, check, unknown, sober, allergy, topics)


def _as_made(fit: Fit, foods: Sequence[str], needs: Sequence[Need], session: Session) -> Fit:
    """How a dish told to be made for vegetarians stands: rennet keeps nobody from it whose label says so."""
    cheese = session.spoken.made.get(frozenset(foods))
    if cheese is None:
        return fit
    less = [replace(need, marks=need.marks - RENNET) for need in needs]
    made = _worst([stands(food, need, session.knowledge) for food in foods for need in less])
    return fit if made is fit else made if cheese else _worst([made, Fit.UNKNOWN])


def _disliked(wines: Sequence[str], needs: Iterable[Need], session: Session) -> bool:
    """Whether one of these is a wine with a taste that is not liked."""
    poured = [wine for wine in wines if wine in session.knowledge.wines]
    tastes = [limit for need in needs for limit in need.tastes]
    also = {wine for need in needs for wine in need.also}
    poured = [wine for wine in poured if wine not in also]
    return len(session.engine.within(poured, tastes)) < len(poured)


def stands(food: str, need: Need, knowledge: Knowledge) -> Fit:
    """How a food or drink stands to a need; a kind, of wine too, as all of its members together do."""
    members = (knowledge.members(food) or knowledge.styles_of(food)) if food.startswith("kind/") else []
    if not members:
        return _stands(food, need, knowledge)
    found = {_stands(member, need, knowledge) for member in members}
    return found.pop() if len(found) == 1 else Fit.UNKNOWN


def _stands(food: str, need: Need, knowledge: Knowledge) -> Fit:
    has, may = holds(food, knowledge)
    kinds = lineage(food, knowledge)
    if food in need.also:
        return Fit.YES
    if need.only and WINE in kinds and not kinds & need.only:
        return Fit.NO
    if kinds & need.kinds or has & need.marks:
        lighter = kinds & need.lighter and not kinds & need.kinds and _lightened(food, need, knowledge)
        return Fit.UNKNOWN if lighter else Fit.NO
    plain = kinds & need.plain and not knowledge.entry(food).get("part")
    if may & need.marks or kinds & need.ask or (need.label_only and not plain):
        return Fit.UNKNOWN
    return Fit.YES


def _lightened(food: str, need: Need, knowledge: Knowledge) -> bool:
    """Whether nothing is against a need but marks that matter less in a lighter kind, and stand there."""
    if not need.lighter_marks:
        return True
    if (holds(food, knowledge)[0] & need.marks) - need.lighter_marks:
        return False
    return only_in(food, need.lighter_marks, need.lighter, knowledge)


def _light(foods: Sequence[str], need: Need, knowledge: Knowledge) -> set[str]:
    """The marks that these foods hold by a lighter kind alone, so that nothing is left out for them."""
    held = ({m for m in need.lighter_marks if m in holds(food, knowledge)[0]} for food in foods)
    pairs = [(food, mark) for food, marks in zip(foods, held, strict=True) for mark in marks]
    heavy = {mark for food, mark in pairs if not only_in(food, {mark}, need.lighter, knowledge)}
    return {mark for _, mark in pairs} - heavy


def because(rows: Iterable[GuestCare], evening: Evening, session: Session) -> list[str]:
    """What in each thing that is not for a guest is against a need, where a mark says so, a line each."""
    foods = {line.label: [p.food for d in line.dishes for p in d.parts] for line in evening.foods}
    found: dict[str, dict[str, None]] = {}
    for row in rows:
        needs = [need for said in row.needs for need in understood(said, session)]
        marks = frozenset[str]().union(*(need.marks for need in needs))
        for label in (label for label in row.keep_away if label in foods):
            held = {mark for food in foods[label] for mark in holds(food, session.knowledge)[0] & marks}
            held -= {m for need in needs for m in _light(foods[label], need, session.knowledge)}
            found.setdefault(label, {}).update(dict.fromkeys(sorted(map(session.knowledge.label, held))))
    say = session.wording
    return [say("plan", "guest-because", thing=capital(thing), why=listed(list(why)))
            for thing, why in found.items() if why]  # fmt: skip


def _worst(fits: Iterable[Fit]) -> Fit:
    """The least favourable of several, YES where there are none."""
    found = set(fits)
    return next((fit for fit in WORST if fit in found), Fit.YES)


def cautions(
    evening: Evening, guests: Sequence[GuestCare], perishable: bool, drinks: bool, session: Session
) -> list[str]:
    """The cautions the evening calls for in fixed wording, each with its source, most urgent first.

    `perishable`: some food spoils outside the fridge; `drinks`: drinks without alcohol are offered.
    """
    found = [name for guest in guests for name in _for_guest(guest, evening, session)]
    found += ALLERGY if any(guest.allergy or guest.unknown for guest in guests) else ()
    poured = any(session.knowledge.wines[line.wine].type == "Wine" for line in evening.wines)
    found += ALWAYS if poured else ()
    found += [ALCOHOL_FREE] if drinks else []
    found += [PERISHABLE] if perishable else []
    return [_sentence(name, session.knowledge) for name in dict.fromkeys(found)]


def _for_guest(guest: GuestCare, evening: Evening, session: Session) -> list[str]:
    """What the topics of a guest's needs always say, and what they say of the foods on the table."""
    topics = [session.parser.topics.by_id[name] for name in guest.topics]
    foods = [part.food for line in evening.foods for dish in line.dishes for part in dish.parts]
    found: list[str] = []
    for topic in topics:
        wanted = {c for food in foods for c in for_food(food, topic, session.knowledge)}
        told = [c for c in (*topic.care.values(), *topic.kinds.values()) if c in wanted]
        found += [*topic.base, *told, *([topic.drink] if topic.drink and evening.wines else [])]
    return found


def _sentence(name: str, knowledge: Knowledge) -> str:
    entry = knowledge.entry(name)
    sources = "; ".join(source_text(source, knowledge) for source in entry.get("source", []))
    return wording()("text", "source", text=entry["say"][0], source=sources)
