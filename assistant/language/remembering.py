"""What a method answered is kept by arguments, and goes with the object it belongs to."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from typing import Any, TypeVar, cast
from weakref import WeakMethod

Method = TypeVar("Method", bound=Callable[..., Any])


def remembered(method: Method, size: int) -> Method:
    """The bound method with its last `size` answers kept; arguments must be hashable.

    Its object is held weakly: an object that keeps this would else keep itself, and no collector looks at
    what was there when loading ended (`knowledge/collector.py`). Only that object may call it.
    """
    found = WeakMethod(method)

    def answer(*args: Any) -> Any:
        bound = found()
        assert bound is not None  # who calls it is alive
        return bound(*args)

    return cast(Method, lru_cache(maxsize=size)(answer))
