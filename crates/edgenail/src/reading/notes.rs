//! What reading gathers on its way: faults and assumptions.

use super::Assumed;
use crate::issue::{Code, Issue, more_faults};
use crate::length::Unit;
use std::collections::BTreeSet;

/// Faults that are listed; of more, only the number is given.
const ISSUES_MOST: usize = 1000;

/// What reading gathers, and how lengths without a unit are meant.
#[derive(Debug)]
pub(super) struct Notes {
    /// The unit of a length that is written without one.
    pub unit: Unit,
    /// Numbers for lengths count units of the library.
    pub counts_units: bool,
    /// The wall that is being read; empty for none.
    pub wall: String,
    /// No fault is listed: a stand-in for something faulty is being read.
    pub muted: bool,
    /// No assumption is listed: a default is being read, or something that is read again later.
    pub quiet: bool,
    issues: Vec<Issue>,
    unlisted: usize,
    faulty: BTreeSet<(String, Code)>,
    assumed: Vec<Assumed>,
    assumed_at: BTreeSet<String>,
}

impl Notes {
    /// Nothing noted; lengths are in inches.
    pub fn new() -> Self {
        Self {
            unit: Unit::Inch,
            counts_units: false,
            wall: String::new(),
            muted: false,
            quiet: false,
            issues: Vec::new(),
            unlisted: 0,
            faulty: BTreeSet::new(),
            assumed: Vec::new(),
            assumed_at: BTreeSet::new(),
        }
    }

    /// Notes a fault, each kind once a place.
    pub fn fault(&mut self, code: Code, path: &str, found: &str, allowed: &str, problem: &str) {
        if self.muted {
            return;
        }
        if self.issues.len() >= ISSUES_MOST {
            self.unlisted += 1;
            return;
        }
        if self.faulty.insert((path.to_owned(), code)) {
            self.issues.push(Issue {
                code,
                path: path.into(),
                wall: self.wall.clone(),
                found: found.into(),
                allowed: allowed.into(),
                message: format!("{problem}; allowed: {allowed}."),
            });
        }
    }

    /// Notes an assumption, once a place.
    pub fn assume(&mut self, path: &str, value: &str, why: &str) {
        if !self.quiet && !self.muted && self.assumed_at.insert(path.to_owned()) {
            self.assumed.push(Assumed {
                path: path.into(),
                value: value.into(),
                why: why.into(),
            });
        }
    }

    /// Another fault would be listed.
    pub fn lists_more(&self) -> bool {
        !self.muted && self.issues.len() < ISSUES_MOST
    }

    /// The assumptions, or else every fault.
    pub fn finish(self) -> Result<Vec<Assumed>, Vec<Issue>> {
        let mut issues = self.issues;
        if self.unlisted > 0 {
            issues.push(more_faults(self.unlisted));
        }
        if issues.is_empty() {
            Ok(self.assumed)
        } else {
            Err(issues)
        }
    }
}
