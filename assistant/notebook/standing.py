"""Which statements stand: those that no statement that stands takes back."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.notebook.statement import Statement


def standing(statements: Sequence[Statement]) -> tuple[Statement, ...]:
    """The statements that stand, in their order, withdrawals among them.

    A statement can take back only what stands above it, so that nothing takes back itself. A withdrawal
    that is taken back leaves standing what it took back.
    """
    gone: set[str] = set()
    kept: list[Statement] = []
    for one in reversed(statements):
        if one.id not in gone:
            kept.append(one)
            gone |= {one.withdraws} if one.withdraws else set()
    return tuple(reversed(kept))
