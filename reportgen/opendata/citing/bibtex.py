"""A citation as BibTeX: an entry of the sort @misc, which every style knows."""

from __future__ import annotations

import unicodedata

from reportgen.opendata.citing.citation import Citation
from reportgen.wording.language import say

MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
ACCENTS = {
    "\u0300": "`", "\u0301": "'", "\u0302": "^", "\u0303": "~", "\u0304": "=", "\u0306": "u", "\u0307": ".",
    "\u0308": '"', "\u030a": "r", "\u030b": "H", "\u030c": "v", "\u0327": "c", "\u0328": "k",
}  # fmt: skip
SIGNS = {
    "\\": r"\textbackslash{}", "{": r"\textbraceleft{}", "}": r"\textbraceright{}",
    "&": r"\&", "%": r"\%", "$": r"\$", "#": r"\#", "_": r"\_",
    "~": r"\textasciitilde{}", "^": r"\textasciicircum{}", "\u00a0": "~", "\u202f": r"\,", "\u2013": "--",
    "\u2014": "---", "\u2018": "`", "\u2019": "'", "\u201c": "``", "\u201d": "''", "ß": r"{\ss}", "æ": r"{\ae}",
    "Æ": r"{\AE}", "ø": r"{\o}", "Ø": r"{\O}", "å": r"{\aa}", "Å": r"{\AA}", "ł": r"{\l}", "Ł": r"{\L}", "ı": r"{\i}",
    "°": r"{\textdegree}", "µ": r"{\textmu}", "μ": r"{\textmu}",
}  # fmt: skip


def as_bibtex(cited: Citation) -> str:
    """The entry. What LaTeX would take for its own signs is escaped, a brace by its name, since BibTeX counts those
    with a backslash too; accents are written out; double braces keep the capitals of title and author. What LaTeX has
    no plain sign for (Arabic, emoji) stays as it is, in UTF-8."""
    fields = {
        "author": f"{{{{{in_latex(cited.author)}}}}}",
        "title": f"{{{{{in_latex(cited.title)}}}}}",
        "year": f"{{{cited.shown[:4]}}}" if cited.date else "",
        "month": MONTHS[cited.date[1] - 1] if len(cited.date) > 1 else "",
        "publisher": f"{{{in_latex(cited.publisher)}}}",
        "howpublished": f"{{{in_latex(say('opendata.cite.data'))}}}",
        "note": f"{{{in_latex(say('opendata.cite.issue', issue=cited.issue))}}}",
        "doi": f"{{{cited.doi}}}" if cited.doi else "",
        "url": f"{{{cited.address}}}" if cited.address else "",
    }
    lines = [f"  {name} = {value}" for name, value in fields.items() if value]
    return f"@misc{{{cited.key},\n" + ",\n".join(lines) + "\n}\n"


def in_latex(text: str) -> str:
    """Text as LaTeX takes it; line breaks become spaces."""
    return "".join(map(_sign, unicodedata.normalize("NFC", text).replace("\n", " ")))


def _sign(letter: str) -> str:
    if letter in SIGNS:
        return SIGNS[letter]
    parts = unicodedata.normalize("NFD", letter)
    if len(parts) == 2 and parts[0].isascii() and parts[1] in ACCENTS:
        accent, base = ACCENTS[parts[1]], {"i": r"\i", "j": r"\j"}.get(parts[0], parts[0])
        return f"{{\\{accent}{{{base}}}}}" if accent.isalpha() or base.startswith("\\") else f"{{\\{accent}{base}}}"
    return letter
