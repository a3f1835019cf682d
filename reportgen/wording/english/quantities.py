"""English, fourth part of its table: percentages and their base, and what is said of results hardly known."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

QUANTITIES: Mapping[str, str | Forms] = {
    "percent.points": "percentage points",
    "percent.of": "{name}: {said}",
    "percent.less": "{value} less than {other}",
    "percent.more": "{value} more than {other}",
    "percent.same": "as much as {other}",
    "percent.between.less": "{said} ({low} to {high} less)",
    "percent.between.more": "{said} ({low} to {high} more)",
    "why-no-u.divisor-near-nothing": "what it is divided by may be nothing, as far as its own uncertainty tells",
    "why-no-u.logarithm-near-nothing": "the value its logarithm is taken of may be nothing, as far as its own "
    "uncertainty tells",
    "why-no-u.root-near-nothing": "the value its root is taken of may be nothing, as far as its own uncertainty tells",
    "blocked.divisor-near-nothing": "what it is divided by may be nothing",
    "blocked.logarithm-near-nothing": "the value its logarithm is taken of may be nothing",
    "blocked.root-near-nothing": "the value its root is taken of may be nothing",
    "reason.no-interval": "its uncertainty can't be stated",
    "hardly-known.nothing": {
        "one": "The uncertainty of {names} is larger than the value: whether it is more or less than nothing isn’t "
        "known",
        "other": "The uncertainties of {names} are larger than the values: whether they are more or less than nothing "
        "isn’t known",
    },
    "hardly-known.side": {
        "one": "The uncertainty of {names} is more than half of the value: that it isn’t nothing is known, and little "
        "more",
        "other": "The uncertainties of {names} are more than half of the values: that they aren’t nothing is known, "
        "and little more",
    },
    "percent.between.both": "{said} ({low} less to {high} more)",
}
