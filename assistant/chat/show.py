"""What is printed: the spoken line first and strong, the rest set back, a page at a time where it is long."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.answers.sanitise import safe
from assistant.answers.wrap import wrapped
from assistant.chat.manner import Manner
from assistant.chat.meanwhile import Meanwhile
from assistant.chat.pages import Row, Styled, behind, laid
from assistant.chat.words import ChatWords

NOTE, SPOKEN, REST, ASKED = "", "class:say", "class:rest", "class:asked"


class Shower:
    """Prints answers in the manner of the terminal."""

    def __init__(self, manner: Manner, words: ChatWords) -> None:
        self._manner, self._words = manner, words

    def answer(self, text: str) -> str:
        """Prints an answer; what was typed meanwhile that belongs to the next line.

        An answer longer than the screen is shown page by page. Raises KeyboardInterrupt at Ctrl-C.
        """
        said, _, rest = safe(text).partition("\n")
        lines = [(SPOKEN, said), *((REST, line) for line in (rest.split("\n") if rest else ()))]
        rows = laid(lines, self._wrapped)
        if self._manner.plain or len(rows) < self._manner.lines:
            self._print(_styled(rows))
            return ""
        return self._pages(lines)

    def note(self, text: str) -> None:
        """Prints a word of the chat itself."""
        self._print([(NOTE, line) for line in self._wrapped(safe(text))])

    def asked(self, line: str) -> None:
        """Prints a question again that stands among several pasted ones."""
        sign = self._words("sign", "plain" if self._manner.plain else "usual")
        self._print([(ASKED, piece) for piece in self._wrapped(f"{sign}{safe(line)}")])

    def meanwhile(self) -> Meanwhile:
        """Says, once a second has gone by, that there is something to wait for."""
        return Meanwhile(self._words("said", "loading"), self._manner.plain)

    def _wrapped(self, text: str) -> list[str]:
        return (wrapped(text, self._manner.columns) if self._manner.wraps else text).split("\n")

    def _pages(self, lines: Sequence[Styled]) -> str:
        """Page by page; Enter goes on, Esc leaves the rest out, any other key shows it all and is kept."""
        from assistant.chat.paging import ON, pressed

        while len(rows := laid(lines, self._wrapped)) > (page := self._page(len(rows))):
            self._print(_styled(rows[:page]))
            lines = behind(lines, rows, page)
            key = pressed(self._words("said", "more", lines=len(rows) - page))
            if key is None:
                self.note(self._words("said", "left-out"))
                return ""
            if key not in ON:
                self._print(_styled(laid(lines, self._wrapped)))
                return key
        self._print(_styled(rows))
        return ""

    def _page(self, rows: int) -> int:
        """Rows of a page, so that what is said below it has room in the terminal as wide as it is now."""
        below = len(self._words("said", "more", lines=rows)) // max(1, self._manner.columns) + 1
        return max(1, self._manner.lines - below)

    def _print(self, lines: Sequence[Styled]) -> None:
        text = "\n".join(line for _, line in lines)
        if self._manner.plain:
            print(text, flush=True)
            return
        from prompt_toolkit import print_formatted_text
        from prompt_toolkit.formatted_text import FormattedText
        from prompt_toolkit.output.color_depth import ColorDepth

        from assistant.chat.prompt import STYLE

        styled = [(self._style(name), f"{line}\n") for name, line in lines]
        print_formatted_text(FormattedText(styled), style=STYLE, end="", color_depth=ColorDepth.DEPTH_1_BIT)

    def _style(self, name: str) -> str:
        return name if self._manner.dims or name == SPOKEN else ""


def _styled(rows: Sequence[Row]) -> list[Styled]:
    return [(row.style, row.text) for row in rows]
