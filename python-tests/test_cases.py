"""The shared cases, in Python. Leaves a digest of every answer in target/cases/python.txt."""

from __future__ import annotations

import json
from typing import Literal

import edgenail
import pytest
from cases import ROOT, Answer, Case, differences, known_failures, load
from edgenail.lengths import Style

CASES = load()
KNOWN = known_failures()

STYLES: dict[str, tuple[Style, Literal[16, 32, 64]]] = {
    "inches_sixteenth": ("inches", 16),
    "inches_thirty_second": ("inches", 32),
    "inches_sixty_fourth": ("inches", 64),
    "feet_inches_sixteenth": ("feet_inches", 16),
    "feet_inches_thirty_second": ("feet_inches", 32),
    "feet_inches_sixty_fourth": ("feet_inches", 64),
    "decimal_inches": ("decimal_inches", 16),
    "millimetres": ("millimetres", 16),
}
"""The styles by the names that cases use."""


def dump(document: object) -> str:
    """A document as the other languages write it."""
    return json.dumps(document, ensure_ascii=False, separators=(",", ":"))


def answer(case: Case) -> Answer:
    """The answer of the Python package."""
    try:
        if case.operation == "plan":
            return Answer("result", edgenail.plan(case.document).json)
        if case.operation == "batch":
            outcomes = edgenail.plan_batch(case.document)
            return Answer("result", f"[{','.join(outcome.json for outcome in outcomes)}]")
        if case.operation == "what_if":
            plan = edgenail.plan(case.document["house"])
            return Answer("result", plan.what_if(case.document["changes"]).json)
        if case.operation == "capacity":
            return Answer("result", edgenail.capacity(case.document).json)
        if case.operation == "length":
            length = edgenail.Length(case.document["text"], case.document["unit"])
            return Answer("result", dump({"units": length.units, "exact": length.exact}))
        if case.operation == "show":
            length = edgenail.Length.from_units(case.document["units"])
            style, finest = STYLES[case.document["style"]]
            shown = length.show(style, case.document["rounding"], finest)
            return Answer("result", dump({"text": shown.text, "rounded": shown.rounded}))
    except edgenail.EdgenailError as error:
        return Answer("error", error.json)
    raise ValueError(f"no operation {case.operation}")


def test_there_are_cases_and_each_has_its_own_name() -> None:
    names = [case.name for case in CASES]
    assert names
    assert len(names) == len(set(names))


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_case(case: Case) -> None:
    faults = differences(case, answer(case))
    if case.name in KNOWN:
        assert faults, f"passes, take it off the list: {KNOWN[case.name]}"
    else:
        assert not faults, "\n".join(faults)


def test_digests_are_written_for_comparison() -> None:
    folder = ROOT / "target" / "cases"
    folder.mkdir(parents=True, exist_ok=True)
    lines = [f"{case.name} {case.operation} {answer(case).digest}\n" for case in CASES]
    (folder / "python.txt").write_text("".join(lines), encoding="utf-8")
