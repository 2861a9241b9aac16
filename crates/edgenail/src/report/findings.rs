//! The table `findings`.

use super::{Results, word};
use crate::finding::Finding;
use crate::length::{Length, Style};
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    finding: &'a Finding,
    /// How its lengths are written.
    style: Style,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let findings: &'a [Finding] = results.findings;
    let style = results.house.drawn_in.in_text();
    findings.iter().map(|finding| Row { finding, style }).collect()
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "findings",
        meaning: "Something that the checks found.",
        fields: vec![
            Field::text("code", "What was found.", |row: &Row<'_>| {
                word(&row.finding.code).into()
            }),
            Field::text("severity", "How much it matters.", |row| {
                word(&row.finding.severity).into()
            }),
            Field::text("wall", "Name of the wall.", |row| {
                row.finding.wall.as_str().into()
            }),
            Field::text("mark", "The panel's mark, empty where there is none.", |row| {
                row.finding.piece.as_str().into()
            }),
            Field::int("placed", "1 if the place is known, else 0.", |row| {
                row.finding.at.is_some().into()
            }),
            Field::length("x", "Place along the wall; 0 where it is not known.", |row| {
                row.finding.at.map_or(Length::ZERO, |at| at.0)
            }),
            Field::length("y", "Height; 0 where it is not known.", |row| {
                row.finding.at.map_or(Length::ZERO, |at| at.1)
            }),
            Field::text("found", "What was found.", |row| {
                row.finding.found.written(row.style).into()
            }),
            Field::text("allowed", "What is allowed.", |row| {
                row.finding.allowed.written(row.style).into()
            }),
            Field::text("message", "A sentence for a person.", |row| {
                row.finding.message.written(row.style).into()
            }),
        ],
    }
}
