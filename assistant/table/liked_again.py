"""A dislike taken back: `he likes red now`, `red is fine after all`, said while a limit stands."""

from __future__ import annotations

from dataclasses import replace

from assistant.language.fold import key
from assistant.language.follow_lines import says
from assistant.language.frame import Frame, Preference
from assistant.language.guests import Asked
from assistant.language.small_words import small_words
from assistant.language.standing import Talk

KIND, PAIRS, LOOKS_BACK = "kind", "wines-for-food", 12
FIXED = ("safety", "trouble", "set-table", "plan", "quantity", "myth")


def liked_again(frame: Frame, talk: Talk | None) -> Frame:
    """What was asked within such a limit, asked again without it; any other frame as it is."""
    if frame.topics or frame.diets or frame.intent in FIXED or not taken_back(frame):
        return frame
    now, turns = talk, 0
    while now is not None and turns < LOOKS_BACK:
        lifted = [limit for limit in now.frame.preferences if _lifts(frame, limit)]
        if lifted and now.frame.dishes:
            kept = tuple(limit for limit in now.frame.preferences if limit not in lifted)
            return replace(now.frame, text=frame.text, intent=PAIRS, preferences=kept, wines=(), again="")
        now, turns = now.before, turns + 1
    return frame


def taken_back(frame: Frame) -> bool:
    """Whether somebody is told to like, or to drink, what they did not; nothing is asked."""
    asks = "?" in frame.text.typed or says(frame, "asks-what")
    return says(frame, "likes-again") and not (asks or says(frame, "dislikes"))


def _lifts(frame: Frame, limit: Preference) -> bool:
    """Whether a limit is on what is named now; where nothing is, any ban is meant."""
    named = frame.text.readings or frame.preferences or frame.wines
    if limit.property == KIND:
        ids = {one for r in frame.text.readings for one in (r.id, *r.others)}
        return limit.banned and (limit.wanted in ids or not named)
    told = {*(one.property for one in frame.preferences), *(r.label.lower() for r in frame.text.readings)}
    return limit.property in told


def likes_it_now(frame: Frame, need: Asked) -> bool:
    """Whether what a guest was told to dislike, and not to be harmed by, is named as liked now."""
    told, words = set(key(need.need)), small_words()
    dislikes = told & words["turns"] and not told & words["harm-told"]
    said = set(frame.text.stems) & told - words["turns"] - words["liking"] - words["articles"]
    return bool(dislikes and said) and taken_back(frame)
