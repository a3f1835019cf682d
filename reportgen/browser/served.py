"""A folder served on this machine alone, for as long as it is needed."""

from __future__ import annotations

import gzip
import io
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler
from pathlib import Path
from threading import Thread
from typing import BinaryIO

from reportgen.browser.weight import PACKED
from reportgen.loopback import HERE, Patient


class Quiet(SimpleHTTPRequestHandler):
    """Serves files and keeps no log."""

    protocol_version = "HTTP/1.1"  # connections stay open: a page asks for several files

    def log_message(self, format: str, *args: object) -> None:
        """Says nothing."""


class Packing(Quiet):
    """Sends texts compressed, as hosts do."""

    def send_head(self) -> io.BytesIO | BinaryIO | None:
        """The head of an answer, and what is to follow it."""
        path = Path(self.translate_path(self.path))
        if not (path.name.endswith(PACKED) and path.is_file() and "gzip" in self.headers.get("Accept-Encoding", "")):
            return super().send_head()
        content = gzip.compress(path.read_bytes(), mtime=0)
        self.send_response(HTTPStatus.OK)
        self.send_header("Content-Type", self.guess_type(path))
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        return io.BytesIO(content)


@contextmanager
def served(folder: Path, *, packed: bool = False) -> Iterator[str]:
    """The address of `folder` on a free port, without a slash at its end. `packed`: texts are sent compressed."""
    answering = Packing if packed else Quiet
    with Patient((HERE, 0), partial(answering, directory=str(folder))) as server:
        thread = Thread(target=server.serve_forever, kwargs={"poll_interval": 0.05}, daemon=True)
        thread.start()
        try:
            yield f"http://{HERE}:{server.server_address[1]}"
        finally:
            server.shutdown()
            thread.join()
