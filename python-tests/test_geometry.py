"""Plans of generated walls, checked by a general-purpose geometry library (Shapely) that knows nothing of them.

Bounds are those of `docs/FIELDS.md`, each with its source there: nails keep 3/8 in. from the panel edge and 1/4 in. from the
member's edge, panels a gap of 1/8 in., or 1/2 in. on a sawn rim.
"""

from __future__ import annotations

import json
from collections import Counter, defaultdict
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any

from shapely import STRtree
from shapely.geometry import LineString, MultiPoint, Point, Polygon, box
from shapely.geometry.base import BaseGeometry
from shapely.ops import unary_union

import edgenail
from edgenail import Length, NoLayoutError, Plan

SEEDS = range(240)
INCH = 40640
GAP, RIM_GAP = INCH // 8, INCH // 2
PANEL_EDGE, MEMBER_EDGE = 3 * INCH // 8, INCH // 4
CLOSE = 2
"""Units of 1/40640 in. that sloped lines and odd gaps may be rounded by."""

Row = dict[str, Any]


@dataclass(frozen=True)
class Wall:
    """One wall of a plan, by table."""

    seed: int
    document: Row
    planned: Row
    corners: frozenset[str]
    """The ends at which it meets another wall."""
    tables: dict[str, list[Row]]

    def shapes(self, table: str) -> dict[int, Polygon]:
        rings: dict[int, dict[int, list[tuple[int, int]]]] = defaultdict(lambda: defaultdict(list))
        for row in self.tables[table]:
            rings[row["panel"]][row["ring"]].append((row["x"], row["y"]))
        return {
            panel: Polygon(of[0], [of[ring] for ring in sorted(of) if ring]) for panel, of in rings.items()
        }


def rows(plan: Plan, name: str, wall: int) -> list[Row]:
    table = plan.table(name)
    made = (dict(zip(table.column_names, row, strict=True)) for row in table.rows)
    return [row for row in made if row["wall_index"] == wall]


@cache
def walls() -> tuple[list[Wall], Counter[str], int]:
    """The walls of all houses that have a layout, how often each class was seen, and how many houses had none."""
    found: list[Wall] = []
    seen: Counter[str] = Counter()
    without = 0
    names = ["walls", "openings", "members", "outlines", "cells", "edges", "blocks", "nails"]
    for seed in SEEDS:
        text, classes = edgenail.generated_house(seed)
        try:
            plan = edgenail.plan(text)
        except NoLayoutError:
            without += 1
            continue
        seen.update(classes)
        document, planned = json.loads(text), plan.to_dict()
        for index, wall in enumerate(document["walls"]):
            tables = {name: rows(plan, name, index) for name in names}
            met = [corner[role] for corner in document["corners"] for role in ("through", "butting")]
            corners = frozenset(end["end"] for end in met if end["wall"] == wall["name"])
            found.append(Wall(seed, wall, planned["walls"][index], corners, tables))
    return found, seen, without


def units(text: str) -> int:
    return Length(text).units


def ends(wall: Wall) -> tuple[float, float]:
    """Where the sheathing ends: with the frame, and at a corner where the plan says."""
    bounds = unary_union(list(wall.shapes("cells").values())).bounds
    left = bounds[0] if "left" in wall.corners else 0
    right = bounds[2] if "right" in wall.corners else units(wall.document["length"])
    return left, right


def top_line(wall: Wall, x0: float, x1: float) -> list[tuple[float, float]]:
    """The upper line of the sheathing from right to left, reckoned from the house as it was written."""
    top = wall.document["sections"][0]["top"]
    high = wall.planned["levels"][-1]
    slopes = top["kind"] == "rake" or (top["kind"] == "gable_truss" and top["sheathed"])
    if not slopes:
        return [(x1, high), (x0, high)]
    ridge = units(top["ridge_x"])
    pitch = top.get("pitch") or top["left"]
    fall = Fraction(int(pitch["rise"]), int(pitch["run"]))
    xs = [x1, x0] if ridge <= x0 or x1 <= ridge else [x1, ridge, x0]
    peak = high + min(abs(x - ridge) for x in xs) * fall
    return [(x, float(peak - abs(x - ridge) * fall)) for x in xs]


def region(wall: Wall) -> BaseGeometry:
    """What has to be sheathed: the wall less its openings."""
    x0, x1 = ends(wall)
    low = -wall.planned["reach"]
    outer = Polygon([(x0, low), (x1, low), *top_line(wall, x0, x1)])
    concrete = wall.document["sections"][0]["bottom"]["bears"] == "concrete"
    holes = []
    for opening in wall.tables["openings"]:
        # A doorway on a foundation is open down to the end of the sheathing.
        below = low - INCH if concrete and opening["y0"] <= 0 else opening["y0"]
        holes.append(box(opening["x0"], below, opening["x1"], opening["y1"]))
    return outer.difference(unary_union(holes)) if holes else outer


def test_enough_of_every_class_of_house_is_seen() -> None:
    found, seen, without = walls()
    assert len(found) >= 250
    assert without * 20 <= len(SEEDS), f"{without} houses have no layout"
    assert len(seen) == 10
    assert min(seen.values()) >= 20, seen


def test_cells_tile_the_wall() -> None:
    for wall in walls()[0]:
        cells = list(wall.shapes("cells").values())
        assert all(cell.is_valid for cell in cells), wall.seed
        whole, wanted = unary_union(cells), region(wall)
        slack = CLOSE * (whole.length + wanted.length)
        assert whole.symmetric_difference(wanted).area <= slack, wall.seed
        assert sum(cell.area for cell in cells) - whole.area <= slack, wall.seed


def test_panels_lie_in_their_cells_and_keep_their_gap() -> None:
    for wall in walls()[0]:
        cells, panels = wall.shapes("cells"), wall.shapes("outlines")
        assert cells.keys() == panels.keys()
        for panel, outline in panels.items():
            assert outline.is_valid, (wall.seed, panel)
            assert outline.difference(cells[panel].buffer(CLOSE)).area == 0, (wall.seed, panel)
        ids, shapes = list(panels), list(panels.values())
        tree = STRtree(shapes)
        for at, panel in enumerate(ids):
            for other in tree.query(shapes[at].buffer(RIM_GAP)):
                if other > at:
                    apart = shapes[at].distance(shapes[other])
                    assert apart >= GAP - CLOSE, (wall.seed, panel, ids[other], apart / INCH)
                    shared = cells[panel].intersection(cells[ids[other]])
                    if shared.length > INCH:
                        assert apart <= RIM_GAP + CLOSE, (wall.seed, panel, ids[other], apart / INCH)


def face(member: Row) -> Polygon:
    return box(member["x0"], member["y0"], member["x1"], member["y1"])


def test_nails_stand_on_their_member_and_in_their_panel() -> None:
    nails = 0
    for wall in walls()[0]:
        panels = wall.shapes("outlines")
        members = {member["id"]: member for member in wall.tables["members"]}
        by_panel: dict[int, list[tuple[int, int]]] = defaultdict(list)
        for nail in wall.tables["nails"]:
            x, y = nail["x"], nail["y"]
            member = members[nail["member"]]
            where = (wall.seed, wall.document["name"], nail)
            by_panel[nail["panel"]].append((x, y))
            assert face(member).covers(Point(x, y)), where
            across = (
                min(x - member["x0"], member["x1"] - x)
                if member["axis"] == "vertical"
                else min(y - member["y0"], member["y1"] - y)
            )
            if member["axis"] != "sloped":
                assert across >= MEMBER_EDGE, where
        for panel, points in by_panel.items():
            inner = panels[panel].buffer(-(PANEL_EDGE - CLOSE), join_style="mitre")
            assert inner.covers(MultiPoint(points)), (wall.seed, panel)
            nails += len(points)
    assert nails > 100_000


def test_blocks_back_their_edges() -> None:
    blocks = 0
    for wall in walls()[0]:
        edges = {edge["id"]: edge for edge in wall.tables["edges"]}
        added = {member["id"]: member for member in wall.tables["members"] if member["kind"] == "block"}
        faces = {face(member).bounds for member in added.values()}
        for block in wall.tables["blocks"]:
            if block["kind"] != "block":
                continue
            blocks += 1
            wood = face(block)
            assert wood.bounds in faces, (wall.seed, block)
            served = [edges[int(edge)] for edge in block["serves"].split()]
            assert served, (wall.seed, block)
            for edge in served:
                x0, y0, x1, y1 = (edge[name] for name in ("x0", "y0", "x1", "y1"))
                into = {"bottom": (0, 1), "top": (0, -1), "left": (1, 0), "right": (-1, 0)}[edge["side"]]
                inset = edge["inset"]
                assert PANEL_EDGE <= inset, (wall.seed, edge)
                line = LineString(
                    [(x0 + into[0] * inset, y0 + into[1] * inset), (x1 + into[0] * inset, y1 + into[1] * inset)]
                )
                assert line.distance(wood) == 0, (wall.seed, block, edge)
                assert wood.buffer(INCH, join_style="mitre").covers(line), (wall.seed, block, edge)
                if edge["side"] in ("bottom", "top"):
                    assert min(y0 + into[1] * inset - block["y0"], block["y1"] - y0 - into[1] * inset) >= MEMBER_EDGE
                assert edge["member"] in added, (wall.seed, edge)
    assert blocks > 200
