"""Whether bytes are a picture that can be shown, and how large it is when held upright."""

from __future__ import annotations

import io
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from PIL.Image import Image

LARGEST = 120_000_000  # pixels: above what cameras in common use give (108 million), some 360 MB once unfolded
READ = ("JPEG", "PNG", "WEBP", "GIF", "TIFF", "BMP")
MOVES = ("GIF", "PNG", "WEBP")  # what may hold a series of pictures; a TIFF's further pages are as bad
KEPT_EXACT = ("PNG", "GIF", "BMP")  # drawings and pictures of screens: edges that a photograph's format would smear
_SEEN_THROUGH = frozenset({"RGBA", "LA", "PA", "RGBa", "La"})

_BEGIN = (
    b"\xff\xd8\xff",
    b"\x89PNG",
    b"GIF8",
    b"II*\0",
    b"MM\0*",
    b"II+\0",
    b"MM\0+",
    b"\0\0\0\x0cjP  ",
    b"\0\0\0\x0cJXL ",
)
_OF_HEIF = (b"heic", b"heix", b"mif1", b"msf1", b"hevc", b"avif", b"avis")  # ISO/IEC 23008-12: HEIC and AVIF


class NotAPicture(Exception):
    """Bytes that can't be shown: `rule` names the fault, `says` what it is, `do` what to do about it."""

    def __init__(self, rule: str, says: str, do: str) -> None:
        self.rule, self.says, self.do = rule, says, do
        super().__init__(says)


@dataclass(frozen=True)
class Look:
    """A picture held upright: width and height in pixels. `exact`: it is to be kept without loss."""

    width: int
    height: int
    exact: bool


def look(data: bytes) -> Look:
    """What a picture is; every part of it is read. Raises `NotAPicture`."""
    with opened(data) as picture:
        kind, seen_through = picture.format or "", sees_through(picture)
        width, height = upright(picture)
        if kind in ("JPEG", "MPO"):  # MPO: a JPEG with a second picture behind the first
            picture.draft("RGB", (max(1, picture.width // 8), max(1, picture.height // 8)))  # reads all, unfolds little
        picture.load()
    return Look(width, height, kind in KEPT_EXACT or seen_through)


def begins_like_one(data: bytes) -> bool:
    """Whether the first 16 bytes of a file are those of a picture that could carry a camera's remarks, whatever its
    name says: JPEG, PNG, GIF, TIFF and what cameras make of it, WebP, HEIC, AVIF, JPEG 2000, JPEG XL."""
    if data[:4] == b"RIFF":
        return data[8:12] == b"WEBP"
    return data.startswith(_BEGIN) or (data[4:8] == b"ftyp" and data[8:12] in _OF_HEIF)


@contextmanager
def opened(data: bytes) -> Iterator[Image]:
    """The picture, its pixels not yet read; whatever goes wrong in reading it raises `NotAPicture`.

    Pillow may warn of its size, which is checked here, and of camera data, which is thrown away.
    """
    from PIL import Image, UnidentifiedImageError

    try:
        with Image.open(io.BytesIO(data), formats=READ) as picture:
            _check(picture)
            yield picture
    except NotAPicture:
        raise
    except Image.DecompressionBombError:
        raise _too_large() from None
    except UnidentifiedImageError:
        raise _unknown(data) from None
    except Exception as broken:  # a damaged file makes a decoder fail in any way: OSError, SyntaxError, struct.error
        if isinstance(broken, MemoryError):
            raise
        says = "the picture is damaged: it can't be read to its end"
        raise NotAPicture("damaged-picture", says, "Copy it again from the camera, or save it again.") from broken


def upright(picture: Image) -> tuple[int, int]:
    """Width and height once the camera's note on how it was held is followed (Exif 2.3, tag 0x0112, orientation)."""
    turned = picture.getexif().get(0x0112) in (5, 6, 7, 8) and picture.format != "TIFF"  # Pillow turns those
    return (picture.height, picture.width) if turned else (picture.width, picture.height)


def sees_through(picture: Image) -> bool:
    """Whether something behind it would show."""
    return picture.mode in _SEEN_THROUGH or "transparency" in picture.info


def _check(picture: Image) -> None:
    if picture.width * picture.height > LARGEST:
        raise _too_large()
    frames = getattr(picture, "n_frames", 1)
    if frames > 1 and picture.format in MOVES:
        raise NotAPicture("moving-picture", "the picture moves", "Save the one moment that matters as JPEG or PNG.")
    if frames > 1 and picture.format == "TIFF":
        raise NotAPicture("several-pictures", "the file holds several pictures", "Save the one that is meant.")


def _too_large() -> NotAPicture:
    says = "the picture has more than 120 million pixels"
    return NotAPicture("picture-too-large", says, "Save it smaller: pages show no more than 1600 pixels across.")


def _unknown(data: bytes) -> NotAPicture:
    if data[4:8] == b"ftyp" and data[8:12] in _OF_HEIF:
        says = "this is a HEIC or AVIF picture, which not every browser shows"
        return NotAPicture("not-a-picture", says, "Save it as JPEG.")
    if not data:
        return NotAPicture("not-a-picture", "the file is empty", "Copy the picture again.")
    says = "this is no picture: neither JPEG, PNG, WebP, GIF, TIFF nor BMP"
    return NotAPicture("not-a-picture", says, "Name the picture itself, or save it as JPEG or PNG.")
