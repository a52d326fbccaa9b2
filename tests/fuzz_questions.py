"""Reads many odd questions, answers some: `python -m tests.fuzz_questions --read 100000 --ask 5000`.

Every text is different (tests/safety/odd_texts.py); the same seed gives the same ones. Printed: how many were
read and answered, everything that was raised, the slowest, and the memory of the process along the way. A
text is slow where the least time of three is above QUICK, so that other programs do not count.
Exit code 1 where anything was raised, was over HANG seconds, or memory grew by more than FLAT between the
first tenth and the end.
"""

from __future__ import annotations

import argparse
import gc
import heapq
import resource
import signal
import sys
import time
import tracemalloc
from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import TypeVar

from assistant.session import Session
from tests.safety.odd_texts import odd_texts

T = TypeVar("T", str, bytes)
HANG, QUICK = 1.0, 0.1
FLAT = 30.0
"""Megabytes that the process may grow between the first tenth of the texts and the last."""
STUCK = 60
"""Seconds after which a text is given up, and told of as one that raised."""
KEPT_SLOWEST = 8
NEW_TALK_EVERY = 7


@dataclass
class Run:
    """What a run found: exceptions by their text, the slowest with their texts, megabytes along the way."""

    done: int = 0
    slow: int = 0
    hung: int = 0
    raised: Counter[str] = field(default_factory=Counter)
    first: dict[str, str | bytes] = field(default_factory=dict)
    slowest: list[tuple[float, str | bytes]] = field(default_factory=list)
    memory: list[float] = field(default_factory=list)

    @property
    def grown(self) -> float:
        """Megabytes grown since the first tenth."""
        return self.memory[-1] - self.memory[0] if self.memory else 0.0


def megabytes() -> float:
    """The memory of this process that is in use, where the system tells; else its peak."""
    gc.collect()
    status = Path("/proc/self/statm")
    if status.exists():
        return int(status.read_text().split()[1]) * resource.getpagesize() / 1e6
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1e3


def took(work: Callable[[T], object], text: T) -> float:
    """Seconds of one call, by the clock or the processor: other programs slow the one, workers the other."""
    clock, processor = time.perf_counter(), time.process_time()
    work(text)
    return min(time.perf_counter() - clock, time.process_time() - processor)


def put(texts: Iterable[T], number: int, work: Callable[[T], object]) -> Run:
    """Gives every text to `work` and notes what came of it."""
    run = Run()
    signal.signal(signal.SIGALRM, _stuck)
    for text in texts:
        signal.alarm(STUCK)
        _one(run, text, work)
        run.done += 1
        if run.done % max(number // 10, 1) == 0:
            run.memory.append(megabytes())
            print(f"  {run.done} done, {run.memory[-1]:.0f} MB", file=sys.stderr, flush=True)
    signal.alarm(0)
    return run


def _stuck(number: int, frame: object) -> None:
    raise TimeoutError(f"stuck for {STUCK} s")


def _one(run: Run, text: T, work: Callable[[T], object]) -> None:
    try:
        seconds = took(work, text)
        if seconds > QUICK:
            seconds = min(seconds, took(work, text), took(work, text))
    except Exception as error:
        at = error.__traceback__
        while at and at.tb_next:
            at = at.tb_next
        where = (
            f"{type(error).__name__}: {error} ({at.tb_frame.f_code.co_filename}:{at.tb_lineno})" if at else ""
        )
        run.raised[where] += 1
        run.first.setdefault(where, text)
        return
    run.slow += seconds > QUICK
    run.hung += seconds > HANG
    heapq.heappush(run.slowest, (seconds, text))
    if len(run.slowest) > KEPT_SLOWEST:
        heapq.heappop(run.slowest)


def reading(session: Session) -> Callable[[str], object]:
    """Reads a text as the session would, with what stands before."""
    return session.read


def asking(session: Session) -> Callable[[str], object]:
    """Answers a text, in conversations of a few turns, and writes the answer out."""
    turns = iter(range(10**9))

    def ask(text: str) -> None:
        if next(turns) % NEW_TALK_EVERY == 0:
            session.new_conversation()
        answer = session.ask(text)
        if not (answer.say.strip() and answer.text.strip()):
            raise ValueError("an empty answer")

    return ask


def told(name: str, run: Run) -> None:
    """Prints what a run found."""
    print(f"{name}: {run.done} texts, {run.raised.total()} raised, {run.hung} over {HANG:g} s, "
          f"{run.slow} over {QUICK:g} s")  # fmt: skip
    print("  megabytes:", " ".join(f"{m:.0f}" for m in run.memory), f"(grown {run.grown:.1f})")
    for seconds, text in sorted(run.slowest, reverse=True):
        print(f"  {seconds * 1000:7.1f} ms, {len(text)} long: {text[:90]!a}")
    for where, times in run.raised.most_common():
        print(f"  {times} times {where}\n    first: {run.first[where][:300]!a}")
    sys.stdout.flush()


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs both and prints what came of it."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--read", type=int, default=100_000)
    parser.add_argument("--ask", type=int, default=5_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--trace", action="store_true", help="print where memory grew (slow)")
    options = parser.parse_args(arguments)
    session, runs = Session(), []
    session.ask("brie")
    for name, number, work in (("read", options.read, reading), ("asked", options.ask, asking)):
        traced = tracemalloc.start() if options.trace else None
        before = tracemalloc.take_snapshot() if options.trace else None
        run = put(odd_texts(number, options.seed), number, work(session)) if number else Run()
        told(name, run)
        if before is not None:
            for line in tracemalloc.take_snapshot().compare_to(before, "lineno")[:12]:
                print("   ", line)
            tracemalloc.stop()
        runs.append(run)
        del traced
    return 1 if any(run.raised or run.hung or run.grown > FLAT for run in runs) else 0


if __name__ == "__main__":
    sys.exit(main())
