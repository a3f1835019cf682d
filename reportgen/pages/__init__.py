"""A page kind a file: its view and the function that builds it.

In: campaign, evaluation, figures. Out: `Page`. Never touches the disk.
"""

from reportgen.pages.table import PAGES, build_pages
from reportgen.pages.told import Page, Told

__all__ = ["PAGES", "Page", "Told", "build_pages"]
