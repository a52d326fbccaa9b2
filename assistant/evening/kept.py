"""Evenings kept by name, one file each, in the user's data folder; the demo is there to be loaded too."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import platformdirs
import tomli_w

from assistant.evening.records import Evening
from assistant.knowledge.files import corpus_dir
from assistant.language.fold import fold
from assistant.notebook.disk import make_folder, write_whole

ENDING = ".toml"


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
    top["wines"] = [{"label": line.label} for line in evening.wines]
    top["foods"] = [{"label": line.label} for line in evening.foods]
    if evening.needs:
        top["needs"] = [{"guest": n.guest, "needs": list(n.needs)} for n in evening.needs]
    return top
