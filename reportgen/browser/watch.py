"""What a browser reports by itself while pages load: errors of scripts, what was asked for, what didn't come."""

from __future__ import annotations

from typing import TYPE_CHECKING
from urllib.parse import unquote

from reportgen.browser.fault import Check

if TYPE_CHECKING:
    from playwright.sync_api import ConsoleMessage, Page, Request, Response

GIVEN_UP = "net::ERR_ABORTED"  # Chromium's word where nobody waits for the answer any more
ERROR = Check(
    "script error", "what the script was for doesn't work", "mend the script, or ask nothing that the page forbids"
)
FAILED = Check("failed request", "something of the page is missing", "put the file there, or take the reference away")
LEAVES = Check(
    "leaves the site",
    "it tells others who reads, and is missing without a network or in ten years",
    "keep the file on the site, and link to the other place in words",
)


class Watch:
    """Collects what the browser reports between two pages; a class, because events come on their own."""

    def __init__(self, root: str) -> None:
        self.root = root
        self.seen: list[tuple[Check, str]] = []
        self.asked_for: list[str] = []

    def follow(self, page: Page) -> None:
        page.on("pageerror", lambda error: self.seen.append((ERROR, str(error))))
        page.on("console", self._console)
        page.on("requestfailed", self._ended)
        page.on("response", self._answered)
        page.on("request", self._asked)

    def taken(self) -> list[tuple[Check, str]]:
        seen, self.seen, self.asked_for = self.seen, [], []
        return seen

    def files(self) -> list[str]:
        """Addresses on the site of what was asked for since the last taking, each once, in order."""
        ours = [url.removeprefix(self.root + "/") for url in self.asked_for if url.startswith(self.root + "/")]
        return list(dict.fromkeys(unquote(url.partition("?")[0].partition("#")[0]) for url in ours))

    def _ours(self, url: str) -> bool:
        return url.startswith((self.root + "/", "data:", "blob:", "about:"))

    def _console(self, message: ConsoleMessage) -> None:
        # A request that failed is told of once, with its address, by the browser's own event.
        if message.type == "error" and not message.text.startswith("Failed to load resource"):
            self.seen.append((ERROR, message.text))

    def _ended(self, request: Request) -> None:
        # What a browser gives up by itself isn't missing: in another width it wants a picture in another size.
        if request.failure != GIVEN_UP:
            self._failed(request.url, request.failure or "failed")

    def _failed(self, url: str, how: str) -> None:
        if self._ours(url) and not url.endswith("/favicon.ico"):
            self.seen.append((FAILED, f"{url.removeprefix(self.root + '/')} {how}"))

    def _answered(self, answer: Response) -> None:
        if answer.status >= 400:
            self._failed(answer.url, f"answers {answer.status}")

    def _asked(self, request: Request) -> None:
        # The browser was started so that it finds no other host: nothing is sent.
        self.asked_for.append(request.url)
        if not self._ours(request.url):
            self.seen.append((LEAVES, f"asks for {request.url}"))
