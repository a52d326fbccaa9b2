"""Who invented port, how old wine is: stories are outside the job, and what can be told is offered."""

from __future__ import annotations

from dataclasses import replace

from assistant.answers.compose import compose
from assistant.answers.context import Context
from assistant.answers.record import Answer
from assistant.language.follow_lines import says
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


def outside_sound(context: Context) -> Answer:
    """That it is not known how a name is said."""
    named = [context.knowledge.label(reading.id) for reading in context.frame.text.readings]
    say = context.wording("line", "sound", named=named[0] if named else context.wording("line", "sound-it"))
    return replace(compose(context.of_evening(), say, [say]), understood=False, dish=None)
