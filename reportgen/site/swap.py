"""Two folders change places: in one step where the system can, else in two renames."""

from __future__ import annotations

import ctypes
import errno
import os
from pathlib import Path

_HERE = -100  # AT_FDCWD of <fcntl.h>: paths count from the working folder
_EXCHANGE = 2  # RENAME_EXCHANGE of <linux/fs.h>
_UNABLE = {errno.ENOSYS, errno.EINVAL, errno.EOPNOTSUPP, errno.EPERM}  # this kernel or file system has no such step


def swap(new: Path, out: Path, old: Path) -> None:
    """`new` takes the place of `out`. What stood there is then at `new` or `old`, for the caller to remove.

    Raises OSError where the system refuses; `out` then stands as before.
    """
    if not out.exists():
        new.rename(out)
    elif not exchanged(new, out):
        out.rename(old)
        try:
            new.rename(out)
        except OSError:
            old.rename(out)
            raise


def exchanged(new: Path, out: Path) -> bool:
    """Exchange two folders in one step (renameat2(2), Linux); False where that isn't to be had."""
    try:
        rename = ctypes.CDLL(None, use_errno=True).renameat2
    except (AttributeError, OSError, TypeError):
        return False
    if rename(_HERE, os.fsencode(new), _HERE, os.fsencode(out), ctypes.c_uint(_EXCHANGE)) == 0:
        return True
    number = ctypes.get_errno()
    if number in _UNABLE:
        return False
    raise OSError(number, os.strerror(number), str(out))
