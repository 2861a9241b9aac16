"""edgenail: its example `cut_lists` takes lists as lines of JSON and times the cutting alone, on one thread."""

from __future__ import annotations

import json
import subprocess

from lists import ROOT, CutList
from outcome import Outcome


def solve(lists: list[CutList]) -> list[Outcome]:
    """What the library makes of each list."""
    lines = (
        json.dumps(
            {"sheet": one.sheet, "kerf": one.kerf, "turn": one.turn, "pieces": one.pieces}, separators=(",", ":")
        )
        for one in lists
    )
    run = subprocess.run(
        ["cargo", "run", "--quiet", "--release", "--package", "edgenail", "--example", "cut_lists"],
        cwd=ROOT,
        input="\n".join(lines),
        capture_output=True,
        text=True,
        check=True,
    )
    found = (json.loads(line) for line in run.stdout.splitlines())
    return [Outcome(one["sheets"], one["bound"], one["proven"], one["seconds"]) for one in found]
