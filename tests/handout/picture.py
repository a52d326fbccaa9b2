"""The guests' page of the demo evening as a picture: `python -m tests.handout.picture` writes it anew.

Chromium prints the page, poppler tells where each line of text and each rule stands; letters stay letters,
so that the picture is small and what it says can be read and held against the page.
"""

from __future__ import annotations

import json
import re
import subprocess
import tempfile
from collections.abc import Iterator
from html import escape, unescape
from pathlib import Path

from assistant.evening.plan import plan
from assistant.evening.read import read_evening
from assistant.handout.page import sheets
from assistant.session import Session
from tests.handout.browser import pdf
from tests.handout.made import NOW

EVENINGS = Path(__file__).parents[2] / "corpus" / "evenings"
PICTURE = EVENINGS / "quay-house-guest.svg"
ZOOM = 3.0  # the largest poppler knows; it tells places in whole steps, three to a point
BASELINE = 0.905  # of the size of letters: how far below their top they stand
VERSION = re.compile(r'<p class="version">.*?</p>')  # changes with every version and day
STEP = re.compile(r"-?\d+\.\d+")
TEXT = re.compile(
    r'<text top="(-?\d+)" left="(-?\d+)" width="(\d+)" height="\d+" font="(\d+)">(.*?)</text>', re.DOTALL
)
FONT = re.compile(r'<fontspec id="(\d+)" size="(\d+)" family="([^"]*)"')


def drawn(html: str, folder: Path) -> str:
    """The first page of the sheets as SVG, printed on A4."""
    printed = pdf(VERSION.sub("", html), "A4", folder)
    page = ("-f", "1", "-l", "1")
    lines = _told("pdftocairo", "-svg", *page, str(printed), "-")
    texts = _told("pdftohtml", "-xml", "-zoom", str(ZOOM), *page, "-i", "-stdout", str(printed))
    box = re.search(r'viewBox="([^"]*)"', lines)
    assert box
    head = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{box[1]}" role="img">'
    title = "<title>The guests’ page of the demo evening</title>"
    paper = '<rect width="100%" height="100%" fill="#ffffff"/>'
    return "\n".join([head, title, paper, *_paths(lines), *_letters(texts), "</svg>", ""])


def words(picture: str) -> str:
    """All it says, single spaces."""
    return " ".join(unescape(" ".join(re.findall(r"<text[^>]*>(.*?)</text>", picture))).split())


def _told(*command: str) -> str:
    return subprocess.run(command, capture_output=True, encoding="utf-8", check=True).stdout


def _paths(svg: str) -> Iterator[str]:
    """Rules, boxes and the marks of the figure: what is drawn and no letter."""
    for path in re.findall(r"<path[^>]*/>", svg.split("</defs>")[-1]):
        yield STEP.sub(lambda found: f"{float(found[0]):.2f}".rstrip("0").rstrip("."), path)


def _letters(xml: str) -> Iterator[str]:
    fonts = {name: (int(size) / ZOOM, family) for name, size, family in FONT.findall(xml)}
    for top, left, width, font, text in TEXT.findall(xml):
        size, family = fonts[font]
        said = escape(_kept(unescape(re.sub(r"<[^>]*>", "", text))))
        kind = "serif" if "Serif" in family else "Arial, sans-serif"
        bold = ' font-weight="bold"' if "<b>" in text else ""
        at = f'x="{int(left) / ZOOM:g}" y="{int(top) / ZOOM + BASELINE * size:.2f}"'
        long = f'textLength="{int(width) / ZOOM:g}"'
        yield f'<text {at} {long} font-size="{size:g}" font-family="{kind}"{bold}>{said}</text>'


def _kept(text: str) -> str:
    """A space that a line begins with is part of its width; SVG would drop it."""
    return f"\u00a0{text[1:]}" if text.startswith(" ") else text


if __name__ == "__main__":
    session = Session()
    record = json.loads(json.dumps(plan(read_evening(EVENINGS / "quay-house.toml", session, NOW), session)))
    with tempfile.TemporaryDirectory() as place:
        PICTURE.write_text(drawn(sheets(record, NOW), Path(place)), "utf-8")
    print(f"{PICTURE}: {PICTURE.stat().st_size} bytes")
