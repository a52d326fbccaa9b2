"""Where the shipped knowledge lies: beside the package when installed, in the checkout otherwise."""

from __future__ import annotations

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent.parent


def _shipped(name: str) -> Path:
    inside = _PACKAGE / name
    return inside if inside.is_dir() else _PACKAGE.parent / name


def ontology_dir() -> Path:
    """The folder of the Turtle files."""
    return _shipped("ontology")


def corpus_dir() -> Path:
    """The folder of the language files (`language/`)."""
    return _shipped("corpus")


def knowledge_files(root: Path) -> list[Path]:
    """Every Turtle file that states facts or rules, in a fixed order; shapes are for `check` only."""
    return sorted(p for p in root.rglob("*.ttl") if "shapes" not in p.relative_to(root).parts)
