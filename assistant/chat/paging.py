"""Under a page of a long answer: one key says whether there is to be more."""

from __future__ import annotations

from prompt_toolkit import PromptSession
from prompt_toolkit.key_binding import KeyBindings, KeyPressEvent
from prompt_toolkit.keys import Keys

from assistant.answers.sanitise import safe

ON = ("\n", " ")


def pressed(message: str) -> str | None:
    """Shows a message until a key is pressed; the key, or None for one that leaves the rest out.

    Enter is `\\n`; keys without a sign of their own are empty; a paste is all of it.
    Raises KeyboardInterrupt at Ctrl-C.
    """
    session: PromptSession[str | None] = PromptSession(
        key_bindings=_keys(), erase_when_done=True, enable_suspend=True
    )
    return session.prompt(message)


def _keys() -> KeyBindings:
    keys = KeyBindings()
    keys.add("escape", eager=True)(_leave)
    keys.add("c-d")(_leave)
    keys.add(Keys.Any)(_take)
    keys.add("enter")(_take)
    keys.add(Keys.BracketedPaste)(_take)
    return keys


def _leave(event: KeyPressEvent) -> None:
    event.app.exit(result=None)


def _take(event: KeyPressEvent) -> None:
    has_no_sign = len(event.data) > 1 and event.data.startswith("\x1b")
    event.app.exit(result="" if has_no_sign else safe(event.data.replace("\r", "\n")))
