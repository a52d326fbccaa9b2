"""What somebody claims of a wine, where no known saying is meant: a claim to be judged, never a limit."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache

from assistant.knowledge.files import corpus_dir
from assistant.language.cues import Lines
from assistant.language.data import read_data
from assistant.language.dish_edits import POURED
from assistant.language.frame import Frame

MYTH, TELLS, AIR, UNLESS = "myth", "tells", "air", "unless"
JUDGED, ONLY = "judge-pair", "only"
SORTS = ("everything", ONLY, "never", "must")
# What such a line is taken for else; a guest's needs, the table and safety are other matters.
TAKEN_FOR = (
    "myth",
    "teach",
    "note",
    "judge-pair",  # a pair doubted is judged as one, whoever doubts it, unless no other wine would do
    "wines-for-food",
    "foods-for-wine",
    "unclear",
    "describe",
    "service",
    "trouble",
    "smalltalk",
    "one-bottle",
    "help",
)


@lru_cache(maxsize=1)
def claim_lines() -> Mapping[str, Lines]:
    """The lines by which a claim is told. Raises KnowledgeError as `read_data`."""
    file = corpus_dir() / "language" / "myths.toml"
    return read_data(file, lambda tables: {k: Lines(v) for k, v in tables["claimed"].items()})


def claim_of(frame: Frame) -> str:
    """What is claimed of the wines of a frame: a sort, or that they want air; empty where nothing is."""
    lines, stems = claim_lines(), frame.text.stems
    if not lines[TELLS].stand_in(stems) or lines[UNLESS].stand_in(stems):
        return ""
    sorts = SORTS if frame.dishes else (AIR, *SORTS)
    return next((sort for sort in sorts if lines[sort].stand_in(stems)), "")


def as_claim(frame: Frame) -> Frame:
    """A frame in which somebody claims something of a wine as one about that, without limits."""
    claimed = claim_of(frame)
    if not claimed or (frame.intent == JUDGED and claimed != ONLY):
        return frame
    wines = frame.wines or tuple(r.id for r in frame.text.readings if r.kind in POURED)
    if not wines or frame.entries or frame.topics or frame.intent not in TAKEN_FOR:
        return frame
    return replace(frame, intent=MYTH, wines=wines, preferences=(), nearest=())
