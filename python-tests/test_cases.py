"""The shared cases, in Python. Leaves a digest of every answer in target/cases/python.txt."""

from __future__ import annotations

import edgenail
import pytest
from cases import ROOT, Answer, Case, differences, known_failures, load

CASES = load()
KNOWN = known_failures()


def answer(case: Case) -> Answer:
    """The answer of the Python package."""
    try:
        if case.operation == "plan":
            return Answer("result", edgenail.plan(case.document).json)
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
