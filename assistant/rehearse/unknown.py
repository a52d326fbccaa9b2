"""`what didn't you know`: the words of past questions that are still not known, the commonest first."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from difflib import get_close_matches

from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.answers.sanitise import safe
from assistant.language.fold import key
from assistant.notebook import Entry, read_log
from assistant.session import Session
from assistant.taught.telling import plain

MOST, NEAR = 8, 0.72
HELP = "help"
THINGS = ("food/", "wine/", "drink/")


def unknown_by_talk(context: Context, session: Session) -> Answer:
    """The words by how often they were met, each with the sentence that teaches it; or the word named."""
    if session.log is None:
        return _told(context, "no-log", understood=False)
    entries = read_log(session.log.path).entries
    named = _named(context, session)
    if named:
        return _of_named(named, entries, context, session)
    found = counted(entries, session)
    if not found:
        return _told(context, "unknown-none")
    lines = [_line(word, times, entries, context, session) for word, times in found[:MOST]]
    more = len(found) - MOST
    lines += [context.wording("rehearse", "unknown-more", count=more)] if more > 0 else []
    name = "unknown-one" if len(found) == 1 else "unknown"
    return _told(context, name, lines, count=len(found), word=safe(found[0][0]))


def counted(entries: Sequence[Entry], session: Session) -> list[tuple[str, int]]:
    """Words not known when they were met nor now, with how often they were, the commonest first."""
    times: Counter[str] = Counter()
    shown: dict[str, str] = {}
    for entry in entries:
        for word in entry.unknown:
            folded = " ".join(key(word))
            times[folded] += 1
            shown.setdefault(folded, word)
    return [(shown[word], count) for word, count in times.most_common() if word and not _known(word, session)]


def _known(word: str, session: Session) -> bool:
    """Whether a word is read by now, as the knowledge or the host calls it."""
    text = session.parser.parse(session.taught.overlay.meant(word)).text
    return any(not reading.corrected_from for reading in text.readings)


def _named(context: Context, session: Session) -> list[str]:
    """The names told to have been unknown: what is read in the text, and what is not."""
    text = context.frame.text
    return list(dict.fromkeys((*(r.text for r in text.readings), *text.left_out)))


def _of_named(names: list[str], entries: Sequence[Entry], context: Context, session: Session) -> Answer:
    word = names[0]
    if _known(word, session):
        label = session.parser.parse(session.taught.overlay.meant(word)).text.readings[0].label
        return _told(context, "known-now", word=safe(word), thing=label)
    times = Counter(dict(counted(entries, session)))[word]
    return _told(
        context, "unknown-one", [_line(word, times or 1, entries, context, session)], word=safe(word)
    )


def _line(word: str, times: int, entries: Sequence[Entry], context: Context, session: Session) -> str:
    """How often, when last, and the sentence to say."""
    folded = " ".join(key(word))
    met = [one for one in entries if any(" ".join(key(w)) == folded for w in one.unknown)]
    when = context.wording.date(met[-1].time) if met else ""
    near = _near(folded, session)
    fields = {"word": safe(word), "times": times, "date": when, "near": near}
    name = ("unknown-line" if met else "unknown-teach") + ("-near" if near else "")
    return context.wording("rehearse", name, **fields)


def _near(word: str, session: Session) -> str:
    """The label of a food or wine spelt much like it, or an empty text."""
    things = (name for name in session.knowledge.digest if name.startswith(THINGS))
    labels = {label.lower(): label for label in map(session.knowledge.label, things)}
    found = get_close_matches(word, labels, 1, NEAR)
    return labels[found[0]] if found else ""


def _told(
    context: Context, name: str, lines: Sequence[str] = (), understood: bool = True, **fields: object
) -> Answer:
    say = context.wording("rehearse", name, **fields)
    return replace(plain(context, say, lines, understood), intent=HELP)
