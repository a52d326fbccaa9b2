"""Fits the weights of corpus/language/evidence.tsv to the question corpus, and can be run again at any time.

    python -m assistant.evaluate.fit [--write]

Logistic regression (scikit-learn, the `fit` extra) over questions and turns of conversations, on the
traits of assistant/language/evidence.py. Traits seen once and weights near nothing are left out, so that
the table stays readable. For each pass of authors it prints the share of intents right when fitted to
the others alone. Without --write nothing is changed.
"""

from __future__ import annotations

import argparse
import sys
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from assistant.evaluate.corpus import Corpus, Dialogue
from assistant.evaluate.read import read_corpus
from assistant.knowledge.files import corpus_dir
from assistant.language.evidence import ALWAYS, Evidence
from assistant.language.intent import UNCLEAR
from assistant.language.parse import Parser
from assistant.session import Session

TIMES, LEAST, STRENGTH, STEPS = 2, 0.1, 3.0, 600
HEAD = """# goeswith evidence: what each trait of a question speaks for, in log odds. Licence: CC BY 4.0.
# Fitted to corpus/questions by `python -m assistant.evaluate.fit --write`; do not edit by hand.
"""


@dataclass(frozen=True, slots=True)
class Seen:
    """A question as the fit sees it: its traits, its intent, the pass it was written in."""

    traits: Mapping[str, float]
    intent: str
    author: str


Weights = dict[str, dict[str, float]]


def seen(corpus: Corpus, session: Session) -> list[Seen]:
    """The traits of every question and refusal, asked alone, and of every turn of the conversations."""
    parser = session.parser
    outside = [Seen(parser.seen(r.ask)[0], UNCLEAR, "outside") for r in corpus.refusals]
    alone = [Seen(parser.seen(q.ask)[0], q.intent, q.author) for q in corpus.questions]
    return [*alone, *outside, *(row for dialogue in corpus.dialogues for row in _turns(dialogue, parser))]


def _turns(dialogue: Dialogue, parser: Parser) -> Iterator[Seen]:
    """What stands may turn a pairing question into another; here it counts as what the table says."""
    for number, turn in enumerate(dialogue.turns):
        traits, row = parser.seen(turn.ask, standing=number > 0)
        by_table = parser.settled_by_table(turn.intent) and parser.settled_by_table(row)
        yield Seen(traits, row if number and by_table else turn.intent, dialogue.author)


def fit(rows: Sequence[Seen]) -> Weights:
    """Weights by trait and intent."""
    from sklearn.feature_extraction import DictVectorizer
    from sklearn.linear_model import LogisticRegression

    times = Counter(trait for row in rows for trait in row.traits)
    kept = [{t: v for t, v in row.traits.items() if times[t] >= TIMES and t != ALWAYS} for row in rows]
    columns = DictVectorizer()
    table = columns.fit_transform(kept)
    table.indices, table.indptr = table.indices.astype("int32"), table.indptr.astype("int32")
    model = LogisticRegression(C=STRENGTH, max_iter=STEPS).fit(table, [row.intent for row in rows])
    weights: Weights = defaultdict(dict)
    for intent, always, line in zip(model.classes_, model.intercept_, model.coef_, strict=True):
        pairs = [(ALWAYS, always), *zip(columns.feature_names_, line, strict=True)]
        for trait, weight in pairs:
            if abs(weight) >= LEAST:
                weights[trait][str(intent)] = float(weight)
    return weights


def written(weights: Weights) -> dict[str, str]:
    """The weights as the table holds them: two decimals, the strongest first."""
    return {
        trait: " ".join(f"{i} {w:.2f}" for i, w in _ordered(found))
        for trait, found in sorted(weights.items())
    }


def _ordered(found: Mapping[str, float]) -> list[tuple[str, float]]:
    return sorted(found.items(), key=lambda pair: (-pair[1], pair[0]))


def right(rows: Sequence[Seen], weights: Mapping[str, str]) -> float:
    """The share of questions whose intent these weights name."""
    evidence = Evidence({}, weights)
    hits = 0
    for row in rows:
        sums = evidence.sums(row.traits)
        hits += max(sorted(sums), key=lambda name: sums[name], default="") == row.intent
    return hits / len(rows)


def left_out(rows: Sequence[Seen]) -> dict[str, float]:
    """For each pass, the share right when it was not in the fit."""
    return {
        author: right(
            [r for r in rows if r.author == author], written(fit([r for r in rows if r.author != author]))
        )
        for author in sorted({row.author for row in rows})
    }


def main(argv: Sequence[str] | None = None) -> int:
    """The command line."""
    parser = argparse.ArgumentParser(prog="python -m assistant.evaluate.fit")
    parser.add_argument("--write", action="store_true", help="write the table")
    options = parser.parse_args(argv)
    rows = seen(read_corpus(), Session())
    for author, share in left_out(rows).items():
        print(f"{author}: {share:.3f} right, fitted to the others alone")
    table = written(fit(rows))
    print(f"all: {right(rows, table):.3f} right, {len(table)} traits")
    if options.write:
        write(table, corpus_dir() / "language" / "evidence.tsv")
    return 0


def write(table: Mapping[str, str], file: Path) -> None:
    """Writes the table."""
    file.write_text(HEAD + "".join(f"{trait}\t{told}\n" for trait, told in table.items()), "utf-8")


if __name__ == "__main__":
    sys.exit(main())
