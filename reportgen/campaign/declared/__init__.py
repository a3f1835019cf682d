"""What an author declares, read, checked and put together: the campaign every later stage sees.

How it was written (one file or thirty, short form or long) no longer shows here. Line numbers lie beside it in
`Declared.places`, so that a comment added to a file changes no value here.
"""

from reportgen.campaign.declared.amounts import Amount, Day
from reportgen.campaign.declared.campaigns import Campaign, Declared, ProseFile, Publication
from reportgen.campaign.declared.contenders import Claim, Contender, Price, Specimen
from reportgen.campaign.declared.deciding import WhenDecided
from reportgen.campaign.declared.instruments import (
    EVERY,
    Accuracy,
    Calibration,
    Constant,
    Instrument,
    Method,
    OrderRule,
    Repeatability,
    Repeats,
    ScatterRule,
)
from reportgen.campaign.declared.pictures import Film, Photo
from reportgen.campaign.declared.remarks import (
    Acceptance,
    Amendment,
    Assumption,
    Decided,
    DeclaredCaveat,
    Exclusion,
    Incident,
    Moment,
    Narrowing,
    Pushes,
    TwoRecords,
)
from reportgen.campaign.declared.tests import Better, Column, Kind, Laboratory, Logger, Quantity, Source, Test, Until
from reportgen.campaign.declared.verdicts import Criterion, Group, Must, Use, VerdictPlan, WeSay

__all__ = [
    "EVERY",
    "Acceptance",
    "Accuracy",
    "Amendment",
    "Amount",
    "Assumption",
    "Better",
    "Calibration",
    "Campaign",
    "Claim",
    "Column",
    "Constant",
    "Contender",
    "Criterion",
    "Day",
    "Decided",
    "Declared",
    "DeclaredCaveat",
    "Exclusion",
    "Film",
    "Group",
    "Incident",
    "Instrument",
    "Kind",
    "Laboratory",
    "Logger",
    "Method",
    "Moment",
    "Must",
    "Narrowing",
    "OrderRule",
    "Photo",
    "Price",
    "ProseFile",
    "Publication",
    "Pushes",
    "Quantity",
    "Repeatability",
    "Repeats",
    "ScatterRule",
    "Source",
    "Specimen",
    "Test",
    "TwoRecords",
    "Until",
    "Use",
    "VerdictPlan",
    "WeSay",
    "WhenDecided",
]
