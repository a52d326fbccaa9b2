"""The evening file (TOML) -> an `Evening`, with everything that is wrong with it told at once."""

from __future__ import annotations

import re
import tomllib
from datetime import datetime
from pathlib import Path
from typing import Any

from assistant.evening.cooling import places, reachable
from assistant.evening.facts import Row, fact, wording
from assistant.evening.fields import Fields, shown
from assistant.evening.labels import dishes_of, wine_of
from assistant.evening.lines import Place
from assistant.evening.records import Evening, FoodLine, GuestNeeds, Measured, WineLine
from assistant.knowledge.problems import KnowledgeError, Problem
from assistant.notebook.reading import read_bytes
from assistant.session import Session

TOP = (
    "title", "start", "guests", "non_drinkers", "meal", "pour_ml", "budget", "currency", "choose",
    "room_celsius", "wines", "foods", "needs", "measured",
)  # fmt: skip
WINE = ("label", "name", "price", "bottles", "must", "bottle_ml", "alcohol_percent")
FOOD = ("label", "grams", "price")
NEED = ("guest", "needs")
MEASURED = ("in", "from_celsius", "to_celsius", "minutes")
MEALS = ("tasting", "supper")
LARGEST_FILE = 1_000_000


def read_evening(file: Path, session: Session, now: datetime | None = None) -> Evening:
    """The evening in a file; `now` (with or without an offset) tells whether its start is past.

    Raises KnowledgeError with one problem where the file cannot be read or is no TOML; every other
    mistake is among the `problems` of the evening, and what it spoils is left out.
    """
    text = _text(file)
    return _Reading(file.name, text, session).evening(_tables(file, text), now)


def _text(file: Path) -> str:
    try:
        if file.stat().st_size > LARGEST_FILE:
            raise OSError("it is larger than a million bytes")
        return read_bytes(file, LARGEST_FILE).decode("utf-8-sig")
    except OSError as error:
        raise _unusable(file, "no-file", error.strerror or str(error)) from None
    except UnicodeDecodeError:
        raise _unusable(file, "not-toml", "it is no text in UTF-8") from None
    except ValueError as error:  # a name with a null character in it
        raise _unusable(file, "no-file", str(error)) from None


def _tables(file: Path, text: str) -> dict[str, Any]:
    try:
        return tomllib.loads(text)
    except RecursionError:
        raise _unusable(file, "not-toml", "it is nested too deeply") from None
    except ValueError as error:
        raise _unusable(file, "not-toml", str(error), text) from None


def _unusable(file: Path, name: str, reason: str, text: str = "") -> KnowledgeError:
    """The problem of a file nothing can be made of, its line taken out of what tomllib says."""
    found = re.search(r" \(at line (\d+), column \d+\)", reason)
    line = int(found[1]) if found else text.count("\n") + 1 if "end of document" in reason else None
    plain = re.sub(r" \(at [^)]*\)", "", reason)[:120]
    message, remedy = wording()("problem", name, reason=plain), wording()("problem", f"{name}-do")
    return KnowledgeError([Problem(file.name, message, remedy, line)])


class _Reading:
    """One reading of one file."""

    def __init__(self, source: str, text: str, session: Session) -> None:
        self._source, self._fields, self._session = source, Fields(source, text), session

    def evening(self, tables: Row, now: datetime | None) -> Evening:
        fields = self._fields
        fields.only(tables, TOP)
        start = self._start(tables, now)
        guests = fields.number(tables, Place("guests"), needed=True, whole=True) or 0
        wines, foods = self._wines(tables), self._foods(tables)
        room = fields.number(tables, Place("room_celsius"))
        made = Evening(
            title=fields.text(tables, Place("title")) or "",
            start=start.replace(tzinfo=None) if start else None,
            zone=start.tzinfo if start else None,
            guests=guests,
            non_drinkers=self._non_drinkers(tables, guests),
            meal=self._meal(tables),
            pour_ml=self._pour(tables),
            budget=fields.number(tables, Place("budget")),
            currency=fields.text(tables, Place("currency")),
            choose=self._choose(tables, len(wines)),
            room_celsius=fact("cooling", "limits", "room_celsius").typical if room is None else room,
            wines=wines,
            foods=foods,
            needs=self._needs(tables),
            measured=self._measured(tables),
            problems=tuple(fields.problems),
            source=self._source,
            lines=fields.top_lines(),
        )
        return made

    def _start(self, tables: Row, now: datetime | None) -> datetime | None:
        start = self._fields.moment(tables, Place("start"))
        if start and now and _instant(start) < _instant(now):
            told = start.isoformat(" ", "minutes")
            self._fields.wrong(Place("start"), "past", start=told)
        return start

    def _non_drinkers(self, tables: Row, guests: int) -> int:
        place = Place("non_drinkers")
        value = self._fields.number(tables, place, whole=True) or 0
        if guests and value > guests:
            self._fields.wrong(place, "too-sober", value=value, guests=guests)
        return min(value, guests) if guests else value

    def _meal(self, tables: Row) -> str:
        value = tables.get("meal", MEALS[0])
        if value in MEALS:
            return str(value)
        self._fields.wrong(Place("meal"), "meal", value=shown(value))
        return MEALS[0]

    def _pour(self, tables: Row) -> float:
        value = self._fields.number(tables, Place("pour_ml"))
        return fact("amounts", "bottle", "pour_ml").typical if value is None else float(value)

    def _choose(self, tables: Row, listed: int) -> int | None:
        place = Place("choose")
        value = self._fields.number(tables, place, whole=True)
        if value is not None and listed and value > listed:
            self._fields.wrong(place, "choose-many", value=value, count=listed)
            return None
        return None if value is None else int(value)

    def _wines(self, tables: Row) -> tuple[WineLine, ...]:
        rows = self._fields.rows(tables, "wines")
        if not rows:
            self._fields.wrong(Place("wines"), "no-wines")
        lines = [self._wine(row, i) for i, row in enumerate(rows)]
        return tuple(self._once([line for line in lines if line], "wines"))

    def _wine(self, row: Row, i: int) -> WineLine | None:
        fields = self._fields
        fields.only(row, WINE, "wines", i)
        label = fields.text(row, Place("label", "wines", i), needed=True)
        line = {
            "name": fields.text(row, Place("name", "wines", i)),
            "price": fields.number(row, Place("price", "wines", i)),
            "owned": fields.number(row, Place("bottles", "wines", i), whole=True) or 0,
            "must": fields.flag(row, Place("must", "wines", i)),
            "bottle_ml": fields.number(row, Place("bottle_ml", "wines", i)),
            "alcohol_percent": fields.number(row, Place("alcohol_percent", "wines", i)),
        }
        wine = wine_of(label, self._session) if label else None
        if label and not wine:
            name = "wine-is-food" if dishes_of(label, self._session) else "no-wine"
            fields.wrong(Place("label", "wines", i), name, label=label)
        return WineLine(label, wine, **line) if label and wine else None

    def _foods(self, tables: Row) -> tuple[FoodLine, ...]:
        rows = self._fields.rows(tables, "foods")
        if not rows:
            self._fields.wrong(Place("foods"), "no-foods")
        lines = [self._food(row, i) for i, row in enumerate(rows)]
        return tuple(self._once([line for line in lines if line], "foods"))

    def _food(self, row: Row, i: int) -> FoodLine | None:
        fields = self._fields
        fields.only(row, FOOD, "foods", i)
        label = fields.text(row, Place("label", "foods", i), needed=True)
        grams = fields.number(row, Place("grams", "foods", i))
        price = fields.number(row, Place("price", "foods", i))
        dishes = dishes_of(label, self._session) if label else ()
        if label and not dishes:
            name = "food-is-wine" if wine_of(label, self._session) else "no-food"
            fields.wrong(Place("label", "foods", i), name, label=label)
        return FoodLine(label, dishes, grams, price) if label and dishes else None

    def _once(self, lines: list[Any], table: str) -> list[Any]:
        """The lines without those whose label stands before; a plan speaks of them by label."""
        seen: dict[str, Any] = {}
        for line in lines:
            if line.label.casefold() in seen:
                self._fields.wrong(Place(table), "twice", label=line.label)
            seen.setdefault(line.label.casefold(), line)
        return list(seen.values())

    def _needs(self, tables: Row) -> tuple[GuestNeeds, ...]:
        rows = self._fields.rows(tables, "needs")
        return tuple(need for i, row in enumerate(rows) for need in [self._need(row, i)] if need)

    def _need(self, row: Row, i: int) -> GuestNeeds | None:
        self._fields.only(row, NEED, "needs", i)
        guest = self._fields.text(row, Place("guest", "needs", i), needed=True)
        needs = self._fields.words(row, Place("needs", "needs", i))
        line = self._fields.line(Place("needs", "needs", i))
        return GuestNeeds(guest or f"guest {i + 1}", needs, line) if needs else None

    def _measured(self, tables: Row) -> tuple[Measured, ...]:
        rows = self._fields.rows(tables, "measured")
        return tuple(m for i, row in enumerate(rows) for m in [self._one_measured(row, i)] if m)

    def _one_measured(self, row: Row, i: int) -> Measured | None:
        fields = self._fields
        fields.only(row, MEASURED, "measured", i)
        where = fields.text(row, Place("in", "measured", i), needed=True)
        numbers = [fields.number(row, Place(key, "measured", i), needed=True) for key in MEASURED[1:]]
        if where is None or None in numbers:
            return None
        if where not in places():
            place = Place("in", "measured", i)
            fields.wrong(place, "measured-place", value=shown(where), known=", ".join(places()))
            return None
        found = Measured(where, *numbers)
        if reachable(found):
            return found
        place, told = Place("to_celsius", "measured", i), places()[where]
        span = {"celsius": f"{told.celsius:g}", "start": f"{found.start:g}", "end": f"{found.end:g}"}
        fields.wrong(place, "measured-wrong", place=told.label, **span)
        return None


def _instant(moment: datetime) -> float:
    """The moment in seconds; without an offset it is local to this machine."""
    return moment.timestamp()
