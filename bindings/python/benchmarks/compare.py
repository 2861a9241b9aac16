"""Cutting against general-purpose solvers, side by side in one run, one thread each.

    python3 -m venv target/benchmarks
    target/benchmarks/bin/pip install --requirement bindings/python/benchmarks/requirements.txt
    target/benchmarks/bin/python bindings/python/benchmarks/compare.py [--lists N] [--seconds S]

Leaves `target/benchmarks.md` and `target/benchmarks.csv`. Fails where the library needs more sheets than an optimum that a
reference has proven, than the packer, or than a published optimum; and where a bound of its own is above any plan's sheets.
"""

from __future__ import annotations

import argparse
import csv
import statistics
import sys
from collections.abc import Iterable

import assignment_model
import ours
import packer
import pattern_model
from lists import ROOT, CutList, generated, published
from outcome import Outcome

REFERENCES = ("pattern model", "assignment model", "packer")

Row = tuple[CutList, Outcome, tuple[Outcome, ...]]
"""A list, what the library makes of it, what the references do."""


def main() -> int:
    """Runs all, writes the results, and says what is wrong."""
    arguments = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    arguments.add_argument("--lists", type=int, default=50, help="generated lists (50)")
    arguments.add_argument("--least", type=int, default=10, help="least pieces of a generated list (10)")
    arguments.add_argument("--most", type=int, default=40, help="most pieces of a generated list (40)")
    arguments.add_argument("--seconds", type=float, default=20.0, help="for each model and list (20)")
    chosen = arguments.parse_args()
    lists = published() + generated(chosen.lists, chosen.least, chosen.most)
    rows: list[Row] = []
    for one, own in zip(lists, ours.solve(lists), strict=True):
        others = (
            pattern_model.solve(one, chosen.seconds),
            assignment_model.solve(one, chosen.seconds),
            packer.solve(one),
        )
        rows.append((one, own, others))
        print(f"{one.name}: {_shown(own)}; {', '.join(map(_shown, others))}", file=sys.stderr)
    faults = [fault for row in rows for fault in _faults(*row)]
    text = "\n".join([*_table(rows), "", *_quartiles(rows), "", *(faults or ["Nothing is wrong."])]) + "\n"
    (ROOT / "target").mkdir(exist_ok=True)
    (ROOT / "target" / "benchmarks.md").write_text(text, encoding="utf-8")
    _write_csv(rows)
    print(text)
    return 1 if faults else 0


def _faults(one: CutList, own: Outcome, others: tuple[Outcome, ...]) -> Iterable[str]:
    if own.sheets is None or own.bound is None:
        yield f"{one.name}: not all pieces are cut"
        return
    known = [("published", one.published)]
    known += [
        (name, other.sheets) for name, other in zip(REFERENCES, others, strict=True) if other.proven or name == "packer"
    ]
    for name, sheets in known:
        if sheets is not None and own.sheets > sheets:
            yield f"{one.name}: {own.sheets} sheets, but {sheets} are enough ({name})"
    plans = [one.published, *(other.sheets for other in others)]
    for sheets in plans:
        if sheets is not None and own.bound > sheets:
            yield f"{one.name}: the bound {own.bound} is above a plan with {sheets} sheets"
    for other in others:
        if own.proven and other.bound is not None and own.sheets < other.bound:
            yield f"{one.name}: {own.sheets} sheets are below a reference's bound {other.bound}"


def _shown(found: Outcome) -> str:
    sheets = "no plan" if found.sheets is None else str(found.sheets)
    proof = " proven" if found.proven else "" if found.bound is None else f" (at least {found.bound})"
    return f"{sheets}{proof}, {1000 * found.seconds:.2f} ms"


def _table(rows: list[Row]) -> Iterable[str]:
    yield f"| list | pieces | published | edgenail | {' | '.join(REFERENCES)} |"
    yield "| --- | ---: | ---: | --- | --- | --- | --- |"
    for one, own, others in rows:
        best = "" if one.published is None else one.published
        cells = " | ".join(map(_shown, (own, *others)))
        yield f"| {one.name} | {len(one.pieces)} | {best} | {cells} |"


def _quartiles(rows: list[Row]) -> Iterable[str]:
    own_proven = sum(own.proven for _, own, _ in rows)
    yield f"Lists: {len(rows)}; proven by edgenail: {own_proven}."
    for place, name in enumerate(REFERENCES):
        ratios = [
            others[place].seconds / max(own.seconds, 1e-9)
            for _, own, others in rows
            if others[place].proven or name == "packer"
        ]
        proven = sum(others[place].proven for _, _, others in rows)
        if len(ratios) < 2:
            yield f"{name}: proven {proven}; too few for quartiles."
            continue
        low, middle, high = statistics.quantiles(ratios, n=4)
        of = "all lists" if name == "packer" else f"the {proven} lists that it proves"
        fewer = sum(
            own.sheets is not None and (others[place].sheets is None or own.sheets < (others[place].sheets or 0))
            for _, own, others in rows
        )
        yield (
            f"{name}: its time over ours on {of}, quartiles {low:.1f}, {middle:.1f}, {high:.1f}; "
            f"on {fewer} of all lists edgenail needs fewer sheets or has the only plan."
        )


def _write_csv(rows: list[Row]) -> None:
    names = ("edgenail", *REFERENCES)
    heads = [f"{name} {what}" for name in names for what in ("sheets", "bound", "proven", "seconds")]
    with open(ROOT / "target" / "benchmarks.csv", "w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file)
        writer.writerow(["list", "pieces", "kerf", "turned", "published", *heads])
        for one, own, others in rows:
            cells = [
                value
                for found in (own, *others)
                for value in (found.sheets, found.bound, int(found.proven), f"{found.seconds:.6f}")
            ]
            writer.writerow([one.name, len(one.pieces), one.kerf, int(one.turn), one.published, *cells])


if __name__ == "__main__":
    sys.exit(main())
