"""Codes of other rooms ↔ words: why a decision fell as it did, why there is no uncertainty, no rank, no result."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from reportgen.wording.language import ENGLISH, say, spoken
from reportgen.wording.listing import semicolons


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
    """Why there is no result: "not yet tested", "not read", or the reasons of its passes, the author's among them."""
    reasons = code.split("; ")
    said = [why_absent(one) for one in reasons]
    return code if said == reasons else semicolons(said)


def why_absent(text: str) -> str:
    """Why a reading or a pass has no value, as other rooms say it in English; an author's own words stay.

    "temp has no sample there" is known by the phrase that says so, and told by the same phrase of the language in use.
    """
    known = _words("missing", text)
    if known != text:
        return known
    for key, pattern in _absent():
        if found := pattern.fullmatch(text):
            gaps = {name: why_absent(said) if name == "why" else said for name, said in found.groupdict().items()}
            return say(key, **gaps)
    return text


def decided(code: str) -> str:
    """When an exclusion was decided, as half a sentence."""
    return _words("decided", code)


def pushes(code: str) -> str:
    """Which way a caveat pushes its result, as a sentence; empty where it doesn't say."""
    return _words("pushes", code) if code else ""


@lru_cache(maxsize=1)
def _absent() -> Sequence[tuple[str, re.Pattern[str]]]:
    """The phrases of `english/absent.py`, each as what its words look like with the gaps filled."""
    said = {key: words for key, words in ENGLISH.phrases.items() if key.startswith("absent.")}
    return [(key, re.compile(_looks(words))) for key, words in said.items() if isinstance(words, str)]


def _looks(words: str) -> str:
    """The pattern of a phrase; only a gap for a sentence may hold a colon or a comma."""
    return re.sub(
        r"\\{(\w+)\\}", lambda gap: f"(?P<{gap[1]}>{'.+' if gap[1] == 'why' else '[^:,]+'})", re.escape(words)
    )


def _words(family: str, code: str) -> str:
    key = f"{family}.{code}".replace(" ", "-").replace("/", "-")
    words = spoken().phrases.get(key)
    return say(key) if isinstance(words, str) and "{" not in words else code  # an author may say "unfinished"
