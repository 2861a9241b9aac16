"""Lists of pieces to be cut: published ones, and made from a seed. All sizes are whole numbers."""

from __future__ import annotations

import csv
import random
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[3]
PUBLISHED = ROOT / "tests" / "reference" / "cutting"


@dataclass(frozen=True)
class CutList:
    """Pieces and the one kind of sheet that they are cut from, by cuts that run from edge to edge."""

    name: str
    sheet: tuple[int, int]
    kerf: int
    turn: bool
    """Pieces may be cut with their sides exchanged."""
    pieces: tuple[tuple[int, int], ...]
    published: int | None = None
    """The least number of sheets, where a publication's instance was solved to the end."""

    @property
    def types(self) -> list[tuple[tuple[int, int], int]]:
        """Sizes with a kerf added to each, and how many of each; the sheet has one added too, so that no kerf is left."""
        counts: dict[tuple[int, int], int] = {}
        for width, height in self.pieces:
            size = (width + self.kerf, height + self.kerf)
            counts[size] = counts.get(size, 0) + 1
        return sorted(counts.items(), reverse=True)

    @property
    def room(self) -> tuple[int, int]:
        """The sheet with a kerf added."""
        return (self.sheet[0] + self.kerf, self.sheet[1] + self.kerf)


def published() -> list[CutList]:
    """The instances of OR-Library, fixed and turned, edge to edge."""
    pieces: dict[str, list[tuple[int, int]]] = {}
    with open(PUBLISHED / "bpp_instances.csv", encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            size = (int(row["item_w"]), int(row["item_h"]))
            pieces.setdefault(row["instance"], []).extend([size] * int(row["count"]))
    lists = []
    with open(PUBLISHED / "optima_sheet_counts.csv", encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            if row["guillotine_only"] != "yes":
                continue
            turn = row["rotation"] == "yes"
            lists.append(
                CutList(
                    name=f"{row['instance']} {'turned' if turn else 'fixed'}",
                    sheet=(int(row["sheet_w"]), int(row["sheet_h"])),
                    kerf=0,
                    turn=turn,
                    pieces=tuple(pieces[row["instance"]]),
                    published=int(row["best_known_here"]) if row["proven"] == "yes" else None,
                )
            )
    return lists


def generated(count: int, least: int, most: int) -> list[CutList]:
    """Lists as walls ask for them, in sixteenths of an inch; list ``n`` is made from the seed ``n``.

    Of a hundred pieces about 30 are rips of upright sheets, 25 lie over or under openings, 20 are flat courses cut short,
    15 are strips along a band, 10 have sides as they were measured; a third repeats the piece before it. None is a whole
    sheet and none is turned. Invented: it stands for no house in particular.
    """
    return [_generated(seed, least, most) for seed in range(count)]


def _generated(seed: int, least: int, most: int) -> CutList:
    dice = random.Random(seed)
    less = dice.choice((0, 2))
    sheet = (48 * 16 - less, dice.choice((8, 8, 8, 9, 10)) * 12 * 16 - less)
    pieces: list[tuple[int, int]] = []
    for _ in range(dice.randint(least, most)):
        if pieces and dice.random() < 0.33:
            pieces.append(pieces[-1])
        else:
            pieces.append(_piece(dice, sheet))
    return CutList(f"generated {seed}", sheet, 2, False, tuple(pieces))


def _piece(dice: random.Random, sheet: tuple[int, int]) -> tuple[int, int]:
    spacing = dice.choice((256, 384, 307))
    share = dice.random()
    if share < 0.30:
        size = (spacing * dice.randint(1, 2) - 2, sheet[1] - 16 * dice.randint(0, 2))
    elif share < 0.55:
        size = (16 * dice.randint(8, 40), 16 * dice.choice((32, 38, 50, 62, 74)))
    elif share < 0.75:
        size = (sheet[0], spacing * dice.randint(1, 5) - 2)
    elif share < 0.90:
        size = (16 * dice.randint(9, 20), sheet[1])
    else:
        size = (dice.randint(16 * 8, 16 * 44), dice.randint(16 * 16, 16 * 92))
    width, height = min(size[0], sheet[0]), min(size[1], sheet[1])
    return (width // 2, height) if (width, height) == sheet else (width, height)
