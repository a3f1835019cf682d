"""How large a file is: bytes below a thousand, then with the prefixes of SI (IEC 80000-13: kB is 1000 B)."""

from __future__ import annotations

from reportgen.wording.count import whole
from reportgen.wording.language import say, say_of
from reportgen.wording.number import fixed

PREFIXES = ("kB", "MB", "GB", "TB")


def file_size(n: int) -> str:
    """ "840 bytes", "1.5 kB", "24 kB", "3.4 MB": two digits, as more would tell a reader nothing."""
    if n < 1000:
        return say_of(n, "size.bytes", n=whole(n))
    power = 0
    while power + 1 < len(PREFIXES) and n >= 999_500 * 1000**power:
        power += 1
    amount = n / 1000 ** (power + 1)
    return say("size.large", amount=fixed(amount, 0 if amount >= 9.95 else 1), unit=PREFIXES[power])
