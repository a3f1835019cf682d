"""What campaigns share: methods, instruments, constants."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, ClassVar, Literal

from reportgen.campaign import short
from reportgen.campaign.accuracy import AccuracyOf
from reportgen.campaign.dates import DayOf
from reportgen.campaign.declared.instruments import UnfinishedRule
from reportgen.campaign.frame_rates import FrameRateOf
from reportgen.campaign.given import Entry, Given
from reportgen.campaign.instrument_terms import ClockOf, DriftOf, RepeatsOf
from reportgen.campaign.ranges import RangeOf
from reportgen.campaign.scalar import (
    AmountOf,
    AmountOrGuess,
    AmountOrPast,
    Name,
    SizeOf,
    Term,
    Weight,
    Whole,
    Words,
    YesNo,
    choice,
)
from reportgen.campaign.shape import Short, key, many, rest
from reportgen.campaign.written.calibration import WrittenCalibration
from reportgen.campaign.written.pictures import WrittenPhoto
from reportgen.campaign.written.test import Order, Scatter
from reportgen.finding import Place

Unfinished = Annotated[Given[UnfinishedRule], choice("what becomes of such a run", "not ranked", "worst place")]
SharedPart = Literal["offset", "gain", "both", "nothing"]
Shared = Annotated[Given[SharedPart], choice("what readings share", "offset", "gain", "both", "nothing")]


@dataclass(frozen=True, kw_only=True)
class WrittenRepeatability:
    """How far one pass scatters: a standard deviation for each quantity, and what it was found from."""

    SHORT: ClassVar[Short] = Short(short.past_campaigns, short.PAST_PATTERN, (short.PAST,))
    at: Place
    past_campaigns: YesNo | None = key("Whether passes of past campaigns by this version tell it, where no figure does")
    passes: Whole | None = key("From how many passes, all products together")
    products: Whole | None = key("Over how many products")
    source: Words | None = key("Where it comes from")
    each: tuple[Entry[AmountOrPast], ...] = rest(
        "A quantity's name and the standard deviation of one pass, or `past campaigns`"
    )


@dataclass(frozen=True, kw_only=True)
class WrittenMethod:
    """A written procedure, one version of it."""

    at: Place
    title: Words = key("Its name on pages", required=True)
    scatter: Scatter | None = key("Whether contenders share one scatter between passes: common, own or relative")
    order: Order | None = key("The order in which contenders are run")
    repeatability: WrittenRepeatability | None = key("How far one pass scatters, where that is known")
    between_sessions: AmountOrGuess | None = key("How far one day differs from another, as a standard deviation")
    between_specimens: AmountOrGuess | None = key("How far one unit of a product differs from another, likewise")
    chained: YesNo | None = key("Whether each weighing after is the next weighing before")
    did_not_finish: Unfinished | None = key("What becomes of a run that did not finish: `not ranked`, or `worst place`")
    steps: tuple[Words, ...] = many("What to do, step by step")
    cautions: tuple[Words, ...] = many("What could hurt someone")
    cannot_tell: tuple[Words, ...] = many("What it can't tell you")
    says: Words | None = key("Anything else, in Markdown")
    changed: Words | None = key("What this version changed")
    formerly: tuple[Name, ...] = many("Ids it had before; its page at the old address leads here")


@dataclass(frozen=True, kw_only=True)
class WrittenInstrument:
    """What took a reading."""

    at: Place
    title: Words | None = key("Its name on pages")
    resolution: SizeOf | None = key("The smallest step it shows")
    range: RangeOf | None = key("What it can show: 0 g to 2000 g, up to 130 dB")
    accuracy: AccuracyOf | None = key("As its maker states it: ±0.3 g, ±0.5 % + 2 digits, class 1.6, or unknown")
    frames: FrameRateOf | None = key("A camera's rate, 60000/1001 frames a second; readings in frames become times")
    by_hand: YesNo | None = key("Whether a hand starts and stops it")
    shared: Shared | None = key("What all readings of one session have in common")
    model: Term | None = key("The maker's designation")
    serial: Term | None = key("Its serial number, or `not noted`")
    calibrated: DayOf | None = key("When it was last calibrated, or `not noted`")
    calibrated_by: Words | None = key("By whom")
    calibration: WrittenCalibration | None = key("What its calibration found: correction, uncertainty, expiry")
    drift: DriftOf | None = key("How far at most it may move in a year since: 0.1 g a year, 0.2 % a year")
    repeatability: RepeatsOf | None = key("Standard deviation of its readings of one thing: 0.05 g from 10 readings")
    reaction: SizeOf | None = key("By hand: how far the hand may be off, 0.2 s where nothing is said")
    clock: ClockOf | None = key("How fast or slow at most its own clock may be: ±50 ppm, ±2 s a day")
    source: Words | None = key("Where these figures come from")
    photo: WrittenPhoto | None = key("A photograph of it: what it shows; its file bears the instrument's id")
    notes: Words | None = key("Anything else worth knowing")
    formerly: tuple[Name, ...] = many("Ids it had before; its page at the old address leads here")
    SHORT: ClassVar[Short] = Short(
        short.instrument,
        short.INSTRUMENT_PATTERN,
        ("0.1 dB, up to 130 dB, accuracy ±1.5 dB", "0.01 s, by hand", "60000/1001 frames a second"),
    )


@dataclass(frozen=True, kw_only=True)
class WrittenConstant:
    """A value taken from elsewhere."""

    at: Place
    value: AmountOf = key("The value with its unit", required=True)
    source: Words = key("Where it comes from", required=True)
    within: SizeOf | None = key("Half its width, where it lies between two ends")
    u: SizeOf | None = key("Its standard uncertainty, where the source gives that")
    uncertainty: SizeOf | None = key("Its expanded uncertainty U, as certificates give it, with `k`")
    k: Weight | None = key("The coverage factor of that uncertainty, never guessed")
    degrees: Whole | None = key("The degrees of freedom of its uncertainty, where the source gives them")
