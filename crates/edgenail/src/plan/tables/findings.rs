//! The table of findings.

use super::{length, named, text};
use crate::finding::Finding;
use crate::table::{Schema, Table};

pub(in crate::plan) fn findings(findings: &[Finding]) -> Table {
    let schema = Schema {
        name: "findings",
        meaning: "What is wrong or worth a thought, one a row.",
        fields: vec![
            text("wall", "Name of the wall.", |finding: &Finding| finding.wall.clone()),
            text("piece", "Mark of the piece; empty where there is none.", |finding| finding.piece.clone()),
            text("severity", "refuse, mend or advise.", |finding| named(&finding.severity)),
            text("code", "What was found.", |finding| named(&finding.code)),
            length("x", "Where, -1 where it has no place.", |finding| finding.at.map_or(-1, |(x, _)| x.units())),
            length("y", "Where, -1 where it has no place.", |finding| finding.at.map_or(-1, |(_, y)| y.units())),
            text("found", "What was found.", |finding| finding.found.clone()),
            text("allowed", "What is allowed.", |finding| finding.allowed.clone()),
            text("message", "The same as a sentence, with the remedy.", |finding| finding.message.clone()),
        ],
    };
    schema.table(findings)
}
