"""A workspace compiled or audited: every campaign through the steps, every finding of all of them in one run."""

from __future__ import annotations

import posixpath
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from reportgen.build import pace, stamp
from reportgen.build.finish import files_across, pages_across, put_in_place
from reportgen.build.in_reach import in_reach
from reportgen.build.memory import Standing
from reportgen.build.progress import Built, Progress, Tell, quiet
from reportgen.build.settings import settings, texts
from reportgen.build.steps import CHECKED, READ, SHOWN, Made, Step, follow
from reportgen.build.worst_first import worst_first
from reportgen.finding import Finding, Refused
from reportgen.store.kept import Kept, kept_in, key_of, tidy

if TYPE_CHECKING:
    from reportgen.campaign.declared import Publication
    from reportgen.pages.told import Page
    from reportgen.pages.whereabouts import Whereabouts
    from reportgen.sources import Workspace
    from reportgen.store.snapshot import Snapshot
    from reportgen.theme import Theme

SITE = ".site"
KEPT = ".kept"
PLACING = Progress("putting the site in place")


def compile_site(path: Path, out: Path | None = None, tell: Tell = quiet, standing: Standing | None = None) -> Built:
    """Compile the workspace at or above `path`, or the lone campaign there, into `out` (by default its `.site`).

    Nothing is done where the site already stands as its files say. The old site stays until the new one is whole.
    `standing` is what a process that compiles again remembers of the last time; where it remembers nothing yet, all is
    made once to fill it.
    Raises `Refused` with every finding of every campaign where one of them is an error, and OSError where the disk
    can't be read or written.
    """
    from reportgen.sources import find_workspace

    workspace = find_workspace(path)
    target = (out or workspace.root / SITE).absolute()
    kept = kept_in(workspace.root / KEPT)
    before = stamp.read(kept, target)
    now = stamp.look(workspace.root, workspace.campaigns, target, before)
    remembers = standing is not None and bool(standing.campaigns)
    if before and stamp.stands(before, now) and (standing is None or remembers):
        stamp.refresh(kept, target, before, now)
        return Built(before.findings, before.campaigns, before.pages, target, unchanged=True)
    memory = standing or Standing()
    with pace.timed(kept, f"{target} again" if remembers else str(target), _plan(workspace), tell) as telling:
        checked = _check(workspace, telling, stamp.program(now), kept, memory, now.inputs)
        shown = _show(checked, telling, memory)
        telling(PLACING)
        pages, changed = _place(workspace, checked, shown, target, stamp.program(now), kept)
    built = Built(checked.findings, len(shown), pages, target)
    if standing is not None:
        built = replace(built, unchanged=not changed, where=_where(shown))
    stamp.keep(kept, target, now, workspace.root, _read_besides(shown), built)
    tidy(kept)
    return built


def audit_path(path: Path, tell: Tell = quiet) -> tuple[Finding, ...]:
    """All findings about the workspace or lone campaign at `path`, worst first, errors among them; writes nothing."""
    from reportgen.sources import find_workspace

    try:
        return _check(find_workspace(path), tell, "", Kept(None), Standing(), {}).findings
    except Refused as refused:
        return worst_first(refused.findings)


@dataclass(frozen=True)
class _Checked:
    """All campaigns that can be read, the pages across them, and every finding; `refused`: one is an error."""

    made: tuple[Made, ...]
    across: tuple[Page, ...]
    publication: Publication
    theme: Theme
    findings: tuple[Finding, ...]

    @property
    def refused(self) -> bool:
        return any(finding.severity == "error" for finding in self.findings)


def _check(workspace: Workspace, tell: Tell, program: str, kept: Kept, standing: Standing, files: Snapshot) -> _Checked:
    """Everything that can be wrong, looked for in one run, as far as each mistake lets one see.

    `program` is the digest of the code and its libraries, `kept` where what takes long to work out is kept, `files`
    what is in the files that steps can see.
    """
    publication, first, theme = settings(workspace)
    program = key_of(program, publication.speaks.digest)
    site_texts, unreadable = texts(workspace)
    standing.on((program, publication, theme))
    settled = {"workspace": workspace, "publication": publication, "site_texts": site_texts}
    settled |= {"program": program, "kept": kept, "language": publication.speaks}
    begin = [
        {**settled, "folder": folder, "in_reach": in_reach(workspace.root, folder, workspace.campaigns, files)}
        for folder in workspace.campaigns
    ]
    read, refusals = _all_through(READ, begin, tell, standing)
    made, further = _in_order_of_testing(read, tell, standing)
    refusals = (*refusals, *further, *unreadable)
    across: tuple[Page, ...] = ()
    last: tuple[Finding, ...] = ()
    if not refusals:
        try:
            across, last = pages_across(publication, made, site_texts, theme, standing.site, program, kept)
        except Refused as refused:
            last = refused.findings
    told = (finding for campaign in made for finding in campaign["findings"])
    return _Checked(made, across, publication, theme, worst_first((*first, *refusals, *told, *last)))


def _show(checked: _Checked, tell: Tell, standing: Standing) -> tuple[Made, ...]:
    """Every campaign with its pages. Raises `Refused` with every finding, where one is an error."""
    if checked.refused:
        raise Refused(checked.findings)
    begin = [{**made, "theme": checked.theme} for made in checked.made]
    shown, refusals = _all_through(SHOWN, begin, tell, standing)
    if refusals:
        raise Refused(worst_first((*refusals, *checked.findings)))
    return shown


def _place(
    workspace: Workspace, checked: _Checked, shown: Sequence[Made], target: Path, program: str, kept: Kept
) -> tuple[int, bool]:
    """The site put at `target`: how many pages it has, and whether anything on it is new. Raises `Refused`, OSError."""
    try:
        besides = files_across(checked.publication, shown, checked.across, checked.theme, program, kept)
    except Refused as refused:
        raise Refused(worst_first((*refused.findings, *checked.findings))) from None
    return put_in_place(workspace, shown, checked.across, besides, checked.theme, target)


def _all_through(
    steps: tuple[Step, ...], begin: Sequence[Made], tell: Tell, standing: Standing
) -> tuple[tuple[Made, ...], tuple[Finding, ...]]:
    """Every campaign through `steps`; one that is refused leaves its findings and stops no other."""
    through: list[Made] = []
    refusals: list[Finding] = []
    for done, known in enumerate(begin):
        try:
            folder = known["folder"]
            through.append(follow(steps, known, _saying(tell, folder, done, len(begin)), standing.of(folder)))
        except Refused as refused:
            refusals += refused.findings
    return tuple(through), tuple(refusals)


def _in_order_of_testing(
    read: Sequence[Made], tell: Tell, standing: Standing
) -> tuple[tuple[Made, ...], tuple[Finding, ...]]:
    """The same through the next table, the earliest tested first: each is told what those before it came to."""
    from reportgen.build.history import in_order_of_testing

    through: dict[str, Made] = {}
    refusals: list[Finding] = []
    for done, known in enumerate(sorted(read, key=lambda made: in_order_of_testing(made["declared"].campaign))):
        others = tuple((made["measured"], made["evaluation"]) for made in through.values())
        folder = known["folder"]
        saying = _saying(tell, folder, done, len(read))
        try:
            through[folder] = follow(CHECKED, {**known, "others": others}, saying, standing.of(folder))
        except Refused as refused:
            refusals += refused.findings
    return tuple(through[made["folder"]] for made in read if made["folder"] in through), tuple(refusals)


def _plan(workspace: Workspace) -> tuple[str, ...]:
    """The steps of a compile, in order."""
    tables = [(workspace.campaigns, [step.says for step in table]) for table in (READ, CHECKED, SHOWN)]
    return pace.planned([*tables, ([""], [PLACING.step])])


def _where(shown: Iterable[Made]) -> Whereabouts:
    from reportgen.pages.whereabouts import whereabouts

    return whereabouts(made["told"] for made in shown)


def _saying(tell: Tell, folder: str, done: int, of: int) -> Callable[[str], None]:
    return lambda step: tell(Progress(step, folder, done, of))


def _read_besides(shown: Iterable[Made]) -> tuple[str, ...]:
    """Files that declarations point to, from the workspace, wherever they lie."""
    files = {file.path for made in shown for file in made["readings"].files}
    places = {place.file for made in shown for place in made["declared"].places.values()}
    photos = {
        posixpath.normpath(posixpath.join(made["declared"].campaign.folder, photo.file))
        for made in shown
        for photo in made["declared"].campaign.photos
    }
    return tuple(sorted((files | places | photos) - {""}))
