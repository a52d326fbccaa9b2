"""Whether the sheets can be read: contrast, size of type, structure for screen readers."""

from __future__ import annotations

import re
from itertools import pairwise

from assistant.handout.settings import settings
from assistant.handout.words import folder
from tests.handout.reading import Part, read, sheet

CSS = (folder() / "sheets.css").read_text("utf-8")
ENOUGH = 7.0  # WCAG 2.2, success criterion 1.4.6, for text of any size
LINES = 3.0  # WCAG 2.2, success criterion 1.4.11, for what is drawn
LEAST_TABLE, BODY = 9.0, 12.0


def luminance(colour: str) -> float:
    """Relative luminance as WCAG 2.2 defines it, of `#rrggbb` in sRGB."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """The contrast ratio of WCAG 2.2, from 1 to 21."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def colours(properties: str) -> set[str]:
    """Every colour the style sheet gives to these properties."""
    found = re.findall(rf"(?<![\w-])(?:{properties}):[^;}}]*?(#[0-9a-f]{{6}})", CSS)
    assert found
    return set(found)


def test_the_formula_on_known_values() -> None:
    assert round(contrast("#000000", "#ffffff"), 2) == 21.0
    assert round(contrast("#777777", "#ffffff"), 2) == 4.48
    assert round(contrast("#595959", "#ffffff"), 2) == 7.0


def test_text_stands_out_on_the_paper() -> None:
    (paper,) = colours("background")
    for colour in colours("color|fill"):
        assert contrast(colour, paper) >= ENOUGH


def test_lines_stand_out_on_the_paper() -> None:
    (paper,) = colours("background")
    for colour in colours("border(?:-[a-z]+)?|stroke"):
        assert contrast(colour, paper) >= LINES


def test_every_colour_is_written_as_this_test_reads_it_and_is_grey() -> None:
    hexes = re.findall(r"#[0-9a-fA-F]+", CSS)
    assert all(len(h) == 7 and h == h.lower() and h[1:3] == h[3:5] == h[5:7] for h in hexes)
    assert not re.search(
        r"rgb|hsl|oklch|color-mix|opacity|(?<![\w-])(?:gr[ae]y|red|blue|silver)(?![\w-])", CSS
    )


def test_type_is_never_too_small() -> None:
    assert all(s.table >= LEAST_TABLE and s.body >= LEAST_TABLE for s in settings())
    assert all(float(size) >= LEAST_TABLE for size in re.findall(r"(\d+(?:\.\d+)?)pt[ /;]", _sizes()))


def _sizes() -> str:
    return " ".join(re.findall(r"font(?:-size)?:[^;}]*;", CSS))


def test_the_demo_is_set_large(page: str) -> None:
    style = sheet(page, "guest").attributes["style"]
    assert float(re.search(r"--body: ([\d.]+)pt", style)[1]) >= BODY  # type: ignore[index]
    assert float(re.search(r"--table: ([\d.]+)pt", style)[1]) >= 11.0  # type: ignore[index]


def test_headings_do_not_skip_a_level(page: str) -> None:
    levels = [int(p.tag[1]) for p in _flat(read(page)) if re.fullmatch(r"h[1-6]", p.tag)]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_language_title_and_landmarks(page: str) -> None:
    whole = read(page)
    assert whole.all("html")[0].attributes["lang"] == "en"
    assert whole.all("title")[0].text
    assert len(whole.all("main")) == 1
    names = [article.attributes["aria-labelledby"] for article in whole.all("article")]
    ids = {p.attributes["id"] for p in _flat(whole) if "id" in p.attributes}
    assert set(names) <= ids


def test_ids_are_unique(page: str) -> None:
    ids = [p.attributes["id"] for p in _flat(read(page)) if "id" in p.attributes]
    assert len(ids) == len(set(ids))


def test_tables_have_captions_and_heads(page: str) -> None:
    tables = read(page).all("table")
    assert len(tables) >= 6
    for table in tables:
        assert table.all("caption")[0].text
        heads = table.all("thead")[0].all("th")
        assert heads
        assert all(head.attributes["scope"] == "col" and head.text for head in heads)
        for row in (row for body in table.all("tbody") for row in body.all("tr")):
            assert row.all("th")[0].attributes["scope"] in ("row", "rowgroup")


def _flat(part: Part) -> list[Part]:
    """Every part in the order of the page."""
    return [p for x in part.inside if isinstance(x, Part) for p in (x, *_flat(x))]
