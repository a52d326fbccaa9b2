"""Which wines keep to the guest's limits: a constant graph query over glasses and limits."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import lru_cache
from typing import cast

import pyoxigraph as ox

from assistant.knowledge import names
from assistant.knowledge.files import ontology_dir
from assistant.knowledge.store import Knowledge
from assistant.language.frame import Preference
from assistant.pairing.facts import TYPE, decimal, node
from assistant.pairing.shelf import Shelf


@lru_cache(maxsize=1)
def limits_query() -> str:
    """The text of ontology/queries/within-limits.rq, prefixes included."""
    text = (ontology_dir() / "queries" / "within-limits.rq").read_text("utf-8")
    return f"{names.QUERY_PREFIXES}\n{text}"


def within_limits(shelf: Shelf, limits: Sequence[Preference]) -> frozenset[str]:
    """The wines whose glasses are on the shelf and keep to all limits."""
    with shelf.with_facts(list(_limit_facts(limits))) as store:
        rows = cast(ox.QuerySolutions, store.query(limits_query()))
        return frozenset(names.short(row[0].value) for row in rows)


def by_country(limit: Preference, knowledge: Knowledge) -> Iterator[Preference]:
    """The limit, or one for each country where a part of the world is asked for or banned (`New World`)."""
    home = limit.wanted if limit.property == "home" else None
    held = knowledge.entry(home).get("holdsCountry", ()) if home else ()
    yield from (replace(limit, wanted=country) for country in held)
    if not held:
        yield limit


def _limit_facts(limits: Sequence[Preference]) -> Iterator[ox.Quad]:
    """One node per limit; what is wanted of the same kind of thing is an either-or."""
    for i, limit in enumerate(limits):
        this = node(f"tonight/limit-{i}")
        yield ox.Quad(this, TYPE, node("Limit"))
        if limit.wanted is None:
            yield ox.Quad(this, node("on"), node(f"glass#{limit.property}"))
            if limit.among:
                yield ox.Quad(this, node("among"), node(limit.among))
            for name, bound in (("low", limit.low), ("high", limit.high)):
                if bound is not None:
                    yield ox.Quad(this, node(name), decimal(bound))
        elif limit.banned:
            yield ox.Quad(this, node("bans"), node(limit.wanted))
        else:
            yield from _wanted(this, limit, limits)


def _wanted(this: ox.NamedNode, limit: Preference, limits: Sequence[Preference]) -> Iterator[ox.Quad]:
    yield ox.Quad(this, node("wants"), node(f"tonight/{limit.property}"))
    for other in limits:
        if other.wanted and not other.banned and other.property == limit.property:
            yield ox.Quad(this, node("allows"), node(other.wanted))
