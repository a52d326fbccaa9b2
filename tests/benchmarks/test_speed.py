"""How fast it is: run with `python -m pytest tests/benchmarks --benchmark-only`.

Ratios are taken within one run. Figures that are not the benchmark's own stand in `extra_info`.
"""

from __future__ import annotations

import os
import resource
import subprocess
import sys
import time
from statistics import median, quantiles

import pytest

from assistant.evaluate.read import read_corpus
from assistant.knowledge.digest import Digest
from assistant.knowledge.store import Knowledge, shipped
from assistant.session import Session
from tests.terminal import ENTER, Terminal

SPACY = [sys.executable, "-c", "import spacy; spacy.blank('en')"]
DRAWS = [sys.executable, "-c", "import prompt_toolkit"]
PROMPT = "you ›"
DRAWN = {"TERM": "xterm-256color", "LC_ALL": "C.UTF-8"}
ASK = [sys.executable, "-m", "assistant", "ask", "what goes with garlic cheddar"]
QUESTIONS = (
    "what goes with garlic cheddar", "steak", "oysters", "grilled salmon", "roast chicken", "dark chocolate",
    "vindaloo", "salad with ranch", "steak with blue cheese butter", "stilton", "mushroom risotto", "sushi",
    "asparagus", "duck with cherry sauce", "brie", "lamb with rosemary", "lobster with butter",
    "fish and chips", "apple pie", "a red for salmon", "something not oaky with chicken",
    "an Italian wine with pizza", "does Malbec go with steak", "port with Stilton?",
    "riesling or chardonnay with crab", "what is tannin", "describe brie", "why not Barolo with sole",
    "I'm pregnant, is the brie safe?", "in what order: port, Riesling, Pinot Noir",
)  # fmt: skip
RUNS, FOURTH = 7, 4


def seconds(command: list[str]) -> float:
    """Seconds a command takes."""
    start = time.perf_counter()
    subprocess.run(command, check=True, capture_output=True)
    return time.perf_counter() - start


def fresh(session: Session, question: str) -> float:
    """Seconds to answer a question that nothing was kept for."""
    session.new_conversation()
    session.engine.forget()
    start = time.perf_counter()
    session.ask(question)
    return time.perf_counter() - start


def test_warm_answers(benchmark) -> None:  # type: ignore[no-untyped-def]
    session = Session()
    for question in QUESTIONS:
        session.ask(question)
    times = [fresh(session, question) for _ in range(3) for question in QUESTIONS]
    benchmark.extra_info["p95_ms"] = round(quantiles(times, n=20)[-1] * 1e3, 1)
    benchmark.extra_info["median_ms"] = round(median(times) * 1e3, 1)
    benchmark(fresh, session, "what goes with garlic cheddar")


def test_warm_answers_of_the_whole_corpus(benchmark) -> None:  # type: ignore[no-untyped-def]
    """Every fourth question of the corpus once, in a conversation of its own."""
    session = Session()
    for question in QUESTIONS:
        session.ask(question)
    times = [fresh(session, question.ask) for question in read_corpus().questions[::FOURTH]]
    benchmark.extra_info["p95_ms"] = round(quantiles(times, n=20)[-1] * 1e3, 1)
    benchmark.extra_info["median_ms"] = round(median(times) * 1e3, 1)
    benchmark.extra_info["most_ms"] = round(max(times) * 1e3)
    benchmark(fresh, session, "steak")


def test_one_shot_against_bare_spacy(benchmark) -> None:  # type: ignore[no-untyped-def]
    seconds(ASK)
    pairs = [(seconds(SPACY), seconds(ASK)) for _ in range(RUNS)]
    benchmark.extra_info["ratio"] = ratio(pairs)
    benchmark.pedantic(seconds, args=(ASK,), rounds=3)


def test_prompt_on_screen(benchmark) -> None:  # type: ignore[no-untyped-def]
    """Against the import of the library that draws it."""
    prompt()
    pairs = [(seconds(DRAWS), prompt()) for _ in range(RUNS)]
    benchmark.extra_info["prompt_ms"] = round(median(took for _, took in pairs) * 1e3)
    benchmark.extra_info["key_shown_ms"] = round(median(key_shown() for _ in range(RUNS)) * 1e3)
    benchmark.extra_info["ratio"] = ratio(pairs)
    benchmark.pedantic(prompt, rounds=3)


def test_first_answer_from_cold(benchmark) -> None:  # type: ignore[no-untyped-def]
    """The question is typed as soon as the prompt stands."""
    first_answer()
    pairs = [(seconds(SPACY), first_answer()) for _ in range(RUNS)]
    benchmark.extra_info["answer_ms"] = round(median(took for _, took in pairs) * 1e3)
    benchmark.extra_info["ratio"] = ratio(pairs)
    benchmark.pedantic(first_answer, rounds=3)


def ratio(pairs: list[tuple[float, float]]) -> float:
    """Of the medians, the second to the first."""
    return round(median(took for _, took in pairs) / median(bare for bare, _ in pairs), 2)


def prompt() -> float:
    """Seconds until the chat's prompt stands on a terminal."""
    with Terminal(os.environ | DRAWN) as terminal:
        return terminal.sees(PROMPT)


def key_shown() -> float:
    """Seconds until a key pressed at once is drawn behind the prompt."""
    with Terminal(os.environ | DRAWN) as terminal:
        terminal.press("w")
        return terminal.sees(f"{PROMPT} w")


def first_answer() -> float:
    """Seconds until the first question is answered on a terminal."""
    with Terminal(os.environ | DRAWN) as terminal:
        terminal.sees(PROMPT)
        terminal.press(f"{QUESTIONS[0]}{ENTER}")
        return terminal.sees("I read: garlic cheddar.")


def test_memory(benchmark) -> None:  # type: ignore[no-untyped-def]
    """The most a chat ever took, once all of these questions were asked.

    Of the program's own memory: `ru_maxrss` would begin with what the one that started it had taken.
    """
    code = "import assistant.chat.loop, assistant.chat.prompt\n"
    code += f"from assistant.session import Session\ns = Session()\nfor q in {QUESTIONS!r}: s.ask(q)\n"
    code += "print(next(line for line in open('/proc/self/status') if line.startswith('VmHWM')).split()[1])"
    command = [sys.executable, "-c", code]
    seconds(command)  # now all caches are there
    done = subprocess.run(command, check=True, capture_output=True, text=True)
    benchmark.extra_info["resident_mb"] = round(int(done.stdout) / 1024)
    benchmark(resource.getrusage, resource.RUSAGE_SELF)


@pytest.mark.parametrize("times", [1, 2, 4, 8])
def test_growth(benchmark, times: int) -> None:  # type: ignore[no-untyped-def]
    """A warm answer with so many times the wines and foods."""
    session = Session(Knowledge(cloned(shipped().digest, times)))
    session.ask("steak")
    benchmark(fresh, session, "what goes with garlic cheddar")


def cloned(digest: Digest, times: int) -> Digest:
    """The knowledge with every wine and food several times, under other names."""
    grown = dict(digest)
    for copy in range(1, times):
        for subject, entry in digest.items():
            if {"Wine", "Food"} & set(entry.get("type", ())):
                label = f"{entry['prefLabel'][0]} copy {'abcdefgh'[copy]}"
                kept = {k: v for k, v in entry.items() if k not in ("altLabel", "hiddenLabel")}
                grown[f"{subject}-copy-{copy}"] = kept | {"prefLabel": [label]}
    return grown


def test_the_questions_are_answered() -> None:
    """The benchmark would be fast for nothing if these were not understood."""
    session = Session()
    for question in QUESTIONS:
        session.new_conversation()
        assert session.ask(question).understood, question
