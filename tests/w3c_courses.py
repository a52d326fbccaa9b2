"""The courses of the W3C food example against the session's picks. `python -m tests.w3c_courses` prints them.

A course asks for a colour and a sugar. Each pick is a place; a place is right where the wine has
what the course asks for. Rosé and amber wine are neither white nor red.
"""

from __future__ import annotations

import csv
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from assistant.answers.record import Item
from assistant.session import Session

COURSES = Path(__file__).parent / "reference" / "w3c_owl_guide_courses.csv"
PLACES = 3
COLOUR, SUGAR = "colour", "sugar"
SUGARS = {"medium-sweet": "sweet"}
WORDS = {
    "spicy tomato pasta (fra diavolo)": "pasta fra diavolo",
    "young cod (scrod)": "young cod",
    "cheese as dessert": "a cheese course",
    "nuts as dessert": "nuts",
}


@dataclass(frozen=True, slots=True)
class Course:
    """One course with what it asks of the wine; body and flavour are not looked at."""

    food: str
    colour: str
    sugar: str

    @property
    def question(self) -> str:
        """How a host would ask."""
        return f"What wine goes with {WORDS.get(self.food, self.food)}?"

    def wants(self, aspect: str) -> str:
        """The colour or sugar asked for."""
        return self.colour if aspect == COLOUR else self.sugar


@dataclass(frozen=True, slots=True)
class Place:
    """One pick for a course."""

    course: Course
    wine: str
    colour: str
    sugar: str
    score: float

    def has(self, aspect: str) -> str:
        """The colour or sugar of the wine."""
        return self.colour if aspect == COLOUR else self.sugar

    def right(self, aspect: str) -> bool:
        """Whether the wine has what the course asks for."""
        return self.has(aspect) == self.course.wants(aspect)


@dataclass(frozen=True, slots=True)
class Answered:
    """A course with its places, and what of the question was left out."""

    course: Course
    places: tuple[Place, ...]
    left_out: tuple[str, ...]


def read_courses(file: Path = COURSES) -> list[Course]:
    """All courses of the example."""
    with file.open(encoding="utf-8", newline="") as handle:
        return [Course(row["food"], row["colour"], row["sugar"]) for row in csv.DictReader(handle)]


def answer(course: Course, session: Session) -> Answered:
    """The places of a course, asked in a conversation of its own."""
    session.new_conversation()
    found = session.ask(course.question)
    return Answered(course, tuple(_place(course, item) for item in found.picks), found.left_out)


def answers(session: Session) -> list[Answered]:
    """The places of every course."""
    return [answer(course, session) for course in read_courses()]


def _place(course: Course, item: Item) -> Place:
    facts = item.wine or {}
    sugar = facts["sweetness"]
    return Place(course, item.label, facts["colour"], SUGARS.get(sugar, sugar), item.score)


def counted(answered: Iterable[Answered], aspect: str, defended: Iterable[str] = ()) -> list[Place]:
    """The places that count for an aspect: all but those of defended courses."""
    skipped = set(defended)
    return [p for a in answered if a.course.food not in skipped for p in a.places]


def share_right(places: Sequence[Place], aspect: str) -> float:
    """Which part of the places is right."""
    return sum(place.right(aspect) for place in places) / len(places)


def misses(places: Iterable[Place], aspect: str) -> str:
    """The places that are not right, one a line."""
    wrong = [place for place in places if not place.right(aspect)]
    lines = [
        f"{p.course.food:34} wants {p.course.wants(aspect):7} has {p.has(aspect):7} {p.score:+6.1f} {p.wine}"
        for p in wrong
    ]
    return "\n".join(lines) or "(none)"


def report(session: Session) -> str:
    """Shares and misses of both aspects, defended courses included."""
    answered = answers(session)
    parts = []
    for aspect in (COLOUR, SUGAR):
        places = counted(answered, aspect)
        share = share_right(places, aspect)
        parts.append(f"{aspect}: {share:.2f} of {len(places)} places right\n{misses(places, aspect)}")
    return "\n\n".join(parts)


if __name__ == "__main__":
    print(report(Session(top=PLACES)))
