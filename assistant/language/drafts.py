"""A dish in the making: its parts so far, and which of them were named apart from the rest."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from assistant.knowledge.store import Knowledge
from assistant.language.frame import Reading
from assistant.language.sorting import EDIBLE
from assistant.pairing.dish import BASE, COATING, HUNDRED_GRAMS, Dish, DishPart
from assistant.pairing.plate import recipe


@dataclass(slots=True)
class Draft:
    """A dish in the making; the parts from `apart` on were named behind a link, those before it are older."""

    parts: list[DishPart] = field(default_factory=list)
    methods: list[str] = field(default_factory=list)
    called: str = ""
    apart: int = 0

    @property
    def base(self) -> DishPart | None:
        """The part that the others lie on, once it is named."""
        return next((p for p in self.parts if p.role == BASE), None)

    def set_apart(self) -> None:
        """What comes next is linked to the parts so far, and no piece of the same name."""
        self.apart = len(self.parts)

    def taken_apart(self) -> Draft | None:
        """A draft of the parts named since, taken off this one; None where there are none."""
        if not 0 < self.apart < len(self.parts):
            return None
        taken = Draft(self.parts[self.apart :])
        self.parts = self.parts[: self.apart]
        return taken


def mass_beside(share: float) -> float:
    """Grams beside 100 g of base that make up this percentage of the two."""
    return HUNDRED_GRAMS * share / (HUNDRED_GRAMS - share)


def cook_base(draft: Draft, methods: tuple[str, ...]) -> None:
    """Cooks the base of a draft."""
    draft.parts = [replace(p, methods=(*p.methods, *methods)) if p.role == BASE else p for p in draft.parts]


def coated(draft: Draft, knowledge: Knowledge) -> tuple[DishPart, ...]:
    """The parts of a draft: a dressing or sauce that is named takes the place of the one in the recipe."""
    named = {p.role for p in draft.parts if p.role in COATING}
    base = draft.base
    inner = recipe(knowledge.food(base.food)).parts if base else ()
    if base is None or not any(p.role in named for p in inner):
        return tuple(draft.parts)
    kept = [p for p in inner if p.role not in named]
    return (*kept, *(p for p in draft.parts if p is not base))


def as_called(reading: Reading, dishes: list[Dish]) -> Reading:
    """A short name that was taken for another sort of dish (`asparagus risotto`) stands as typed."""
    sort = any(dish.called.endswith(f" {reading.text}") for dish in dishes if dish.called)
    return replace(reading, label=reading.text) if sort and reading.kind in EDIBLE else reading
