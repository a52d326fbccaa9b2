"""The program's sentences, kept as templates in corpus/language/wording.toml."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

from assistant.knowledge.files import corpus_dir
from assistant.language.data import read_data, telling

MAX_SPOKEN_WORDS = 12


class Wording:
    """Fills sentence templates by section and name."""

    def __init__(self, file: Path | None = None) -> None:
        self._file = file or corpus_dir() / "language" / "wording.toml"
        self._sections = read_data(self._file, dict)

    def __call__(self, section: str, template: str, /, **fields: object) -> str:
        """The filled template. Raises KnowledgeError where the file lacks it or it asks for too much."""
        with telling(self._file):
            return str(self._sections[section][template]).format(**fields)

    def date(self, when: datetime) -> str:
        """`29 November`."""
        return self("taught", "date", day=when.day, month=f"{when:%B}")

    def names(self, section: str) -> frozenset[str]:
        """The names of a section's templates. Raises KnowledgeError where the file lacks it."""
        with telling(self._file):
            return frozenset(self._sections[section])

    def spoken(self, *templates: str, **fields: object) -> str:
        """The first of several `say` templates that fits into a breath, else the last."""
        sentences = [self("say", template, **fields) for template in templates]
        return next((s for s in sentences if len(s.split()) <= MAX_SPOKEN_WORDS), sentences[-1])


def listed(words: list[str] | tuple[str, ...], last: str = "and") -> str:
    """`a, b and c`."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def span(low: float, high: float) -> str:
    """`8 to 10`, or one number."""
    return f"{low:g}" if low == high else f"{low:g} to {high:g}"


def capital(text: str) -> str:
    """The text with a capital first letter, the rest as it is."""
    return text[:1].upper() + text[1:]


def price_told(value: float) -> str:
    """A sum of money as it is said: `12`, `46.50`."""
    return f"{value:g}" if value == int(value) else f"{value:.2f}"
