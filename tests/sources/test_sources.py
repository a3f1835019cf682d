"""Where a workspace begins, and that nothing outside it is ever read."""

import hashlib

import pytest

from reportgen.finding import Refused
from reportgen.sources import carried, digest, exists, find_workspace, list_files, read_bytes, read_text


@pytest.fixture
def root(tmp_path):
    for rel in (
        "content/publication.yaml", "stoves/campaign.yaml", "burners/campaign.yaml", "content/archive/old/campaign.yaml",
        "tests/fixture/campaign.yaml", "tests/campaign.yaml", ".kept/campaign.yaml", "stoves/raw/b.csv", "stoves/raw/a.csv",
        "stoves/.hidden", "notes/readme.md",
    ):  # fmt: skip
        (tmp_path / rel).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / rel).write_text("title: T\n")
    return tmp_path


def test_campaigns_are_the_folders_with_a_campaign_file_current_ones_first(root):
    assert find_workspace(root).campaigns == ("burners", "stoves", "content/archive/old")


@pytest.mark.parametrize("start", ["", "stoves", "stoves/raw", "stoves/campaign.yaml", "content/archive/old", "notes"])
def test_the_workspace_is_the_nearest_folder_upward_with_a_publication(start, root):
    ws = find_workspace(root / start)
    assert (ws.root, ws.lone) == (root, False)


def test_a_campaign_that_no_workspace_lists_is_one_by_itself(root, tmp_path_factory):
    ws = find_workspace(root / "tests" / "fixture")
    assert (ws.root, ws.campaigns, ws.lone) == (root / "tests" / "fixture", ("",), True)
    alone = tmp_path_factory.mktemp("alone")
    (alone / "campaign.yaml").write_text("title: T\n")
    assert find_workspace(alone / "campaign.yaml").lone


def test_where_there_is_neither_the_campaigns_nearby_are_named(tmp_path):
    (tmp_path / "stoves").mkdir()
    (tmp_path / "stoves" / "campaign.yaml").write_text("title: T\n")
    with pytest.raises(Refused) as refused:
        find_workspace(tmp_path)
    assert "stoves" in refused.value.findings[0].do
    with pytest.raises(Refused, match="there is no"):
        find_workspace(tmp_path / "stovse")


def test_a_campaign_file_of_another_ending_is_noticed(tmp_path):
    (tmp_path / "campaign.yml").write_text("title: T\n")
    with pytest.raises(Refused) as refused:
        find_workspace(tmp_path)
    assert "Rename campaign.yml" in refused.value.findings[0].do


def test_files_are_listed_sorted_without_hidden_ones(root):
    ws = find_workspace(root)
    assert list_files(ws, "stoves") == ("stoves/campaign.yaml", "stoves/raw/a.csv", "stoves/raw/b.csv")
    assert list_files(ws, "nowhere") == ()


@pytest.mark.parametrize(
    "rel", ["../x", "stoves/../../x", "/etc/hostname", "a/../../x", "C:\\x", "c:/x", "stoves/\0x", ".."]
)
def test_a_path_out_of_the_workspace_is_never_read(rel, root):
    (root.parent / "x").write_text("secret")
    ws = find_workspace(root)
    assert not exists(ws, rel)
    with pytest.raises(Refused) as refused:
        read_bytes(ws, rel)
    assert refused.value.findings[0].rule == "leaves-workspace"


def test_a_link_out_of_the_workspace_is_never_followed(root, tmp_path_factory):
    outside = tmp_path_factory.mktemp("outside")
    (outside / "x.csv").write_text("secret")
    (root / "stoves" / "x.csv").symlink_to(outside / "x.csv")
    (root / "stoves" / "folder").symlink_to(outside)
    ws = find_workspace(root)
    for rel in ("stoves/x.csv", "stoves/folder/x.csv"):
        assert not exists(ws, rel)
        with pytest.raises(Refused) as refused:
            read_text(ws, rel)
        assert refused.value.findings[0].rule == "leaves-workspace"
    assert "stoves/folder/x.csv" not in list_files(ws, "stoves")


def test_a_path_may_go_up_and_stay_inside(root):
    ws = find_workspace(root)
    assert exists(ws, "stoves/raw/../../burners/campaign.yaml")
    assert read_text(ws, "stoves/raw/../campaign.yaml") == "title: T\n"


def test_a_missing_file_is_named_with_its_likeliest_neighbour(root):
    with pytest.raises(Refused) as refused:
        read_bytes(find_workspace(root), "stoves/raw/aa.csv")
    finding = refused.value.findings[0]
    assert (finding.rule, finding.place.file) == ("missing-file", "stoves/raw/aa.csv")
    assert "stoves/raw/a.csv" in finding.do


def test_a_folder_is_no_file(root):
    with pytest.raises(Refused) as refused:
        read_bytes(find_workspace(root), "stoves/raw")
    assert refused.value.findings[0].rule == "not-a-file"


def test_text_is_utf_8_with_or_without_a_mark(root):
    (root / "marked.md").write_bytes(b"\xef\xbb\xbfK\xc3\xbcche")
    assert read_text(find_workspace(root), "marked.md") == "Küche"


def test_other_encodings_are_refused_where_they_show(root):
    (root / "old.md").write_bytes("Größe\nin einer Küche".encode("cp1252"))
    with pytest.raises(Refused) as refused:
        read_text(find_workspace(root), "old.md")
    assert str(refused.value.findings[0].place) == "old.md:1:3"


def test_digests_are_what_sha256sum_prints():
    # FIPS 180-4 example: SHA-256 of "abc"
    assert digest(b"abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    assert digest(b"") == hashlib.sha256(b"").hexdigest()


@pytest.mark.parametrize("kind", ["themes", "shared", "handbook"])
def test_the_program_brings_its_folders_along(kind):
    assert carried(kind).is_dir()
