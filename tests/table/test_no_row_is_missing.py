"""Everything that must be sayable has a test through a compiled campaign."""

from __future__ import annotations

import importlib
from pathlib import Path

from tests.table.bench import ROWS, TESTS


def test_every_row_has_its_test() -> None:
    for file in sorted(Path(__file__).parent.glob("test_*.py")):
        importlib.import_module(f"tests.table.{file.stem}")
    assert len(set(ROWS)) == len(ROWS) == 18
    assert set(TESTS) == set(ROWS)
