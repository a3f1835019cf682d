"""Bytes of a text table → text. Which encoding they are in is known or told, never guessed.

UTF-8 is the rule. UTF-16 is known by its byte order mark (Unicode 15, 23.8), or by the zero that every letter, digit
and separator of a table has for its second byte. Old code pages can't be told apart: a source says `encoding:`.
"""

from __future__ import annotations

import codecs
import re
from dataclasses import replace

from reportgen.campaign.encodings import ENCODINGS
from reportgen.finding import Finding, Place, Refused, refuse
from reportgen.sources import as_text

_BOMS = {codecs.BOM_UTF16_LE: "utf-16-le", codecs.BOM_UTF16_BE: "utf-16-be"}
_PLAIN_ROW = re.compile(rb"(?:(?<=\n)|(?<=\n\0))[\t\x20-\x7e]*[,;\t][\t\x20-\x7e]*[0-9][\t\x20-\x7e]*\r?\n")


def decoded(data: bytes, file: str, encoding: str = "") -> tuple[str, str]:
    """The text, and the name by which Python decodes it. `encoding` is what a source says, a key of `ENCODINGS`.

    Raises `Refused`, with the line: bytes that aren't of the encoding, two encodings in one file, a declared
    encoding that the bytes contradict.
    """
    found = _utf_16(data)
    if encoding:
        _must_not_contradict(data, file, encoding, found)
    codec = found or ENCODINGS.get(encoding, "utf-8-sig")
    if codec == "utf-8-sig":
        return _utf_8(data, file), codec
    if codec.startswith("utf-16"):
        return _wide(data, file, "utf-16" if data[:2] in _BOMS else codec)
    return _old(data, file, encoding, codec), codec


def _utf_16(data: bytes) -> str:
    """Which UTF-16 it is for sure, or ""."""
    if data[:2] in _BOMS and data[:4] != codecs.BOM_UTF32_LE:
        return _BOMS[data[:2]]
    head = data[:4096]
    zeros = head[1::2].count(0), head[0::2].count(0)
    enough = len(head) // 4
    if enough and zeros[0] > enough and not zeros[1]:
        return "utf-16-le"
    return "utf-16-be" if enough and zeros[1] > enough and not zeros[0] else ""


def _utf_8(data: bytes, file: str) -> str:
    try:
        return as_text(data, file)
    except Refused as refused:
        if mixed := _two_encodings(data, file):
            raise mixed from None
        raise Refused(_with_remedy(f, data) for f in refused.findings) from None


def _wide(data: bytes, file: str, codec: str) -> tuple[str, str]:
    plain = _PLAIN_ROW.search(data)
    if plain:
        line = data[: plain.start()].decode(codec, "ignore").count("\n") + 1
        raise _mixed(file, line, "UTF-16", "an encoding of one byte a letter")
    try:
        return data.decode(codec), codec
    except UnicodeDecodeError as wrong:
        line = data[: wrong.start].decode(codec, "ignore").count("\n") + 1
        raise refuse(
            "not-utf-16",
            Place(file, line),
            "The file is saved as UTF-16, and here it isn't: half a character is left over.",
            "It is cut short, or something in another encoding was added to it.",
            "Save it again as “CSV UTF-8”.",
        ) from None


def _old(data: bytes, file: str, encoding: str, codec: str) -> str:
    if mixed := _two_encodings(data, file):
        raise mixed
    try:
        return data.decode(codec)
    except UnicodeDecodeError as wrong:
        raise refuse(
            "not-in-code-page",
            Place(file, data[: wrong.start].count(b"\n") + 1),
            f"The byte 0x{data[wrong.start : wrong.start + 1].hex().upper()} stands for nothing in {encoding}.",
            "The file is in another encoding; letters with accents, ° and ± would come out wrong.",
            "Correct `encoding:`, or save the table again as “CSV UTF-8” and take `encoding:` out.",
        ) from None


def _must_not_contradict(data: bytes, file: str, encoding: str, found: str) -> None:
    says = ""
    if found and not encoding.startswith("utf-16"):
        says = "UTF-16"
    elif not found and encoding.startswith("utf-16"):
        says = "not UTF-16"
    elif not found and encoding != "utf-8" and not data.isascii() and _is_utf_8(data):
        says = "UTF-8"
    if says:
        raise refuse(
            "wrong-encoding",
            Place(file),
            f"`encoding:` says {encoding}, and the file is {says}.",
            "Letters with accents, ° and ± would come out wrong.",
            "Take `encoding:` out: UTF-8 and UTF-16 are known by themselves.",
        )


def _is_utf_8(data: bytes) -> bool:
    try:
        data.decode("utf-8")
    except UnicodeDecodeError:
        return False
    return True


def _two_encodings(data: bytes, file: str) -> Refused | None:
    """Lines in UTF-8 beside lines that aren't: which line is the first of the other sort. None where there is one."""
    first: tuple[int, bool] | None = None
    for number, line in enumerate(data.split(b"\n"), 1):
        if line.isascii():
            continue
        unicode = _is_utf_8(line)
        first = first or (number, unicode)
        if unicode != first[1]:
            here, there = ("UTF-8", "an older encoding") if unicode else ("an older encoding", "UTF-8")
            return _mixed(file, number, f"{there} (line {first[0]})", here)
    return None


def _mixed(file: str, line: int, begins: str, here: str) -> Refused:
    return refuse(
        "two-encodings",
        Place(file, line),
        f"There are two encodings in this file: it begins in {begins}, and this line is in {here}.",
        "Letters with accents, ° and ± would come out wrong in one of them.",
        "It was put together from two files: save each as “CSV UTF-8”, then join them.",
    )


def _with_remedy(finding: Finding, data: bytes) -> Finding:
    """Adds what the first strange byte would be in Windows-1252, the usual other encoding; never acted upon."""
    strange = data.decode("utf-8", "replace").find("\ufffd")
    if data[:4] in (codecs.BOM_UTF32_LE, codecs.BOM_UTF32_BE) or strange < 0:
        return finding
    byte = data[len(data.decode("utf-8", "replace")[:strange].encode()) :][:1]
    guess = f"In Windows-1252 that byte would be “{byte.decode('cp1252', 'replace')}”, but that is a guess."
    do = f"{finding.do} If you know its encoding, write it beside `file:`, such as `encoding: windows-1252`."
    return replace(finding, why=f"{guess} {finding.why}", do=do)
