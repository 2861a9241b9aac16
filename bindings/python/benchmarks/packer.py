"""rectpack, with its guillotine algorithms alone: each in turn, the fewest sheets count."""

from __future__ import annotations

import time

import rectpack  # type: ignore[import-untyped]
from lists import CutList
from outcome import Outcome
from rectpack import guillotine

ALGORITHMS = [
    getattr(guillotine, f"Guillotine{choice}{split}")
    for choice in ("Bssf", "Blsf", "Baf")
    for split in ("Sas", "Las", "Slas", "Llas", "Maxas", "Minas")
]


def solve(cut_list: CutList) -> Outcome:
    """The fewest sheets of all its guillotine algorithms, and the time of all of them."""
    start = time.perf_counter()
    fewest: int | None = None
    for algorithm in ALGORITHMS:
        packer = rectpack.newPacker(
            mode=rectpack.PackingMode.Offline,
            bin_algo=rectpack.PackingBin.BBF,
            pack_algo=algorithm,
            sort_algo=rectpack.SORT_AREA,
            rotation=cut_list.turn,
        )
        packer.add_bin(*cut_list.room, count=len(cut_list.pieces))
        for width, height in cut_list.pieces:
            packer.add_rect(width + cut_list.kerf, height + cut_list.kerf)
        packer.pack()
        if sum(len(sheet) for sheet in packer) == len(cut_list.pieces):
            fewest = len(packer) if fewest is None else min(fewest, len(packer))
    return Outcome(fewest, None, False, time.perf_counter() - start)
