"""What the program brings along: themes, ready-made instruments and methods, the handbook."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

import reportgen

CarriedKind = Literal["themes", "shared", "handbook"]
_IN_REPOSITORY: dict[CarriedKind, str] = {"themes": "themes", "shared": "shared", "handbook": "content/handbook"}


def carried(kind: CarriedKind) -> Path:
    """The folder of `kind`: inside the installed package, or in the repository the program runs from."""
    package = Path(reportgen.__file__).parent
    packed = package / "carried" / kind
    return packed if packed.is_dir() else package.parent / _IN_REPOSITORY[kind]
