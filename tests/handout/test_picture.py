"""The picture of the guests' page that the README shows is of the page as it is made now."""

from __future__ import annotations

import shutil
from collections import Counter
from pathlib import Path

import pytest

from tests.handout.browser import needs_browser
from tests.handout.picture import PICTURE, VERSION, drawn, words
from tests.handout.reading import Part, sheet

UNSEEN = ("title", "desc")  # told to those who cannot see the figure
NUMBERS = Counter(f"{n}." for n in range(1, 6))  # put before the things to try by the browser
AT_MOST = 60_000


def _seen(part: Part) -> str:
    """All text in a part that is drawn."""
    return " ".join(x if isinstance(x, str) else _seen(x) for x in part.inside if _drawn(x))


def _drawn(part: Part | str) -> bool:
    return isinstance(part, str) or part.tag not in UNSEEN


def test_it_says_what_the_page_says(page: str) -> None:
    picture = PICTURE.read_text("utf-8")
    guest = _seen(sheet(VERSION.sub("", page), "guest"))
    assert Counter(words(picture).split()) == Counter(guest.split()) + NUMBERS


def test_it_is_small_and_whole() -> None:
    picture = PICTURE.read_text("utf-8")
    assert len(picture) < AT_MOST
    assert picture.startswith("<svg ")
    assert picture.endswith("</svg>\n")
    assert "<script" not in picture


@needs_browser
@pytest.mark.skipif(shutil.which("pdftohtml") is None, reason="no poppler is installed")
def test_it_can_be_drawn_anew(page: str, tmp_path: Path) -> None:
    assert words(drawn(page, tmp_path)) == words(PICTURE.read_text("utf-8"))
