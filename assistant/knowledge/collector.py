"""Keeps Python's cyclic collector away from the knowledge, which is large and never garbage."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def loading() -> Iterator[None]:
    """Collects nothing while something large is built, and never looks at it afterwards.

    Without it, loading takes half as long again, and one answer in twenty waits 150 ms for a
    full collection over some hundred thousand objects that are all in use.
    """
    gc.disable()
    try:
        yield
    finally:
        gc.freeze()
        gc.enable()
