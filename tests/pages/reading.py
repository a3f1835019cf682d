"""A page as a reader's program sees it: elements with their attributes and text, parsed without any library of ours."""

from __future__ import annotations

from dataclasses import dataclass, field
from html.parser import HTMLParser

VOID = frozenset({"br", "hr", "img", "link", "meta", "input", "source", "wbr"})


@dataclass
class Element:
    name: str
    attrs: dict[str, str]
    parent: Element | None = None
    children: list[Element] = field(default_factory=list)
    order: list[str | Element] = field(default_factory=list)  # text and elements as they follow each other

    @property
    def text(self) -> str:
        """All text in it, spaces as a reader sees them."""
        return " ".join(self._all().split())

    def _all(self) -> str:
        return "".join(piece if isinstance(piece, str) else piece._all() for piece in self.order)

    def all(self, name: str = "", **attrs: str) -> list[Element]:
        """Every element inside, by name and attributes; `class_` asks for one of its classes."""
        found = []
        for child in self.children:
            fits = (not name or child.name == name) and all(_has(child, k, v) for k, v in attrs.items())
            found += [child] if fits else []
            found += child.all(name, **attrs)
        return found

    def one(self, name: str = "", **attrs: str) -> Element:
        """The only such element."""
        (found,) = self.all(name, **attrs)
        return found


def _has(element: Element, key: str, value: str) -> bool:
    if key == "class_":
        return value in element.attrs.get("class", "").split()
    return element.attrs.get(key.rstrip("_").replace("_", "-")) == value


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.root = Element("", {})
        self.at = self.root

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        made = Element(tag, {k: v or "" for k, v in attrs}, self.at)
        self.at.children.append(made)
        self.at.order.append(made)
        if tag not in VOID:
            self.at = made

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self.handle_endtag(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.at.name == tag, f"</{tag}> closes <{self.at.name}>"
        assert self.at.parent is not None
        self.at = self.at.parent

    def handle_data(self, data: str) -> None:
        self.at.order.append(data)


def read(html: str) -> Element:
    """The whole page; fails where an element isn't closed by its own end tag."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    assert reader.at is reader.root, f"<{reader.at.name}> is never closed"
    return reader.root
