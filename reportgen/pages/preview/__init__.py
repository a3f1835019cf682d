"""The picture that stands for a page where its link is shared: the question, the answer in words, leading results.

In: what every page is told. Out: a drawing (SVG, by the theme's template `preview.svg`); `build/` makes a PNG of it.
"""

from reportgen.pages.preview.of_campaign import preview_of
from reportgen.pages.preview.sheet import Sheet, sheet_of

__all__ = ["Sheet", "preview_of", "sheet_of"]
