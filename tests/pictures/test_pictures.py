"""Pictures as pages get them: sized, upright, in sRGB, of pixels alone.

What a file may carry besides is told by the standards: segments of a JPEG by ITU-T T.81, B.1.1.3 and Exif 2.3, 4.7;
chunks of a PNG by ISO/IEC 15948, 11; chunks of a WebP by RFC 9649, 2.
"""

from __future__ import annotations

import io
from collections.abc import Iterator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image, ImageCms

from reportgen.pictures import NotAPicture, Size, cleaned, draw, look, sizes_of
from tests.photographs import GPS, SECRETS, bomb, moving, photograph


def opened(data: bytes) -> Image.Image:
    return Image.open(io.BytesIO(data))


def segments(jpeg: bytes) -> Iterator[int]:
    """The markers of a JPEG before its scan (T.81, table B.1): 0xE0 is JFIF's, 0xE1 Exif's and XMP's, 0xFE a comment."""
    at = 2
    while jpeg[at + 1] != 0xDA:
        yield jpeg[at + 1]
        at += 2 + int.from_bytes(jpeg[at + 2 : at + 4], "big")


def chunks(data: bytes) -> Iterator[bytes]:
    """The names of the chunks of a PNG or WebP."""
    png = data.startswith(b"\x89PNG")
    at = 8 if png else 12
    while at < len(data):
        length = int.from_bytes(data[at : at + 4], "big") if png else int.from_bytes(data[at + 4 : at + 8], "little")
        yield data[at + 4 : at + 8] if png else data[at : at + 4]
        at += 12 + length if png else 8 + length + length % 2


def carries(data: bytes) -> list[bytes]:
    return [secret for secret in (*SECRETS, b"Exif\0\0", b"http://ns.adobe.com") if secret in data]


def test_the_test_s_own_photographs_carry_place_camera_and_name() -> None:
    for kind in ("JPEG", "PNG", "WEBP"):
        data = photograph(kind=kind)
        assert opened(data).getexif().get_ifd(GPS)[2] == (51.0, 28.0, 38.0)
        assert {b"Invented Optics", b"A. Person", b"secret city"} <= set(carries(data))
    assert {0xE1, 0xFE} <= set(segments(photograph()))
    assert {b"eXIf", b"iTXt", b"tEXt"} <= set(chunks(photograph(kind="PNG")))


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP", "TIFF"])
def test_no_picture_on_a_page_tells_where_by_whom_or_with_what_it_was_taken(kind: str) -> None:
    data = photograph(700, 500, kind=kind)
    seen = look(data)
    made = draw(data, sizes_of(seen.width, seen.height))
    assert len(made) == 4
    for name, picture in {**made, "cleaned": cleaned(data)}.items():
        assert carries(picture) == [], name
        if kind != "TIFF" or name != "cleaned":  # a TIFF's own fields (width, height …) are numbered like Exif's
            assert dict(opened(picture).getexif()) == {}
        assert GPS not in opened(picture).getexif()
        assert not {"exif", "xmp", "comment", "icc_profile", "XML:com.adobe.xmp"} & set(opened(picture).info)
        if picture.startswith(b"\xff\xd8"):
            assert set(segments(picture)) <= {0xE0, 0xDB, 0xC0, 0xC2, 0xC4}  # JFIF, tables, frame: nothing else
        elif picture.startswith(b"\x89PNG"):
            assert set(chunks(picture)) <= {b"IHDR", b"PLTE", b"IDAT", b"IEND"}
        elif picture.startswith(b"RIFF"):
            assert set(chunks(picture)) <= {b"VP8 ", b"VP8L"}


def test_the_same_bytes_give_the_same_pictures() -> None:
    data = photograph(1000, 700)
    assert draw(data, sizes_of(1000, 700)) == draw(data, sizes_of(1000, 700))


@pytest.mark.parametrize(
    ("held", "corner"),
    # Exif 2.3, 4.6.4 A, orientation: which side of what was seen row 0 and column 0 are: 1 top left … 5 left top …
    list(enumerate(["top left", "top right", "bottom right", "bottom left"] * 2, 1)),
)
@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP", "TIFF"])
def test_a_picture_stands_as_the_camera_says_it_was_held(held: int, corner: str, kind: str) -> None:
    stored = Image.new("RGB", (60, 40), "white")
    stored.paste("black", (0, 0, 20, 20))
    camera = Image.Exif()
    camera[0x0112] = held
    out = io.BytesIO()
    stored.save(out, kind, exif=camera)
    seen = look(out.getvalue())
    assert (seen.width, seen.height) == ((40, 60) if held > 4 else (60, 40))
    (name,) = [n for n in draw(out.getvalue(), sizes_of(seen.width, seen.height)) if not n.endswith("webp")]
    shown = opened(draw(out.getvalue(), sizes_of(seen.width, seen.height))[name]).convert("L")
    assert shown.size == (seen.width, seen.height)
    x = shown.width - 4 if "right" in corner else 3
    y = shown.height - 4 if "bottom" in corner else 3
    dark = {
        spot: shown.getpixel(spot)
        for spot in ((3, 3), (shown.width - 4, 3), (3, shown.height - 4), (shown.width - 4, shown.height - 4))
    }
    assert min(dark, key=lambda spot: int(dark[spot])) == (x, y)  # type: ignore[arg-type]


def test_sizes_are_those_of_pages_and_never_larger_than_the_camera_s() -> None:
    assert sizes_of(4000, 3000) == (Size(480, 360), Size(960, 720), Size(1600, 1200))
    assert sizes_of(1200, 900)[-1] == Size(1200, 900)
    assert sizes_of(500, 400) == (Size(500, 400),)
    assert sizes_of(3, 9000)[-1] == Size(3, 9000)
    assert sizes_of(9000, 3)[0] == Size(480, 1)


@given(st.integers(1, 20_000), st.integers(1, 20_000))
def test_every_size_keeps_the_shape(width: int, height: int) -> None:
    sizes = sizes_of(width, height)
    assert all(s.width <= width and s.height <= max(1, height) for s in sizes)
    assert [s.width for s in sizes] == sorted({s.width for s in sizes})
    assert all(s.height <= 16_383 for s in sizes)  # RFC 9649, 2.7.1.1, and what libwebp writes
    assert all(abs(s.height - height * s.width / width) <= 1 or s == Size(1, 16_383) for s in sizes)


@pytest.mark.parametrize(("width", "height"), [(400, 17_000), (1, 20_000), (40_000, 2)])
def test_a_long_strip_is_shown_as_large_as_a_picture_can_be(width: int, height: int) -> None:
    """Whole pages of a screen come as such strips."""
    out = io.BytesIO()
    Image.new("RGB", (width, height)).save(out, "PNG")
    sizes = sizes_of(width, height)
    made = draw(out.getvalue(), sizes)
    assert {opened(picture).size for picture in made.values()} == {(s.width, s.height) for s in sizes}


def test_a_large_drawing_takes_little_more_memory_than_its_pixels() -> None:
    out = io.BytesIO()
    Image.new("L", (8000, 6000), 200).save(out, "PNG")
    (size,) = {s for s in sizes_of(8000, 6000) if s.width == 1600}
    made = draw(out.getvalue(), (size,))
    assert all(opened(p).convert("L").getextrema() == (200, 200) for p in made.values())


def test_colours_come_as_a_page_means_them() -> None:
    # A Lab profile's L* = 50 is a mid grey; in sRGB that is 119 of 255 (CIE 15:2004, 8.2.1.1; IEC 61966-2-1, 5.2)
    grey = Image.new("LAB", (8, 8), (128, 128, 128))
    lab = ImageCms.ImageCmsProfile(ImageCms.createProfile("LAB"))
    out = io.BytesIO()
    grey.save(out, "TIFF", icc_profile=lab.tobytes())
    (jpg,) = [p for n, p in draw(out.getvalue(), (Size(8, 8),)).items() if n.endswith("jpg")]
    pixel = opened(jpg).getpixel((4, 4))
    assert isinstance(pixel, tuple)
    assert all(abs(channel - 119) <= 2 for channel in pixel)


def test_drawings_are_kept_without_loss() -> None:
    drawing = Image.effect_noise((300, 200), 90).convert("RGB")
    out = io.BytesIO()
    drawing.save(out, "PNG")
    made = draw(out.getvalue(), (Size(300, 200),))
    assert set(made) == {"300.webp", "300.png"}
    assert all(opened(p).convert("RGB").tobytes() == drawing.tobytes() for p in made.values())


@pytest.mark.parametrize(
    ("data", "rule"),
    [
        (b"", "not-a-picture"),
        (b"contender,pass\ncorvane,1\n", "not-a-picture"),
        (b"%PDF-1.7 ...", "not-a-picture"),
        (b"\0\0\0\x18ftypheic" + bytes(40), "not-a-picture"),
        (photograph(400, 300)[:-2000], "damaged-picture"),
        (photograph(400, 300, kind="PNG")[:-900], "damaged-picture"),
        (photograph(400, 300, kind="WEBP")[:-900], "damaged-picture"),
        (bomb(), "picture-too-large"),
        (bomb(12_000, 10_001), "picture-too-large"),
        (moving(), "moving-picture"),
    ],
    ids=["empty", "table", "report", "heic", "half a jpeg", "half a png", "half a webp", "bomb", "large", "moving"],
)
def test_what_can_t_be_shown_is_said(data: bytes, rule: str) -> None:
    with pytest.raises(NotAPicture) as wrong:
        look(data)
    assert wrong.value.rule == rule
    assert wrong.value.says
    assert wrong.value.do


@settings(max_examples=150)
@given(st.sampled_from(["JPEG", "PNG", "WEBP", "TIFF", "BMP"]), st.data())
def test_a_file_damaged_anywhere_is_shown_or_refused_and_never_carries_on_what_it_carried(
    kind: str, data: st.DataObject
) -> None:
    whole = bytearray(photograph(40, 30, kind=kind))
    for _ in range(data.draw(st.integers(1, 4))):
        whole[data.draw(st.integers(0, len(whole) - 1))] = data.draw(st.integers(0, 255))
    try:
        seen = look(bytes(whole))
        made = draw(bytes(whole), sizes_of(seen.width, seen.height))
    except NotAPicture:
        return
    assert all(carries(picture) == [] for picture in made.values())
