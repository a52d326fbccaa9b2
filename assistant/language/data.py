"""Language files: TOML that anybody may edit, so a broken one is told in a sentence."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, TypeVar

from assistant.knowledge.cache import cached, text_key
from assistant.knowledge.problems import KnowledgeError, Problem

T = TypeVar("T")
WORTH_KEEPING = 4_000
"""Characters from which a file of this size is worth a second one in the cache."""
_REMARK = re.compile(r"^#.*", re.MULTILINE)
REMEDY = "Put it right, or install goeswith again."


def read_data(file: Path, shape: Callable[[dict[str, Any]], T]) -> T:
    """What `shape` makes of the tables of a TOML file.

    Raises KnowledgeError where the file cannot be read, is no TOML, or lacks what `shape` looks for.
    """
    return _read(file, lambda text: shape(_tables(file, text)))


def _tables(file: Path, text: str) -> dict[str, Any]:
    """The tables of a TOML text, kept as JSON: that is read thirty times as fast."""
    if len(text) < WORTH_KEEPING:
        return tomllib.loads(text)
    return cached(file.name, text_key(text), lambda: tomllib.loads(text))


def read_words(file: Path) -> frozenset[str]:
    """The words of a plain list; `#` lines are remarks. Raises KnowledgeError as `read_data` does."""
    return _read(file, _words)


def _words(text: str) -> frozenset[str]:
    return frozenset(_REMARK.sub("", text).split())


def _read(file: Path, shape: Callable[[str], T]) -> T:
    with telling(file):
        return shape(file.read_text("utf-8"))


@contextmanager
def telling(file: Path) -> Iterator[None]:
    """Tells what is wrong with a language file as a KnowledgeError instead of a traceback."""
    try:
        yield
    except OSError as error:
        raise _broken(file, f"cannot be read ({error.strerror or error}).") from error
    except KeyError as error:
        raise _broken(file, f"has no {error}.") from error
    except (ValueError, TypeError, AttributeError, IndexError) as error:
        raise _broken(file, f"cannot be understood ({' '.join(str(error).split())}).") from error


def _broken(file: Path, message: str) -> KnowledgeError:
    return KnowledgeError([Problem(f"{file.parent.name}/{file.name}", message, REMEDY)])
