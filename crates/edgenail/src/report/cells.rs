//! The table `cells`.

use super::Results;
use super::outlines::{Row, corners, named};
use crate::table::Schema;

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    corners(results, |piece| &piece.cell)
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    named(
        "cells",
        "A corner of a panel's cell, from seam centre to seam centre; cells tile the wall. A panel given singly has its outline for a cell.",
    )
}
