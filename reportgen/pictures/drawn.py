"""Pictures made anew from pixels alone: no place, no camera, no name, no small copy of what was cut away.

A picture's file can carry where it was taken (Exif 2.3, GPS tags), by which camera, with whose name (IPTC, XMP) and a
thumbnail of what it showed before it was cropped. None of this is taken out: pixels are copied into an empty picture,
and only that one is saved.
"""

from __future__ import annotations

import io
from typing import TYPE_CHECKING

from reportgen.pictures.look import KEPT_EXACT, opened, sees_through
from reportgen.pictures.sizes import Size

if TYPE_CHECKING:
    from PIL.Image import Image

WEBP_QUALITY, JPEG_QUALITY = 80, 82  # of 100: digits of a display stay sharp; from looking, no source
NARROW = 2.0  # reduce by whole factors down to this times the size, then finely


def draw(data: bytes, sizes: tuple[Size, ...]) -> dict[str, bytes]:
    """Each size twice, by name: `960.webp` and `960.jpg` (or `960.png`, where it is kept without loss).

    WebP is the smaller; what can't show it takes the other. Raises `NotAPicture`.
    """
    made = {}
    with opened(data) as picture:
        exact = picture.format in KEPT_EXACT or sees_through(picture)
        whole = _pixels(picture, sizes[-1])
        for size in sizes:
            sized = _sized(whole, size)
            if exact:
                made[f"{size.width}.webp"] = _saved(sized, "WEBP", lossless=True, quality=80, method=4, exact=False)
                made[f"{size.width}.png"] = _saved(sized, "PNG", optimize=True)
            else:
                made[f"{size.width}.webp"] = _saved(sized, "WEBP", quality=WEBP_QUALITY, method=4)
                made[f"{size.width}.jpg"] = _saved(sized, "JPEG", quality=JPEG_QUALITY, optimize=True, progressive=True)
    return made


def cleaned(data: bytes) -> bytes:
    """The picture in its own size and its own format, of pixels alone. Raises `NotAPicture`."""
    with opened(data) as picture:
        kind = "JPEG" if picture.format == "MPO" else picture.format or "PNG"
        whole = _pixels(picture, None)
        if kind == "JPEG":
            return _saved(whole.convert("RGB"), kind, quality=95, subsampling=0)
        if kind == "WEBP":
            return _saved(whole, kind, quality=95, method=4)
        return _saved(whole, kind)


def _pixels(picture: Image, largest: Size | None) -> Image:
    """Pixels alone, upright, in sRGB. What is far larger than `largest` is unfolded smaller, where its format can."""
    from PIL import ImageOps

    if largest is not None and picture.format in ("JPEG", "MPO"):
        side = int(2 * max(largest.width, largest.height))
        picture.draft(None, (side, side))
    elif largest is not None and picture.mode in ("L", "RGB", "RGBA"):
        smaller = int(max(picture.size) / (NARROW * max(largest.width, largest.height)))
        if smaller > 1:
            picture = picture.reduce(smaller)  # before it is unfolded a second time in other colours
    profile = picture.info.get("icc_profile")
    see_through = sees_through(picture)
    held = ImageOps.exif_transpose(_eight_bits(picture))
    return _bare(_in_srgb(held, profile, "RGBA" if see_through else "RGB"))


def _eight_bits(picture: Image) -> Image:
    """Sixteen bits a pixel, which no page needs, become the upper eight."""
    if not picture.mode.startswith("I"):
        return picture
    bits = picture.convert("I").point(lambda value: value / 256).convert("L")
    bits.info.update(picture.info)
    return bits


def _in_srgb(picture: Image, profile: object, mode: str) -> Image:
    """Colours as a page means them (IEC 61966-2-1). A profile that can't be followed is as if it weren't there."""
    from PIL import ImageCms

    if not isinstance(profile, bytes) or not profile:
        return picture.convert(mode)
    try:
        of_camera = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        if picture.mode in ("P", "PA", "LA"):
            picture = picture.convert(mode)
        out = "RGBA" if picture.mode == "RGBA" else "RGB"
        turned = ImageCms.profileToProfile(picture, of_camera, ImageCms.createProfile("sRGB"), outputMode=out)
    except (ImageCms.PyCMSError, OSError, ValueError):
        return picture.convert(mode)
    return (turned or picture).convert(mode)


def _bare(picture: Image) -> Image:
    from PIL import Image

    bare = Image.new(picture.mode, picture.size)
    bare.paste(picture)
    return bare


def _sized(picture: Image, size: Size) -> Image:
    from PIL.Image import Resampling

    wanted = (size.width, size.height)
    return picture if picture.size == wanted else picture.resize(wanted, Resampling.LANCZOS, reducing_gap=NARROW)


def _saved(picture: Image, kind: str, **how: int | bool) -> bytes:
    out = io.BytesIO()
    picture.save(out, kind, **how)
    return out.getvalue()
