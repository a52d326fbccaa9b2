"""`pat asks if the port is vegan`: a guest's question passed on by the host, as the guest put it."""

from __future__ import annotations

import re
from functools import lru_cache

from assistant.language.guests import guest_words


@lru_cache(maxsize=1)
def _lead() -> re.Pattern[str]:
    verbs = "|".join(re.escape(verb) for verb in sorted(guest_words().passing, key=len, reverse=True))
    who = r"(?:\w[\w.'’]{0,30}\s{1,3}){1,4}?"
    asked = r"[\s,:]{0,3}(?:(?P<if>if|whether)\s)?\s?(?P<asked>\S.*)"
    return re.compile(rf"{who}(?P<says>{verbs})\b{asked}", re.IGNORECASE)


@lru_cache(maxsize=1)
def _verb_later() -> re.Pattern[str]:
    verbs = "|".join(sorted(guest_words().passing_verbs))
    return re.compile(rf"(?P<who>.+?)\s(?P<verb>{verbs})\s(?P<rest>.+)", re.IGNORECASE)


@lru_cache(maxsize=1)
def _asks_indirectly() -> re.Pattern[str]:
    """`what tannin is`, which is asked as `what is tannin`."""
    asks, verbs = (
        "|".join(sorted(words)) for words in (guest_words().passing_asks, guest_words().passing_verbs)
    )
    return re.compile(rf"(?P<asks>{asks})\s(?P<who>\S.{{0,60}}?)\s(?P<verb>{verbs})\s?[?.]?", re.IGNORECASE)


def as_asked(typed: str) -> str:
    """The question within what is passed on; any other text as it is."""
    found = _lead().fullmatch(typed.strip())
    if found is None:
        return typed
    if about := _about(found):
        return about
    if not found["if"] and found["asked"].split()[0].lower() in guest_words().passing_for:
        return typed
    asked = found["asked"]
    if turned := _asks_indirectly().fullmatch(asked):
        return f"{turned['asks']} {turned['verb']} {turned['who']}?"
    later = _verb_later().fullmatch(asked) if found["if"] else None
    return f"{later['verb']} {later['who']} {later['rest'].rstrip('?')}?" if later else asked


def _about(found: re.Match[str]) -> str:
    """`she asks about the salami` asks `what about the salami`; empty where it is told that somebody did."""
    first, _, rest = found["asked"].partition(" ")
    words = guest_words()
    asks = first.lower() in words.passing_about and found["says"].lower() in words.passing_now
    return f"what {first} {rest.rstrip(' ?.!')}?" if asks and rest and not found["if"] else ""


def kept_for_later(typed: str) -> bool:
    """Whether a question passed on is to be kept and not answered now (`put that aside`)."""
    return bool(guest_words().passing_kept.intersection(re.findall(r"\w+", typed.lower())))
