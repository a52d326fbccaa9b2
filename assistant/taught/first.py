"""`trust me over the book`, `you first`: whose word is told first where both speak of a pair."""

from __future__ import annotations

from assistant.answers.wording import listed
from assistant.language.frame import Frame
from assistant.language.sorting import EDIBLE
from assistant.taught.describe import thing
from assistant.taught.lesson import Lesson, told
from assistant.taught.pairs import BOOK, HOST
from assistant.taught.telling import Hearing, words
from assistant.taught.words import taught_words

ASKS = ("safety", "why", "why-not", "myth", "plan", "what-if")


def chosen(stems: tuple[str, ...]) -> str:
    """`host` or `book`, whichever the words put first; empty where they put neither."""
    lines = taught_words().lines
    found = {
        who: min((p[0] for p in lines[f"first-{who}"].find(stems)), default=None) for who in (HOST, BOOK)
    }
    named = {who: at for who, at in found.items() if at is not None}
    return min(named, key=lambda who: named[who], default="")


def chooses(frame: Frame) -> bool:
    """Whether a frame says whose word comes first, and asks nothing."""
    return frame.intent not in ASKS and "?" not in frame.text.typed and bool(chosen(frame.text.stems))


def first_voice(heard: Hearing) -> Lesson | None:
    """The choice, of everything or of the wines and foods named with it."""
    who, context = chosen(heard.stems), heard.context
    if not who:
        return None
    about = _about(heard)
    things = listed([thing(one, context) for one in about])
    if _newest(about, heard) == who:
        return Lesson((), words(context, "first-same"))
    say = words(context, f"first-{who}-of" if about else f"first-{who}", things=things)
    pairs = heard.keeper.overlay.pairings
    lines = [words(context, "first-line" if pairs else "first-none")]
    return Lesson((told(heard, "first-voice", about, {"first": who}),), say, tuple(lines))


def _newest(about: tuple[str, ...], heard: Hearing) -> str:
    """Who was put first when the same was last said of the same things, if nothing was said since."""
    last = next(iter(reversed(heard.keeper.overlay.firsts)), None)
    return str(last.value["first"]) if last and set(last.about) == set(about) else ""


def _about(heard: Hearing) -> tuple[str, ...]:
    styles = heard.context.knowledge.styles_of
    readings = heard.context.frame.text.readings
    return tuple(dict.fromkeys(r.id for r in readings if r.kind in EDIBLE or styles(r.id)))
