"""The plainest questions are read right whatever wine or food is named: the corpus holds mostly odd ones.

The forms are written from ear; every one is put with wines or foods picked evenly from the knowledge.
"""

from __future__ import annotations

import pytest

from assistant.knowledge.store import shipped
from assistant.language.parse import Parser

OF_WINES = {
    "foods-for-wine": (
        "what goes with {}", "what goes well with a {}", "what food goes with {}", "what pairs with {}",
        "what should i eat with {}", "i have a bottle of {}, what food", "{} with what", "best food for {}",
        "what do i serve with {}", "which cheese for {}", "what can i cook with {}",
    ),
    "describe": ("what is {} like", "tell me about {}", "is {} sweet", "how does {} taste"),
    "service": ("how cold should {} be", "what temperature for {}", "which glass for {}"),
    "substitute": ("what can i use instead of {}", "i cant find {}, what else", "alternative to {}"),
}  # fmt: skip
OF_FOODS = {
    "wines-for-food": (
        "what goes with {}", "what wine with {}", "wine for {}", "what should i drink with {}", "{}?",
        "im making {}, what wine", "best bottle for {}", "what do i pour with {}", "any idea for {}",
        "we are having {} tonight", "what red for {}", "what about {}", "recommend something for {}",
    ),
    "judge-pair": ("does merlot go with {}", "is riesling ok with {}", "{} with cava, yes or no"),
    "why": ("why does riesling go with {}", "why merlot with {}"),
    "why-not": ("why not malbec with {}", "whats wrong with sherry and {}"),
    "compare": ("merlot or syrah with {}", "which is better with {}, cava or prosecco"),
    "one-bottle": ("one bottle for {} and salad",),
    "choose-wines": ("pick three wines for {} and brie",),
    "what-if": ("what if i add lemon to the {}",),
    "quantity": ("how much {} for 12 people",),
    "safety": ("is {} safe when pregnant",),
}  # fmt: skip
EVERY = {"wine/": 29, "food/": 61}
MOST_WRONG = 0.1  # of the names a form is tried with: some are hard to tell from a remark
KNOWLEDGE = shipped()


@pytest.fixture(scope="module")
def parser() -> Parser:
    return Parser(KNOWLEDGE)


def names(start: str) -> list[str]:
    found = [name for name in KNOWLEDGE.digest if name.startswith(start) and not _goes_on(name)]
    return [KNOWLEDGE.label(name) for name in found][:: EVERY[start]]


def _goes_on(name: str) -> bool:
    """Whether it is a sauce, a dressing or the like, which nobody has by itself."""
    return name.startswith("food/") and KNOWLEDGE.food(name).role is not None


CASES = [
    (start, intent, form)
    for start, forms in (("wine/", OF_WINES), ("food/", OF_FOODS))
    for intent, several in forms.items()
    for form in several
]


@pytest.mark.parametrize(("start", "intent", "form"), CASES, ids=[case[2] for case in CASES])
def test_a_plain_question_is_read_right(parser: Parser, start: str, intent: str, form: str) -> None:
    tried = names(start)
    wrong = {name: read for name in tried if (read := parser.parse(form.format(name)).intent) != intent}
    assert len(tried) >= 8
    assert len(wrong) <= MOST_WRONG * len(tried), wrong
