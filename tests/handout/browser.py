"""A headless Chromium that prints and measures; tests that need one are skipped where there is none."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
import tempfile
from collections.abc import Sequence
from html import unescape
from pathlib import Path

import pytest

NAMES = ("chromium", "chromium-browser", "google-chrome")
PROGRAM = next(filter(None, map(shutil.which, NAMES)), None)
QUIET = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
PAPERS = {"A4": (210.0, 297.0), "letter": (215.9, 279.4)}
PATIENCE = 90.0
MEASURE = """<pre id="told"></pre><script>
const mm = 96 / 25.4, told = [...document.querySelectorAll(".guest")].map(sheet => {
  sheet.style.minHeight = "0";
  const parts = [...sheet.querySelectorAll(":not(svg):not(svg *)")].filter(e => e.clientWidth);
  const wide = parts.filter(e => e.scrollWidth > e.clientWidth + 1);
  const names = wide.map(e => e.tagName + ": " + e.textContent.slice(0, 40));
  return {height: sheet.getBoundingClientRect().height / mm, wide: names};
});
document.getElementById("told").textContent = JSON.stringify(told);
</script>"""

ALIKE = ("Liberation Sans", "Arial", "Arimo", "Helvetica", "Nimbus Sans")


def wanting() -> str | None:
    """What is missing to print with, in words."""
    if PROGRAM is None:
        return "no Chromium is installed to print with"
    listing = shutil.which("fc-list")
    families = (
        subprocess.run([listing, ":", "family"], capture_output=True, encoding="utf-8") if listing else None
    )
    if families and not any(name in families.stdout for name in ALIKE):
        return "no typeface of the widths the sheets are reckoned with is installed"
    return None


needs_browser = pytest.mark.skipif(wanting() is not None, reason=str(wanting()))


def run(*options: str) -> str:
    """What the browser writes to standard output, with a profile of its own."""
    assert PROGRAM is not None
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
        command = [PROGRAM, *QUIET, f"--user-data-dir={profile}", *options]
        done = subprocess.run(command, capture_output=True, encoding="utf-8", timeout=PATIENCE)
    assert done.returncode == 0, done.stderr
    return done.stdout


def on_paper(html: str, paper: str) -> str:
    """The page as a print dialog with this paper would lay it out.

    The browser's command line knows one paper only: the paper is set by the style sheet instead, and the
    query for a tall paper, which then asks about the wrong one, is answered here.
    """
    wide, high = PAPERS[paper]
    tall = re.search(r"@media print and \(max-aspect-ratio: (\d+)/(\d+)\)", html)
    assert tall
    answer = "print" if wide / high < int(tall[1]) / int(tall[2]) else "not all"
    return html.replace("size: auto", f"size: {paper}").replace(tall[0], f"@media {answer}")


def pdf(html: str, paper: str, folder: Path) -> Path:
    """The page printed on a paper."""
    page, out = folder / f"{paper}.html", folder / f"{paper}.pdf"
    page.write_text(on_paper(html, paper), "utf-8")
    run("--no-pdf-header-footer", f"--print-to-pdf={out}", page.as_uri())
    return out


def measured(pages: Sequence[str], folder: Path) -> list[dict[str, object]]:
    """Of each page's guests' sheet the height it takes in mm and the parts whose text is too wide."""
    sheets = [re.search(r"<article class=\"guest\".*?</article>", page, re.DOTALL) for page in pages]
    head = re.sub(r"<meta http-equiv[^>]*>", "", pages[0].split("<body>")[0])
    together = folder / "sheets.html"
    together.write_text(
        head + "<body>" + "".join(s[0] for s in sheets if s) + MEASURE + "</body></html>", "utf-8"
    )
    found = re.search(r'<pre id="told">(.*?)</pre>', run("--dump-dom", together.as_uri()), re.DOTALL)
    assert found
    told: list[dict[str, object]] = json.loads(unescape(found[1]))
    assert len(told) == len(pages)
    return told
