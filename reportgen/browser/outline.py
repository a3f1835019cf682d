"""What a page says of itself: language, direction, title, headings; and what stands for and reserves its pictures."""

from __future__ import annotations

from collections.abc import Iterator

from reportgen.browser.document import Document
from reportgen.browser.fault import Check, Fault
from reportgen.browser.standing import Standing

SAYS = Check(
    "page says too little",
    "voices read it in the wrong tongue, and lists of pages have no name for it",
    "state `lang`, `dir` and a title in the theme's base.html",
)
HEADINGS = Check(
    "headings",
    "readers who go from heading to heading lose their way (WCAG 1.3.1, 2.4.6)",
    "one h1 a page; below it go down one level at a time",
)
TEXTLESS = Check(
    "missing alternative",
    "who can't see the picture learns nothing of it (WCAG 1.1.1)",
    'say in its `alt`, or a drawing\'s title, what it shows; write alt="" where it only adorns',
)
UNSIZED = Check(
    "picture without a size",
    "the text jumps when the picture comes",
    "write its width and height in pixels",
)


def outline(site: Standing) -> Iterator[Fault]:
    """Faults of every page that is read; one that forwards needs no headings."""
    for address, page in site.pages.items():
        for says in _unsaid(page):
            yield Fault(address, 0, SAYS.sort, says)
        if page.forward is None:
            for line, says in _headings(page):
                yield Fault(address, line, HEADINGS.sort, says)
        for line, what in page.textless:
            yield Fault(address, line, TEXTLESS.sort, f"{what} has no text in its stead")
        for line, what in page.unsized:
            yield Fault(address, line, UNSIZED.sort, f"{what} says no width and height")


def _unsaid(page: Document) -> Iterator[str]:
    if not page.language:
        yield "says no language"
    if page.direction not in ("ltr", "rtl"):
        yield "says no direction of its text"
    if not page.title:
        yield "has no title"


def _headings(page: Document) -> Iterator[tuple[int, str]]:
    firsts = [line for line, level in page.headings if level == 1]
    if not firsts:
        yield 0, "has no heading of the first level"
    for line in firsts[1:]:
        yield line, "has a second heading of the first level"
    above = 0
    for line, level in page.headings:
        if level > above + 1:
            yield line, f"goes from {'no heading' if not above else f'level {above}'} to level {level}"
        above = level
