"""Reads many spoilt files: `python -m tests.fuzz_files --number 20000 [--coverage]`.

Evening files (through `read_evening`), Turtle files of one's own (through what `check` reads and lists
with), lists with commas (given to both), and notebooks (through `load`). Each is a sound file with a few
things done to it, or noise; the same seed gives the same ones. Reported as in tests/fuzz_questions.py. With
`--coverage` the bytes come from atheris instead, where it is installed (`pip install atheris`), which looks
for bytes that reach new lines of the readers.
"""

from __future__ import annotations

import argparse
import random
import sys
import tempfile
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

from assistant.evening.read import read_evening
from assistant.knowledge.files import corpus_dir, ontology_dir
from assistant.knowledge.ground import Ground
from assistant.knowledge.problems import KnowledgeError
from assistant.knowledge.turtle import read_turtle
from assistant.notebook import load
from assistant.notebook.block import block
from assistant.notebook.sealing import whole
from assistant.notebook.versions import newest
from assistant.session import Session
from tests.fuzz_questions import Run, put, told
from tests.safety.odd_texts import SYMBOLS, odd_texts
from tests.safety.tricks import TRICKS

LARGEST_SEED = 4_000
"""Characters of a shipped file that a spoilt one begins from."""
TOML_BITS = ["[[wines]]\n", "[needs]\n", "x" * 300 + " = 1\n", "a.b.c = 1\n",
             "guests = 9999999999999999999999\n",
             "label = '''", "[" * 3_000, "start = 0000-00-00\n", "price = nan\n", "price = -inf\n",
             "{" * 2_000,
             "label = \"\\u0000\"\n", "needs = [[[]]]\n", "pour_ml = 1e999\n", "\"\" = 1\n",
             "@import \"x\"\n"]  # fmt: skip
TURTLE_BITS = ["@prefix a: <http://a.example/> .\n", "@base <file:///etc/passwd> .\n", "<< " * 400,
               "( " * 5_000,
               "[ " * 5_000, "\"\"\"", "<http://x.example/\\u0000>", "\"1E+999999999\"^^<http://www.w3.org/2001/XMLSchema#decimal>",
               "food:brie a gw:Food .\n", "owl:imports <http://x.example/> .\n", "<!ENTITY x SYSTEM \"file:///etc/passwd\">",
               "_:b", "true . false", "@en-", "^^", "a a a .\n", "VERSION \"1.2\"\n"]  # fmt: skip
LISTED = ["label,price\nMalbec,9\n", "brie;2;;;\n", "=cmd|' /C calc'!A0,1\n", '"a,""b\n', "," * 5_000]
Reading = Callable[[bytes], object]
Source = Callable[[random.Random], bytes]


def spoilt(text: str, bits: Sequence[str], chance: random.Random) -> bytes:
    """A text with a few pieces dropped, doubled, put in or exchanged, and now and then a byte changed."""
    for _ in range(chance.randint(1, 5)):
        at = chance.randrange(len(text) + 1)
        to = min(len(text), at + chance.choice([0, 1, 3, 40, 400]))
        bit = chance.choice([chance.choice(bits), chance.choice(chance.choice(SYMBOLS)), text[at:to] * 2, ""])
        text = text[:at] + bit + text[to:]
    data = bytearray(text.encode("utf-8", "replace"))
    for _ in range(chance.choice([0, 0, 0, 1, 8])):
        if data:
            data[chance.randrange(len(data))] = chance.randrange(256)
    return bytes(data)


def texts_of(folder: Path, pattern: str) -> list[str]:
    """The beginnings of shipped files."""
    return [file.read_text("utf-8")[:LARGEST_SEED] for file in sorted(folder.rglob(pattern))]


def notebooks() -> list[str]:
    """A sound notebook with one statement of each kind."""
    from tests.notebook.made import made, one_of_each

    told = [*one_of_each(), *(made(said=f"it is {trick}") for trick in list(TRICKS.values())[:4])]
    return [whole(newest(), [block(one) for one in told]).decode()]


def sources() -> dict[str, Source]:
    """What makes spoilt files of each kind."""
    toml, turtle = texts_of(corpus_dir() / "evenings", "*.toml"), texts_of(ontology_dir(), "*.ttl")
    own = notebooks()
    return {
        "toml": lambda chance: spoilt(chance.choice(toml), TOML_BITS, chance),
        "ttl": lambda chance: spoilt(chance.choice(turtle), TURTLE_BITS, chance),
        "csv": lambda chance: spoilt("".join(chance.choices(LISTED, k=5)), [*LISTED, *TOML_BITS], chance),
        "notebook": lambda chance: spoilt(own[0], [*TURTLE_BITS, "\n\n", "# guard 0123456789abcdef"], chance),
    }


def readings(session: Session, folder: Path) -> dict[str, Reading]:
    """What reads files of each kind; what a reader says of a bad one is looked at, not raised."""

    def read(name: str, reader: Callable[[Path], object]) -> Reading:
        def of(data: bytes) -> None:
            file = folder / name
            file.write_bytes(data)
            try:
                reader(file)
            except KnowledgeError as error:
                if not error.problems or any("\n" in str(problem) for problem in error.problems):
                    raise ValueError("a problem that is no sentence") from error

        return of

    def evening(file: Path) -> None:
        if any("\n" in str(problem) for problem in read_evening(file, session).problems):
            raise ValueError("a problem of more than one line")

    def turtle(file: Path) -> None:
        found = read_turtle(file, str(file))
        ground = Ground([found])
        for subject in list(found.subjects)[:20]:
            str(ground.problem(subject, "{this} is odd.", "Mend it."))

    def notebook(file: Path) -> None:
        found = load(file)
        if found.problems and found.digest:
            raise ValueError("a damaged notebook that is called sound")

    both = [read("odd.toml", evening), read("odd.ttl", turtle)]
    return {
        "toml": both[0],
        "ttl": both[1],
        "csv": lambda data: [one(data) for one in both],
        "notebook": read("notebook.ttl", notebook),
    }


def spoilt_files(make: Source, number: int, seed: int) -> Iterator[bytes]:
    """So many files, no two alike; one in twenty is noise without any form."""
    chance, seen = random.Random(seed), set[int]()
    noise = odd_texts(number, seed)
    while len(seen) < number:
        data = next(noise).encode("utf-8", "surrogatepass") if chance.random() < 0.05 else make(chance)
        if hash(data) not in seen:
            seen.add(hash(data))
            yield data


def fuzzed(number: int, seed: int, session: Session) -> dict[str, Run]:
    """What came of each kind of file, a share of the number each."""
    made = sources()
    with tempfile.TemporaryDirectory() as folder:
        work = readings(session, Path(folder))
        share = number // len(made)
        return {kind: put(spoilt_files(make, share, seed), share, work[kind]) for kind, make in made.items()}


def with_coverage(number: int, session: Session) -> None:
    """The same readers with bytes that atheris finds; ends the process."""
    import atheris

    work = list(readings(session, Path(tempfile.mkdtemp())).values())

    def one(data: bytes) -> None:
        work[data[0] % len(work) if data else 0](data[1:])

    import tomllib

    import assistant.evening.fields
    import assistant.evening.lines
    import assistant.notebook.facts
    import assistant.notebook.sealing

    for module in (tomllib, assistant.evening.fields, assistant.notebook.sealing, assistant.notebook.facts):
        for name, of in vars(module).items():
            if callable(of) and hasattr(of, "__code__"):
                setattr(module, name, atheris.instrument_func(of))
    corpus = tempfile.mkdtemp()
    for at, make in enumerate(sources().values()):
        for n in range(20):
            (Path(corpus) / f"{at}-{n}").write_bytes(bytes([at]) + make(random.Random(n)))
    atheris.Setup([sys.argv[0], f"-runs={number}", "-timeout=5", "-max_len=8000", corpus], one)
    atheris.Fuzz()


def main(arguments: Sequence[str] | None = None) -> int:
    """Prints what came of it."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--number", type=int, default=20_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--coverage", action="store_true")
    options = parser.parse_args(arguments)
    session = Session()
    if options.coverage:
        with_coverage(options.number, session)
    runs = fuzzed(options.number, options.seed, session)
    for kind, run in runs.items():
        told(kind, run)
    return 1 if any(run.raised or run.hung for run in runs.values()) else 0


if __name__ == "__main__":
    sys.exit(main())
