"""What guests ask to be spared, as marks and kinds, from corpus/planning/needs.toml."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cache, lru_cache

from assistant.evening.facts import Row
from assistant.knowledge.files import corpus_dir
from assistant.knowledge.store import Knowledge
from assistant.language.data import read_data
from assistant.language.drinks_only import dislikes, dislikes_one, drunk_too, eats_only, sort_drunk
from assistant.language.eating import WITHOUT_ALCOHOL
from assistant.language.fold import fold, stem
from assistant.language.frame import Frame, Preference
from assistant.language.guest_named import has_name
from assistant.language.guests import Asked, guest_words
from assistant.language.own_needs import own_words
from assistant.language.same_guests import number_of
from assistant.language.small_words import small_words
from assistant.session import Session
from assistant.table.tonight import Tonight

WINE, NO_ALCOHOL, ALLERGY = "kind/wine", "diet/no-alcohol", "allergy"
NON_DRINKER = "no-alcohol"
EDIBLE = ("food/", "kind/")
PLAIN = frozenset(("kind/fruit", "kind/vegetable", "kind/nut"))


@dataclass(frozen=True, slots=True)
class Need:
    """A need understood: marks and kinds left out, kinds that are never settled without asking.

    `lighter`: kinds for which a mark found (of `lighter_marks`, where there are any) means asking, not
    leaving out; `label_only`: nothing but a label counts, `plain` kinds apart; `allergy`: cross-contact
    matters; `topics`: safety topics that speak to it; `itself`: a wider need does not take it in; `only`: of
    wines, these sorts alone; `tastes`: limits that a wine has to keep to; `also`: wines that are drunk too.
    """

    id: str
    marks: frozenset[str]
    kinds: frozenset[str]
    ask: frozenset[str] = frozenset()
    lighter: frozenset[str] = frozenset()
    label_only: bool = False
    plain: frozenset[str] = frozenset()
    allergy: bool = False
    topics: tuple[str, ...] = ()
    itself: bool = False
    only: frozenset[str] = frozenset()
    lighter_marks: frozenset[str] = frozenset()
    tastes: tuple[Preference, ...] = ()
    also: frozenset[str] = frozenset()

    @property
    def sober(self) -> bool:
        """Whether wine is left out."""
        return WINE in self.kinds

    @property
    def of_taste(self) -> bool:
        """Whether a guest only keeps to some wines, which no label settles."""
        return bool(self.only or self.tastes)


@lru_cache
def _rows() -> tuple[Row, ...]:
    rows = read_data(corpus_dir() / "planning" / "needs.toml", lambda tables: list(tables["need"]))
    return tuple(rows)


def understood(said: str, session: Session) -> tuple[Need, ...]:
    """The needs meant by what is said; a food named is left out itself. None where nothing is known."""
    if _is_served(said, session):
        return ()
    by_name = _of_sort(said, session) or named_needs(said, session)
    eats = _eats(said, session)
    if eats or eats_only(said):
        return tuple(need for need in by_name if not need.allergy)  # `only eats fish` leaves out no fish
    if by_name:
        return by_name
    return _of_food(said, session.parser.parse(said), session.knowledge)


def _is_served(said: str, session: Session) -> bool:
    """Whether a food is said to be had, whose name tells whom it is for (`I have a vegan cheese`)."""
    text = session.parser.parse(said).text
    words = [fold(word) for word in text.words]
    if not guest_words().owns.intersection(words[:1]) or own_words().ails.intersection(words):
        return False
    at = 1 + (words[1:2] != [] and words[1] in small_words()["articles"])
    return any(r.start == at and r.end > at + 1 and r.id.startswith(EDIBLE) for r in text.readings)


def _eats(said: str, session: Session) -> bool:
    """Whether a guest is only said to eat or bring something (`eating the salami`), no allergy to be told."""
    eats = guest_words().eating.intersection(_plain(said)[:1])
    return bool(eats) and not session.parser.parse(said).topics


def _of_sort(said: str, session: Session) -> tuple[Need, ...]:
    """The sorts of wine that alone are drunk (`only drinks red`), or that are not (`doesn't drink red`)."""
    if not (sort := sort_drunk(said)):
        return _of_taste(said, session)
    sort, too = drunk_too(sort)
    also = frozenset(session.parser.parse(too).wines) if too else frozenset()
    limits = _limits(sort, session) or _limits(f"{sort} wine", session)
    wanted = {one.wanted for one in limits if one.wanted and not one.banned}
    wanted.update(session.parser.parse(sort).wines)
    tastes = tuple(one for one in limits if one.wanted is None)
    wine = (wanted - {WINE} or tastes) and WITHOUT_ALCOHOL not in wanted
    return (
        (Need(said, frozenset(), frozenset(), only=frozenset(wanted - {WINE}), tastes=tastes, also=also),)
        if wine
        else ()
    )


def _of_taste(said: str, session: Session) -> tuple[Need, ...]:
    """The sorts of wine that are not drunk (`doesn't drink red`), or the tastes (`hates oak`)."""
    if dislikes_one(said):
        return ()
    limits = _limits(said, session)
    barred = frozenset(one.wanted for one in limits if one.wanted and one.banned) - {WINE}
    tastes = tuple(one for one in limits if one.wanted is None) if dislikes(said) else ()
    return (Need(said, frozenset(), barred, tastes=tastes),) if barred or tastes else ()


def _limits(said: str, session: Session) -> tuple[Preference, ...]:
    """The kinds and tastes of wine that are wanted or barred; none where health is spoken of."""
    frame = session.parser.parse(said)
    return () if frame.topics else frame.preferences


def named_needs(said: str, session: Session) -> tuple[Need, ...]:
    """The needs of the file meant by what is said; none for a food that no row names."""
    topics = session.parser.parse(said).topics
    words = f" {' '.join(_plain(said))} "
    meant = [row for row in _rows() if _means(row, words, topics)]
    nested = {other for row in meant for other in row.get("instead_of", ())}
    return tuple(_need(row, topics, session) for row in meant if row["id"] not in nested)


def with_sober(tonight: Tonight, session: Session) -> Tonight:
    """The table with no fewer guests without wine than their needs tell of, where guests are counted.

    Who is counted without a name may be one of those with needs, so that nobody is counted twice.
    """
    if not tonight.guests:
        return tonight
    sober = [one for one in tonight.needs if any(need.sober for need in understood(one.need, session))]
    least = min(tonight.guests, max(tonight.non_drinkers, _least(sober, session)))
    return replace(tonight, non_drinkers=least)


def _least(sober: Sequence[Asked], session: Session) -> float:
    """How many guests drink no wine at least: who only `don't drink` may be any of the others."""
    plain = [one for one in sober if any(n.id == NON_DRINKER for n in understood(one.need, session))]
    others = [one for one in sober if has_name(one.guest) or one not in plain]
    return max(_heads(plain), _heads(others))


def _heads(asked: Sequence[Asked]) -> float:
    """How many these are, each name once, and who is counted as so many."""
    named = {one.guest for one in asked if has_name(one.guest)}
    return len(named) + sum(number_of(one.guest) or 1.0 for one in asked if not has_name(one.guest))


def _of_food(said: str, frame: Frame, knowledge: Knowledge) -> tuple[Need, ...]:
    """A food that no law has declared: in an allergy every label is read, though it need not name it."""
    owned = (fold(said).split() or [""])[
        0
    ] in guest_words().owns and not frame.topics  # `I got feta` is no need
    named = [] if owned else [r for r in frame.text.readings if r.id.startswith(EDIBLE)]
    foods = frozenset(food for r in named for food in (r.id, *_called(r.text, knowledge)))
    allergy = ALLERGY in frame.topics
    need = Need(
        said, frozenset(), foods, label_only=allergy, plain=PLAIN, allergy=allergy, topics=frame.topics
    )
    return (need,) if foods else ()


def _called(name: str, knowledge: Knowledge) -> list[str]:
    """Every food with this name in its own: `olives` are green olives too."""
    wanted = _stems(name)
    return [food for food in knowledge.of_type("Food") if wanted <= _stems(knowledge.label(food))]


def _stems(text: str) -> set[str]:
    return {stem(fold(word)) for word in text.split()}


def _plain(said: str) -> list[str]:
    return "".join(c if c.isalnum() or c in "'-" else " " for c in fold(said)).split()


def _means(row: Row, words: str, topics: Iterable[str]) -> bool:
    """Whether a word of the row stands in what is said, a longer word of another row not standing there."""
    if set(row.get("topics", ())) & set(topics):
        return True
    return any(_turn(word) in _without_longer(words, word) for word in row["words"])


def _without_longer(words: str, word: str) -> str:
    """What is said without the longer turns of other needs that hold this word: `tree nut` is not `nut`."""
    for longer in _longer(word):
        words = words.replace(longer, " ")
    return words


@cache
def _longer(word: str) -> tuple[str, ...]:
    turns = (_turn(other) for row in _rows() for other in row["words"])
    return tuple(turn for turn in turns if _turn(word) in turn and turn != _turn(word))


@cache
def _turn(word: str) -> str:
    """A word of a row as it stands between spaces."""
    return f" {' '.join(_plain(word))} "


def _need(row: Row, topics: tuple[str, ...], session: Session) -> Need:
    diet = _diet(f"diet/{row['diet']}", session.knowledge) if "diet" in row else (set(), set())
    sober = _diet(NO_ALCOHOL, session.knowledge) if row.get("alcohol") else (set(), set())
    hazards = session.parser.topics.by_id[row["topic_marks"]].care if "topic_marks" in row else {}
    marks = {f"care/{mark}" for mark in hazards} | set(row.get("leaves_out", ())) | diet[0] | sober[0]
    return Need(
        row["id"],
        frozenset(marks),
        frozenset(_kinds(row, "leaves_out_kinds") | diet[1] | sober[1]),
        frozenset(_kinds(row, "ask_kinds")),
        frozenset(_kinds(row, "lighter_kinds")),
        row.get("label_only", False),
        frozenset(_kinds(row, "plain_kinds")),
        row.get("allergy", False),
        tuple(dict.fromkeys((*topics, *row.get("topics_said", ())))),
        row.get("itself", False),
        lighter_marks=frozenset(row.get("lighter_marks", ())),
    )


def _diet(diet: str, knowledge: Knowledge) -> tuple[set[str], set[str]]:
    rules = knowledge.entry(diet)
    return set(rules.get("leavesOut", ())), set(rules.get("leavesOutKind", ()))


def _kinds(row: Row, key: str) -> set[str]:
    return {f"kind/{kind}" for kind in row.get(key, ())}
