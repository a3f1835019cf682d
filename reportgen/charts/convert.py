"""A specification → SVG, by vl-convert; nothing is fetched, nothing is opened."""

from __future__ import annotations

from typing import Any

from reportgen.charts.plate import Layer, Plate, specification
from reportgen.charts.tidy import tidy


def draw(plate: Plate, layers: list[Layer], kind: str, alt: str) -> str:
    """The layers that have something to draw, as one tidy SVG element."""
    import vl_convert

    specified: dict[str, Any] = specification(plate, [one for one in layers if one.data.values])
    svg: str = vl_convert.vegalite_to_svg(specified, allowed_base_urls=[])
    return tidy(svg, kind, alt)
