"""What a rule asks of the glass alone, as a query by itself: a rule whose glass fails it cannot fire.

A rule is a conjunction, so a part of it that does not hold rules out the whole. Taken are the lines of
its outermost pattern that speak of the glass, and the filters on nothing but what those lines bind.
"""

from __future__ import annotations

import re

from assistant.knowledge import names

_VARIABLE = re.compile(r"\?(\w+)")
GLASS = "$this "


def glass_ask(where: str) -> str:
    """The ASK of a rule's pattern; one that always holds where it asks nothing of the glass alone."""
    lines = _outermost_lines(where)
    about = [line for line in lines if line.startswith(GLASS)]
    bound = {v for line in about for v in _VARIABLE.findall(line)}
    filters = [x for x in lines if x.startswith("FILTER(") and set(_VARIABLE.findall(x)) <= bound]
    return f"{names.QUERY_PREFIXES}\nASK {{ $this a gw:Glass . {' '.join([*about, *filters])} }}"


def _outermost_lines(where: str) -> list[str]:
    """The lines that stand whole in the outermost braces, without braces of their own."""
    found, depth = [], 0
    for line in where.splitlines():
        text = line.strip()
        if depth == 1 and "{" not in text and "}" not in text:
            found.append(text)
        depth += text.count("{") - text.count("}")
    return found
