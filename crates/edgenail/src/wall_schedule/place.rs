//! Where a fault of the house stands in the row that the house was made of.

use super::row::Written;
use crate::issue::Issue;

/// The fault of a house of one row, at the field of the row.
pub(super) fn in_row(issue: Issue, row: &Written) -> Issue {
    let path = row_path(&issue.path, row);
    let wall = row.name().to_owned();
    let message = if path == "/plate_height" {
        format!("the plate height less three plates: {}", issue.message)
    } else {
        issue.message
    };
    Issue {
        path,
        wall,
        message,
        ..issue
    }
}

/// A pointer into a house of one wall as a pointer into its row; one that no row can cause is left as it is.
fn row_path(path: &str, row: &Written) -> String {
    const STOREY: &str = "/walls/0/sections/0/stack/0";
    if let Some(rest) = path.strip_prefix(STOREY) {
        if rest.starts_with("/stud") {
            return "/plate_height".to_owned();
        }
        if rest == "/spacing" {
            return "/stud_spacing".to_owned();
        }
        if rest.starts_with("/openings") {
            return rest.to_owned();
        }
    }
    if let Some(rest) = path.strip_prefix("/walls/0") {
        for field in ["/name", "/length", "/segments", "/practice"] {
            if rest.starts_with(field) {
                return rest.to_owned();
            }
        }
    }
    let load = path
        .strip_prefix("/demand/loads/")
        .and_then(|rest| rest.split('/').next()?.parse().ok());
    match load.and_then(|index: usize| row.loads.get(index)?["kind"].as_str()) {
        Some(kind) => format!("/{kind}"),
        None => path.to_owned(),
    }
}
