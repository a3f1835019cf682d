"""A drawing with its text, set in pixels: by the same converter and face as the charts."""

from __future__ import annotations

import io


def set_in_pixels(svg: str) -> bytes:
    """The PNG of an SVG, in its own size. The same drawing gives the same bytes on one system.

    Letters that the converter's own face lacks come from a face the system has, if any.
    """
    import vl_convert
    from PIL import Image

    drawn: bytes = vl_convert.svg_to_png(svg)
    with Image.open(io.BytesIO(drawn)) as picture:
        few = picture.convert("RGB").quantize(128, dither=Image.Dither.NONE)  # flat colours and their edges
    small = io.BytesIO()
    few.save(small, "PNG")  # `optimize` takes eight times as long for a sixteenth less
    return small.getvalue()
