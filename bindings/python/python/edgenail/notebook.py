"""How tables and plans show themselves in a notebook."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from edgenail.plan import Plan
    from edgenail.table import Table

__all__ = ["plan_html", "table_html"]

ROWS_SHOWN = 60
"""A notebook cell shows no more rows than this."""


def table_html(table: Table) -> str:
    """A table as HTML, cut off after the first rows with a line that says so."""
    heads = "".join(
        f'<th title="{escape(column.meaning)}">{escape(column.name)}{_unit(column.unit)}</th>'
        for column in table.columns
    )
    lines = (
        "<tr>" + "".join(f"<td>{escape(str(value))}</td>" for value in row) + "</tr>"
        for row in table.rows[:ROWS_SHOWN]
    )
    more = len(table) - ROWS_SHOWN
    note = f"<p>{more} more rows</p>" if more > 0 else ""
    caption = f"<caption>{escape(table.name)}: {escape(table.meaning)}</caption>"
    return f"<table>{caption}<thead><tr>{heads}</tr></thead><tbody>{''.join(lines)}</tbody></table>{note}"


def plan_html(plan: Plan) -> str:
    """A plan as HTML: the drawing of each wall, what was found, what to order."""
    drawings = "".join(f"<h4>{escape(wall)}</h4>{plan.svg(wall)}" for wall in plan.wall_names)
    tables = "".join(table_html(table) for table in (plan.findings, plan.takeoff) if len(table) > 0)
    return f"<section>{drawings}{tables}</section>"


def _unit(unit: str | None) -> str:
    return f"<br><small>{escape(unit)}</small>" if unit else ""
