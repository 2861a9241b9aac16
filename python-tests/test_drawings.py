"""The drawings: the core's text, and an error for what is not there."""

from __future__ import annotations

import xml.etree.ElementTree as ElementTree

import edgenail
import pytest

PLAN = edgenail.plan(edgenail.demo_house())
SVG = "{http://www.w3.org/2000/svg}svg"


def test_every_wall_has_a_drawing_of_its_sheathing_and_of_its_frame() -> None:
    for wall in PLAN.wall_names:
        for svg, title in ((PLAN.svg(wall), "sheathing"), (PLAN.frame_svg(wall), "frame")):
            drawing = ElementTree.fromstring(svg)
            assert drawing.tag == SVG
            assert drawing[0].text == f"{wall}: {title}"


def test_cut_sheets_come_in_pages() -> None:
    pages = [PLAN.cut_sheets_svg(page) for page in range(PLAN.cut_sheet_pages)]
    titles = [ElementTree.fromstring(page)[0].text for page in pages]
    assert titles == [f"Cut sheets, page {page + 1} of {len(pages)}" for page in range(len(pages))]
    for sheet in range(len(PLAN.sheets)):
        assert sum(f">Sheet {sheet + 1}: " in page for page in pages) == 1


def test_what_is_not_there_is_said() -> None:
    with pytest.raises(KeyError, match="no such wall"):
        PLAN.svg("no such wall")
    with pytest.raises(KeyError, match="no such wall"):
        PLAN.frame_svg("no such wall")
    for page in (-1, PLAN.cut_sheet_pages, 2**62):
        with pytest.raises(IndexError, match=str(page)):
            PLAN.cut_sheets_svg(page)
