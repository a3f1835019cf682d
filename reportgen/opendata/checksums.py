"""checksums.sha256: the digest of every file of a campaign's data, as `sha256sum -c` takes it."""

from __future__ import annotations

from collections.abc import Iterable


def checksums(files: Iterable[tuple[str, str]]) -> bytes:
    """A line a file (path from the list's own folder, digest): digest, two spaces, path.

    A path with a backslash or a line break is escaped, and its line begins with a backslash, as GNU coreutils do it.
    """
    return "".join(_line(path, digest) for path, digest in files).encode()


def _line(path: str, digest: str) -> str:
    escaped = path.replace("\\", "\\\\").replace("\n", "\\n").replace("\r", "\\r")
    before = "" if escaped == path else "\\"
    return f"{before}{digest}  {escaped}\n"
