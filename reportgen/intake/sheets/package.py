"""The zip file that a spreadsheet is: its parts, none larger than there is room for.

XLSX (ECMA-376, part 2) and ODS (OpenDocument 1.3, part 2) are zip files of XML parts; neither may hold a DTD.
"""

from __future__ import annotations

import io
import lzma
import zipfile
import zlib

from reportgen.finding import Place, Refused, refuse

MOST_UNPACKED = 256 * 1024 * 1024  # bytes of all XML parts together
_OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"  # compound file, [MS-CFB] 2.2
_HEAD = 4096
_BROKEN = (zipfile.BadZipFile, ValueError, OSError, NotImplementedError, EOFError)
_SPOILT = (*_BROKEN, zlib.error, lzma.LZMAError, RuntimeError)  # RuntimeError: a part under a password
_OTHER_KINDS = {
    ".xls": "the workbook format of before 2007",
    ".xlsb": "a binary workbook",
    ".numbers": "a format that only its own program reads",
    ".fods": "a spreadsheet in a single XML file",
}
OTHER_SPREADSHEETS = tuple(_OTHER_KINDS)


def open_package(data: bytes, file: str) -> zipfile.ZipFile:
    """The parts of a spreadsheet; raises `Refused` for what is none, is cut short, or would fill the memory."""
    if data[:8] == _OLE:
        raise _compound(data, file)
    try:
        package = zipfile.ZipFile(io.BytesIO(data))
        parts = package.infolist()
    except _BROKEN:
        raise _no_package(data, file) from None
    if any(part.flag_bits & 1 for part in parts):
        raise with_password(file)
    unpacked = sum(part.file_size for part in parts)
    if unpacked > MOST_UNPACKED:
        raise refuse(
            "spreadsheet-too-large",
            Place(file),
            f"Unpacked, this spreadsheet is {unpacked // 1024**2} MB; {MOST_UNPACKED // 1024**2} MB is the most.",
            "It would fill the memory; formatted empty rows are a usual cause.",
            "Copy the readings into a new spreadsheet, or save them as CSV.",
        )
    if not _as_long_as_said(package):
        raise damaged(file)
    return package


def _as_long_as_said(package: zipfile.ZipFile) -> bool:
    """Whether every part unpacks to what the list of parts says of it, told a piece at a time.

    Whoever reads a part whole takes memory for all that comes out of it, whatever size the list gave.
    """
    try:
        return package.testzip() is None
    except _SPOILT:
        return False


def part(package: zipfile.ZipFile, name: str, file: str) -> io.BytesIO | None:
    """An XML part, None where there is none. Raises `Refused` for a damaged one, or one with a DTD."""
    try:
        data = package.read(name)
    except KeyError:
        return None
    except _SPOILT:
        raise damaged(file) from None
    if b"<!DOCTYPE" in data[:_HEAD] or b"<!ENTITY" in data[:_HEAD]:
        raise damaged(file)
    return io.BytesIO(data)


def other_spreadsheet(file: str, ending: str) -> Refused:
    """A spreadsheet in a format that isn't read."""
    return refuse(
        "other-spreadsheet",
        Place(file),
        f"A file that ends in {ending} is {_OTHER_KINDS[ending]}, which can't be read.",
        "Its readings would be lost.",
        "Open it and save it as .xlsx, .ods or “CSV UTF-8”; then name that file.",
    )


def damaged(file: str) -> Refused:
    """A package whose inside isn't what it must be."""
    return refuse(
        "damaged-spreadsheet",
        Place(file),
        "This spreadsheet is damaged: its inside can't be read.",
        "What is left of it could hold fewer readings than were taken.",
        "Open it in a spreadsheet program and save it again, or go back to an earlier copy.",
    )


def with_password(file: str) -> Refused:
    """A spreadsheet that opens only with a password."""
    return refuse(
        "password",
        Place(file),
        "This spreadsheet is protected by a password.",
        "Its cells can't be read, and readers couldn't check them either.",
        "Save it without the password.",
    )


def _compound(data: bytes, file: str) -> Refused:
    """A compound file holds either an encrypted workbook ([MS-OFFCRYPTO] 2.3: a stream EncryptedPackage) or an old
    one."""
    if "EncryptedPackage".encode("utf-16-le") in data:
        return with_password(file)
    return other_spreadsheet(file, ".xls")


def _no_package(data: bytes, file: str) -> Refused:
    if data[:2] == b"PK":
        return refuse(
            "cut-short",
            Place(file),
            "This spreadsheet is cut short or damaged: its list of parts, which stands at the end, is missing.",
            "Part of its readings would be missing.",
            "Copy or download it again.",
        )
    text = data[:_HEAD].isascii() and b"\0" not in data[:_HEAD]
    return refuse(
        "no-spreadsheet",
        Place(file),
        "This file is empty." if not data else "This file is no spreadsheet, whatever its name says.",
        "It looks like plain text." if text and data else "Nothing can be read from it.",
        "If it is a CSV table, let its name end in .csv." if text and data else "Save the spreadsheet again.",
    )
