"""What single tokens of a rule's text stand for."""

from __future__ import annotations

from assistant.pairing.rule_steps import GLASS, PLATE, RuleTextError

_SIDES = {"?plate": PLATE, "$plate": PLATE, "?this": GLASS, "$this": GLASS}


def variable_of(token: str) -> str:
    """`?salt` -> `salt`. Raises RuleTextError for any other token, as all here do."""
    if token[:1] not in ("?", "$"):
        raise RuleTextError(f"{token!r} stands where a variable is read")
    return token[1:]


def number_of(token: str) -> float:
    """A number as written."""
    try:
        return float(token)
    except ValueError:
        raise RuleTextError(f"{token or 'its end'!r} stands where a value is read") from None


def side_of(token: str) -> str:
    """Which side a subject is."""
    if token not in _SIDES:
        raise RuleTextError(f"{token or 'its end'!r} is neither ?plate nor $this")
    return _SIDES[token]


def property_of(side: str, token: str) -> str:
    """`plate:salt` of a plate -> `salt`."""
    prefix, _, name = token.partition(":")
    if prefix != side:
        raise RuleTextError(f"{token!r} is no property of a {side}")
    return name


def short_of(token: str) -> str:
    """`trait:blue` -> `trait/blue`."""
    prefix, colon, name = token.partition(":")
    if not colon:
        raise RuleTextError(f"{token!r} stands where a name is read")
    return f"{prefix}/{name}"
