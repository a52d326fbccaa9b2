"""Lints the text of the pairing rules, which neither a shape nor a query can look into."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pyoxigraph as ox

from assistant.knowledge import names
from assistant.knowledge.ground import Ground
from assistant.knowledge.problems import Problem

CONSTRUCT = "http://www.w3.org/ns/shacl#construct"
# A string that is not closed ends with its line: what stands in it would be looked through again and again.
_STRING_OR_COMMENT = re.compile(
    r"\"(?:[^\"\\\n]|\\.)*+(?:\"|(?=\n)|\Z|\\)|'(?:[^'\\\n]|\\.)*+(?:'|(?=\n)|\Z|\\)|(?<![\w:/<])#[^\n]*"
)
_FORBIDDEN = re.compile(
    r"(?<![?$\w:-])(SERVICE|FROM|LOAD|RAND|NOW|UUID|STRUUID|GRAPH)(?![\w:-])", re.IGNORECASE
)
_NAME = re.compile(r"(?<![\w?$:<-])(?P<prefix>[a-z]+):(?P<local>[A-Za-z][\w-]*)")
_FORM = re.compile(r"\A\s*+CONSTRUCT\s*\{[^}]*\}\s*WHERE\s*\{", re.IGNORECASE)
_PREFIXES = dict(re.findall(r"PREFIX (\w+): <(.+)>", names.QUERY_PREFIXES))


def rule_problems(ground: Ground) -> list[Problem]:
    """Everything wrong with the text of a rule's query, for all rules."""
    declared = frozenset().union(*(file.subjects for file in ground.files))
    found = ground.store.quads_for_pattern(None, ox.NamedNode(CONSTRUCT), None, None)
    return [
        ground.problem(quad.subject.value, message, remedy, predicate=CONSTRUCT)
        for quad in found
        if not isinstance(quad.subject, ox.Triple)
        for message, remedy in faults(quad.subject.value, getattr(quad.object, "value", ""), declared)
    ]


def faults(rule: str, query: str, declared: frozenset[str]) -> Iterator[tuple[str, str]]:
    """Message and remedy of each fault in one rule's query, of which the first kind hides the others."""
    bare = _STRING_OR_COMMENT.sub(" ", query)
    wrong = _unparsed(query)
    if wrong:
        yield f"{{this}} has a query that does not parse ({wrong}).", "Mend the text of sh:construct."
        return
    found = [*_forbidden(bare), *_of_another_form(bare), *_names(rule, bare, declared)]
    yield from found or _unread(query)


def _forbidden(bare: str) -> Iterator[tuple[str, str]]:
    for word in sorted({word.upper() for word in _FORBIDDEN.findall(bare)}):
        yield (
            f"{{this}} uses {word}, which reaches outside the question or changes from run to run.",
            "Write the condition with the facts of the plate and the glass alone.",
        )


def _of_another_form(bare: str) -> Iterator[tuple[str, str]]:
    if not _FORM.match(bare):
        yield (
            "{this} has a query of another form than the rules are run in.",
            "Write it as CONSTRUCT { ... } WHERE { ... } like its neighbours.",
        )


def _unparsed(query: str) -> str:
    """What the parser has against a query, empty where it is sound."""
    if "\0" in query:
        return "it holds a null character"
    try:
        ox.Store().query(f"{names.QUERY_PREFIXES}\n{query}")
    except SyntaxError as error:
        return _place(str(error.msg))
    return ""


def _unread(query: str) -> Iterator[tuple[str, str]]:
    """What the pairing cannot work out in a query."""
    from assistant.pairing.rule_steps import RuleTextError
    from assistant.pairing.rule_text import read_rule

    try:
        read_rule(query)
    except RuleTextError as error:
        yield (
            f"{{this}} is written in a way that rules are not run in ({error}).",
            "Keep to triples, FILTER, BIND, IF and EXISTS as its neighbours use them.",
        )


def _place(message: str) -> str:
    """The parser's message with lines counted from the query, without a long list of what may follow."""
    at = re.match(r"error at (\d+):(\d+): (.*)", message, re.DOTALL)
    if not at:
        return message
    line = int(at[1]) - names.QUERY_PREFIXES.count("\n") - 1
    expected = "" if "one of" in at[3] else f": {at[3]}"
    return f"line {line} of the query, character {at[2]}{expected}"


def _names(rule: str, query: str, declared: frozenset[str]) -> Iterator[tuple[str, str]]:
    found = {m.group(): _PREFIXES[m["prefix"]] + m["local"] for m in _NAME.finditer(query)}
    for name, iri in sorted(found.items()):
        if iri not in declared:
            yield f"{{this}} asks for {name}, which is not declared.", "Mend its spelling or declare it."
    if names.curie(rule) not in re.findall(r"gw:rule\s+([\w:-]+)", query):
        yield (
            "{this} does not name itself in what it constructs.",
            f"Write gw:rule {names.curie(rule)} in the part after CONSTRUCT.",
        )
