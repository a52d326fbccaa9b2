"""An HTML page read back as its parts: what a tag holds, in which order."""

from __future__ import annotations

from dataclasses import dataclass, field
from html.parser import HTMLParser

EMPTY = {"meta", "col", "br", "circle", "path"}
Attributes = dict[str, str]


@dataclass
class Part:
    """A tag with its attributes, its own text and the parts in it."""

    tag: str
    attributes: Attributes
    inside: list[Part | str] = field(default_factory=list)

    @property
    def text(self) -> str:
        """All text in it, single spaces."""
        said = " ".join(x if isinstance(x, str) else x.text for x in self.inside)
        return " ".join(said.replace("\u00a0", " ").split())

    def all(self, tag: str, name: str | None = None) -> list[Part]:
        """Every part with this tag, and with this class where one is named."""
        parts = [x for x in self.inside if isinstance(x, Part)]
        own = [p for p in parts if p.tag == tag and (name is None or name in p.classes)]
        return [*own, *(found for p in parts for found in p.all(tag, name))]

    @property
    def classes(self) -> list[str]:
        """The names of its classes."""
        return self.attributes.get("class", "").split()


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.open = [Part("page", {})]
        self.unclosed: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        part = Part(tag, {name: value or "" for name, value in attrs})
        self.open[-1].inside.append(part)
        if tag not in EMPTY:
            self.open.append(part)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.open[-1].inside.append(Part(tag, {name: value or "" for name, value in attrs}))

    def handle_endtag(self, tag: str) -> None:
        if self.open[-1].tag == tag:
            self.open.pop()
        else:
            self.unclosed.append(f"</{tag}> in <{self.open[-1].tag}>")

    def handle_data(self, data: str) -> None:
        self.open[-1].inside.append(data)


def read(html: str) -> Part:
    """The page; every tag must be closed where it was opened."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    assert reader.unclosed == []
    assert len(reader.open) == 1, reader.open[-1].tag
    return reader.open[0]


def sheet(html: str, name: str) -> Part:
    """The article of this class."""
    (found,) = read(html).all("article", name)
    return found
