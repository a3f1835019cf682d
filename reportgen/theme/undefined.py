"""A name that a template asks for and isn't given: an error that lists what is there."""

from __future__ import annotations

from dataclasses import fields, is_dataclass

from jinja2 import StrictUndefined


class NotGiven(StrictUndefined):
    """As strict as can be: printing it, going through it or asking whether it is true is an error."""

    @property
    def _undefined_message(self) -> str:
        told = self._undefined_obj
        if not is_dataclass(told):
            return str(super()._undefined_message)
        there = ", ".join(f.name for f in fields(told))
        return f"{type(told).__name__} has no “{self._undefined_name}”; it has {there}"
