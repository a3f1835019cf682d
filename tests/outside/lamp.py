"""A lamp's run as a logger wrote it: the test that campaigns about light share. `FORMULA` and `UNIT` are put in."""

from __future__ import annotations

RUN_TIME = """\
title: Run time
readings:
  logger: raw/run-{contender}-{pass}.csv
  time: Elapsed, s
  columns: {light: "Ch1, lx, lux-meter"}
quantities:
  run time: {kind: logged, formula: "FORMULA", unit: UNIT, better: higher}
"""
