"""The dish as eaten, as the record wants it: amounts with units, points from 0 to 5, parts."""

from __future__ import annotations

from typing import Any

from assistant.pairing.dish import Dish
from assistant.pairing.engine import Engine
from assistant.pairing.plate import Plate

# Record field -> plate property and the quantity it is read from.
_FIELDS = {
    "fat": ("fat", "fat"),
    "sugar": ("sugar", "sugar"),
    "acid": ("acid", "titratableAcidity"),
    "salt": ("salt", "sodium"),
    "umami": ("umami", "glutamate"),
    "heat": ("heat", "scoville"),
    "protein": ("protein", "protein"),
    "bitter": ("bitter", "bitterness"),
    "smoke": ("smoke", "smoke"),
    "aroma": ("aroma", "aroma"),
    "fish_oil": ("fishOil", "omega3"),
}


def dish_record(dish: Dish, label: str, engine: Engine) -> dict[str, Any]:
    """`{field: {value, unit, points}}` for every taste, `weight` in points only, and the parts.

    Values are per 100 g as eaten in the unit named; `share` is the part of the contact, 0 to 1.
    """
    plate = engine.plate(dish)
    record: dict[str, Any] = {"label": label}
    for name, (shown, quantity) in _FIELDS.items():
        record[name] = _taste(plate, shown, quantity, engine)
    record["acid"]["ph"] = round(plate.values["pH"], 2)
    record["weight"] = {"value": None, "unit": None, "points": round(plate.points["weight"], 2)}
    record["traits"] = sorted(trait.removeprefix("trait/") for trait in plate.traits)
    record["parts"] = [
        {
            "label": engine.knowledge.label(part.food),
            "id": part.food,
            "role": part.role.removeprefix("role/"),
            "share": round(share, 3),
            "methods": [engine.knowledge.label(m) for m in part.methods],
        }
        for part, share in zip(dish.parts, plate.shares, strict=True)
    ]
    return record


def _taste(plate: Plate, shown: str, quantity: str, engine: Engine) -> dict[str, Any]:
    unit = engine.knowledge.digest.get(quantity, {}).get("unitText", [""])[0]
    return {
        "value": round(plate.values[quantity], 3),
        "unit": unit,
        "points": round(plate.points[shown], 2),
    }
