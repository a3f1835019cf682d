"""Laboratory reports made for the purpose: PDFs of a few pages, with a line of text on each."""

from __future__ import annotations

import io
from collections.abc import Sequence


def report(*pages: str, password: str = "") -> bytes:
    """A PDF (ISO 32000-1) with one page for each line of text, A4, in a font every viewer has."""
    from pypdf import PdfWriter
    from pypdf.generic import DecodedStreamObject, DictionaryObject, NameObject

    writer = PdfWriter()
    font = DictionaryObject({
        NameObject("/Type"): NameObject("/Font"),
        NameObject("/Subtype"): NameObject("/Type1"),
        NameObject("/BaseFont"): NameObject("/Helvetica"),
    })  # fmt: skip
    for line in pages or ("",):
        page = writer.add_blank_page(595, 842)
        shown = line.replace("\\", "").replace("(", "").replace(")", "").encode("latin-1", "replace").decode("latin-1")
        stream = DecodedStreamObject()
        stream.set_data(f"BT /F1 14 Tf 72 760 Td ({shown}) Tj ET".encode("latin-1"))
        page[NameObject("/Contents")] = writer._add_object(stream)
        fonts = DictionaryObject({NameObject("/F1"): writer._add_object(font)})
        page[NameObject("/Resources")] = DictionaryObject({NameObject("/Font"): fonts})
    if password:
        writer.encrypt(password, algorithm="RC4-128")
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def lines_of(text: str) -> Sequence[str]:
    """The pages that a block shows: a line each."""
    return [line for line in text.splitlines() if line.strip()]
