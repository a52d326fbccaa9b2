"""Every wine, food, method and term can be asked for by every one of its names."""

from __future__ import annotations

import pytest

from assistant.knowledge.store import Knowledge, shipped
from assistant.language.lexicon import NAMED, labels
from assistant.language.parse import Parser

KNOWLEDGE = shipped()
PARSER = Parser(KNOWLEDGE)


def read_ids(text: str) -> set[str]:
    """Ids of everything read in a text, second meanings included."""
    frame = PARSER.parse(text)
    return {i for r in frame.text.readings for i in (r.id, *r.others)}


def missed(subjects: list[str], knowledge: Knowledge, template: str) -> list[str]:
    """Subjects that a question with their preferred label does not read."""
    return [s for s in subjects if s not in read_ids(template.format(plain(knowledge.label(s))))]


def plain(label: str) -> str:
    """The label without the remark in parentheses that tells two concepts apart."""
    return label.split(" (")[0]


@pytest.mark.parametrize(
    ("type_", "template"),
    [
        ("Food", "what goes with {}"),
        ("Wine", "what should I eat with {}"),
        ("Drink", "what should I eat with {}"),
        ("Method", "{} chicken"),
        ("Term", "what does {} mean"),
    ],
)
def test_preferred_label_is_read(type_: str, template: str) -> None:
    assert missed(KNOWLEDGE.of_type(type_), KNOWLEDGE, template) == []


def test_every_name_leads_to_its_concept() -> None:
    """Synonyms and frequent misspellings too, each asked by itself."""
    lost = [
        f"{label}: {subject}"
        for label, subject in labels(KNOWLEDGE)
        if subject not in PARSER.lexicon.find(label)
    ]
    assert lost == []


def test_no_class_is_forgotten() -> None:
    """Whatever is a named class has members in the lexicon."""
    found = {type_ for type_ in NAMED for _ in KNOWLEDGE.of_type(type_)[:1]}
    assert found == set(NAMED)
