"""Reads the text of a pairing rule into steps that can be worked out for many plates and glasses at once.

The rules are SPARQL (W3C, https://www.w3.org/TR/sparql11-query/), of which they need little: triples of the
plate and the glass, FILTER, BIND, IF, EXISTS, sums and products. What is read here is that part and no more;
anything else is refused by name, so that nothing of a rule is ever passed over.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence

from assistant.pairing.rule_steps import (
    GLASS,
    PLATE,
    Expr,
    Keep,
    Let,
    Link,
    RuleText,
    RuleTextError,
    Shared,
    Step,
    Value,
)
from assistant.pairing.rule_words import number_of, property_of, short_of, side_of, variable_of

_CONSTRUCT = re.compile(r"\A\s*+CONSTRUCT\s*+\{(?P<template>[^}]*+)\}\s*+WHERE\s*+")
_SLOT = re.compile(r"(?<![\w:])(?P<property>[\w:]+)\s+[?$](?P<variable>\w+)")
_TOKEN = re.compile(
    r"(?<!\s)(?:\s++|#[^\n]*+)*+(?P<token>[a-z]+:[A-Za-z][\w-]*|[?$]\w+|\d+(?:\.\d+)?|[A-Za-z]+|&&|\|\||[<>]=|[-+*<>{}().;,!/]|$)"
)
_COMPARED = ("<", "<=", ">", ">=")


def read_rule(construct: str) -> RuleText:
    """The steps of a rule. Raises RuleTextError where it holds what rules are not run in."""
    head = _CONSTRUCT.match(construct)
    if head is None:
        raise RuleTextError("it is not of the form CONSTRUCT {...} WHERE {...}")
    slots = (m["property"].partition(":") for m in _SLOT.finditer(head["template"]))
    seen = tuple((side, name) for side, _, name in slots if side in (PLATE, GLASS))
    return RuleText(tuple(_Reader(construct[head.end() :]).pattern()), seen)


class _Reader:
    """The words of a pattern, read from left to right."""

    def __init__(self, text: str) -> None:
        self._tokens = _tokens(text)
        self._at = 0

    # Words

    def _next(self) -> str:
        return self._tokens[self._at]

    def _take(self, *wanted: str) -> str:
        token = self._next()
        if wanted and token not in wanted:
            raise RuleTextError(f"{token or 'its end'!r} stands where {' or '.join(wanted)} is read")
        self._at += 1
        return token

    def _took(self, *wanted: str) -> bool:
        if self._next() not in wanted:
            return False
        self._at += 1
        return True

    # Patterns

    def pattern(self) -> list[Step]:
        """The steps of the outermost braces, which end the text."""
        self._take("{")
        steps: list[Step] = []
        while not self._took("}"):
            if self._took("FILTER"):
                steps.append(Keep(self._primary()))
            elif self._took("BIND"):
                steps.append(self._binding())
            else:
                steps += map(_step, self._triples())
        self._take("")
        return steps

    def _binding(self) -> Let:
        self._take("(")
        expr = self._either()
        self._take("AS")
        variable = variable_of(self._take())
        self._take(")")
        return Let(variable, expr)

    def _triples(self) -> list[tuple[str, str, str]]:
        """(side, property, object) of one subject; its class is left out, as all have the same."""
        side = side_of(self._take())
        found = []
        while True:
            name, target = self._take(), self._take()
            if name != "a":
                found.append((side, property_of(side, name), target))
            if not self._took(";"):
                break
        if self._next() != "}":
            self._take(".")
        return found

    def _exists(self) -> Expr:
        """What a pattern within braces asks: links of one side, or what both sides have in common."""
        self._take("{")
        triples, among = [], dict[str, tuple[str, ...]]()
        while not self._took("}"):
            if self._took("FILTER"):
                among |= [self._among()]
            else:
                triples += self._triples()
        return _asked(triples, among)

    def _among(self) -> tuple[str, tuple[str, ...]]:
        self._take("(")
        variable = self._take()
        self._take("IN")
        self._take("(")
        names = [short_of(self._take())]
        while self._took(","):
            names.append(short_of(self._take()))
        self._take(")")
        self._take(")")
        return variable, tuple(names)

    # Expressions

    def _either(self) -> Expr:
        return self._chain("or", "||", self._all)

    def _all(self) -> Expr:
        return self._chain("and", "&&", self._compared)

    def _chain(self, name: str, sign: str, part: Callable[[], Expr]) -> Expr:
        found = [part()]
        while self._took(sign):
            found.append(part())
        return (name, *found) if len(found) > 1 else found[0]

    def _compared(self) -> Expr:
        left = self._sum()
        sign = self._next()
        return (self._take(), left, self._sum()) if sign in _COMPARED else left

    def _sum(self) -> Expr:
        found = self._product()
        while self._next() in ("+", "-"):
            found = (self._take(), found, self._product())
        return found

    def _product(self) -> Expr:
        found = self._primary()
        while self._took("*"):
            found = ("*", found, self._primary())
        return found

    def _primary(self) -> Expr:
        token = self._take()
        if token == "-":
            value = self._primary()
            return -value if isinstance(value, float) else ("-", 0.0, value)
        if token == "(":
            return self._closed(self._either())
        if token == "EXISTS":
            return self._exists()
        if token == "NOT":
            self._take("EXISTS")
            return ("not", self._exists())
        if token in ("IF", "ROUND", "BOUND"):
            return self._function(token)
        return variable_of(token) if token[:1] in ("?", "$") else number_of(token)

    def _function(self, name: str) -> Expr:
        self._take("(")
        found = [self._either()]
        while self._took(","):
            found.append(self._either())
        if len(found) != (3 if name == "IF" else 1):
            raise RuleTextError(f"{name} has {len(found)} parts")
        return self._closed((name.lower(), *found))

    def _closed(self, expr: Expr) -> Expr:
        self._take(")")
        return expr


def _tokens(text: str) -> Sequence[str]:
    """The words of a pattern; an empty one stands for its end."""
    found: list[str] = []
    at = 0
    while not found or found[-1]:
        match = _TOKEN.match(text, at)
        if match is None:
            raise RuleTextError(f"{text[at:].split(maxsplit=1)[0]!r} cannot be read")
        found.append(match["token"])
        at = match.end()
    return found


def _step(triple: tuple[str, str, str]) -> Step:
    side, name, target = triple
    if target[:1] == "?":
        return Value(target[1:], side, name)
    return Keep(Link(side, name, (short_of(target),)))


def _asked(triples: Sequence[tuple[str, str, str]], among: Mapping[str, tuple[str, ...]]) -> Expr:
    """All of what the triples within EXISTS ask."""
    open_: dict[str, dict[str, str]] = {}
    found: list[Expr] = []
    for side, name, target in triples:
        if target[:1] != "?":
            found.append(Link(side, name, (short_of(target),)))
        elif target in among:
            found.append(Link(side, name, among[target]))
        else:
            open_.setdefault(target, {})[side] = name
    for variable, names in open_.items():
        if set(names) != {PLATE, GLASS}:
            raise RuleTextError(f"{variable} is asked of one side alone and of no list")
        found.append(Shared(names[PLATE], names[GLASS]))
    return found[0] if len(found) == 1 else ("and", *found)
