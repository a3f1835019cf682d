"""One campaign of stoves, evaluated once for all tests of the pages."""

from __future__ import annotations

import pytest

from reportgen.pages import Told, build_pages
from tests.pages.reading import Element, read
from tests.pages.stoves import by_address, told_of


@pytest.fixture(scope="session")
def told(tmp_path_factory: pytest.TempPathFactory) -> Told:
    return told_of(tmp_path_factory.mktemp("stoves"))


@pytest.fixture(scope="session")
def pages(told: Told) -> dict[str, Element]:
    """Each page read, by its address from the campaign's folder."""
    return {address: read(html) for address, html in by_address(build_pages(told)).items()}
