"""What a single statement lacks, as the shapes of ontology/shapes/notebook.ttl put it."""

from __future__ import annotations

from decimal import Decimal, InvalidOperation

import pyoxigraph as ox

from assistant.knowledge import names
from assistant.knowledge.check_shapes import split
from assistant.knowledge.problems import Problem
from assistant.notebook.facts import Facts, Node, facts
from assistant.notebook.statement import SOURCE, Statement
from assistant.notebook.vocabulary import NAME, Limit, limits

_MEND = "Say it again with what is missing."


def faults(
    statement: Statement, source: str = SOURCE, line: int | None = None, said: Facts | None = None
) -> tuple[Problem, ...]:
    """Everything wrong with one statement; empty for one that may be kept. `said`: its facts, if known."""
    if statement.when.tzinfo is None:
        return (Problem(source, "the time has no offset from UTC.", _MEND, line, statement.kind),)
    if not statement.author:
        return (Problem(source, f"it has no author, {names.curie(NAME)}.", _MEND, line, statement.kind),)
    try:
        messages = broken(said or facts(statement))
    except ValueError as error:
        return (Problem(source, f"{error}.", _MEND, line, statement.kind),)
    return tuple(_problem(message, source, line, statement) for message in messages)


def broken(said: Facts) -> list[str]:
    """The messages of the shapes that a statement's facts break."""
    concerned = limits(said[names.RDF_TYPE][0].value, frozenset(said))
    return [limit.message for limit in concerned if not _kept(limit, said)]


def _problem(message: str, source: str, line: int | None, statement: Statement) -> Problem:
    what, remedy = split(message.removeprefix("{$this} "))
    return Problem(source, what, remedy, line, statement.kind)


def _kept(limit: Limit, said: Facts) -> bool:
    values = said.get(limit.path, [])
    enough = limit.least <= len(values) and (limit.most is None or len(values) <= limit.most)
    return enough and all(_fits(limit, node) for node in values)


def _fits(limit: Limit, node: Node) -> bool:
    text = node.value
    length = limit.shortest <= len(text) and (limit.longest is None or len(text) <= limit.longest)
    shape = (limit.pattern is None or limit.pattern.search(text) is not None) and (
        not limit.among or text in limit.among
    )
    return length and shape and _number_fits(limit, node)


def _number_fits(limit: Limit, node: Node) -> bool:
    if limit.datatype is None:
        return True
    if not isinstance(node, ox.Literal) or node.datatype.value != limit.datatype:
        return False
    try:
        number = Decimal(node.value)
    except InvalidOperation:
        return False
    return (limit.low is None or limit.low <= number) and (limit.high is None or number <= limit.high)
