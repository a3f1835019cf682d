"""Disk → bytes, text and digests, never from outside the workspace.

Comes in: a path. Goes out: a `Workspace`, bytes, text, lists of files. Must never know what the files mean.
"""

from reportgen.sources.carried import carried
from reportgen.sources.long import SIGNS, blocks, copied_as_utf8, lines, plainly_named
from reportgen.sources.read import as_text, digest, exists, list_files, path_of, read_bytes, read_text
from reportgen.sources.workspace import Workspace, find_workspace

__all__ = [
    "SIGNS",
    "Workspace",
    "as_text",
    "blocks",
    "carried",
    "copied_as_utf8",
    "digest",
    "exists",
    "find_workspace",
    "lines",
    "list_files",
    "path_of",
    "plainly_named",
    "read_bytes",
    "read_text",
]
