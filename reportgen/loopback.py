"""A server of this machine alone, for its own browsers."""

from __future__ import annotations

import sys
from http.server import ThreadingHTTPServer

HERE = "127.0.0.1"


class Patient(ThreadingHTTPServer):
    """Says nothing of a browser that goes before its answer has come."""

    daemon_threads = True

    def handle_error(self, request: object, client_address: object) -> None:
        """Tells every error but that the other end is gone."""
        if not isinstance(sys.exception(), ConnectionError):
            super().handle_error(request, client_address)  # type: ignore[arg-type]  # the server hands on what it was given
