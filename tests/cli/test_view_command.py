"""`reportgen view` as one uses it: change a reading, make a mistake, mend it."""

from __future__ import annotations

import re
import signal
import subprocess
import sys
import threading
import time
import urllib.request
from pathlib import Path

from tests.campaigns import write_campaign

ROOT = Path(__file__).parents[2]


def page_with(address: str, words: str, without: str = "nothing that is there") -> str:
    """The page as soon as it holds `words` and no longer `without`; it has 20 seconds."""
    until = time.monotonic() + 20
    while True:
        with urllib.request.urlopen(f"{address}stoves/index.html", timeout=10) as answer:
            page = str(answer.read().decode())
        if words in page and without not in page:
            return page
        assert time.monotonic() < until, page
        time.sleep(0.1)


def test_the_page_follows_what_is_typed_and_the_last_good_site_stays(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path)
    declared = folder / "campaign.yaml"
    sound = declared.read_text()
    command = [sys.executable, "-u", "-c", "from reportgen.cli import main; main()", "view", str(folder)]
    pipe = subprocess.PIPE
    with subprocess.Popen(command, cwd=ROOT, stdout=pipe, stderr=pipe, text=True) as viewing:
        killer = threading.Timer(90, viewing.kill)
        killer.start()
        assert viewing.stdout is not None
        try:
            address = next(found[0] for line in viewing.stdout if (found := re.findall(r"http://[\d.:]+/", line)))
            page_with(address, "Corvane Sol")
            declared.write_text(sound.replace("Corvane Sol", "Corvane Luna"))
            page_with(address, "Corvane Luna")
            declared.write_text(sound.replace("measure:", "meassure:"))
            assert "Corvane Luna" in page_with(address, "campaign.yaml:5")
            declared.write_text(sound)
            page_with(address, "Corvane Sol", without="campaign.yaml:5")
            viewing.send_signal(signal.SIGTERM)  # where the tests run in the background, shells have SIGINT ignored
            told, faults = viewing.communicate(timeout=20)
        finally:
            killer.cancel()
            viewing.kill()
    assert viewing.returncode == 0
    assert told.count("Compiled in") == 2
    assert "campaign.yaml:5:1" in faults
    assert "The last good site is still shown" in faults
    assert "Traceback" not in faults
