"""English, part of its table: what helps a reader about on a page: contents, words explained."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

TERMS: Mapping[str, str | Forms] = {
    "on.here.title": "On this page",
    "on.terms.title": "Words on this page",
    "on.terms.back": "Back to where it is said",
    "on.terms.back-to": "Back to where it is said: {term}",
    # the program's own terms: the words one goes by inside a sentence, with “ / ” between them, and what it means
    "page.term.contender": "contender / contenders",
    "page.term.contender.means": "One product under test, as bought.",
    "page.term.pass": "passes",
    "page.term.pass.means": "Repeats of one test on one contender.",
    "page.term.scatter": "scatter",
    "page.term.scatter.means": "How much passes on one contender vary though nothing was changed.",
    "page.term.standard-uncertainty": "standard uncertainty / standard uncertainties",
    "page.term.standard-uncertainty.means": (
        "The typical error of a result, everything that is known to it put together."
    ),
    "page.term.degrees-of-freedom": "degrees of freedom",
    "page.term.degrees-of-freedom.means": (
        "How many runs a scatter is known from, less one for each mean that was taken."
    ),
}
