"""Prints .lock.txt: the versions installed here of everything pyproject.toml asks for, and of what those ask for.

Run it in the environment whose tests have just passed: ``.venv/bin/python .ci/lock.py > .lock.txt``.
"""

from __future__ import annotations

import tomllib
from importlib.metadata import PackageNotFoundError, distribution
from pathlib import Path

from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

PROJECT = tomllib.loads((Path(__file__).parents[1] / "pyproject.toml").read_text(encoding="utf-8"))["project"]


def main() -> None:
    """Walk the requirements; those that a marker rules out on this system are left out."""
    waiting = [Requirement(text) for text in (*PROJECT["dependencies"], *PROJECT["optional-dependencies"]["tests"])]
    pinned: dict[str, str] = {}
    walked: set[tuple[str, str]] = set()
    while waiting:
        wanted = waiting.pop()
        try:
            found = distribution(wanted.name)
        except PackageNotFoundError:
            continue
        name = canonicalize_name(wanted.name)
        pinned[name] = found.version
        for extra in ("", *wanted.extras):
            if (name, extra) in walked:
                continue
            walked.add((name, extra))
            for text in found.requires or ():
                needed = Requirement(text)
                if needed.marker is None or needed.marker.evaluate({"extra": extra}):
                    waiting.append(needed)
    print("# The versions the tests last passed with; pip takes them with -c. Written by .ci/lock.py.")
    for name, version in sorted(pinned.items()):
        print(f"{name}=={version}")


main()
