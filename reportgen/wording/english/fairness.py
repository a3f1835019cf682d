"""What pages say in English of how fair a comparison was."""

from __future__ import annotations

from collections.abc import Mapping

FAIRNESS: Mapping[str, str] = {
    "put-right": "what was done about it: {done}",
    "hangs.winner": "It rests on one pass: without {without}, {then}.",
    "hangs.open": "Nobody is alone in first place, and that rests on one pass: without {without}, {then}.",
    "hangs.pass": "pass {pass_} of {name}",
    "hangs.pass.specimen": "pass {pass_} of {name} ({specimen})",
    "hangs.alone": "{name} would be alone in first place",
    "hangs.nobody": "nobody would be alone in first place",
}
