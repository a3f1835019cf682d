"""Photographs for the tests, drawn here: each as a camera would give it, telling where and with what it was taken.

Tags are numbered as in Exif 2.3 (CIPA DC-008-2012): tables 4, 7, 8 and 12.
"""

from __future__ import annotations

import io
import zlib

from PIL import Image, ImageDraw

MAKE, MODEL, ORIENTATION, ARTIST, GPS, USER_COMMENT, EXIF = 0x010F, 0x0110, 0x0112, 0x013B, 0x8825, 0x9286, 0x8769
SECRETS = (
    b"Invented Optics",
    b"Model Nine",
    b"A. Person",
    b"secret remark",
    b"http://ns.adobe.com/xap",
    b"secret city",
)


def photograph(
    width: int = 64,
    height: int = 48,
    *,
    kind: str = "JPEG",
    held: int = 1,
    words: str = "217.1 g",
    colour: str = "#3c3e3c",
) -> bytes:
    """A picture of a display. `held` is the orientation (Exif 2.3, tag 274): 6 is a camera turned a quarter left."""
    picture = Image.new("RGB", (width, height), colour)
    draw = ImageDraw.Draw(picture)
    draw.rectangle((width * 0.15, height * 0.3, width * 0.85, height * 0.7), fill="#aac896")
    draw.text((width * 0.22, height * 0.38), words, fill="#141e14", font_size=max(6, height // 5))
    camera = Image.Exif()
    camera[MAKE], camera[MODEL], camera[ARTIST], camera[ORIENTATION] = (
        "Invented Optics",
        "Model Nine",
        "A. Person",
        held,
    )
    camera.get_ifd(EXIF)[USER_COMMENT] = b"ASCII\0\0\0secret remark"
    place = camera.get_ifd(GPS)
    place[1], place[2], place[3], place[4] = "N", (51.0, 28.0, 38.0), "W", (0.0, 0.0, 5.0)
    xmp = b'<x:xmpmeta xmlns:x="adobe:ns:meta/" about="http://ns.adobe.com/xap/1.0/">secret city</x:xmpmeta>'
    out = io.BytesIO()
    if kind == "JPEG":
        picture.save(out, kind, exif=camera, xmp=xmp, comment=b"secret remark", quality=90)
    elif kind == "PNG":
        from PIL.PngImagePlugin import PngInfo

        texts = PngInfo()
        texts.add_text("Comment", "secret remark")
        texts.add_itxt("XML:com.adobe.xmp", xmp.decode())
        picture.save(out, kind, exif=camera, pnginfo=texts)
    else:
        picture.save(out, kind, exif=camera, xmp=xmp)
    return out.getvalue()


def bomb(width: int = 60_000, height: int = 60_000) -> bytes:
    """A PNG of a few hundred bytes that says it is thousands of millions of pixels (PNG, ISO/IEC 15948, 11.2.2)."""

    def chunk(name: bytes, data: bytes) -> bytes:
        return len(data).to_bytes(4, "big") + name + data + zlib.crc32(name + data).to_bytes(4, "big")

    head = width.to_bytes(4, "big") + height.to_bytes(4, "big") + bytes((1, 0, 0, 0, 0))
    body = zlib.compress(bytes(100))
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", body) + chunk(b"IEND", b"")


def moving() -> bytes:
    """A GIF of two pictures."""
    out = io.BytesIO()
    Image.new("RGB", (8, 8), "red").save(out, "GIF", save_all=True, append_images=[Image.new("RGB", (8, 8), "blue")])
    return out.getvalue()
