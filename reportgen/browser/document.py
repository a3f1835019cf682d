"""A page's file read once: what it says of itself, points to and holds, each with its line."""

from __future__ import annotations

from dataclasses import dataclass, field
from html.parser import HTMLParser

FETCHED = {
    "img": "src",
    "script": "src",
    "link": "href",
    "source": "src",
    "iframe": "src",
    "embed": "src",
    "video": "src",
}
NOT_FOLLOWED = ("canonical", "self")  # whole addresses, of the page itself
HEADINGS = ("h1", "h2", "h3", "h4", "h5", "h6")
LINKED_DATA = "application/ld+json"


@dataclass
class Document:
    """What stands in one page. Lines count from 1; a pair is (line, what)."""

    kind: str = ""
    language: str = ""
    direction: str = ""
    title: str = ""
    links: list[tuple[int, str]] = field(default_factory=list)
    anchors: set[str] = field(default_factory=set)
    repeated: list[tuple[int, str]] = field(default_factory=list)
    headings: list[tuple[int, int]] = field(default_factory=list)
    textless: list[tuple[int, str]] = field(default_factory=list)
    unsized: list[tuple[int, str]] = field(default_factory=list)
    sheets: list[str] = field(default_factory=list)
    feeds: list[str] = field(default_factory=list)
    canonical: str = ""
    forward: tuple[int, str] | None = None
    linked_data: list[tuple[int, str]] = field(default_factory=list)
    first_picture: tuple[int, int] | None = None


def read_page(html: str) -> Document:
    """What stands in a page. Never fails: what is broken in it is for a checker of HTML to say."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    reader.settle_drawing()
    return reader.document


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.document = Document()
        self.within = ""  # "title" or the linked data being read
        self.texts: list[str] = []
        self.drawing: int | None = None  # the line of a drawing whose first child tells whether it has a title

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        line = self.getpos()[0]
        self._drawing(tag, given, line)
        self._anchors(tag, given, line)
        self._links(tag, given, line)
        page = self.document
        if tag == "html":
            page.kind = given.get("data-kind", "")
            page.language, page.direction = given.get("lang", ""), given.get("dir", "")
        elif tag in HEADINGS:
            page.headings.append((line, int(tag[1])))
        elif tag == "img":
            self._image(given, line)
        elif tag == "meta" and given.get("http-equiv", "").lower() == "refresh":
            page.forward = line, given.get("content", "").partition("url=")[2].strip("'\" ")
        elif tag == "title" and not page.title:
            self.within, self.texts = "title", []
        elif tag == "script" and given.get("type") == LINKED_DATA:
            self.within, self.texts = "script", []

    def handle_data(self, data: str) -> None:
        if self.within:
            self.texts.append(data)

    def handle_endtag(self, tag: str) -> None:
        if tag == self.within:
            text = "".join(self.texts)
            if tag == "title":
                self.document.title = text.strip()
            else:
                self.document.linked_data.append((self.getpos()[0], text))
            self.within = ""
        self.settle_drawing()

    def settle_drawing(self) -> None:
        """A drawing whose title would have come by now has none."""
        if self.drawing is not None:
            self.document.textless.append((self.drawing, "a drawing"))
            self.drawing = None

    def _drawing(self, tag: str, given: dict[str, str], line: int) -> None:
        if self.drawing is not None and tag == "title":
            self.drawing = None
        self.settle_drawing()
        if tag == "svg":
            if given.get("role") == "img" and not (given.get("aria-label") or given.get("aria-labelledby")):
                self.drawing = line
            if given.get("aria-hidden") != "true":
                self._picture()
        elif tag in ("img", "picture"):
            self._picture()

    def _picture(self) -> None:
        if self.document.first_picture is None:
            self.document.first_picture = self.getpos()

    def _anchors(self, tag: str, given: dict[str, str], line: int) -> None:
        if id_ := given.get("id"):
            if id_ in self.document.anchors:
                self.document.repeated.append((line, id_))
            self.document.anchors.add(id_)
        if tag == "a" and given.get("name"):
            self.document.anchors.add(given["name"])

    def _links(self, tag: str, given: dict[str, str], line: int) -> None:
        relation = given.get("rel", "").lower().split()
        sizes = [one.split()[0] for one in given.get("srcset", "").split(",") if one.strip()]
        self.document.links += [(line, size) for size in sizes]
        target = given.get("href") if tag in ("a", "area") else given.get(FETCHED.get(tag, ""))
        if tag == "link" and "canonical" in relation:
            self.document.canonical = given.get("href", "")
        if target is not None and not (tag == "link" and set(relation) & set(NOT_FOLLOWED)):
            self.document.links.append((line, target))
        on_screen = given.get("media", "all") in ("all", "screen", "")
        if tag == "link" and "stylesheet" in relation and on_screen and self.document.first_picture is None:
            self.document.sheets.append(given.get("href", ""))
        if tag == "link" and given.get("type") == "application/atom+xml":
            self.document.feeds.append(given.get("href", ""))

    def _image(self, given: dict[str, str], line: int) -> None:
        named = f"the image {given.get('src', '')}"
        if "alt" not in given:
            self.document.textless.append((line, named))
        if not (given.get("width", "").isdigit() and given.get("height", "").isdigit()):
            self.document.unsized.append((line, named))
