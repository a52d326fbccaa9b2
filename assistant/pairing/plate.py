"""A dish as eaten, in physical units and in points: what the rules see of the food."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from assistant.knowledge.concepts import Food, Method
from assistant.knowledge.store import Knowledge
from assistant.pairing import mixing
from assistant.pairing.dish import BASE, COATING, SIDE, Dish, DishPart
from assistant.pairing.mixing import Portion, Values

CREAM, CHEESE, EARTHY, COLD = "trait/cream", "trait/cheese", "trait/earthy", "trait/cold"
SEASONING, DIP = "role/seasoning", "role/dip"
MEAT = "kind/meat"


@dataclass(frozen=True, slots=True)
class Plate:
    """The dish as eaten. `values` per 100 g in their units, `points` 0-5 by plate property."""

    values: Mapping[str, float]
    points: Mapping[str, float]
    traits: frozenset[str]
    kinds: tuple[str, ...]
    homes: frozenset[str]
    countries: frozenset[str]
    course: str
    shares: tuple[float, ...]
    cooking: float = 0.0


@dataclass(frozen=True, slots=True)
class _Profile:
    """A part resolved to values, traits and homes, methods applied.

    `lead` is the food that stands for it where kinds matter: a composed dish's main part.
    """

    part: DishPart
    food: Food
    lead: Food
    values: Values
    traits: frozenset[str]
    homes: frozenset[str]
    cooking: float
    inner: Plate | None


def plate_of(dish: Dish, knowledge: Knowledge) -> Plate:
    """Composes a dish. Raises KeyError for a food or method that is not known."""
    profiles = [_profile(part, knowledge) for part in dish.parts]
    portions = [_portion(profile, knowledge) for profile in profiles]
    c = knowledge.constants
    values = mixing.mix(portions, c["first-contact-share"], c["full-loudness-share"])
    shares = mixing.touch_shares(portions)
    traits = _traits(profiles, shares, knowledge)
    _adjust(values, dish, traits, profiles, knowledge)
    main = next((p for p in profiles if p.part.role == BASE), profiles[0])
    points = _points(values, knowledge) | _coating_points(profiles, knowledge)
    _interact(points, traits, knowledge)
    points["weight"] = _weight(points, values, main, knowledge)
    points["lean"] = _lean(points, traits, profiles, main, knowledge)
    homes = main.homes
    return Plate(
        values,
        points,
        traits,
        _kinds(main),
        homes,
        knowledge.countries(homes),
        main.food.course or "course/savoury",
        tuple(shares),
        main.cooking,
    )


def _profile(part: DishPart, knowledge: Knowledge) -> _Profile:
    """Resolves a part: its own numbers stand over those of its recipe, then methods apply."""
    food = knowledge.food(part.food)
    own = {name: a.typical for name, a in food.amounts.items() if name in mixing.ALL}
    values, traits, homes, lead = own, food.traits, food.homes, food
    inner, cooking = None, 0.0
    if food.parts:
        lead = knowledge.food(recipe(food).main.food)
        inner = plate_of(recipe(food), knowledge)
        values, cooking = dict(inner.values) | own, inner.cooking
        traits, homes = traits | inner.traits, homes or inner.homes
    usual = (food.usual_method,) if food.usual_method and part.role == BASE else ()
    for name in part.methods or usual:
        cooked = knowledge.methods[name]
        values, cooking = _cook(values, cooked), cooked.weight
        traits |= cooked.traits
    return _Profile(part, food, lead, values, traits, homes, cooking, inner)


def bites_of(dish: Dish, knowledge: Knowledge) -> list[tuple[Dish, float]]:
    """A dish as the bites it is eaten in, with their shares: sides of a recipe stand alone and count less.

    A recipe with measured numbers of its own is known only as a whole and stays one bite.
    """
    food = knowledge.food(dish.main.food)
    parts = recipe(food).parts if food.parts and not food.amounts else ()
    sides = [p for p in parts if p.role == SIDE]
    if not sides:
        return [(dish, 1.0)]
    kept = tuple(p for p in parts if p.role != SIDE)
    counts = knowledge.constants["side-bites"]
    total = sum(p.mass for p in kept) + counts * sum(p.mass for p in sides)
    named = tuple(p for p in dish.parts if p is not dish.main)
    alone = [(Dish((replace(p, role=BASE),)), counts * p.mass / total) for p in sides]
    return [(Dish((*kept, *named), dish.added), sum(p.mass for p in kept) / total), *alone]


def _kinds(main: _Profile) -> tuple[str, ...]:
    own = (main.food.id, *main.food.kinds)
    lead = () if main.lead is main.food else (main.lead.id, *main.lead.kinds)
    return tuple(dict.fromkeys(own + lead))


def recipe(food: Food) -> Dish:
    """The parts a composed dish is made of, as shipped."""
    parts = (DishPart(p.food, p.role, p.share, (p.method,) if p.method else ()) for p in food.parts)
    return Dish(tuple(parts))


def _cook(values: Values, method: Method) -> Values:
    cooked = {n: v * method.concentrate if n in mixing.CONTACT else v for n, v in values.items()}
    cooked["glutamate"] = cooked.get("glutamate", 0.0) * method.glutamate_factor
    for name, extra in method.adds.items():
        cooked[name] = max(0.0, cooked.get(name, 0.0) + extra)
    return cooked


def _portion(profile: _Profile, knowledge: Knowledge) -> Portion:
    role = profile.part.role
    return Portion(profile.values, profile.part.mass, knowledge.contacts[role], coats=role in COATING)


def _traits(profiles: list[_Profile], shares: list[float], knowledge: Knowledge) -> frozenset[str]:
    """Traits of all parts; a small part keeps only its loud ones, a seasoning all, a small dip none."""
    small = knowledge.constants["small-part-share"]
    kept: set[str] = set()
    for profile, share in zip(profiles, shares, strict=True):
        whole = share >= small or profile.part.role in (SEASONING, BASE)
        loud = frozenset() if profile.part.role == DIP else knowledge.loud_traits
        kept |= profile.traits if whole else profile.traits & loud
    return frozenset(kept)


def _adjust(
    values: Values,
    dish: Dish,
    traits: frozenset[str],
    profiles: list[_Profile],
    knowledge: Knowledge,
) -> None:
    """What is put on top of the mixture: umami synergy, the guest's pinches, cold."""
    meaty = CHEESE in traits or any(MEAT in p.lead.kinds for p in profiles)
    if EARTHY in traits and meaty and len(profiles) > 1:
        values["glutamate"] *= knowledge.constants["umami-synergy"]
    for name, extra in dish.added.items():
        values[name] = max(0.0, values[name] + extra)
    if COLD in traits:
        values["aroma"] *= 1 - knowledge.constants["cold-loss"]


def _points(values: Values, knowledge: Knowledge) -> Values:
    """Points by plate property; where two quantities show as one, the lower counts."""
    points: Values = {}
    for name, value in values.items():
        scale = knowledge.scales.get(name)
        if scale is not None:
            shown = scale.points(value)
            points[scale.shows] = min(shown, points.get(scale.shows, shown))
    return points


def _coating_points(profiles: list[_Profile], knowledge: Knowledge) -> Values:
    """Sugar and acid of the loudest coating part, that of a composed dish's own sauce included."""
    coating = [_points(p.values, knowledge) for p in profiles if p.part.role in COATING]
    inner = [p.inner.points for p in profiles if p.inner]
    return {
        shown: max([p[name] for p in coating] + [p[shown] for p in inner], default=0.0)
        for shown, name in (("coatingSugar", "sugar"), ("coatingAcid", "acid"))
    }


def _interact(points: Values, traits: frozenset[str], knowledge: Knowledge) -> None:
    """What one taste hides of another, as perceived."""
    c = knowledge.constants
    hidden = c["bitter-per-sugar"] * points["sugar"]
    hidden += c["bitter-per-salt"] * max(0.0, points["salt"] - 1)
    points["bitter"] = max(0.0, points["bitter"] - hidden)
    calmed = c["heat-per-fat"] * max(0.0, points["fat"] - 2)
    calmed += c["heat-of-cream"] if CREAM in traits else 0.0
    points["heat"] = max(0.0, points["heat"] - calmed)


def _weight(points: Values, values: Values, main: _Profile, knowledge: Knowledge) -> float:
    c = knowledge.constants
    food = main.food if main.food.weight_shift else main.lead
    inside = sum(c[f"weight-{n}"] * points[n] for n in ("fat", "protein", "aroma"))
    inside += c["weight-starch"] * values["starch"] + c["weight-offset"] + main.cooking
    inside += 0.0 if food.shift_after else food.weight_shift
    weight = c["weight-start"] + c["weight-slope"] * inside
    weight += food.weight_shift if food.shift_after else 0.0
    return min(5.0, max(0.0, weight))


def _lean(
    points: Values, traits: frozenset[str], profiles: list[_Profile], main: _Profile, knowledge: Knowledge
) -> float:
    """The colour custom of the main part, shifted by what coats it; else of traits or of spicy food."""
    own = main.food.lean if main.food.lean is not None or main.inner is None else main.inner.points["lean"]
    coats = [p.food.lean or 0.0 for p in profiles if p.part.role in COATING and p is not main]
    if own is not None:
        return min(1.0, max(-1.0, own + max(coats, key=abs, default=0.0)))
    leans = [knowledge.entry(t).get("redLean") for t in sorted(traits)]
    found = [float(lean[0]) for lean in leans if lean] + coats
    if found:
        return min(found)
    spicy = points["heat"] >= knowledge.constants["spicy-heat"]
    return knowledge.constants["spicy-lean"] if spicy else 0.0
