"""Who invented port, how old wine is: stories are outside the job, and what can be told is offered."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.language.follow_lines import follow_lines, opens, says
from assistant.language.frame import Frame

# Questions that a word of history may stand in, and that are answered all the same.
OTHER = ("safety", "plan", "note", "teach", "undo", "trouble", "myth", "quantity", "service", "set-table")


def story_asked(frame: Frame) -> bool:
    """Whether the history of a wine or a food is asked for."""
    return frame.intent not in OTHER and says(frame, "story")


def outside_story(context: Context) -> Answer:
    """That stories are outside, and what can be asked of what is named."""
    named = [context.knowledge.label(reading.id) for reading in context.frame.text.readings]
    say = context.wording("say", "story")
    offer = context.wording("line", "story-of" if named else "story-any", named=named[0] if named else "")
    answer = compose(context.of_evening(), say, [say, offer])
    return replace(answer, clarify=offer, understood=False, dish=None)


def sound_asked(frame: Frame) -> bool:
    """Whether it is asked how the one thing named is said (`how do you say Albariño`)."""
    named, stems = frame.text.readings, frame.text.stems
    alone = len(named) == 1 and not any(stem.isalnum() for stem in stems[named[0].end :])
    leads = (
        {places[-1] + 1 for places in follow_lines()["says-name"].find(stems[: named[0].start])}
        if alone
        else set()
    )
    return alone and named[0].start in leads and opens(frame, "says-name")


def outside_sound(context: Context) -> Answer:
    """That it is not known how a name is said."""
    named = [context.knowledge.label(reading.id) for reading in context.frame.text.readings]
    say = context.wording("line", "sound", named=named[0] if named else context.wording("line", "sound-it"))
    return replace(compose(context.of_evening(), say, [say]), understood=False, dish=None)
