"""Plans made for the sheets, without a file or the engine: as many wines and foods as a test wants."""

from __future__ import annotations

from datetime import datetime
from random import Random
from typing import Any

NOW = datetime(2027, 2, 1, 10, 0)
VERDICTS = ("strong", "good", "fair", "neutral", "poor", "clash")
ALLERGENS = ("milk", "eggs", "fish", "tree nuts", "cereals containing gluten", "sesame seeds", "soybeans")
SULPHITES = "sulphur dioxide and sulphites above 10 mg/kg or 10 mg/l"
WHYS = (
    "sharpness in the wine clears the fat, so the next bite tastes fresh",
    "the wine is about as big as the food",
    "protein and fat take hold of the wine's grip, so it feels softer",
)
WINES = (
    "off-dry Riesling",
    "brut sparkling",
    "Pinot Noir",
    "Malbec",
    "white Bordeaux",
    "late-harvest Riesling",
)
FOODS = ("garlic cheddar", "brie", "salami", "almonds", "plain crackers", "smoked mackerel", "mushroom pâté")
NAMES = ("Grey Heron 2025", "Harbour Bell", "Three Lanterns", None)
STYLES = ("off-dry crisp white", "dry sparkling white", "dry medium-bodied red")
Plan = dict[str, Any]


def plan(random: Random, wines: int = 4, foods: int = 5, longest: int = 0) -> Plan:
    """A plan with so many wines and foods; `longest`: names are filled up to this many letters."""
    names = [_name(random, WINES, i, longest) for i in range(wines)]
    dishes = [_name(random, FOODS, i, longest) for i in range(foods)]
    matrix = {food: {wine: random.choice(VERDICTS) for wine in names} for food in dishes}
    return {
        "title": _name(random, ("Quay House tasting",), 0, longest),
        "start": "2027-02-12T19:00",
        "meal": "tasting",
        "guests": 20,
        "drinkers": 18,
        "pour_ml": 60.0,
        "chosen": names,
        "flight": [_wine(random, name, matrix) for name in names],
        "pour_order": [{"wine": name, "reason": "lighter.", "reset": False} for name in names],
        "pairings": [_pairing(food, matrix[food]) for food in dishes] if names else [],
        "foods": [_food(random, food) for food in dishes],
        "food_order": [{"food": food, "reason": "quieter."} for food in dishes],
        "alcohol_free": [_drink(random, i, longest) for i in range(wines or 3)],
        "board": {"balance": ["Nothing on it is loud."]},
        "coverage": None,
        "shopping": [{"item": name, "amount": 1, "unit": "bottle", "cost": 10.0} for name in names],
        "cost": {
            "total": 10.0 * wines,
            "per_head": 2.0,
            "currency": "EUR",
            "within_budget": None,
            "left": None,
        },
        "savings": [],
        "if_more": {"guests": 3, "bottles": [], "foods": []},
        "temperatures": [],
        "clock": [{"at": "2027-02-12T19:00", "task": "welcome"}],
        "kit": [{"item": "corkscrew", "count": 2, "need": "must"}],
        "alcohol": {"grams_per_drinker": 23.5, "us_drinks": 1.7, "uk_units": 3.0, "au_drinks": 2.4},
        "needs": [],
        "rescue": [],
        "cautions": [],
        "problems": [],
    }


def _name(random: Random, names: tuple[str, ...], at: int, longest: int) -> str:
    """A name unlike all others, as long as is asked for."""
    name = names[at] if at < len(names) else f"{random.choice(names)} {at + 1}"
    while len(name) < longest:
        name += random.choice((" with", " W", "w", "m", " 漢", " ", "il")) + random.choice("aemwMWÅ漢")
    return name


def _wine(random: Random, name: str, matrix: dict[str, dict[str, str]]) -> dict[str, Any]:
    met = {food: row[name] for food, row in matrix.items()}
    loves = min(met, key=lambda food: VERDICTS.index(met[food]), default=None)
    fights = max(met, key=lambda food: VERDICTS.index(met[food]), default=None)
    low = random.randint(6, 16)
    good = loves is not None and met[loves] in ("strong", "good", "fair")
    bad = fights is not None and met[fights] in ("poor", "clash")
    return {
        "wine": name,
        "name": random.choice(NAMES),
        "style": random.choice(STYLES),
        "profile": {key: round(random.uniform(0, 5), 2) for key in ("sweetness", "acid", "tannin", "body")},
        "celsius": [low, low + 2],
        "loves": _met(random, loves, met) if good else None,
        "fights": _met(random, fights, met) if bad else None,
        "would_fight": None if bad else {"food": "oyster", "verdict": "clash", "why": WHYS[0]},
        "keeps_open_days": 4,
        "keeps_open_range": random.choice(([3, 5], [1, 3], None)),
        **_inside(random, [SULPHITES]),
        "stand_ins": [],
    }


def _met(random: Random, food: str | None, met: dict[str, str]) -> dict[str, str]:
    return {"food": food or "", "verdict": met[food or ""], "why": random.choice(WHYS)}


def _inside(random: Random, more: list[str]) -> dict[str, list[str]]:
    names = random.sample(ALLERGENS, 3)
    cut = random.randint(0, 2)
    return {
        "allergens_present": [*names[:cut], *more],
        "allergens_unknown": names[cut : random.choice((1, 3))],
    }


def _pairing(food: str, row: dict[str, str]) -> dict[str, Any]:
    ordered = sorted(row, key=lambda wine: VERDICTS.index(row[wine]))
    ends = ({"wine": wine, "verdict": row[wine]} for wine in (ordered[0], ordered[-1]))
    told = [{"wine": wine, "verdict": verdict} for wine, verdict in row.items()]
    return {"food": food, **dict(zip(("best", "worst"), ends, strict=True)), "verdicts": told}


def _food(random: Random, food: str) -> dict[str, Any]:
    days = random.choice(([14, 28], [2, 4], None))
    kept = {"storage": "in the fridge, 2 to 4 days" if days else None, "keeps_days": days}
    return {"food": food, **_inside(random, []), **kept, "rests": random.random() < 0.1}


def _drink(random: Random, at: int, longest: int) -> dict[str, Any]:
    name = _name(
        random, ("dealcoholised Riesling", "black tea with tart cherry", "cranberry juice"), at, longest
    )
    return {"drink": name, "food": "brie", "verdict": "fair", "foods": [], **_inside(random, [])}
