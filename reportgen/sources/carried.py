"""What the program brings along: themes, ready-made instruments and methods, the handbook, languages."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

import reportgen

CarriedKind = Literal["themes", "shared", "handbook", "languages"]
_IN_REPOSITORY: dict[CarriedKind, str] = {
    "themes": "themes",
    "shared": "shared",
    "handbook": "content/handbook",
    "languages": "reportgen/languages",  # beside the code that reads them, in the package as well
}


def carried(kind: CarriedKind) -> Path:
    """The folder of `kind`: inside the installed package, or in the repository the program runs from."""
    package = Path(reportgen.__file__).parent
    packed = package / "carried" / kind
    return packed if packed.is_dir() else package.parent / _IN_REPOSITORY[kind]
