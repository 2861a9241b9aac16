//! The table `findings`.

use super::{Results, word};
use crate::finding::Finding;
use crate::length::Length;
use crate::table::{Field, Schema};

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<&'a Finding> {
    results.findings.iter().collect()
}

pub(super) fn schema<'a>() -> Schema<&'a Finding> {
    Schema {
        name: "findings",
        meaning: "Something that the checks found.",
        fields: vec![
            Field::text("code", "What was found.", |finding: &&Finding| {
                word(&finding.code)
            }),
            Field::text("severity", "How much it matters.", |finding| {
                word(&finding.severity)
            }),
            Field::text("wall", "Name of the wall.", |finding| finding.wall.clone()),
            Field::text(
                "mark",
                "The panel's mark, empty where there is none.",
                |finding| finding.piece.clone(),
            ),
            Field::int("placed", "1 if the place is known, else 0.", |finding| {
                finding.at.is_some().into()
            }),
            Field::length("x", "Place along the wall; 0 where it is not known.", |finding| {
                finding.at.map_or(Length::ZERO, |at| at.0)
            }),
            Field::length("y", "Height; 0 where it is not known.", |finding| {
                finding.at.map_or(Length::ZERO, |at| at.1)
            }),
            Field::text("found", "What was found.", |finding| finding.found.clone()),
            Field::text("allowed", "What is allowed.", |finding| finding.allowed.clone()),
            Field::text("message", "A sentence for a person.", |finding| {
                finding.message.clone()
            }),
        ],
    }
}
