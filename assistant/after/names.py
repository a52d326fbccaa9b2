"""Guests by name: those an evening knows of, and those a text is about."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from assistant.after.phrases import phrases
from assistant.answers.wording import capital
from assistant.language.fold import fold, stem
from assistant.language.frame import Frame
from assistant.language.guest_named import has_name

if TYPE_CHECKING:
    from assistant.notebook import Statement
    from assistant.session import Session

OWNS = ("'s", "’s", "s'", "s’")
LONGEST, MOST_WORDS, LONGEST_SHORT = 30, 3, 4
"""Of a name in letters and words, and of what is shortened with a stop in it (`St.`, `Dr.`)."""


def tonights(session: Session) -> tuple[Statement, ...]:
    """What stands in the notebook of the evening on the table; of all evenings where it has no title."""
    told, title = session.taught.told(), session.tonight.title
    return tuple(one for one in told if one.evening == title) if title else told


def known_guests(session: Session) -> tuple[str, ...]:
    """Guests with a name who voted, asked or have a need, each once, in that order."""
    told = [str(one.value["guest"]) for one in tonights(session) if "guest" in one.value]
    needing = (need.guest for need in session.tonight.needs if need.guest)
    return once(name for name in (*told, *needing) if is_name(name))


def is_name(guest: str) -> bool:
    """Whether somebody may be written to so: not `you`, `boss`, nor words that were taken for a name."""
    words = guest.split()
    no_names = phrases().sets["nobody"] | phrases().sets["nameless"]
    plain_ = all(fold(word).strip(".").replace("-", "").replace("'", "").isalpha() for word in words)
    sentence = any(word.endswith(".") and len(word) > LONGEST_SHORT for word in words[:-1])
    called = not any(stem(fold(word).strip(".")) in no_names for word in words)
    return has_name(guest) and plain_ and called and not sentence and len(words) <= MOST_WORDS


def once(names: Iterable[str]) -> tuple[str, ...]:
    """Names without those that differ in case or accents alone."""
    found: dict[str, str] = {}
    for name in names:
        found.setdefault(plain(name), name)
    return tuple(found.values())


def plain(name: str) -> str:
    """A name to be compared: folded, without a stop at its end."""
    return fold(name).rstrip(".")


def guests_named(frame: Frame, session: Session) -> tuple[str, ...]:
    """The guests a text is for: those known by name, else whoever it looks to be for."""
    words = [plain(_owner(word)) for word in frame.text.words]
    names = known_guests(session)
    known = [name for name in names if _stands(plain(name).split(), words)]
    bare = {word.removesuffix("s") for word in words}  # `jens message`, where Jen is known and no Jens
    known = known or [name for name in names if plain(name) in bare]
    return tuple(known) or _looks(frame)


def _stands(name: list[str], words: list[str]) -> bool:
    return any(words[at : at + len(name)] == name for at in range(len(words) - len(name) + 1))


def _looks(frame: Frame) -> tuple[str, ...]:
    """`write jen's message`, `text for Mo`, `message Priya`: who owns it or is written to."""
    words, sets = frame.text.words, phrases().sets
    taken = {at for r in frame.text.readings for at in range(r.start, r.end)}
    open_ = [at for at in range(len(words)) if at not in taken and _is_name(words[at])]
    before = ["", *map(fold, words)]
    after = [*before[2:], ""]
    owns = [at for at in open_ if words[at].lower().endswith(OWNS) and after[at] in sets["messages"]]
    behind = [at for at in open_ if before[at] in sets["for"] and sets["messages"].intersection(before[:at])]
    told = [at for at in open_ if before[at] in sets["tell"]]
    writes = [
        at for at in open_ if before[at] in sets["writes"] and sets["messages"].intersection(after[at:])
    ]
    found = owns or behind or told or writes
    return tuple(capital(_owner(words[at])) for at in found[:1])


def _is_name(word: str) -> bool:
    bare = fold(_owner(word))
    return bare.isalpha() and bare not in phrases().sets["nobody"] and len(bare) <= LONGEST


def _owner(word: str) -> str:
    """The word without the ending by which it owns something."""
    return next((word[: -len(end)] for end in OWNS[:2] if word.lower().endswith(end)), word)
