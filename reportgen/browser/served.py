"""A folder served on this machine alone, for as long as it is needed."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread

HERE = "127.0.0.1"


class Quiet(SimpleHTTPRequestHandler):
    """Serves files and keeps no log."""

    protocol_version = "HTTP/1.1"  # connections stay open: a page asks for several files

    def log_message(self, format: str, *args: object) -> None:
        """Says nothing."""


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """The address of `folder` on a free port, without a slash at its end."""
    with ThreadingHTTPServer((HERE, 0), partial(Quiet, directory=str(folder))) as server:
        server.daemon_threads = True
        thread = Thread(target=server.serve_forever, kwargs={"poll_interval": 0.05}, daemon=True)
        thread.start()
        try:
            yield f"http://{HERE}:{server.server_address[1]}"
        finally:
            server.shutdown()
            thread.join()
