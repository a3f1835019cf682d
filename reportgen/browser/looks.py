"""What is looked for in a page that is open: each a check, the script that runs in the page, and where it looks."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Literal

from reportgen.browser.fault import Check

PHONE, DESK = 390, 1280  # CSS pixels across
NARROWEST = 320  # what a window of 1280 px is at 400 % (WCAG 1.4.10)
DOUBLED = 640  # the same window at 200 % (WCAG 1.4.4)
SCHEMES: tuple[Literal["light", "dark"], ...] = ("light", "dark")
VARIANTS = tuple((scheme, width) for scheme in SCHEMES for width in (PHONE, DESK))
COMMONEST = VARIANTS[0]
CROSSED = (("light", PHONE), ("dark", DESK))  # each scheme once and each width once


@dataclass(frozen=True)
class Look:
    """`script` names a file of `scripts/`: a function that runs in the page and gives what is wrong, one text each."""

    check: Check
    script: str
    widths: tuple[int, ...] = (PHONE,)


OVERFLOW = Check(
    "overflow",
    "a reader has to push the page from side to side for every line (WCAG 1.4.10)",
    "let it wrap, or scroll in a box of its own",
)
ACCESSIBILITY = Check(
    "accessibility",
    "it keeps some readers out (WCAG 2.2, A and AA, by axe-core)",
    "mend the template or the colour; the rule's name in brackets is axe-core's",
)
BARRIERS = Look(ACCESSIBILITY, "barriers")  # told the rules of axe-core to look by; all where it is told none
OF_SCHEMES = ("color-contrast", "link-in-text-block")  # those of them that another scheme at the same width can break

LOOKS: tuple[Look, ...] = (
    Look(OVERFLOW, "reach", (DESK, DOUBLED, NARROWEST, PHONE)),  # the commonest last: the page is looked at further so
    Look(
        Check(
            "region",
            "keyboards can't move it and voices have no name for it (WCAG 2.1.1)",
            'give the box that scrolls tabindex="0", role="region" and an aria-label',
        ),
        "regions",
    ),
    Look(
        Check(
            "text spacing",
            "who needs wider lines, words or letters loses text (WCAG 1.4.12)",
            "let the box grow with its text: no fixed height, nothing hidden that flows over",
        ),
        "spacing",
        (PHONE, DESK),
    ),
    Look(
        Check(
            "keyboard",
            "who has no mouse can't use it, or doesn't see where they are (WCAG 2.1.1, 2.4.3, 2.4.7)",
            "keep the order of the source, no tabindex above 0, and an outline on :focus-visible",
        ),
        "focus",
    ),
    Look(
        Check(
            "motion",
            "it makes some readers unwell, and they have asked for none (WCAG 2.3.3)",
            "move nothing under @media (prefers-reduced-motion: reduce)",
        ),
        "motion",
    ),
)
PAPER = Look(
    Check(
        "paper",
        "a printed report lacks what is cut off",
        "let it wrap under @media print, and let boxes that scroll show all",
    ),
    "paper",
)
WALK = Check(
    "tab order",
    "who goes by keys misses something or loses the place (WCAG 2.1.1, 2.4.3, 2.4.11)",
    "keep the order of the source, and let nothing that stays in place cover what has the focus",
)
IDLE = Look(
    Check(
        "needs a script",
        "where scripts are off it promises what it can't do",
        "let the script make the control, or put it in a form that works without",
    ),
    "idle",
)


@cache
def script(name: str) -> str:
    """The text of a script of `scripts/`, without the line that says what it is for."""
    from importlib.resources import files

    return (files("reportgen.browser") / "scripts" / f"{name}.js").read_text(encoding="utf-8").partition("\n")[2]


@cache
def axe() -> str:
    """The accessibility checker, axe-core, as the package axe-playwright-python carries it."""
    from importlib.resources import files

    return (files("axe_playwright_python") / "axe.min.js").read_text(encoding="utf-8")
