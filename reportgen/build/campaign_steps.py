"""What each step of one campaign calls. Rooms are imported where they are used: a step not run loads nothing."""

from __future__ import annotations

import posixpath
from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

from reportgen.finding import Finding, Refused, in_order
from reportgen.wording.language import speaking

SITE_MARK = "site.json"
FIRST_ISSUE = 1

if TYPE_CHECKING:
    from reportgen.build.history import Others
    from reportgen.campaign.declared import Declared, Publication
    from reportgen.charts import Figure
    from reportgen.evaluation.evaluated import Evaluation
    from reportgen.evaluation.history import History
    from reportgen.intake.logger.samples import Samples
    from reportgen.intake.raw.rows import RawView
    from reportgen.intake.reading import Readings
    from reportgen.opendata import OpenData, PassedOn
    from reportgen.pages.told import Page, Told
    from reportgen.site.card import Card
    from reportgen.site.texts import SiteTexts
    from reportgen.sources import Workspace
    from reportgen.store.kept import Kept
    from reportgen.theme import Theme
    from reportgen.wording.language import Language


def declare(workspace: Workspace, folder: str, publication: Publication) -> Declared:
    """The campaign in `folder` as declared. Raises `Refused`, with what can be known to be wrong further on."""
    from reportgen.campaign.load import RefusedInPart, load_campaign

    try:
        return load_campaign(workspace, folder, publication)
    except RefusedInPart as refused:
        from reportgen.build.look_ahead import in_readings_and_formulas

        further = in_readings_and_formulas(workspace, refused.declared)
        raise Refused(dict.fromkeys((*refused.findings, *further))) from None


def open_samples(workspace: Workspace) -> Samples:
    """Where logger files are kept open: opened once, however many formulas look along them."""
    from reportgen.intake.logger.samples import Samples

    return Samples(workspace)


def read(workspace: Workspace, declared: Declared, samples: Samples) -> Readings:
    """Its readings. Raises `Refused`, with what can be known to be wrong with the formulas."""
    from reportgen.intake import read_readings

    try:
        return read_readings(workspace, declared, samples)
    except Refused as refused:
        from reportgen.build.look_ahead import in_formulas

        raise Refused(dict.fromkeys((*refused.findings, *in_formulas(declared)))) from None


def take_along(declared: Declared, readings: Readings) -> Declared:
    """The campaign with the instruments that only its tables name."""
    from reportgen.intake import with_instruments

    return with_instruments(declared, readings)


def without_texts(declared: Declared) -> Declared:
    """The campaign without the author's own texts, on which nothing measured rests."""
    return replace(declared, campaign=replace(declared.campaign, prose=()))


def history(declared: Declared, others: Others) -> History:
    """How far passes scattered in campaigns tested before this one, for the methods that ask for it."""
    from reportgen.build.history import history_of

    return history_of(declared, others)


def evaluate(
    declared: Declared,
    readings: Readings,
    samples: Samples,
    history: History,
    language: Language,
    program: str,
    kept: Kept,
) -> Evaluation:
    """Its results and decisions. Raises `Refused`."""
    from reportgen.build.reckoning_kept import evaluation

    with speaking(language):
        return evaluation(declared, readings, samples.pieces, program, kept, history)


def files_of(workspace: Workspace, declared: Declared) -> tuple[str, ...]:
    """Paths of all files in the campaign's folder, from the workspace; a site that was built there isn't among them."""
    from reportgen.sources import list_files

    files = list_files(workspace, declared.campaign.folder)
    sites = tuple(posixpath.dirname(path) + "/" for path in files if posixpath.basename(path) == SITE_MARK)
    return tuple(path for path in files if not path.startswith(sites))


def check_prose(declared: Declared, evaluation: Evaluation, site_texts: SiteTexts) -> tuple[Finding, ...]:
    """What is wrong with the references in the author's texts: unknown ones, and numbers that no longer agree."""
    from reportgen.prose.checked import check_references

    return check_references(declared, evaluation, site_texts.addresses)


def audit(
    declared: Declared,
    readings: Readings,
    evaluation: Evaluation,
    publication: Publication,
    files: tuple[str, ...],
    prose: tuple[Finding, ...],
) -> tuple[Finding, ...]:
    """Everything there is to say about the campaign: what was met on the way and what the rules find, once each."""
    from reportgen.audit.audit import audit

    met = replace(declared, findings=(*declared.findings, *evaluation.findings, *prose))
    return in_order(dict.fromkeys(audit(met, readings, evaluation, publication, files)))


def draw(
    declared: Declared, evaluation: Evaluation, language: Language, program: str, kept: Kept
) -> Mapping[str, Figure]:
    """Its charts, by what they show."""
    from reportgen.build.charts_kept import figures

    with speaking(language):
        return figures(declared, evaluation, program, kept)


def explored(told: Told) -> Mapping[str, bytes]:
    """What readers load who explore a chart, by address on the site."""
    from reportgen.pages.exploring import explored_files

    return explored_files(told)


def gather(
    publication: Publication,
    declared: Declared,
    readings: Readings,
    evaluation: Evaluation,
    figures: Mapping[str, Figure],
    findings: tuple[Finding, ...],
    theme: Theme,
    raw_views: Mapping[str, RawView],
    site_texts: SiteTexts,
    open_data: OpenData,
) -> Told:
    """All that its pages are told."""
    from reportgen.pages.told import Told
    from reportgen.site.glossary import terms_in

    return Told(
        publication,
        declared,
        readings,
        evaluation,
        figures,
        findings,
        theme,
        open_data,
        raw_views,
        FIRST_ISSUE,
        site_texts.addresses,
        terms_in(site_texts),
    )


def view_raw_files(workspace: Workspace, readings: Readings, evaluation: Evaluation) -> Mapping[str, RawView]:
    """Path in the workspace → what is shown of it, of every file that readings came from. Raises `Refused`."""
    from reportgen.finding import Place
    from reportgen.intake.raw.view import raw_views

    read = readings.readings
    marks = [Place(read[trace.key].at.file, mark.line) for trace in evaluation.traces for mark in trace.marks]
    return raw_views(workspace, readings.files, read.values(), marks)


def pages_of_results(told: Told) -> tuple[Page, ...]:
    """Its pages that show no text of the author's."""
    from reportgen.pages.table import OF_RESULTS, build_pages

    return build_pages(told, OF_RESULTS)


def pages_with_texts(told: Told, declared: Declared) -> tuple[Page, ...]:
    """Its pages that do."""
    from reportgen.pages.table import WITH_TEXTS, build_pages

    return build_pages(replace(told, declared=declared), WITH_TEXTS)


def all_pages(of_results: tuple[Page, ...], with_texts: tuple[Page, ...]) -> tuple[Page, ...]:
    """Both."""
    return of_results + with_texts


def preview(told: Told, program: str, kept: Kept) -> Mapping[str, bytes]:
    """The picture shown where a link to it is shared, by its address."""
    from reportgen.build.previews_kept import campaign_preview

    return campaign_preview(told, program, kept)


def record(
    declared: Declared,
    evaluation: Evaluation,
    findings: tuple[Finding, ...],
    readings: Readings,
    publication: Publication,
) -> str:
    """Its results.json. The issue is the first until one has been released."""
    from reportgen.opendata.open_data import schema_of_results
    from reportgen.record.results import as_json

    return as_json(declared, evaluation, findings, FIRST_ISSUE, readings, schema_of_results(publication))


def named(declared: Declared) -> frozenset[str]:
    """Paths, from the workspace, that the author's texts lead to."""
    from reportgen.build.pictures_kept import named_in_texts

    return named_in_texts(declared.campaign)


def copied(
    workspace: Workspace, declared: Declared, named: frozenset[str], readings: Readings, files: tuple[str, ...]
) -> Mapping[str, str]:
    """Address on the site → path in the workspace, of every file that is passed on byte for byte.

    These are the files its readings came from, what lies in `attachments/`, and what its texts name; but for pictures,
    which tell more than they show.
    """
    from reportgen.addresses import raw_file
    from reportgen.build.pictures_kept import are_pictures, passed_on

    campaign = declared.campaign
    pictures = are_pictures(workspace, campaign, named, files)
    paths = {
        *(file.path for file in readings.files),
        *(f for f in passed_on(campaign, named, files) if f not in pictures),
    }
    return {raw_file(campaign.id, posixpath.relpath(path, campaign.folder or ".")): path for path in sorted(paths)}


def pass_on(
    workspace: Workspace, declared: Declared, copied: Mapping[str, str], readings: Readings
) -> tuple[PassedOn, ...]:
    """Each of those files with its digest, by name."""
    from reportgen.opendata import PassedOn
    from reportgen.sources import digest, read_bytes

    known = {file.path: (file.digest, file.size) for file in readings.files}
    folder = f"{declared.campaign.id}/"
    made = []
    for address, path in sorted(copied.items()):
        if path not in known:
            data = read_bytes(workspace, path)
            known[path] = (digest(data), len(data))
        made.append(PassedOn(address.removeprefix(folder), *known[path]))
    return tuple(made)


def open_data(
    declared: Declared,
    publication: Publication,
    readings: Readings,
    record: str,
    passed_on: tuple[PassedOn, ...],
    program: str,
    kept: Kept,
) -> OpenData:
    """Its tables, what describes them, how to check and to cite them."""
    from reportgen.build.open_data_kept import open_data

    return open_data(declared.campaign, publication, readings, record, passed_on, FIRST_ISSUE, program, kept)


def pictures(
    workspace: Workspace, declared: Declared, named: frozenset[str], files: tuple[str, ...], program: str, kept: Kept
) -> Mapping[str, bytes]:
    """Address on the site → every picture of it: photographs in their sizes, other pictures of pixels alone."""
    from reportgen.build.pictures_kept import pictures

    return pictures(workspace, declared.campaign, named, files, program, kept)


def card(declared: Declared, evaluation: Evaluation, readings: Readings, language: Language) -> Card:
    """What the archive says of it."""
    from reportgen.site.card import card_of

    with speaking(language):
        return card_of(declared, evaluation, readings)
