"""Fits the weights of corpus/language/evidence.tsv to the corpus, and can be run again at any time.

    python -m assistant.evaluate.fit [--write] [--without [PASS ...]]

Logistic regression (scikit-learn, the `fit` extra) over questions, ways of asking and turns of
conversations, on the traits of assistant/language/evidence.py. Traits seen once and weights near nothing are
left out, so that the table stays readable. What a word means has its weights too: they follow from those of
the words near it (assistant/evaluate/senses.py). With --without it prints for each pass of authors the share
of intents right when fitted to the others alone. Without --write nothing is changed.
"""

from __future__ import annotations

import argparse
import sys
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from assistant.evaluate.corpus import Corpus, Dialogue
from assistant.evaluate.read import read_corpus
from assistant.evaluate.senses import Senses, read_senses
from assistant.evaluate.ways import Way, read_ways
from assistant.knowledge.files import corpus_dir
from assistant.language.evidence import ALWAYS, SENSE, Evidence
from assistant.language.intent import UNCLEAR
from assistant.language.meanings import Meanings, stepped, write_meanings
from assistant.language.parse import Parser
from assistant.session import Session

TIMES, LEAST, STRENGTH, STEPS = 2, 0.1, 3.0, 300
HEAD = """# goeswith evidence: what each trait of a question speaks for, in log odds. Licence: CC BY 4.0.
# Fitted to the corpus by `python -m assistant.evaluate.fit --write`; do not edit by hand.
"""


@dataclass(frozen=True, slots=True)
class Seen:
    """A question as the fit sees it: its traits, its intent, the pass it was written in."""

    traits: Mapping[str, float]
    intent: str
    author: str


Weights = dict[str, dict[str, float]]


@dataclass(frozen=True, slots=True)
class Fitted:
    """Weights as the table holds them, by trait, and those of what words mean."""

    weights: Mapping[str, str]
    meanings: Meanings


def seen(corpus: Corpus, ways: Sequence[Way], session: Session) -> list[Seen]:
    """The traits of all that is asked alone, and of every turn of the conversations."""
    parser = session.parser
    told = [Seen(parser.seen(way.ask)[0], way.intent, way.author) for way in ways]
    outside = [Seen(parser.seen(r.ask)[0], UNCLEAR, "outside") for r in corpus.refusals]
    alone = [Seen(parser.seen(q.ask)[0], q.intent, q.author) for q in corpus.questions]
    turns = [row for dialogue in corpus.dialogues for row in _turns(dialogue, parser)]
    return [*alone, *outside, *told, *turns]


def _turns(dialogue: Dialogue, parser: Parser) -> Iterator[Seen]:
    """What stands may turn a pairing question into another; here it counts as what the table says."""
    for number, turn in enumerate(dialogue.turns):
        traits, row = parser.seen(turn.ask, standing=number > 0)
        by_table = parser.settled_by_table(turn.intent) and parser.settled_by_table(row)
        yield Seen(traits, row if number and by_table else turn.intent, dialogue.author)


def fit(rows: Sequence[Seen], senses: Senses) -> Fitted:
    """Weights by trait and intent; a word has some by what it means, be it in no row."""
    from scipy.sparse import csr_matrix, hstack
    from sklearn.feature_extraction import DictVectorizer
    from sklearn.linear_model import LogisticRegression

    columns = DictVectorizer()
    plain = columns.fit_transform(_met(rows))
    table = hstack([plain, csr_matrix(senses.of(row.traits for row in rows))]).tocsr()
    table.indices, table.indptr = table.indices.astype("int32"), table.indptr.astype("int32")
    model = LogisticRegression(C=STRENGTH, max_iter=STEPS).fit(table, [row.intent for row in rows])
    intents, split = [str(intent) for intent in model.classes_], plain.shape[1]
    told = {ALWAYS: dict(zip(intents, map(float, model.intercept_), strict=True))}
    for name, line in zip(columns.feature_names_, model.coef_[:, :split].T, strict=True):
        told[name] = {i: float(w) for i, w in zip(intents, line, strict=True) if abs(w) >= LEAST}
    meant = senses.table @ model.coef_[:, split:].T
    weights = written({name: found for name, found in told.items() if found})
    return Fitted(weights, stepped(senses.words, meant))


def _met(rows: Sequence[Seen]) -> list[dict[str, float]]:
    """The traits of each row that others have too, and not what its words mean."""
    times = Counter(trait for row in rows for trait in row.traits)
    kept = {t for t, many in times.items() if many >= TIMES and t != ALWAYS and not t.startswith(f"{SENSE} ")}
    return [{t: much for t, much in row.traits.items() if t in kept} for row in rows]


def written(weights: Weights) -> dict[str, str]:
    """The weights as the table holds them: two decimals, the strongest first; of `always` by name."""
    strongest = {trait: _line(sorted(row.items(), key=_strong)) for trait, row in sorted(weights.items())}
    return strongest | {ALWAYS: _line(sorted(weights[ALWAYS].items()))}


def _line(pairs: Iterable[tuple[str, float]]) -> str:
    return " ".join(f"{intent} {weight:.2f}" for intent, weight in pairs)


def _strong(pair: tuple[str, float]) -> tuple[float, str]:
    return -pair[1], pair[0]


def right(rows: Sequence[Seen], fitted: Fitted) -> float:
    """The share of questions whose intent these weights name."""
    evidence = Evidence({}, fitted.weights, fitted.meanings)
    hits = 0
    for row in rows:
        sums = evidence.sums(row.traits)
        hits += max(sorted(sums), key=lambda name: sums[name], default="") == row.intent
    return hits / len(rows)


def left_out(rows: Sequence[Seen], senses: Senses, author: str) -> float:
    """The share right of a pass that was not in the fit."""
    others = [row for row in rows if row.author != author]
    return right([row for row in rows if row.author == author], fit(others, senses))


def main(argv: Sequence[str] | None = None) -> int:
    """The command line."""
    parser = argparse.ArgumentParser(prog="python -m assistant.evaluate.fit")
    parser.add_argument("--write", action="store_true", help="write the table")
    parser.add_argument("--without", nargs="*", metavar="PASS", help="leave out each pass in turn, or all")
    options = parser.parse_args(argv)
    rows, senses = seen(read_corpus(), read_ways(), Session()), read_senses()
    if options.without is not None:
        for author in options.without or sorted({row.author for row in rows}):
            print(
                f"{author}: {left_out(rows, senses, author):.3f} right, fitted to the others alone",
                flush=True,
            )
    if options.write:
        found, folder = fit(rows, senses), corpus_dir() / "language"
        print(f"all: {right(rows, found):.3f} right, {len(found.weights)} traits")
        write(found.weights, folder / "evidence.tsv")
        write_meanings(found.meanings, folder / "meanings.npz")
    return 0


def write(table: Mapping[str, str], file: Path) -> None:
    """Writes the table."""
    file.write_text(HEAD + "".join(f"{trait}\t{told}\n" for trait, told in table.items()), "utf-8")


if __name__ == "__main__":
    sys.exit(main())
