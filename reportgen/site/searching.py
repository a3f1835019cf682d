"""What readers' browsers search in: an index of all pages, made by pagefind's program and told it page by page.

Pages are told in the order of their addresses, each with an answer waited for, so that the same pages give the same
bytes (its own command follows the order of a folder). Its ready-made looks are left out: ours stands in the theme.
"""

from __future__ import annotations

import base64
import json
import subprocess
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from importlib.util import find_spec
from threading import Timer
from typing import Any

from reportgen.addresses import LISTS, SEARCH
from reportgen.pages.told import Page

FOLDER = "search"
NEEDED = ("pagefind.js", "pagefind-worker.js", "pagefind-entry.json")
# What is searched elsewhere already, and rows of raw files.
OUTSIDE = ("/files/", "/side-by-side/")
NOT_SEARCHED = (SEARCH, LISTS)
LEFT_OUT = (
    "nav", "svg", "math", "details", "form", "thead", ".unseen", ".letter", ".raised", ".terms", "script", "template",
)  # fmt: skip
CONFIG = {"root_selector": "main", "exclude_selectors": LEFT_OUT, "keep_index_url": True}
UNREADABLE = "the program that makes the index answered what can’t be read"
LONGEST_WAIT = 600  # seconds for all of it; a site of ten thousand pages takes a tenth of that


class NoAnswerError(Exception):
    """The program that makes the index ended, or answered what it never should."""


def available() -> bool:
    """Whether the program that makes the index is installed; there is one for the usual systems."""
    return find_spec("pagefind_bin") is not None


def searched(pages: Sequence[Page]) -> tuple[Page, ...]:
    """The pages that are searched, in the order of their addresses."""
    return tuple(
        sorted(
            (p for p in pages if p.address not in NOT_SEARCHED and not any(part in p.address for part in OUTSIDE)),
            key=lambda p: p.address,
        )
    )


def index_of(pages: Sequence[Page]) -> Mapping[str, bytes]:
    """Address → bytes of what a browser takes to search these pages. Raises `NoAnswerError` and OSError."""
    try:
        with _service() as ask:
            index = ask(type="NewIndex", config=CONFIG)["index_id"]
            for page in pages:
                ask(type="AddFile", index_id=index, url=page.address, file_path=None, file_contents=page.html)
            files = ask(type="GetFiles", index_id=index)["files"]
        made = {file["path"]: base64.b64decode(file["content"]) for file in files}
    except (ValueError, KeyError, TypeError):
        raise NoAnswerError(UNREADABLE) from None
    return {f"{FOLDER}/{path}": made[path] for path in sorted(made) if "/" in path or _is_needed(path)}


def _is_needed(path: str) -> bool:
    return path in NEEDED or path.endswith((".pagefind", ".pf_meta"))


@contextmanager
def _service() -> Iterator[Any]:
    """Its service: messages are JSON in base64, each ended by a comma, in both directions."""
    from pagefind_bin import get_executable

    with subprocess.Popen(
        [str(get_executable()), "--service"], stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL
    ) as running:
        said = 0

        def ask(**payload: object) -> dict[str, Any]:
            nonlocal said
            said += 1
            assert running.stdin
            assert running.stdout
            message = json.dumps({"message_id": said, "payload": payload})
            running.stdin.write(base64.b64encode(message.encode()) + b",")
            running.stdin.flush()
            answer = bytearray()
            while not answer.endswith(b","):
                piece = running.stdout.read1(1 << 16)  # type: ignore[attr-defined]  # a pipe is buffered here
                if not piece:
                    raise NoAnswerError("the program that makes the index ended before it answered")
                answer += piece
            return _payload(bytes(answer[:-1]))

        stuck = Timer(LONGEST_WAIT, running.kill)
        stuck.start()
        try:
            yield ask
        finally:
            stuck.cancel()
            running.kill()


def _payload(answer: bytes) -> dict[str, Any]:
    """Raises `NoAnswerError` for an error that the program tells, ValueError, KeyError or TypeError for nonsense."""
    told = json.loads(base64.b64decode(answer))["payload"]
    if told["type"] == "Error":
        raise NoAnswerError(told["message"])
    return dict(told)
