"""The demonstration in every theme and every language, light and dark, on a phone and a desk. Not a test: it takes long.

    .venv/bin/python -m tests.matrix             one page of each kind in every variant
    .venv/bin/python -m tests.matrix --all       every page in every variant
    .venv/bin/python -m tests.matrix --but reading-room/en     without those seen already
    .venv/bin/python -m tests.matrix --unchecked     without the checker of HTML, which the tests ask of every page

Each theme and language there is makes a site; each is looked at as `reportgen inspect` does, and put before the checker
of HTML where that is ready. Sites are compiled in one workspace, so that what they share is worked out once; while one is
compiled, those before it are looked at, as many at once as there are processors.
"""

from __future__ import annotations

import argparse
import os
import re
import sys
import tempfile
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context, parent_process
from pathlib import Path
from shutil import copytree
from threading import Thread

from reportgen.browser.inspect import inspect_site
from reportgen.browser.standing import read_site
from reportgen.build.memory import Standing
from reportgen.build.run import compile_site
from reportgen.languages.files import tags
from tests import checker
from tests.browser.test_html_checker import told_of

ROOT = Path(__file__).parents[1]
WORKSPACE = ("content", "shared", "demo_campaign", "themes")


def themes() -> tuple[str, ...]:
    """Every theme that comes with the program."""
    return tuple(sorted(path.parent.name for path in (ROOT / "themes").glob("*/theme.yaml")))


def languages() -> tuple[str, ...]:
    """Every language that comes with the program, by its tag."""
    return ("en", *(tag for tag in tags(None) if tag != "en"))


def main() -> None:
    """Go through them; ends with 1 where there is a fault."""
    asked = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    asked.add_argument("--all", action="store_true", help="every page, not one of each kind")
    asked.add_argument("--but", action="append", default=[], metavar="THEME/LANGUAGE", help="leave this one out")
    asked.add_argument("--unchecked", action="store_true", help="leave the checker of HTML out")
    given = asked.parse_args()
    faulty = False
    looking = ProcessPoolExecutor(mp_context=get_context("spawn"), initializer=end_with_parent)
    with tempfile.TemporaryDirectory() as place, looking as pool:
        workspace = Path(place, "workspace")
        for folder in WORKSPACE:
            copytree(ROOT / folder, workspace / folder)
        looked_at = {}
        for variant in variants(given.but):
            site = compiled(workspace, *variant.split("/"))
            looked_at[variant] = pool.submit(faults, site, every_page=given.all, checked=not given.unchecked)
        for variant, answer in looked_at.items():
            told = answer.result()
            faulty = faulty or bool(told)
            print(f"{variant}: {len(told)} faults" if told else f"{variant}: no faults", flush=True)
            for line in told:
                print(f"  {line}")
    sys.exit(1 if faulty else 0)


def end_with_parent() -> None:
    """Look no further once nobody is left to be told, however the parent ended."""
    parent = parent_process()
    assert parent is not None

    def wait() -> None:
        parent.join()
        os._exit(1)

    Thread(target=wait, daemon=True).start()


def variants(but: list[str]) -> tuple[str, ...]:
    """theme/language, language by language, so that charts, which have words in them, are drawn once each."""
    every = [f"{theme}/{language}" for language in languages() for theme in themes()]
    unknown = sorted(set(but) - set(every))
    if unknown:
        sys.exit(f"There is no {', '.join(unknown)}; there are {', '.join(every)}.")
    return tuple(variant for variant in every if variant not in but)


def compiled(workspace: Path, theme: str, language: str) -> Path:
    """The site of the workspace in that dress and tongue."""
    publication = workspace / "content" / "publication.yaml"
    lines = [line for line in publication.read_text(encoding="utf-8").splitlines() if not _of_variant(line)]
    publication.write_text("\n".join([*lines, f"theme: {theme}", f"language: {language}", ""]), encoding="utf-8")
    return compile_site(workspace, workspace / f".site-{theme}-{language}", standing=Standing()).out


def faults(site: Path, *, every_page: bool, checked: bool) -> list[str]:
    """One line each: of what a browser sees, and of what the checker of HTML says of the same pages."""
    found = inspect_site(site, all_variants=every_page, samples_only=not every_page, only_look=not every_page)
    told = [f"{fault.page}  {fault.sort}: {fault.says}" for fault in found.faults]
    if checked and not checker.why_not():
        names = None if every_page else {pages[0] for pages in read_site(site).kinds().values()}
        told += told_of(site, names, one_language=False)  # the demonstration's own words are English in all of them
    return told


def _of_variant(line: str) -> bool:
    return re.match(r"(theme|language):", line) is not None


if __name__ == "__main__":
    main()
