"""Measures the speller: slips must be read as what was meant, and what is spelt right must stay.

`corpus/slips.tsv` holds slips with what was meant by them, `corpus/must-stay.tsv` what must not be
mended. Half of the slips, chosen by a checksum of their letters, was held back until its misses were
looked at by their causes. The misses of `corpus/unseen-slips.tsv` and `corpus/later-slips.tsv` are nothing
to improve by: their figures alone tell how the speller does with slips that it was not improved by.
"""

from __future__ import annotations

import csv
import zlib
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

from assistant.knowledge.files import corpus_dir
from assistant.language.fold import fold, stem
from assistant.language.frame import Frame
from assistant.language.parse import Parser

PLACE = "{}"
NOTHING, UNKNOWN = "-", "unknown"
VERDICTS = ("right", "wrong", "not mended")


@dataclass(frozen=True, slots=True)
class Slip:
    """What was typed, what was meant by it, and the sentence around both (`{}` stands for them)."""

    typed: str
    meant: str
    context: str
    kind: str

    @property
    def held_back(self) -> bool:
        """Whether it belongs to the half that was looked at last."""
        return zlib.crc32(self.typed.encode()) % 2 == 1


@dataclass(frozen=True, slots=True)
class Stay:
    """Words that stand as typed, with the labels they are read as (none for nothing)."""

    typed: str
    labels: tuple[str, ...]
    context: str
    kind: str
    unknown: bool


@dataclass(frozen=True, slots=True)
class SlipFigures:
    """Counts of verdicts (`right`, `wrong`, `not mended`), and every miss as (typed, verdict, read)."""

    counts: Counter[str]
    misses: tuple[tuple[str, str, str], ...] = field(default=())

    def share(self, verdict: str) -> float:
        """The verdict's part of all, in per cent; 0 where nothing was measured."""
        return 100 * self.counts[verdict] / max(1, self.counts.total())


@dataclass(frozen=True, slots=True)
class SpellerFigures:
    """How both halves of the slips, the unseen and the later ones are read, and what must stay."""

    looked_at: SlipFigures
    held_back: SlipFigures
    unseen: SlipFigures
    later: SlipFigures
    stays: SlipFigures

    def figures(self) -> dict[str, float]:
        """The shares that floors can be set for, by name."""
        halves = (
            ("slips", self.looked_at),
            ("slips_held_back", self.held_back),
            ("slips_unseen", self.unseen),
            ("slips_later", self.later),
        )
        shares = {
            f"{name}_{verdict.replace(' ', '_')}": half.share(verdict) / 100
            for name, half in halves
            for verdict in VERDICTS
        }
        return {**shares, "stays_mended": self.stays.share("mended") / 100}


def read_slips(file: Path | None = None) -> list[Slip]:
    """The slips of `corpus/slips.tsv`. Raises OSError or KeyError where the file is not as it should be."""
    rows = _rows(file or corpus_dir() / "slips.tsv")
    return [Slip(row["typed"], row["meant"], row["context"], row["kind"]) for row in rows]


def unseen_slips() -> list[Slip]:
    """The slips whose misses are not looked at. Raises as `read_slips` does."""
    return read_slips(corpus_dir() / "unseen-slips.tsv")


def later_slips() -> list[Slip]:
    """The slips that were written when the mending stood still. Raises as `read_slips` does."""
    return read_slips(corpus_dir() / "later-slips.tsv")


def read_stays(file: Path | None = None) -> list[Stay]:
    """What must stay, from `corpus/must-stay.tsv`. Raises as `read_slips` does."""
    return [_stay(row) for row in _rows(file or corpus_dir() / "must-stay.tsv")]


def _stay(row: dict[str, str]) -> Stay:
    read = row["read as"]
    labels = () if read in (NOTHING, UNKNOWN) else tuple(read.split("; "))
    return Stay(row["typed"], labels, row["context"], row["kind"], read == UNKNOWN)


def _rows(file: Path) -> Iterator[dict[str, str]]:
    with file.open(encoding="utf-8", newline="") as lines:
        kept = (line for line in lines if not line.startswith("#"))
        yield from csv.DictReader(kept, delimiter="\t", quoting=csv.QUOTE_NONE)


def judge_slip(parser: Parser, slip: Slip) -> str:
    """`right`: as good as spelt well; `wrong`: something was mended into what was not meant, or read without
    a word that it was not understood; else `not mended`, though a part of it may be read as it stands."""
    got = parser.parse(slip.context.replace(PLACE, slip.typed))
    due = parser.parse(slip.context.replace(PLACE, slip.meant))
    if _used(got) - _used(due) and (_mended(got, due) or not _told(slip, got)):
        return "wrong"
    same = _used(got) == _used(due) and got.intent == due.intent
    return "right" if same and len(got.text.left_out) <= len(due.text.left_out) else "not mended"


def _mended(got: Frame, due: Frame) -> bool:
    """Whether a typed word was taken for something that was not meant."""
    meant = _used(due)
    return any(r.corrected_from and r.id not in meant for r in got.text.readings)


def _told(slip: Slip, got: Frame) -> bool:
    """Whether the guest hears that a word of the slip was not understood."""
    return bool(set(slip.typed.lower().split()) & {word.lower() for word in got.text.left_out})


def _used(frame: Frame) -> set[str]:
    """All that was recognised in a question and would shape its answer."""
    limits = {f"{p.property} {p.low} {p.high} {p.wanted} {p.banned}" for p in frame.preferences}
    return {r.id for r in frame.text.readings} | limits


def judge_stay(parser: Parser, stay: Stay) -> str:
    """`stays`, or `mended` where a typed word was taken for another, or `misread` for another name."""
    text = parser.parse(stay.context.replace(PLACE, stay.typed)).text
    if any(s != stem(fold(w)) for s, w in zip(text.stems, text.words, strict=True) if w.isalpha()):
        return "mended"
    if any(r.corrected_from for r in text.readings if not r.text.isascii() or r.corrected_from != r.text):
        return "mended"
    around = {r.label for r in parser.parse(stay.context.replace(PLACE, "")).text.readings}
    read = {r.label for r in text.readings} - around
    told = not stay.unknown or bool(set(stay.typed.split()) & set(text.left_out))
    return "stays" if told and read - around == set(stay.labels) - around else "misread"


def measure_slips(parser: Parser, slips: Iterable[Slip] | None = None) -> SlipFigures:
    """How the slips (all of the corpus unless given) are read."""
    found = [(s, judge_slip(parser, s)) for s in (read_slips() if slips is None else slips)]
    misses = [
        (s.typed, verdict, _read(parser, s.context, s.typed)) for s, verdict in found if verdict != "right"
    ]
    return SlipFigures(Counter(verdict for _, verdict in found), tuple(misses))


def measure_speller(parser: Parser) -> SpellerFigures:
    """All slips of the corpus by their part, and what must stay."""
    slips = read_slips()
    looked_at = measure_slips(parser, [s for s in slips if not s.held_back])
    held_back = measure_slips(parser, [s for s in slips if s.held_back])
    unseen = measure_slips(parser, unseen_slips())
    later = measure_slips(parser, later_slips())
    return SpellerFigures(looked_at, held_back, unseen, later, measure_stays(parser))


def measure_stays(parser: Parser, stays: Iterable[Stay] | None = None) -> SlipFigures:
    """How what must stay (all of the corpus unless given) is read: `mended` are the false repairs."""
    found = [(s, judge_stay(parser, s)) for s in (read_stays() if stays is None else stays)]
    misses = [
        (s.typed, verdict, _read(parser, s.context, s.typed)) for s, verdict in found if verdict != "stays"
    ]
    return SlipFigures(Counter(verdict for _, verdict in found), tuple(misses))


def _read(parser: Parser, context: str, typed: str) -> str:
    text = parser.parse(context.replace(PLACE, typed)).text
    return ", ".join(r.label for r in text.readings) or NOTHING
