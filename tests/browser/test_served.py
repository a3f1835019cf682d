"""The server of `inspect` tells what goes wrong with it, and not that a browser went before its answer came."""

from __future__ import annotations

import pytest

from reportgen.browser.served import HERE, Patient, Quiet


@pytest.mark.parametrize(
    ("error", "told"), [(BrokenPipeError, False), (ConnectionResetError, False), (ValueError, True)]
)
def test_a_browser_that_goes_early_is_no_error(
    error: type[Exception], told: bool, capsys: pytest.CaptureFixture[str]
) -> None:
    with Patient((HERE, 0), Quiet) as server:
        try:
            raise error
        except error:
            server.handle_error(b"", (HERE, 1))
    assert bool(capsys.readouterr().err) == told
