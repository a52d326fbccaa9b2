"""Names by the consonants they sound with (their bones, see `sounding.py`)."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence, Set
from functools import cached_property

BETWEEN = "|"


class BySound:
    """Names under bones without the number of a language: `{"pn": "pan pan 0|pinot pino 13"}`.

    Behind a name stand how it sounds and the languages that read it so. Strings are taken apart when
    they are asked for, as few ever are: lists of them take five times the memory.
    """

    def __init__(self, rows: Mapping[str, str]) -> None:
        self._rows = rows

    @cached_property
    def letters(self) -> list[str]:
        """All consonants of the bones."""
        return sorted(set().union(*self._rows))

    def of(self, bones: str, tongue: str = "") -> Iterator[tuple[str, str]]:
        """(name, sound) of what has these bones in a language, or in any."""
        row = self._rows.get(bones)
        for entry in row.split(BETWEEN) if row else ():
            name, sound, tongues = entry.split(" ")
            if tongue in tongues:
                yield name, sound

    def among(self, bones: Set[str]) -> Set[str]:
        """Those of the bones that any name has."""
        return self._rows.keys() & bones


def by_sound(heard: Iterable[tuple[str, Sequence[tuple[str, str]]]]) -> dict[str, str]:
    """What a `BySound` is made of, fit for JSON, from names and their (bones behind the language, sound)."""
    found: dict[str, list[str]] = {}
    for name, readings in heard:
        tongues: dict[tuple[str, str], str] = {}
        for bones, sound in readings:
            tongues[bones[1:], sound] = tongues.get((bones[1:], sound), "") + bones[0]
        for (bones, sound), read_so in tongues.items():
            found.setdefault(bones, []).append(f"{name} {sound} {read_so}")
    return {bones: BETWEEN.join(row) for bones, row in found.items()}
