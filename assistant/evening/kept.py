"""Evenings kept by name, one file each, in the user's data folder; the demo is there to be loaded too."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import platformdirs
import tomli_w

from assistant.evening.records import Evening, FoodLine, WineLine
from assistant.knowledge.files import corpus_dir
from assistant.language.fold import fold
from assistant.notebook.disk import make_folder, write_whole

ENDING = ".toml"
# What of a line is kept, by its key in a file.
WINE = {
    "name": "name",
    "price": "price",
    "bottles": "owned",
    "must": "must",
    "bottle_ml": "bottle_ml",
    "alcohol_percent": "alcohol_percent",
}
FOOD = {"grams": "grams", "price": "price"}


def folder() -> Path:
    """Where the evenings of this user are kept."""
    return Path(platformdirs.user_data_dir("goeswith", appauthor=False)) / "evenings"


def slug(name: str) -> str:
    """A name as a file name: `Quay House` -> `quay-house`; never a path."""
    return "-".join(re.findall(r"[a-z0-9]+", " ".join(map(fold, name.split()))))[:60] or "tonight"


def kept() -> dict[str, Path]:
    """The files of all evenings by slug; the user's own before the demo of the same name.

    Only names that `save` gives: another could hold anything, and is told to nobody.
    """
    folders = (corpus_dir() / "evenings", folder())
    found = {file.stem: file for place in folders for file in sorted(place.glob(f"*{ENDING}"))}
    return {name: file for name, file in found.items() if name == slug(name)}


def called(name: str) -> str:
    """The evening kept under a name, however that is parted (`book club`); empty where there is none."""
    joined = {one.replace("-", ""): one for one in kept()}
    return joined.get(slug(name).replace("-", ""), "")


def save(evening: Evening, name: str) -> Path:
    """Writes an evening under a name, whole or not at all. Raises OSError where it cannot be written."""
    make_folder(folder())
    file = folder() / f"{slug(name)}{ENDING}"
    write_whole(file, tomli_w.dumps(tables(evening, name)).encode("utf-8"))
    return file


def tables(evening: Evening, name: str) -> dict[str, Any]:
    """An evening as the tables of an evening file; only what is known."""
    top: dict[str, Any] = {"title": name}
    if evening.guests:
        top |= {"guests": evening.guests, "non_drinkers": evening.non_drinkers}
    top |= {"meal": evening.meal, "pour_ml": evening.pour_ml}
    if evening.start:
        top["start"] = evening.start
    if evening.choose is not None:
        top["choose"] = evening.choose
    money = {"budget": evening.budget, "currency": evening.currency}
    top |= {key: value for key, value in money.items() if value is not None}
    top["wines"] = [_line(line, WINE) for line in evening.wines]
    top["foods"] = [_line(line, FOOD) for line in evening.foods]
    if evening.needs:
        top["needs"] = [{"guest": n.guest, "needs": list(n.needs)} for n in evening.needs]
    return top


def _line(line: WineLine | FoodLine, fields: Mapping[str, str]) -> dict[str, Any]:
    """A wine or food as a table: its label, and by the keys of a file all that is said of it."""
    said = {key: getattr(line, name) for key, name in fields.items()}
    return {"label": line.label} | {
        key: value for key, value in said.items() if value not in (None, False, 0)
    }
