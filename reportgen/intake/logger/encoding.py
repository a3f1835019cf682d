"""In which encoding a logger wrote its file, and its size and digest, from one walk through its bytes.

UTF-8 and UTF-16 say what they are. Anything else is taken for Windows-1252, as loggers of Western makers write it, and
said so; where it can't be, or where two encodings meet in one file, it is refused.
"""

from __future__ import annotations

import codecs
import hashlib
import re
from collections.abc import Iterable
from dataclasses import dataclass

from reportgen.finding import Finding, Place, Refused, refuse

_OF_UTF_8 = re.compile(rb"[\xc2-\xdf][\x80-\xbf]|[\xe0-\xef][\x80-\xbf]{2}|[\xf0-\xf4][\x80-\xbf]{3}")
_NOT_UTF_8 = re.compile(rb"[\x80-\xff]")
_MARKS = (codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)
_UNUSED = re.compile(rb"[\x81\x8d\x8f\x90\x9d]")  # no character in Windows-1252


@dataclass(frozen=True)
class Bytes:
    """`encoding` as Python calls it; `lines` as its line feeds count them; `notes` what was taken for granted."""

    encoding: str
    digest: str
    size: int
    lines: int
    notes: tuple[Finding, ...] = ()
    mixed: bool = False  # lines end in several ways


def look_through(blocks: Iterable[bytes], file: str, declared: str = "") -> Bytes:
    """One walk through a file's bytes; `declared` is the encoding the author gave. Raises `Refused` where none fits."""
    found = _Walk(file)
    for block in blocks:
        found.take(block)
    return found.told(declared)


class _Walk:
    """What is known after each block. A block may end within a character, so the last line of it waits for the next."""

    def __init__(self, file: str) -> None:
        self.file, self.sha, self.size, self.feeds = file, hashlib.sha256(), 0, 0
        self.wide, self.marked = "", False
        self.pairs = self.returns = 0
        self.utf_8_at = self.other_at = self.unused_at = self.nul_at = 0
        self.rest = b""

    def take(self, block: bytes) -> None:
        if not self.size:
            self.wide = _wide(block)
            self.marked = block[:2] in _MARKS
        self.sha.update(block)
        self.size += len(block)
        if self.wide:
            self.feeds += block.count(b"\n\0" if self.wide != "utf-16-be" else b"\0\n")
            return
        data = self.rest + block
        end = data.rfind(b"\n") + 1
        self.rest = data[end:]
        self._lines(data[:end])

    def _lines(self, data: bytes) -> None:
        if not self.nul_at and (nul := data.find(b"\0")) >= 0:
            self.nul_at = self._line(data, nul)
        if not self.unused_at and (unused := _UNUSED.search(data)):
            self.unused_at = self._line(data, unused.start())
        if not data.isascii():
            text = data.removeprefix(codecs.BOM_UTF8)
            good = _OF_UTF_8.search(text)
            bad = _NOT_UTF_8.search(_OF_UTF_8.sub(lambda m: b" " * len(m[0]), text))
            if good and not self.utf_8_at:
                self.utf_8_at = self._line(text, good.start())
            if bad and not self.other_at:
                self.other_at = self._line(text, bad.start())
        self.feeds += data.count(b"\n")
        self.pairs += data.count(b"\r\n")
        self.returns += data.count(b"\r")

    @property
    def mixed(self) -> bool:
        """Whether lines end in more than one of line feed, carriage return, and both."""
        return sum((self.feeds > self.pairs, self.returns > self.pairs, self.pairs > 0)) > 1

    def _line(self, data: bytes, at: int) -> int:
        return self.feeds + data.count(b"\n", 0, at) + 1

    def told(self, declared: str) -> Bytes:
        open_end = bool(self.rest)
        self._lines(self.rest)
        if declared and not self.wide:
            return Bytes(declared, self.sha.hexdigest(), self.size, self.feeds + open_end)
        if self.nul_at:
            raise refuse(
                "nul-character",
                Place(self.file, self.nul_at),
                "There is a NUL character in this file.",
                "It is damaged, or no text (loggers also save in forms of their own).",
                "Export it as CSV.",
            )
        if self.utf_8_at and self.other_at:
            raise Refused(
                [
                    Finding(
                        "error",
                        "two-encodings",
                        Place(self.file, max(self.utf_8_at, self.other_at)),
                        f"Two encodings meet in this file: line {self.utf_8_at} is UTF-8, line {self.other_at} isn't.",
                        "Letters such as ° and µ would come out wrong, and with them units.",
                        "Two files were perhaps joined: export them again, in one encoding.",
                    )
                ]
            )
        if self.other_at and self.unused_at:
            raise refuse(
                "not-utf-8",
                Place(self.file, self.other_at),
                "This file is neither UTF-8 nor Windows-1252.",
                "Letters such as ° and µ would come out wrong, and with them units.",
                "Export it as “CSV UTF-8”.",
            )
        encoding = "utf-16" if self.marked else self.wide or "utf-8-sig"
        notes: tuple[Finding, ...] = ()
        if self.other_at:
            encoding, notes = "cp1252", (self._taken_for_windows(),)
        return Bytes(encoding, self.sha.hexdigest(), self.size, self.feeds + open_end, notes, self.mixed)

    def _taken_for_windows(self) -> Finding:
        return Finding(
            "note",
            "encoding-assumed",
            Place(self.file, self.other_at),
            "This file is not UTF-8; it was read as Windows-1252.",
            "Numbers read the same in both; a unit or heading with ° or µ may not.",
            "Look whether headings and units are right, or export it as UTF-8.",
        )


def _wide(first: bytes) -> str:
    """UTF-16, by its byte order mark or by the NUL in every other byte of plain letters; else ""."""
    if first[:2] in _MARKS:
        return "utf-16-le" if first[:2] == codecs.BOM_UTF16_LE else "utf-16-be"
    head = first[:64]
    if len(head) >= 4 and not any(head[1::2]):
        return "utf-16-le"
    return "utf-16-be" if len(head) >= 4 and not any(head[::2]) else ""
