"""Of whom was spoken: what `she`, `they` and `and the brie?` take up in the next question."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from assistant.answers.record import Answer
    from assistant.evening.records import Evening
    from assistant.language.frame import Frame
    from assistant.pairing.dish import Dish

TROUBLE, OUTSIDE, WINE = "trouble", "outside", "Wine"
REACTION = "caution/allergy-emergency"


@dataclass(slots=True)
class Spoken:
    """The guests a conversation spoke of, by name.

    `asked`: whose food was last asked about; `of`: last spoken of, whom `she` means; `called`: of whom `she`
    or `he` was said; `sober`: whether those who drink no wine were just spoken of; `things`: the evening
    with no more on its table than was just asked about for a guest; `drink`: whether a drink was just chosen;
    `reacted`: whether a reaction to a food was spoken of;
    `looked`: the foods asked about one by one for guests, which `the other cheeses` are not;
    `touched`: by guest, the foods that are told to have touched what that guest may not have;
    `ails`: the trouble just told, by id, and `ailed` the wines named with it; `last`: the answer before;
    `out`: the dishes that were just said to stand out of the fridge, for `out_minutes`, where that was told;
    `made`: by its foods, a dish told to be for vegetarians, and whether its cheese is.
    """

    asked: tuple[str, ...] = ()
    of: tuple[str, ...] = ()
    called: dict[str, str] = field(default_factory=dict)
    sober: bool = False
    things: Evening | None = None
    drink: bool = False
    looked: dict[tuple[str, ...], set[str]] = field(default_factory=dict)
    reacted: bool = False
    touched: dict[str, set[str]] = field(default_factory=dict)
    ails: tuple[str, ...] = ()
    ailed: tuple[str, ...] = ()
    out: tuple[Dish, ...] = ()
    out_minutes: float | None = None
    last: Answer | None = field(default=None, compare=False)
    made: dict[frozenset[str], bool] = field(default_factory=dict)

    def ailing(self, frame: Frame, trouble: bool) -> None:
        """Takes down the trouble that was told, if it was, with the wines that are named in its words."""
        named = [r.id for r in frame.text.readings if r.type == WINE]
        self.ails, self.ailed = (frame.entries[:1], tuple(named)) if trouble else ((), ())

    def heard(self, answer: Answer, frame: Frame) -> None:
        """Takes down the answer, a reaction or trouble it tells of, and whether food stands out."""
        self.last = answer
        self.ailing(frame, answer.intent == TROUBLE)
        self.out = self.out if frame.after == OUTSIDE else ()
        self.reacted |= any(caution["id"] == REACTION for caution in answer.cautions)
