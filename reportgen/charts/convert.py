"""A specification → SVG, by vl-convert; nothing is fetched, nothing is opened."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.charts.explored import explored
from reportgen.charts.figure import Drawing
from reportgen.charts.layer import Layer, specification
from reportgen.charts.plate import Plate
from reportgen.charts.tidy import tidy
from reportgen.charts.zoomed import Closer


def draw(plate: Plate, layers: Sequence[Layer], kind: str, alt: str, closer: Closer | None = None) -> Drawing:
    """The layers that have something to draw, as one tidy SVG element, and what exploring them needs.

    `closer` says how the chart is looked at from closer by, where it can be.
    """
    import vl_convert

    margins = {"left": plate.left, "right": plate.right, "top": plate.top, "bottom": plate.bottom}
    drawn = [one for one in layers if one["data"]["values"]]
    made = specification(drawn, plate.width, plate.height, margins)
    svg: str = vl_convert.vegalite_to_svg(made, allowed_base_urls=[])
    return Drawing(tidy(svg, kind, alt), explored(made, closer))
