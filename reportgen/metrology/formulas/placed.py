"""Refusals given the column of the formula they belong to."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from reportgen.metrology.errors import FormulaError, MetrologyError, NoValue

Found = TypeVar("Found")


def at_column(column: int, work: Callable[[], Found], name: str = "") -> Found:
    """The work's value, its refusals given the column of the formula they belong to."""
    try:
        return work()
    except KeyError as unknown:
        told = str(unknown.args[0]) if unknown.args else ""
        says = told if told and told != name else f"nothing here is called {name}"
        raise FormulaError(column, says, "write the name of a reading, quantity or constant") from None
    except NoValue as nothing:
        raise NoValue(nothing.says, nothing.do, nothing.column or column) from None
    except FormulaError:
        raise
    except MetrologyError as refusal:
        raise FormulaError(column, refusal.says, refusal.do) from None
