"""The site shown on this machine while it is being written: compiled, served, compiled anew on every change.

The server hangs its own part under each page it sends: the script that follows changes, and what is wrong just now.
Neither ever reaches a file. While there are mistakes, the last good site is what is shown.
"""

from __future__ import annotations

import errno
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import partial
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import parse_qs, urlsplit

from reportgen.build.progress import Built, Tell, quiet
from reportgen.finding import Finding, Refused

if TYPE_CHECKING:
    from reportgen.theme import Theme

HERE = "127.0.0.1"
NAMES = frozenset({"127.0.0.1", "localhost"})  # a page from elsewhere that was led here bears another name
PORT = 8017
OURS = "-/"  # addresses of the server's own; no campaign can bear this name
PATIENCE = 20.0  # seconds a page's question waits for a change
TOLD_IN_FULL = 12
TICK = 500  # ms between two looks for campaigns that have come or gone

Outcome = Built | Refused | Exception


@dataclass(frozen=True)
class Mistake:
    """One finding as a page shows it."""

    place: str
    says: str
    why: str
    do: str


@dataclass(frozen=True)
class Tail:
    """What hangs under a page. `at` is the way to the server's own addresses; `version` counts compiles."""

    at: str
    version: int
    summary: str
    mistakes: tuple[Mistake, ...]
    more: str
    standing: str


@dataclass(frozen=True)
class NoSite:
    """What is shown where there is no page."""

    title: str
    says: str


class Shown:
    """What stands now, guarded: the number of the last compile and what was wrong with it."""

    def __init__(self) -> None:
        self._changed = threading.Condition()
        self._version = 0
        self._findings: tuple[Finding, ...] = ()

    def now(self) -> tuple[int, tuple[Finding, ...]]:
        """The last compile's number and its errors."""
        with self._changed:
            return self._version, self._findings

    def show(self, outcome: Outcome) -> None:
        """Take note of a compile, and wake every page that waits."""
        with self._changed:
            self._version += 1
            self._findings = errors_of(outcome)
            self._changed.notify_all()

    def after(self, seen: int, patience: float = PATIENCE) -> int:
        """The number of the last compile, as soon as it isn't `seen`, or after `patience` seconds."""
        with self._changed:
            self._changed.wait_for(lambda: self._version != seen, patience)
            return self._version


def errors_of(outcome: Outcome) -> tuple[Finding, ...]:
    """What keeps the site from being new, as findings."""
    from reportgen.finding import Place

    if isinstance(outcome, Built):
        return ()
    if isinstance(outcome, Refused):
        return tuple(f for f in outcome.findings if f.severity == "error")
    says = f"reportgen itself failed: {type(outcome).__name__}: {outcome}"
    return (Finding("error", "fault", Place(""), says, do="See the terminal."),)


def says_the_same(before: Outcome, now: Outcome) -> bool:
    """Whether nobody who saw the one need be told of the other."""
    if isinstance(now, Built):
        return now.unchanged and isinstance(before, Built)
    return isinstance(now, Refused) and isinstance(before, Refused) and now.findings == before.findings


def compiled(path: Path, out: Path | None = None, tell: Tell = quiet) -> Outcome:
    """One compile; what went wrong is given back, not raised, because the server goes on."""
    from reportgen.build.run import compile_site

    try:
        return compile_site(path, out, tell)
    except Exception as error:  # whatever went wrong is shown, and the server goes on
        return error


@contextmanager
def serving(out: Path, shown: Shown, port: int | None = None) -> Iterator[str]:
    """Serve `out` on this machine alone; the address, with a slash at its end.

    Without a port, `PORT` or the next one free. Raises OSError where `port` is taken.
    """
    from reportgen.theme import load_theme

    theme = load_theme(None)
    answers = partial(_Answers, directory=str(out), shown=shown, theme=theme)
    with _server(answers, port) as server:
        threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.1}, daemon=True).start()
        try:
            yield f"http://{HERE}:{server.server_address[1]}/"
        finally:
            server.shutdown()


def changes(path: Path, out: Path, stop: threading.Event | None = None) -> Iterator[None]:
    """Once as soon as the files are watched, then each time the author's files change, until `stop`.

    The first is for what changed before anyone watched. What is made from the files doesn't count.
    """
    from watchfiles import watch

    while stop is None or not stop.is_set():
        folders = _watched(path)
        counts = partial(_counts, folders, out)
        watched = False
        for changed in watch(
            *folders, watch_filter=counts, stop_event=stop, yield_on_timeout=True, rust_timeout=TICK, debounce=400
        ):
            if changed or not watched:
                watched = True
                yield
            elif _watched(path) != folders:
                break
        else:
            return


def _watched(path: Path) -> tuple[Path, ...]:
    """The folders whose files bear on the site."""
    from reportgen.sources import find_workspace

    try:
        workspace = find_workspace(path)
    except Refused:
        return (path,)
    named = (*workspace.campaigns, "content", "shared", "themes")
    return tuple(dict.fromkeys(place for name in named if (place := workspace.root / name).is_dir()))


def _counts(folders: tuple[Path, ...], out: Path, change: object, changed: str) -> bool:
    path = Path(changed)
    folder = next((f for f in folders if path.is_relative_to(f)), None)
    if folder is None or path.is_relative_to(out):
        return False
    return not any(part.startswith(".") or part.endswith("~") for part in path.relative_to(folder).parts)


def _server(answers: Callable[..., SimpleHTTPRequestHandler], port: int | None) -> ThreadingHTTPServer:
    for wanted in (port,) if port is not None else (*range(PORT, PORT + 20), 0):
        try:
            server = ThreadingHTTPServer((HERE, wanted), answers)
        except OSError as error:
            if port is not None or error.errno != errno.EADDRINUSE:
                raise
            continue
        server.daemon_threads = True
        return server
    raise OSError(errno.EADDRINUSE, "no free port")


class _Answers(SimpleHTTPRequestHandler):
    """Files of the site as they are; pages with the server's part under them."""

    protocol_version = "HTTP/1.1"

    def __init__(self, *args: object, shown: Shown, theme: Theme, directory: str) -> None:
        self.shown, self.theme = shown, theme
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

        version, findings = self.shown.now()
        file = Path(self.translate_path(address))
        file = file / "index.html" if address.endswith("/") else file
        status = HTTPStatus.OK
        try:
            page = file.read_text(encoding="utf-8")
        except OSError:
            status = HTTPStatus.NOT_FOUND
            says = "The page will come by itself once the files are mended." if findings else "There is no such page."
            page = render(self.theme, "view/no-site.html", NoSite("Nothing to show yet", says), "index.html")
        tail = render(self.theme, "view/tail.html", _tail(version, findings), "index.html")
        self._send(page + tail, "text/html", status)

    def _send(self, text: str, sort: str, status: HTTPStatus = HTTPStatus.OK) -> None:
        data = text.encode()
        self.send_response(status)
        self.send_header("Content-Type", f"{sort}; charset=utf-8")
        self.send_header("Content-Length", str(len(data)))
        self.end_headers()
        self.wfile.write(data)


def _tail(version: int, findings: tuple[Finding, ...]) -> Tail:
    count, rest = len(findings), len(findings) - TOLD_IN_FULL
    return Tail(
        at=f"/{OURS}",
        version=version,
        summary=f"{count} mistake{'' if count == 1 else 's'} in the files",
        mistakes=tuple(Mistake(str(f.place), f.says, f.why, f.do) for f in findings[:TOLD_IN_FULL]),
        more=f"And {rest} more: see the terminal." if rest > 0 else "",
        standing="What you see is the last site that compiled.",
    )
