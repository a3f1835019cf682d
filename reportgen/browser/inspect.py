"""A site opened page by page in headless Chromium, and what is wrong with it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from reportgen.browser.checks import CHECKS, OF_FILES
from reportgen.browser.fault import Fault, Inspected, Measured
from reportgen.browser.looks import COMMONEST, CROSSED, PHONE, VARIANTS
from reportgen.browser.once_a_kind import measured, walked, without_scripts
from reportgen.browser.opened import HEIGHT, LARGEST_WAIT, Tab, look, unchecked
from reportgen.browser.standing import read_site
from reportgen.browser.watch import Watch

__all__ = ["CHECKS", "Fault", "Inspected", "Measured", "inspect_site"]

Tell = Callable[[str, int, int], None]


def inspect_site(
    site: Path,
    tell: Tell = lambda doing, done, of: None,
    *,
    all_variants: bool = False,
    samples_only: bool = False,
    only_look: bool = False,
) -> Inspected:
    """Check every page under `site`: on disk, opened once, and one page of each kind further.

    Every page is opened in the commonest variant, one of each kind, or every one with `all_variants`, in each of
    `VARIANTS`. With `samples_only` no others than that one of each kind are opened; with `only_look` none is gone
    through by keys, without scripts and over a slow line, and each scheme is seen in one width. Files are checked all
    the same. `tell` hears of each thing before it is done, with how many of how many are done. Pages that forward are
    read, not opened: a browser would be elsewhere at once. Raises `NoBrowserError` where no browser starts.
    """
    from playwright.sync_api import Error

    from reportgen.browser.chromium import started
    from reportgen.browser.served import served

    standing = read_site(site)
    faults = [fault for check in OF_FILES for fault in check(standing)]
    kinds = standing.kinds()
    samples = {pages[0]: kind for kind, pages in kinds.items()}
    opened = sorted(samples if samples_only else (page for pages in kinds.values() for page in pages))
    often = CROSSED if only_look and not all_variants else VARIANTS
    told: list[Measured] = []
    with served(site, packed=True) as root, started() as browser:
        page = browser.new_page(viewport={"width": PHONE, "height": HEIGHT})
        page.set_default_timeout(LARGEST_WAIT)
        tab = Tab(page, Watch(root), root)
        tab.watch.follow(page)
        further = {} if only_look else samples
        of = len(opened) + len(further)
        for done, address in enumerate(opened):
            tell(address, done, of)
            faults += look(tab, address, often if all_variants or address in samples else (COMMONEST,))
        for done, (address, kind) in enumerate(further.items(), len(opened)):
            tell(f"{address}, by keys, without scripts, on a slow phone", done, of)
            try:
                faults += [*walked(tab, address), *without_scripts(browser, root, address)]
                measures, more = measured(browser, root, standing, kind, address)
            except Error as error:
                faults.append(unchecked(address, error))
                continue
            told.append(measures)
            faults += more
    return Inspected(len(opened), tuple(sorted(set(faults))), tuple(told))
