"""A terminal of its own for a program: what it shows, and keys to press."""

from __future__ import annotations

import fcntl
import os
import pty
import select
import signal
import struct
import subprocess
import sys
import termios
import time
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from types import TracebackType

import pyte

CTRL_C, CTRL_D, ENTER = "\x03", "\x04", "\r"
CURSOR_QUERY = b"\x1b[6n"
CHUNK, WAIT, PATIENCE = 65536, 0.02, 30.0
CHAT = (sys.executable, "-m", "assistant")


def _controlled() -> None:
    """Makes the terminal the one that stops and suspends this program, be the tests run in the background."""
    fcntl.ioctl(0, termios.TIOCSCTTY, 0)
    signal.signal(signal.SIGINT, signal.SIG_DFL)  # a shell has what it puts there ignore Ctrl-C


class Terminal:
    """Runs a program on a pseudo-terminal and draws what it prints on a screen."""

    def __init__(
        self,
        environment: Mapping[str, str],
        command: Sequence[str] = CHAT,
        columns: int = 80,
        lines: int = 40,
        folder: Path | None = None,
    ) -> None:
        self.screen = pyte.Screen(columns, lines)
        self.raw = b""
        self._stream = pyte.ByteStream(self.screen)
        self._master, slave = pty.openpty()
        fcntl.ioctl(slave, termios.TIOCSWINSZ, struct.pack("HHHH", lines, columns, 0, 0))
        self.started = time.perf_counter()
        self._program = subprocess.Popen(
            command,
            stdin=slave,
            stdout=slave,
            stderr=slave,
            env=dict(environment),
            cwd=folder,
            start_new_session=True,
            preexec_fn=_controlled,
            close_fds=True,
        )
        os.close(slave)

    def __enter__(self) -> Terminal:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._program.poll() is None:
            self._program.kill()
        self._program.wait()
        os.close(self._master)

    @property
    def pid(self) -> int:
        """The id of the program."""
        return self._program.pid

    @property
    def text(self) -> str:
        """The screen as text, without the blank ends of lines."""
        return "\n".join(line.rstrip() for line in self.screen.display).rstrip()

    def press(self, keys: str) -> None:
        """Types keys."""
        os.write(self._master, keys.encode())

    def paste(self, text: str) -> None:
        """Pastes text, as a terminal that tells pasted from typed."""
        self.press(f"\x1b[200~{text}\x1b[201~")

    def resize(self, columns: int, lines: int) -> None:
        """Gives the terminal another size, and tells the program."""
        self.screen.resize(lines, columns)
        fcntl.ioctl(self._master, termios.TIOCSWINSZ, struct.pack("HHHH", lines, columns, 0, 0))
        os.kill(self.pid, signal.SIGWINCH)

    def until(self, holds: Callable[[str], bool], patience: float = PATIENCE) -> float:
        """Reads until the screen holds; the seconds since the start. Fails with the screen."""
        end = time.perf_counter() + patience
        while not holds(self.text):
            if time.perf_counter() > end:
                raise AssertionError(f"waited {patience} s in vain; the screen:\n{self.text}")
            if not self._read() and self._program.poll() is not None and not holds(self.text):
                raise AssertionError(f"the program left; the screen:\n{self.text}")
        return time.perf_counter() - self.started

    def sees(self, wanted: str, patience: float = PATIENCE) -> float:
        """Reads until the screen shows this."""
        return self.until(lambda text: wanted in text, patience)

    def settles(self, seconds: float = 0.3) -> str:
        """Reads until nothing comes for a while; the screen then."""
        end = time.perf_counter() + seconds
        while time.perf_counter() < end:
            if self._read():
                end = time.perf_counter() + seconds
        return self.text

    def leaves(self, patience: float = PATIENCE) -> int:
        """Reads until the program has left; its exit code."""
        end = time.perf_counter() + patience
        while self._program.poll() is None:
            self._read()
            if time.perf_counter() > end:
                raise AssertionError(f"still running after {patience} s; the screen:\n{self.text}")
        return self._program.wait()

    def _read(self) -> bool:
        ready, _, _ = select.select([self._master], [], [], WAIT)
        if not ready:
            return False
        try:
            found = os.read(self._master, CHUNK)
        except OSError:  # the program closed its end
            return False
        self.raw += found
        self._draw(found)
        return bool(found)

    def _draw(self, found: bytes) -> None:
        """Draws, and tells where the cursor is wherever that is asked for."""
        drawn, *rest = found.split(CURSOR_QUERY)
        self._stream.feed(drawn)
        for piece in rest:
            cursor = self.screen.cursor
            self.press(f"\x1b[{cursor.y + 1};{cursor.x + 1}R")
            self._stream.feed(piece)
