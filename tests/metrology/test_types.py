"""The measuring library is typed for whoever uses it: a type checker reads it as `typed_face.py` says."""

from pathlib import Path

import pytest
from mypy import api

import reportgen

FACE = Path(__file__).with_name("typed_face.py")


@pytest.fixture(scope="module")
def kept(tmp_path_factory: pytest.TempPathFactory) -> str:
    return str(tmp_path_factory.mktemp("types"))


def checked(file: Path, kept: str) -> tuple[str, str, int]:
    return api.run(["--strict", "--cache-dir", kept, "--follow-imports=silent", str(file)])


def test_the_public_face_has_the_types_it_says(kept: str) -> None:
    assert checked(FACE, kept)[1:] == ("", 0), checked(FACE, kept)[0]


def test_a_wrong_type_would_be_seen(kept: str, tmp_path: Path) -> None:
    wrong = tmp_path / "wrong.py"
    text = FACE.read_text(encoding="utf-8")
    wrong.write_text(text.replace("(covariance(x, y), float)", "(covariance(x, y), str)"), encoding="utf-8")
    said, _, status = checked(wrong, kept)
    assert status == 1
    assert 'Expression is of type "float", not "str"' in said


def test_the_package_tells_type_checkers_that_it_is_typed() -> None:
    assert Path(reportgen.__file__).with_name("py.typed").is_file()
