"""How the cells of an ODS sheet are shown: their number formats, and which sheets are hidden.

OpenDocument 1.3, part 3: number styles 16.29, their default per column and row 19.619, 19.620.
"""

from __future__ import annotations

import io
from collections.abc import Mapping
from dataclasses import dataclass, field
from xml.etree.ElementTree import Element, iterparse

from reportgen.intake.sheets.times import Shows

STYLE = "{urn:oasis:names:tc:opendocument:xmlns:style:1.0}"
NUMBER = "{urn:oasis:names:tc:opendocument:xmlns:datastyle:1.0}"
TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"


@dataclass(frozen=True)
class Shown:
    """One number style: fixed decimals (None where it fixes none), the text behind the digits, what a time begins
    with."""

    decimals: int | None = None
    behind: str = ""
    time: Shows = "hours"


@dataclass
class Styles:
    """What the styles of a document say so far. `of` maps a cell style to its number style and its parent."""

    shown: dict[str, Shown] = field(default_factory=dict)
    of: dict[str, tuple[str, str]] = field(default_factory=dict)
    hidden: set[str] = field(default_factory=set)

    def learn(self, element: Element) -> None:
        """Takes in a finished element, where it is a style."""
        tag, name = element.tag, element.get(STYLE + "name", "")
        if tag == STYLE + "style":
            self.of[name] = element.get(STYLE + "data-style-name", ""), element.get(STYLE + "parent-style-name", "")
            if any(p.get(TABLE + "display") == "false" for p in element.iter(STYLE + "table-properties")):
                self.hidden.add(name)
        elif tag in _NUMBERS:
            self.shown[name] = _number(element)
        elif tag == NUMBER + "time-style":
            whole = element.get(NUMBER + "truncate-on-overflow") == "false"
            hours = element.find(NUMBER + "hours") is not None
            self.shown[name] = Shown(time="hours" if hours else "all minutes" if whole else "minutes")

    def style(self, name: str) -> Shown:
        """How a cell of that style is shown; a style without a format has its parent's."""
        for _ in range(20):  # a style may not be its own ancestor, but a damaged file may say so
            data, parent = self.of.get(name, ("", ""))
            if data or not parent:
                return self.shown.get(data, Shown())
            name = parent
        return Shown()


_NUMBERS = frozenset(NUMBER + kind for kind in ("number-style", "percentage-style", "currency-style"))


def _number(element: Element) -> Shown:
    digits = element.find(NUMBER + "number")
    if digits is None:
        return Shown()
    given, factor = digits.get(NUMBER + "decimal-places"), digits.get(NUMBER + "display-factor", "1")
    children = list(element)
    behind = "".join(t.text or "" for t in children[children.index(digits) :] if t.tag == NUMBER + "text").strip()
    fixed = given is not None and given.isdecimal() and factor == "1"
    return Shown(int(given) if given and fixed else None, behind.strip("()+- "))


def learn_all(xml: io.BytesIO | None, styles: Styles) -> None:
    """Every style of a part, such as styles.xml."""
    for _, element in iterparse(xml) if xml is not None else ():
        styles.learn(element)


def attribute(attributes: Mapping[str, str], name: str, most: int) -> int:
    """A whole number of 1 or more from an attribute such as number-rows-repeated, never above `most`."""
    text = attributes.get(name, "1")
    return min(max(int(text), 1), most) if text.isdecimal() and len(text) < 12 else 1
