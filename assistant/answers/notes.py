"""What goes with words from the knowledge: figures, fixed cautions, and the source with its basis."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.items import source_text
from assistant.answers.record import Answer
from assistant.answers.safety import caution, cautions, spoken
from assistant.answers.wording import capital
from assistant.knowledge.build import amounts_of
from assistant.knowledge.concepts import Amount, Entry

MOST_RULES = 3


def noted(context: Context, say: str, lines: Sequence[str], entries: Sequence[Entry]) -> Answer:
    """An answer with the figures and cautions of these entries in its record (their lines are the caller's).

    Where the question touches safety beyond what the entries settle, that is said too, and first
    where it is the most urgent.
    """
    warned = cautions(context)
    told = [record["text"] for record in warned]
    own = dict.fromkeys(c for entry in entries for c in entry.get("caution", ()))
    records = {record["id"]: record for record in (*warned, *(caution(context, name) for name in own))}
    figures = {name: f for entry in entries for name, f in _figures(context, entry).items()}
    urgent = bool(told) and context.frame.topics[0] == context.frame.text.topics[0]
    aloud, below = spoken(told[0]) if urgent else (say, "")
    rest = [below, *told[1:], say, *lines] if urgent else [*lines, *told]
    answer = compose(context, aloud, [aloud, *rest])
    return replace(answer, figures=figures, cautions=tuple(records.values()))


def rule_lines(context: Context, names: Sequence[str]) -> list[str]:
    """What a few of these pairing rules say."""
    rules = [context.knowledge.rules[name] for name in names[:MOST_RULES]]
    return [context.wording("line", "rule-behind", label=rule.label, because=rule.because) for rule in rules]


def note_lines(context: Context, entry: Entry) -> list[str]:
    """The figures, cautions and source of an entry as lines."""
    lines = [_figure_line(context, name, value) for name, value in amounts_of(entry).items()]
    lines += [caution(context, name)["text"] for name in entry.get("caution", ())]
    sources = "; ".join(source_text(s, context.knowledge) for s in entry["source"])
    basis = context.knowledge.label(entry["restsOn"][0])
    return [*lines, context.wording("line", "source-basis", source=sources, basis=basis)]


def _figures(context: Context, entry: Entry) -> Mapping[str, dict[str, object]]:
    """Figures under their published names (minutes, celsius, days)."""
    known = context.knowledge
    return {
        str(known.entry(name)["figureName"][0]): {
            "value": value.typical,
            "low": value.low,
            "high": value.high,
            "unit": str(known.entry(name)["unitText"][0]),
            "basis": value.basis,
            "source": source_text(value.source, known),
        }
        for name, value in amounts_of(entry).items()
    }


def _figure_line(context: Context, name: str, value: Amount) -> str:
    return context.wording(
        "line",
        "value",
        name=capital(context.knowledge.label(name)),
        value=f"{value.typical:.4g}",
        unit=str(context.knowledge.entry(name)["unitText"][0]),
        low=f"{value.low:.4g}",
        high=f"{value.high:.4g}",
        basis=value.basis,
        source=source_text(value.source, context.knowledge),
    )
