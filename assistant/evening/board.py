"""Whether a board holds together: milk, texture, flavour, support, loudness and salt."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import ceil, log

from assistant.knowledge.concepts import Entry, first
from assistant.knowledge.store import Knowledge
from assistant.pairing.dish import Dish
from assistant.pairing.engine import Engine
from assistant.pairing.plate import Plate

MILK, TEXTURE, FLAVOURED = "board/milk", "board/texture", "board/flavoured"
SUPPORT, TRAP = "board/support", "board/trap"
MILD, LOUD, SALT, SWEET = "board/mild", "board/loud", "board/salt", "board/sweet"
NEUTRAL, SUGARY = "board/support-neutral", "board/trap-sweet"
CHEESE = "kind/cheese"
FEW, KEPT = 2, 512  # KEPT: what is found of the same few things while changes are tried
HUNDRED = 100.0
Places = dict[str, tuple[str, ...]]


@dataclass(frozen=True, eq=False, slots=True)
class BoardItem:
    """One thing on a board: places it takes by aspect, aroma in points, sodium in mg for 100 g.

    It is equal to nothing but itself, so that what is found of a few things can be kept.
    """

    label: str
    food: str
    places: Mapping[str, tuple[str, ...]]
    cheese: bool
    aroma: float
    sodium: float


@dataclass(frozen=True, slots=True)
class Finding:
    """One aspect looked at: how many faults, what there is, what would mend it (places or labels).

    `value` is what was counted, `bound` what it was held against.
    """

    aspect: str
    faults: float
    value: float
    bound: float
    has: tuple[str, ...] = ()
    lacks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Amounts:
    """Grams of each thing for one guest, in the order of the board; `given` where the host named them."""

    grams: tuple[float, ...]
    given: bool


@dataclass(frozen=True, slots=True)
class Place:
    """A place on a board: its aspect, and the kinds and traits of food that take it.

    `offered`: whether a host who names no diet is told to fill it. `beside`: whether what takes it is eaten
    with the main bites and no wine is chosen for it.
    """

    id: str
    aspect: str
    kinds: frozenset[str]
    traits: frozenset[str]
    offered: bool
    beside: bool


@lru_cache(maxsize=4)
def board_places(knowledge: Knowledge) -> tuple[Place, ...]:
    """Every place on a board, in file order."""
    return tuple(_place(subject, knowledge.entry(subject)) for subject in knowledge.of_type("BoardPlace"))


def _place(subject: str, entry: Entry) -> Place:
    kinds, traits = (frozenset(entry.get(name, ())) for name in ("ofKind", "ofTrait"))
    offered, beside = not first(entry, "dietOnly", False), bool(first(entry, "beside", False))
    return Place(subject, entry["aspect"][0], kinds, traits, offered, beside)


def board_item(label: str, dish: Dish, engine: Engine) -> BoardItem:
    """A dish as a thing on a board; what lies on it takes its places too."""
    foods = [part.food for part in dish.parts]
    return _item(label, dish.main.food, foods, engine.plate(dish), engine.knowledge)


def board_food(food: str, engine: Engine) -> BoardItem:
    """A food by itself as a thing on a board."""
    known = engine.knowledge
    return engine.worked_out(
        "board", food, lambda food: _item(known.label(food), food, [food], engine.plate_of_food(food), known)
    )


def _item(label: str, main: str, foods: Sequence[str], plate: Plate, knowledge: Knowledge) -> BoardItem:
    kinds = {kind for food in foods for kind in (food, *knowledge.broader(food))}
    places, cheese = _places(kinds, plate.traits, knowledge), CHEESE in (main, *knowledge.broader(main))
    if cheese:
        places.pop(SUPPORT, None)  # a cheese made of nuts is no crunch
    return BoardItem(label, main, places, cheese, plate.points["aroma"], plate.values.get("sodium", 0.0))


def _places(kinds: set[str], traits: Iterable[str], knowledge: Knowledge) -> Places:
    """The places of a food by aspect."""
    found = Places()
    for place in board_places(knowledge):
        if place.kinds & kinds or place.traits.intersection(traits):
            found[place.aspect] = (*found.get(place.aspect, ()), place.id)
    return found


def even_amounts(items: Sequence[BoardItem], knowledge: Knowledge) -> Amounts:
    """What a guest usually eats of a board, shared out evenly."""
    each = knowledge.constants["board-grams"] / max(1, len(items))
    return Amounts((each,) * len(items), given=False)


def findings(
    items: Sequence[BoardItem], knowledge: Knowledge, amounts: Amounts | None = None
) -> list[Finding]:
    """Every aspect that applies to a board of at least one thing, sound ones with 0 faults.

    A cheese of no known milk or texture is not held against the board.
    """
    amounts = amounts or even_amounts(items, knowledge)
    supporting = tuple(item for item in items if SUPPORT in item.places)
    found = [support(supporting, knowledge), _salt(items, amounts, knowledge)]
    if amounts.given:
        found.append(_sweet(items, amounts, knowledge))
    found += of_cheeses(tuple(item for item in items if item.cheese), knowledge)
    if len(items) > FEW:
        found += [_mild(items, knowledge), _loud(items, knowledge)]
    return found


@lru_cache(maxsize=KEPT)
def of_cheeses(cheeses: tuple[BoardItem, ...], knowledge: Knowledge) -> tuple[Finding, ...]:
    """What is found of the cheeses alone: milk, texture and flavour, where two have a place there."""
    looks = ((MILK, _milk), (TEXTURE, _texture), (None, _flavoured))
    known = ((look, [c for c in cheeses if aspect is None or c.places.get(aspect)]) for aspect, look in looks)
    return tuple(look(placed, knowledge) for look, placed in known if len(placed) >= FEW)


def traps(items: Sequence[BoardItem]) -> list[BoardItem]:
    """The things to plate apart."""
    return [item for item in items if item.places.get(TRAP)]


def evenness(counts: Iterable[int]) -> float:
    """Shannon evenness, from 0 (all of one sort) to 1 (as many of each sort)."""
    numbers = [n for n in counts if n]
    if len(numbers) < FEW:
        return 0.0
    shares = [n / sum(numbers) for n in numbers]
    return -sum(p * log(p) for p in shares) / log(len(numbers))


def _taken(items: Iterable[BoardItem], aspect: str) -> Counter[str]:
    return Counter(place for item in items for place in item.places.get(aspect, ()))


def _open(taken: Collection[str], aspect: str, knowledge: Knowledge) -> tuple[str, ...]:
    """The places of an aspect that nothing takes."""
    return tuple(place for place in _places_of(aspect, knowledge) if place not in taken)


@lru_cache(maxsize=32)
def _places_of(aspect: str, knowledge: Knowledge) -> tuple[str, ...]:
    return tuple(place.id for place in board_places(knowledge) if place.aspect == aspect)


def _milk(cheeses: Sequence[BoardItem], knowledge: Knowledge) -> Finding:
    c, taken = knowledge.constants, _taken(cheeses, MILK)
    wanted = c["board-milks"]
    uneven = len(cheeses) >= c["board-many-cheeses"] and evenness(taken.values()) < c["board-evenness"]
    short = max(0.0, wanted - len(taken))
    lacks = _open(taken, MILK, knowledge)
    return Finding(MILK, max(short, float(uneven)), len(taken), wanted, tuple(taken), lacks)


def _texture(cheeses: Sequence[BoardItem], knowledge: Knowledge) -> Finding:
    """Many cheeses show most of the ladder, fewer one rung less than there are cheeses, two both."""
    c, taken = knowledge.constants, _taken(cheeses, TEXTURE)
    spare = c["board-many-cheeses"] - c["board-textures"]
    wanted = min(c["board-textures"], max(FEW, len(cheeses) - spare))
    lacks = _open(taken, TEXTURE, knowledge)
    return Finding(TEXTURE, max(0.0, wanted - len(taken)), len(taken), wanted, tuple(taken), lacks)


def _flavoured(cheeses: Sequence[BoardItem], knowledge: Knowledge) -> Finding:
    names = tuple(cheese.label for cheese in cheeses if cheese.places.get(FLAVOURED))
    most = max(1, ceil(knowledge.constants["board-flavoured-share"] * len(cheeses)))
    return Finding(FLAVOURED, max(0, len(names) - most), len(names), most, names)


@lru_cache(maxsize=KEPT)
def support(items: tuple[BoardItem, ...], knowledge: Knowledge) -> Finding:
    """What is found of the things beside the cheese: bread, fruit, nuts, something sour."""
    taken = dict.fromkeys(place for item in items for place in item.places[SUPPORT])
    lacks = _open(taken, SUPPORT, knowledge)
    return Finding(SUPPORT, len(lacks), len(taken), len(taken) + len(lacks), tuple(taken), lacks)


def _mild(items: Sequence[BoardItem], knowledge: Knowledge) -> Finding:
    most = knowledge.constants["board-mild"]
    names = tuple(item.label for item in items if item.aroma <= most)
    return Finding(MILD, float(not names), min(item.aroma for item in items), most, names)


def _loud(items: Sequence[BoardItem], knowledge: Knowledge) -> Finding:
    least = knowledge.constants["board-loud"]
    names = tuple(item.label for item in items if item.aroma >= least)
    return Finding(LOUD, float(not names), max(item.aroma for item in items), least, names)


def _salt(items: Sequence[BoardItem], amounts: Amounts, knowledge: Knowledge) -> Finding:
    """Milligrams of sodium for a guest; what brings most of it comes first."""
    each = [g * item.sodium / HUNDRED for g, item in zip(amounts.grams, items, strict=True)]
    most = knowledge.constants["board-sodium"]
    ranked = sorted(zip(each, items, strict=True), key=lambda pair: (-pair[0], pair[1].label))
    names = tuple(item.label for _, item in ranked)
    return Finding(SALT, float(sum(each) > most), sum(each), most, names)


def _sweet(items: Sequence[BoardItem], amounts: Amounts, knowledge: Knowledge) -> Finding:
    """Grams of honey, jam and the like for a guest."""
    sugary = [(g, i) for g, i in zip(amounts.grams, items, strict=True) if SUGARY in i.places.get(TRAP, ())]
    grams, most = sum(g for g, _ in sugary), knowledge.constants["board-sweet-grams"]
    return Finding(SWEET, float(grams > most), grams, most, tuple(i.label for _, i in sugary))
