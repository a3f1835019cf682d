"""A specification → SVG, by vl-convert; nothing is fetched, nothing is opened."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.charts.layer import Layer, specification
from reportgen.charts.plate import Plate
from reportgen.charts.tidy import tidy


def draw(plate: Plate, layers: Sequence[Layer], kind: str, alt: str) -> str:
    """The layers that have something to draw, as one tidy SVG element."""
    import vl_convert

    margins = {"left": plate.left, "right": plate.right, "top": plate.top, "bottom": plate.bottom}
    drawn = [one for one in layers if one["data"]["values"]]
    made = specification(drawn, plate.width, plate.height, margins)
    svg: str = vl_convert.vegalite_to_svg(made, allowed_base_urls=[])
    return tidy(svg, kind, alt)
