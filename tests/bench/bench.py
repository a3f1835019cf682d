"""How long a compile takes, against bare libraries doing the same by hand in the same run. Not a test.

    .venv/bin/python tests/bench/bench.py [CAMPAIGN] [--times 5]

Each is a process of its own, taken in turn so that a busy machine slows all alike; medians and ratios are printed.
"""

from __future__ import annotations

import argparse
import re
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from statistics import median

ROOT = Path(__file__).parents[2]
DRAWING = re.compile(r'<svg[^>]* class="drawing.*?</svg>', re.DOTALL)
BY_HAND = Path(__file__).with_name("by_hand.py")


def main() -> None:
    """Measure and print."""
    asked = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    asked.add_argument("campaign", nargs="?", type=Path, default=ROOT / "demo_campaign")
    asked.add_argument("--times", type=int, default=5)
    given = asked.parse_args()
    with tempfile.TemporaryDirectory() as place:
        workspace, site, other = Path(place, "workspace"), Path(place, "site"), Path(place, "by-hand")
        for name in ("content", "shared", "themes"):
            if (ROOT / name).is_dir():
                shutil.copytree(ROOT / name, workspace / name)
        campaign = workspace / given.campaign.name
        shutil.copytree(given.campaign, campaign, ignore=shutil.ignore_patterns(".*"))
        compile_it = ["-c", "from reportgen.cli import main; main()", "compile", str(workspace), "--out", str(site)]
        took(compile_it)
        pages = sum(1 for _ in site.rglob("*.html"))
        charts = len(
            {svg for path in site.rglob("*.html") for svg in DRAWING.findall(path.read_text(encoding="utf-8"))}
        )
        by_hand = [str(BY_HAND), str(workspace), str(other), str(pages), str(charts)]
        compiled = Path(place, "compiled")
        site.rename(compiled)
        seconds: dict[str, list[float]] = {}
        for _ in range(given.times):
            shutil.rmtree(workspace / ".kept", ignore_errors=True)
            shutil.rmtree(site, ignore_errors=True)
            for name, words in (
                ("a bare interpreter", ["-c", "pass"]),
                ("from nothing", compile_it),
                ("pages, charts, pictures by hand", by_hand),
                ("from nothing, by hand", [*by_hand, str(compiled)]),
                ("nothing changed", compile_it),
                ("nothing changed, by hand", [str(BY_HAND), "nothing", str(workspace), str(site)]),
            ):
                seconds.setdefault(name, []).append(took(words))
    print(f"{pages} pages, {charts} charts, {given.times} times each; median seconds")
    for name, all_of_them in seconds.items():
        print(f"  {name:<34}{median(all_of_them):8.3f}")
    for name in ("from nothing", "nothing changed"):
        print(f"  {name}: {median(seconds[name]) / median(seconds[f'{name}, by hand']):.2f} times by hand")
    alone = "pages, charts, pictures by hand"
    print(f"  from nothing: {median(seconds['from nothing']) / median(seconds[alone]):.2f} times {alone} alone")


def took(words: list[str]) -> float:
    """Seconds of one Python process from start to end."""
    began = time.perf_counter()
    done = subprocess.run([sys.executable, *words], cwd=ROOT, capture_output=True, text=True, check=False)
    if done.returncode:
        sys.exit(done.stderr or done.stdout)
    return time.perf_counter() - began


if __name__ == "__main__":
    main()
