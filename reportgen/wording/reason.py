"""Codes of other rooms ↔ words: why a decision fell as it did, why there is no uncertainty, no rank, no result."""

from __future__ import annotations

from reportgen.wording.language import say, spoken


def why(code: str) -> str:
    """A reason of judgement in a few words, for the workings: `lead-exceeds` is "the lead is larger than …"."""
    return _words("reason", code)


def why_no_u(code: str) -> str:
    """Why a result has no uncertainty, in words that follow a colon. What is no code is already words and stays."""
    return _words("why-no-u", code)


def why_blocked(code: str) -> str:
    """Why a result isn't ranked; a caveat's own words stay."""
    return _words("blocked", code)


def why_missing(code: str) -> str:
    """Why there is no result: "not yet tested", "not read", or the reason the author gave."""
    return _words("missing", code)


def decided(code: str) -> str:
    """When an exclusion was decided, as half a sentence."""
    return _words("decided", code)


def pushes(code: str) -> str:
    """Which way a caveat pushes its result, as a sentence; empty where it doesn't say."""
    return _words("pushes", code) if code else ""


def _words(family: str, code: str) -> str:
    key = f"{family}.{code}".replace(" ", "-").replace("/", "-")
    return say(key) if key in spoken().phrases else code
