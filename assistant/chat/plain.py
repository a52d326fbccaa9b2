"""Lines as the terminal itself edits them: nothing is drawn twice, for screen readers and dumb terminals."""

from __future__ import annotations

import sys

from assistant.chat.words import ChatWords


class PlainLines:
    """Its own keys erase, stop, end and suspend; pasted lines come one after another."""

    def __init__(self, words: ChatWords) -> None:
        self._sign = words("sign", "plain")

    def next(self, draft: str) -> str:
        """The next line. A draft cannot be put on it: it is shown, and Enter alone takes it.

        Raises EOFError or KeyboardInterrupt.
        """
        sys.stdout.write(f"{draft}\n{self._sign}" if draft else self._sign)
        sys.stdout.flush()
        try:
            line = sys.stdin.readline()
        except KeyboardInterrupt:
            sys.stdout.write("\n")  # the system's echo of Ctrl-C leaves the line unfinished
            raise
        if not line:
            sys.stdout.write("\n")
            raise EOFError
        return line.rstrip("\r\n") or draft
