"""What an audit rule looks at, and what a rule is."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from reportgen.campaign.declared import Declared, Publication
from reportgen.evaluation.evaluated import Evaluation
from reportgen.finding import Place, Severity
from reportgen.intake.reading import Readings


@dataclass(frozen=True)
class Case:
    """One campaign before the audit. `files` are all files in its folder, as paths from the workspace."""

    declared: Declared
    readings: Readings
    evaluation: Evaluation
    publication: Publication
    files: tuple[str, ...] = ()


@dataclass(frozen=True)
class Seen:
    """Something a rule found. `subject` is `test/…`, `quantity/…` or empty; `severity` where it isn't the rule's."""

    place: Place
    says: str
    subject: str = ""
    contender: str = ""
    severity: Severity | None = None


@dataclass(frozen=True)
class Rule:
    """One check: its name (what `accept:` refers to), how grave, why it matters, what to do about it."""

    name: str
    severity: Severity
    why: str
    do: str
    check: Callable[[Case], Iterable[Seen]]
