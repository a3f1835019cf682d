"""One page open in the browser, looked at in several widths and schemes without being loaded again."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Literal
from urllib.parse import quote

from reportgen.browser.fault import Fault
from reportgen.browser.looks import BARRIERS, COMMONEST, LOOKS, OF_SCHEMES, PAPER, PHONE, Look, axe, script
from reportgen.browser.watch import ERROR, Watch

if TYPE_CHECKING:
    from playwright.sync_api import Error, Page

HEIGHT = 844  # CSS pixels: a phone's
A4 = 210 / 25.4 * 96  # CSS pixels across (ISO 216; CSS Values 4, 6.2)
LARGEST_WAIT = 15_000  # ms for one page


@dataclass
class Tab:
    """The one tab that goes from page to page of the site served at `root`, as it is shown at present."""

    page: Page
    watch: Watch
    root: str
    medium: tuple[str, str] = ("", "")
    width: int = 0

    def run(self, name: str, given: Any = None) -> Any:
        """What a script of `scripts/` gives, told `given`."""
        return self.page.evaluate(script(name), given)

    def show(self, scheme: str = COMMONEST[0], width: int = PHONE, *, printed: bool = False) -> None:
        """Another width, scheme or medium, for the page that is open and those after it."""
        medium: Literal["print", "screen"] = "print" if printed else "screen"
        colours: Literal["dark", "light"] = "dark" if scheme == "dark" else "light"
        if self.medium != (medium, colours):
            self.page.emulate_media(media=medium, color_scheme=colours, reduced_motion="reduce")
            self.medium = (medium, colours)
        if self.width != width:
            self.page.set_viewport_size({"width": width, "height": HEIGHT})
            self.width = width


def look(tab: Tab, address: str, variants: tuple[tuple[str, int], ...]) -> Iterator[Fault]:
    """Open a page and look for everything once, and in every one of `variants` for what depends on scheme and width."""
    from playwright.sync_api import Error

    try:
        tab.show()
        tab.page.goto(f"{tab.root}/{quote(address)}", wait_until="load")
        tab.page.evaluate(axe())
        found = [*_every_width(tab), *_variants(tab, variants), *_on_paper(tab)]
    except Error as error:
        yield unchecked(address, error)
        tab.watch.taken()
        return
    for check, says in tab.watch.taken():
        yield Fault(address, 0, check.sort, says)
    for one, where, says in found:
        yield Fault(address, 0, one.check.sort, f"{where}: {says}")


def unchecked(address: str, error: Error) -> Fault:
    """That the browser gave up on a page: it never finished loading, or left for another while it was looked at."""
    return Fault(address, 0, ERROR.sort, f"the page can't be checked: {str(error).splitlines()[0]}")


Seen = tuple[Look, str, str]  # which look, where it looked, what it saw


def _every_width(tab: Tab) -> Iterator[Seen]:
    for width in dict.fromkeys(width for one in LOOKS for width in one.widths):
        tab.show(width=width)
        for one in LOOKS:
            if width in one.widths:
                yield from _seen(tab, one, f"at {width} px")


def _variants(tab: Tab, variants: tuple[tuple[str, int], ...]) -> Iterator[Seen]:
    widths: set[int] = set()
    for scheme, width in variants:
        tab.show(scheme, width)
        yield from _seen(tab, BARRIERS, f"{scheme}, at {width} px", OF_SCHEMES if width in widths else ())
        widths.add(width)


def _on_paper(tab: Tab) -> Iterator[Seen]:
    tab.show(printed=True)
    tab.show(width=int(A4 - tab.run("margins")), printed=True)
    yield from _seen(tab, PAPER, "on A4")


def _seen(tab: Tab, one: Look, where: str, given: Any = None) -> Iterator[Seen]:
    for says in tab.run(one.script, given):
        yield one, where, says
