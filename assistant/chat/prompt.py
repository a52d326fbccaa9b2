"""The prompt that is drawn: completion, suggestions, history, the key for why, the quiet bottom line."""

from __future__ import annotations

from concurrent.futures import Future
from typing import TYPE_CHECKING, Any

from prompt_toolkit import PromptSession
from prompt_toolkit.auto_suggest import AutoSuggestFromHistory
from prompt_toolkit.filters import has_selection
from prompt_toolkit.formatted_text import FormattedText
from prompt_toolkit.key_binding import KeyBindings, KeyPressEvent
from prompt_toolkit.output.color_depth import ColorDepth
from prompt_toolkit.patch_stdout import patch_stdout
from prompt_toolkit.styles import Style

from assistant.chat.background import Background
from assistant.chat.bottom import bottom_line, standing
from assistant.chat.completion import NameCompleter
from assistant.chat.history import OwnHistory
from assistant.chat.manner import Manner
from assistant.chat.words import ChatWords

if TYPE_CHECKING:
    from assistant.session import Session

# Weights only: a colour may vanish on a ground that somebody else chose.
STYLE = Style.from_dict(
    {
        "prompt": "bold",
        "say": "bold",
        "rest": "dim",
        "asked": "bold dim",
        "auto-suggestion": "noinherit dim",
        "bottom-toolbar": "noinherit dim",
        "completion-menu": "noinherit",
        "completion-menu.completion": "noinherit",
        "completion-menu.completion.current": "noinherit bold reverse",
        "completion-menu.meta.completion": "noinherit dim",
        "completion-menu.meta.completion.current": "noinherit reverse",
        "scrollbar.background": "noinherit dim",
        "scrollbar.button": "noinherit reverse",
    }
)
WHY_KEYS = ("f2",), ("escape", "w")


class Prompt:
    """Asks for lines; loading starts once the prompt stands."""

    def __init__(self, background: Background, history: OwnHistory, words: ChatWords, manner: Manner) -> None:
        self._background, self._words, self._manner = background, words, manner
        self._left = ""
        self._ask: PromptSession[str] = PromptSession(
            history=history,
            auto_suggest=AutoSuggestFromHistory(),
            completer=NameCompleter(background.future, words),
            complete_while_typing=False,
            style=STYLE,
            color_depth=ColorDepth.DEPTH_1_BIT,
            enable_open_in_editor=False,
            enable_suspend=True,
            key_bindings=self._keys(),
        )
        self._ask.app.after_render += lambda _: background.start()
        background.future.add_done_callback(self._loaded)

    def next(self, draft: str) -> str:
        """The line typed, which starts with `draft`. Raises EOFError or KeyboardInterrupt."""
        draft, self._left = draft or self._left, ""
        self._set_bottom()
        with patch_stdout():
            return self._ask.prompt(
                FormattedText([("class:prompt", self._words("sign", "usual"))]), default=draft
            )

    def _keys(self) -> KeyBindings:
        keys = KeyBindings()
        keys.add(*WHY_KEYS[0])(self._why)
        keys.add(*WHY_KEYS[1], filter=~has_selection)(self._why)  # with a selection, Emacs copies it
        return keys

    def _why(self, event: KeyPressEvent) -> None:
        """Asks why; what was half typed comes back on the next line."""
        buffer = event.current_buffer
        self._left = buffer.text
        buffer.text = self._words.why
        buffer.validate_and_handle()

    def _loaded(self, future: Future[Session]) -> None:
        """Shows what is on the table now; ends the wait for a line where nothing can be answered."""
        app, loop = self._ask.app, self._ask.app.loop
        if future.exception() is None:
            self._set_bottom()
            app.invalidate()
        elif loop is not None:
            loop.call_soon_threadsafe(self._give_up)

    def _give_up(self) -> None:
        app = self._ask.app
        if app.is_running and not app.is_done:
            app.exit(result="")

    def _set_bottom(self) -> None:
        """A bottom line where there is something to show, else none: an empty one takes a line too."""
        text: Any = self._bottom if self._bottom_text() else None
        self._ask.bottom_toolbar = text

    def _bottom(self) -> FormattedText:
        return FormattedText([("", self._bottom_text())])

    def _bottom_text(self) -> str:
        future = self._background.future
        if not future.done() or future.exception():
            return ""
        return bottom_line(standing(future.result()), self._words, self._manner.columns)
