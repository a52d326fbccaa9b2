"""Writes the page anew: `python -m assistant.manual`."""

from assistant import __version__
from assistant.cli import arguments
from assistant.manual.page import PAGE, page

PAGE.write_text(page(arguments(), __version__), encoding="utf-8")
