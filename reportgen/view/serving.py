"""The local server: files of the site as they are, pages with what there is to say hung under them."""

from __future__ import annotations

import errno
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import partial
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import parse_qs, unquote, urlsplit

from reportgen.finding import Place, Refused
from reportgen.loopback import HERE, Patient
from reportgen.view.beside import LineOf, Note, notes_on
from reportgen.view.shown import Shown

if TYPE_CHECKING:
    from reportgen.finding import Finding
    from reportgen.pages.whereabouts import Whereabouts
    from reportgen.theme import Theme

NAMES = frozenset({"127.0.0.1", "localhost"})  # a page from elsewhere that was led here bears another name
PORT = 8017
OURS = "-/"  # addresses of the server's own; no campaign can bear this name
TOLD_IN_FULL = 12
LONGEST_LINE = 1 << 20  # characters of a file looked through for one line


@dataclass(frozen=True)
class Tail:
    """What hangs under a page. `at` is the way to the server's own addresses; `version` counts compiles.

    `notes` begin with the errors; `broken`: there are some, and what is seen is the last site that compiled.
    """

    at: str
    version: int
    summary: str
    notes: tuple[Note, ...]
    more: str
    broken: bool
    standing: str
    moved: str = "The page you were on is gone; this is the nearest that stands."


@dataclass(frozen=True)
class NoSite:
    """What is shown where there is no page; `way` leads to the nearest one that stands."""

    title: str
    says: str
    way: str = ""


@contextmanager
def serving(out: Path, shown: Shown, port: int | None = None, root: Path | None = None) -> Iterator[str]:
    """Serve `out` on this machine alone; the address, with a slash at its end.

    `root` is the workspace, where the author's lines are looked up. Without a port, `PORT` or the next one free. Raises
    OSError where `port` is taken.
    """
    from reportgen.theme import load_theme

    theme = load_theme(None)
    answers = partial(_Answers, directory=str(out), shown=shown, theme=theme, line_of=partial(line_of, root))
    with _server(answers, port) as server:
        threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.1}, daemon=True).start()
        try:
            yield f"http://{HERE}:{server.server_address[1]}/"
        finally:
            server.shutdown()


def _server(answers: Callable[..., SimpleHTTPRequestHandler], port: int | None) -> Patient:
    for wanted in (port,) if port is not None else (*range(PORT, PORT + 20), 0):
        try:
            server = Patient((HERE, wanted), answers)
        except OSError as error:
            if port is not None or error.errno != errno.EADDRINUSE:
                raise
            continue
        return server
    raise OSError(errno.EADDRINUSE, "no free port")


class _Answers(SimpleHTTPRequestHandler):
    """Files of the site as they are; pages with the server's part under them."""

    protocol_version = "HTTP/1.1"

    def __init__(self, *args: object, shown: Shown, theme: Theme, line_of: LineOf, directory: str) -> None:
        self.shown, self.theme, self.line_of = shown, theme, line_of
        super().__init__(*args, directory=directory)  # type: ignore[arg-type]  # the server passes three, untyped

    def do_GET(self) -> None:
        parts = urlsplit(self.path)
        name = (self.headers.get("Host") or "").rpartition(":")[0] or self.headers.get("Host")
        if name not in NAMES:
            self.send_error(HTTPStatus.FORBIDDEN)
        elif parts.path.startswith(f"/{OURS}"):
            self._own(parts.path.removeprefix(f"/{OURS}"), parts.query)
        elif parts.path == "/favicon.ico":  # browsers ask by themselves; a site has none
            self.send_response(HTTPStatus.NO_CONTENT)
            self.end_headers()
        elif parts.path.endswith((".html", "/")):
            self._page(parts.path)
        else:
            super().do_GET()

    def log_message(self, format: str, *args: object) -> None:
        """Says nothing: the terminal is for the author's files."""

    def end_headers(self) -> None:
        self.send_header("Cache-Control", "no-store")
        super().end_headers()

    def _own(self, name: str, query: str) -> None:
        if name == "changes":
            seen = parse_qs(query).get("seen", ["0"])[0]
            self._send(str(self.shown.after(int(seen) if seen.isdecimal() else 0)), "text/plain")
        elif name == "follow.js":
            self._send(self.theme.templates["view/follow.js"], "text/javascript")
        elif name == "view.css":
            self._send(self.theme.templates["view/view.css"], "text/css")
        else:
            self.send_error(HTTPStatus.NOT_FOUND)

    def _page(self, address: str) -> None:
        from reportgen.theme import render

        version, findings, where = self.shown.now()
        file = Path(self.translate_path(address))
        file = file / "index.html" if address.endswith("/") else file
        status = HTTPStatus.OK
        try:
            page = file.read_text(encoding="utf-8")
        except OSError:
            status = HTTPStatus.NOT_FOUND
            broken = any(f.severity == "error" for f in findings)
            says = "The page will come by itself once the files are mended." if broken else "There is no such page."
            way = _nearest(Path(self.directory), file)
            page = render(self.theme, "view/no-site.html", NoSite("Nothing to show yet", says, way), "index.html")
        except UnicodeDecodeError:  # no page of ours: a file of the author's, passed on as it is
            super().do_GET()
            return
        on_site = unquote(address).lstrip("/") + ("index.html" if address.endswith("/") else "")
        tail = render(self.theme, "view/tail.html", self._tail(on_site, version, findings, where), "index.html")
        self._send(page + tail, "text/html", status)

    def _tail(self, page: str, version: int, findings: tuple[Finding, ...], where: Whereabouts | None) -> Tail:
        notes = notes_on(page, findings, where, self.line_of)
        mistakes = sum(note.severity == "error" for note in notes)
        shown = tuple(note for note in notes if note.here or note.words)
        shown = (*shown, *(note for note in notes if note not in shown))[: max(TOLD_IN_FULL, len(shown))]
        rest = len(notes) - len(shown)
        return Tail(
            at=f"/{OURS}",
            version=version,
            summary=_summary(mistakes, len(notes) - mistakes),
            notes=shown,
            more=f"And {rest} more: see the terminal." if rest > 0 else "",
            broken=mistakes > 0,
            standing="What you see is the last site that compiled." if mistakes else "",
        )

    def _send(self, text: str, sort: str, status: HTTPStatus = HTTPStatus.OK) -> None:
        data = text.encode()
        self.send_response(status)
        self.send_header("Content-Type", f"{sort}; charset=utf-8")
        self.send_header("Content-Length", str(len(data)))
        self.end_headers()
        self.wfile.write(data)


def line_of(root: Path | None, place: Place) -> str:
    """The author's line at `place`, "" where it can't be read."""
    from reportgen.sources import find_workspace, read_text

    if root is None:
        return ""
    try:
        lines = read_text(find_workspace(root), place.file)[:LONGEST_LINE].splitlines()
    except (Refused, OSError):
        return ""
    return lines[place.line - 1] if 0 < place.line <= len(lines) else ""


def _summary(mistakes: int, others: int) -> str:
    wrong = f"{mistakes} mistake{'' if mistakes == 1 else 's'} in the files"
    asked = f"{others} thing{'' if others == 1 else 's'} to look at"
    return ", ".join((*((wrong,) if mistakes else ()), *((asked,) if others else ())))


def _nearest(site: Path, file: Path) -> str:
    """The way to the closest page above `file` that stands, from the server's root; "" where none does."""
    for folder in file.parents:
        if not folder.is_relative_to(site):
            return ""
        if (folder / "index.html").is_file():
            return f"/{folder.relative_to(site).as_posix()}/".replace("/./", "/")
    return ""
