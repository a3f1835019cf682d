"""`python -m reportgen.browser`: get a browser ready for `inspect` and the tests."""

from __future__ import annotations

import sys

from reportgen.browser.chromium import get_ready


def main() -> int:
    """0 when a browser starts, 1 when none does."""
    return 0 if get_ready(lambda words: print(words, flush=True)) else 1


if __name__ == "__main__":
    sys.exit(main())
