"""What the labels of an evening file mean, read with the same parser that reads questions."""

from __future__ import annotations

from assistant.language.frame import Frame
from assistant.pairing.dish import Dish
from assistant.session import Session


def wine_of(label: str, session: Session) -> str | None:
    """The wine or drink a label names, be it a bottle of the list; of a kind, the easiest to buy."""
    listed = session.stock.named(label)
    if listed:
        return listed.wine
    known = session.knowledge
    for word in _wine_words(session.parser.parse(label)):
        styles = known.styles_of(word)
        if styles:
            return max(styles, key=lambda style: known.wines[style].availability)
    return None


def dishes_of(label: str, session: Session) -> tuple[Dish, ...]:
    """The dishes a label names, none where it names none."""
    return session.parser.parse(label).dishes


def _wine_words(frame: Frame) -> list[str]:
    """The wines named; `red wine` stands among the limits."""
    kinds = [p.wanted for p in frame.preferences if p.property == "kind" and p.wanted and not p.banned]
    return [*frame.wines, *kinds]
