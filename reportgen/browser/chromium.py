"""Finding a Chromium and starting it: the system's first, else the one Playwright brings.

One that is found may still not start (a library it needs may be missing), so getting it ready ends with a start.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Browser

NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
PACKAGES = ("chromium", "libatomic1")  # Playwright's own Node needs the second


class NoBrowserError(Exception):
    """No Chromium could be started; the message says why and what to do."""


def of_the_system() -> str | None:
    """The path of a Chromium that the system has, or None."""
    return next((path for path in map(shutil.which, NAMES) if path), None)


@contextmanager
def started() -> Iterator[Browser]:
    """A headless Chromium, closed afterwards. Raises `NoBrowserError` where none starts."""
    from playwright.sync_api import Error, sync_playwright

    try:
        playwright = sync_playwright().start()
    except Exception as error:  # its Node ends before it has said a word: no one type covers that
        raise NoBrowserError(_no_browser(error)) from error
    try:
        try:
            browser = playwright.chromium.launch(executable_path=of_the_system(), args=_arguments())
        except Error as error:
            raise NoBrowserError(_no_browser(error)) from error
        try:
            yield browser
        finally:
            browser.close()
    finally:
        playwright.stop()


def get_ready(say: Callable[[str], None]) -> bool:
    """Make sure a Chromium starts, installing one if need be; True when one does. `say` gets each thing it does."""
    if not _why_not():
        say(f"A browser is ready: {of_the_system() or 'the one Playwright brings'}.")
        return True
    for words in _ways_to_install():
        say(f"Running: {' '.join(words)}")
        environment = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
        done = subprocess.run(words, capture_output=True, text=True, env=environment, check=False)
        if done.returncode:
            say((done.stderr or done.stdout).strip()[-600:])
    why_not = _why_not()
    say(why_not or f"A browser is ready: {of_the_system() or 'the one Playwright brings'}.")
    return not why_not


def _why_not() -> str:
    """What keeps a browser from starting, "" where one starts. Tried in a process of its own: a start that fails
    half-way leaves things behind."""
    tried = "from reportgen.browser.chromium import started\nwith started(): pass"
    done = subprocess.run([sys.executable, "-c", tried], capture_output=True, text=True, check=False)
    return done.stderr.rpartition("NoBrowserError: ")[2].strip()[-600:] if done.returncode else ""


def _ways_to_install() -> list[list[str]]:
    """As root on Debian and its kin, the system's packages; elsewhere Playwright's own download."""
    root = _is_root()
    if root and shutil.which("apt-get"):
        return [
            ["apt-get", "update", "-q"],
            ["apt-get", "install", "-y", "-q", "--no-install-recommends", *PACKAGES],
        ]
    return [[sys.executable, "-m", "playwright", "install", *(["--with-deps"] if root else []), "chromium"]]


def _arguments() -> list[str]:
    """No host but this machine is found. Chromium refuses its sandbox to root; for everyone else it stays on."""
    return ["--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1", *(["--no-sandbox"] if _is_root() else [])]


def _is_root() -> bool:
    return hasattr(os, "geteuid") and os.geteuid() == 0


def _no_browser(error: Exception) -> str:
    first = str(error).strip().splitlines()[0] if str(error).strip() else type(error).__name__
    return f"No Chromium could be started: {first}\n  Get one ready with: python -m reportgen.browser"
