"""What is looked for in one page of each kind: going by keys, reading without scripts, loading on a slow phone."""

from __future__ import annotations

import io
from collections.abc import Iterator
from typing import TYPE_CHECKING
from urllib.parse import quote

from reportgen.browser.fault import Check, Fault, Measured
from reportgen.browser.looks import IDLE, PHONE, WALK, script
from reportgen.browser.opened import HEIGHT, LARGEST_WAIT, Tab
from reportgen.browser.standing import Standing
from reportgen.browser.watch import Watch
from reportgen.browser.weight import as_sent

if TYPE_CHECKING:
    from playwright.sync_api import Browser

SLOW = {"offline": False, "latency": 400, "downloadThroughput": 50_000, "uploadThroughput": 50_000}  # 400 kbit/s
SLOWER = 4  # times as slow as this machine's processor
MOST = {"campaign": 150_000}  # bytes of all that a page loads, compressed
SHIFT = Check("things move", "a reader loses the line or presses the wrong thing", "keep room for what comes late")
LOAD = Check("too much loaded", "it costs a reader on a phone money and time", "load it only when it is asked for")


def walked(tab: Tab, address: str) -> Iterator[Fault]:
    """Go through a page by pressing Tab, to its end."""
    tab.show()
    tab.page.goto(f"{tab.root}/{quote(address)}", wait_until="load")
    wanted = tab.run("walk")
    for _ in range(wanted + 2):
        tab.page.keyboard.press("Tab")
    for says in tab.run("walked"):
        yield Fault(address, 0, WALK.sort, says)


def without_scripts(browser: Browser, root: str, address: str) -> Iterator[Fault]:
    """Open a page in a browser whose scripts are off."""
    context = browser.new_context(java_script_enabled=False, viewport={"width": PHONE, "height": HEIGHT})
    try:
        page = context.new_page()
        page.set_default_timeout(LARGEST_WAIT)
        watch = Watch(root)
        watch.follow(page)
        page.goto(f"{root}/{quote(address)}", wait_until="load")
        for says in page.evaluate(script(IDLE.script)):
            yield Fault(address, 0, IDLE.check.sort, says)
        for check, says in watch.taken():
            yield Fault(address, 0, check.sort, f"without scripts: {says}")
    finally:
        context.close()


def measured(browser: Browser, root: str, site: Standing, kind: str, address: str) -> tuple[Measured, list[Fault]]:
    """Load a page as a phone does on a slow line, with nothing kept from before, go through it, and print it."""
    context = browser.new_context(
        viewport={"width": PHONE, "height": HEIGHT}, device_scale_factor=2, is_mobile=True, has_touch=True
    )
    try:
        page = context.new_page()
        page.set_default_timeout(4 * LARGEST_WAIT)
        watch = Watch(root)
        watch.follow(page)
        slow = context.new_cdp_session(page)
        slow.send("Network.enable")
        slow.send("Network.emulateNetworkConditions", SLOW)
        slow.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
        page.goto(f"{root}/{quote(address)}", wait_until="load")
        seen = page.evaluate(script("painted"))
        came = [name for name in watch.files() if name in site.files]
        slow.send("Emulation.setCPUThrottlingRate", {"rate": 1})
        sheets = _sheets(page.pdf(format="A4", prefer_css_page_size=True))
    finally:
        context.close()
    loaded = sum(as_sent(name, site.bytes(name)) for name in came)
    told = Measured(kind, address, seen["painted"] / 1000, seen["shift"], loaded, len(came), sheets)
    return told, [*_too_much(told, seen["what"])]


def _too_much(told: Measured, moved: list[str]) -> Iterator[Fault]:
    if told.shift:
        yield Fault(told.page, 0, SHIFT.sort, f"while it loads on a slow phone: {', '.join(moved) or 'something'}")
    most = MOST.get(told.kind)
    if most is not None and told.bytes_loaded > most:
        yield Fault(told.page, 0, LOAD.sort, f"{told.bytes_loaded} bytes with all it loads; {most} is the most")


def _sheets(pdf: bytes) -> int:
    from pypdf import PdfReader

    return len(PdfReader(io.BytesIO(pdf)).pages)
