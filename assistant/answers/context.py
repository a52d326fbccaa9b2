"""What an answer is made from: the frame, the engine, the wording, and what stood before."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from assistant.answers.dish_record import dish_record
from assistant.answers.items import wine_item
from assistant.answers.record import Item
from assistant.answers.wording import Wording, listed
from assistant.evening.main_bites import wanting_wine
from assistant.knowledge.concepts import Rule
from assistant.knowledge.store import Knowledge
from assistant.language.frame import Frame
from assistant.language.topics import Topic
from assistant.pairing.dish import BASE, Dish, Table, table_of
from assistant.pairing.engine import Engine
from assistant.pairing.match import Match
from assistant.stock.asked import asks_price, price_asked
from assistant.stock.records import Stock
from assistant.table.tonight import Tonight

DRINK_KIND = "kind/drink"
NEARLY = 0.5


@dataclass(frozen=True, slots=True)
class Context:
    """Everything an answer builder may use; `top` is how many picks are wanted, `tonight` the table.

    `stock` is the host's list of bottles, empty where there is none; `corrections`: by how much what was
    left at evenings changes what is counted, by class of amounts.toml.
    """

    frame: Frame
    engine: Engine
    wording: Wording
    topics: Mapping[str, Topic]
    top: int = 3
    tonight: Tonight = field(default_factory=Tonight)
    stock: Stock = field(default_factory=Stock)
    corrections: Mapping[str, float] = field(default_factory=dict)

    @property
    def knowledge(self) -> Knowledge:
        """The knowledge behind the engine."""
        return self.engine.knowledge

    def all_used(self) -> Context:
        """The same where every word said is taken down (a name, a title), so that none is left out."""
        text = replace(self.frame.text, left_out=())
        return replace(self, frame=replace(self.frame, text=text))

    def of_evening(self) -> Context:
        """The same where the evening as a whole is spoken of: no dish stands, every word is taken down."""
        return replace(self.all_used(), frame=replace(self.all_used().frame, dishes=()))

    def table(self) -> Table:
        """The dishes of the frame as bites; sides, and what is eaten beside, weigh less than the rest."""
        dishes = list(self.frame.dishes)
        side = self.knowledge.constants["side-weight"]
        leads = wanting_wine([[dish] for dish in dishes], self.engine)
        weights = [1.0 if i in leads and not (i and self._is_side(d)) else side for i, d in enumerate(dishes)]
        return table_of(dishes, weights)

    def _is_side(self, dish: Dish) -> bool:
        return self.knowledge.food(dish.main.food).role == "role/side"

    def candidates(self) -> list[str]:
        """Wines within the limits: on the table, else in the list; all if none is or all are meant."""
        if self.frame.anywhere or self.without_prices:
            return self.all_candidates()
        poured = [] if self.by_price else list(self.tonight.wines)
        within = self.engine.within(poured, self.frame.preferences) or self.in_list()
        return within or self.in_list(at_any_price=True) or self.all_candidates()

    @property
    def without_prices(self) -> bool:
        """Whether a price to buy by is asked for, and none of any bottle is known."""
        known = self.stock or self.tonight.prices or self.tonight.evening
        return not known and asks_price(self.frame.text.typed)

    @property
    def by_price(self) -> bool:
        """Whether a list is there and is asked for by price, whatever stands on the table."""
        return bool(self.stock) and asks_price(self.frame.text.typed)

    def in_list(self, at_any_price: bool = False) -> list[str]:
        """Wines that keep to the limits and have a bottle left in the list that keeps to the price."""
        price = (None, None) if at_any_price else price_asked(self.frame.text.typed)
        return [w for w in self.all_candidates() if self.stock.has(w, *price)] if self.stock else []

    def at_table(self, wines: Sequence[str]) -> bool:
        """Whether these wines are on the table."""
        return bool(wines) and set(wines) <= set(self.tonight.wines)

    def all_candidates(self) -> list[str]:
        """Wines that keep to the limits; drinks without alcohol only when asked for."""
        limits = self.frame.preferences
        drinks = any(p.wanted and self._under_drink(p.wanted) and not p.banned for p in limits)
        wanted = "Drink" if drinks else "Wine"
        wines = self.knowledge.wines
        return self.engine.within([w.id for w in wines.values() if w.type == wanted], limits)

    def _under_drink(self, name: str) -> bool:
        return DRINK_KIND in (name, *self.knowledge.broader(name))

    def item(self, match: Match) -> Item:
        """The item of a match."""
        return wine_item(
            self.knowledge.wines[match.wine],
            self.engine.glasses[match.wine],
            match.verdict,
            match.path,
            self.knowledge,
            self.wording,
        )

    def dish_name(self) -> str:
        """How the dishes are called in a sentence."""
        return listed([self.one_dish(dish) for dish in self.frame.dishes])

    def one_dish(self, dish: Dish) -> str:
        """A dish in words: `grilled chicken with mushroom sauce`."""
        if dish.called:
            return dish.called
        label = self.knowledge.label
        main = " ".join([*(label(m) for m in dish.main.methods), label(dish.main.food)])
        rest = [label(p.food) for p in dish.parts if p is not dish.main]
        return f"{main} with {listed(rest)}" if rest and len(rest) < 4 else main

    def read_as(self) -> tuple[dict[str, Any], ...]:
        """The readings of the question, as the record wants them."""
        return tuple(
            {
                "text": r.text,
                "kind": r.kind,
                "label": r.label,
                "id": r.id,
                "corrected_from": r.corrected_from,
            }
            for r in self.frame.text.readings
        ) + tuple(
            {"text": p.label, "kind": "preference", "label": p.label, "id": p.property,
             "corrected_from": None}
            for p in self.frame.preferences
            if p.wanted is None
        )  # fmt: skip

    def dish_record(self) -> dict[str, Any] | None:
        """The first dish as eaten, or None."""
        if not self.frame.dishes:
            return None
        dish = self.frame.dishes[0]
        return dish_record(dish, self.one_dish(dish), self.engine)


def deciding_part(dish: Dish, engine: Engine) -> tuple[str, str, float] | None:
    """The part whose removal changes the plate most: (food, plate property, its points), or None."""
    if len(dish.parts) < 2:
        return None
    whole = engine.plate(dish).points
    most: tuple[float, str, str] = (0.0, "", "")
    for part in dish.parts:
        rest = Dish(tuple(p for p in dish.parts if p is not part), dish.added)
        points = engine.plate(rest).points
        for name in ("sugar", "acid", "salt", "heat", "fat", "umami", "smoke"):
            change = whole[name] - points[name]
            if part.role != BASE and change > most[0]:
                most = (change, part.food, name)
    return (most[1], most[2], whole[most[2]]) if most[0] >= 0.5 else None


def say_reason(match: Match, knowledge: Knowledge, good: bool) -> str | None:
    """The spoken reason on the wanted side, or None."""
    rule = strongest(match, knowledge, good)
    return rule.say if rule else None


def strongest(match: Match, knowledge: Knowledge, good: bool) -> Rule | None:
    """The rule that counts most on the wanted side.

    One that says something of this food goes before one that holds for almost any, where it
    is at least half as strong.
    """
    rules, families = knowledge.rules, knowledge.families
    found = [e for e in match.path if e.rule in rules and (e.effect > 0) == good and rules[e.rule].say]
    if not found:
        return None
    strong = [e for e in found if abs(e.effect) >= NEARLY * abs(found[0].effect)]
    near = [e for e in strong if not families[rules[e.rule].family].general]
    return rules[(near or found)[0].rule]


def tied_with_first(matches: Sequence[Match], noise: float) -> list[Match]:
    """Matches whose score is within the noise of the first, the first included."""
    return [m for m in matches if matches[0].score - m.score < noise]
