//! What is gathered while a document is read.

use super::{Assumed, ISSUES_MOST};
use crate::issue::{Code, Issue};
use crate::length::{Finest, Style, Unit};
use crate::wording::{Say, Wording};
use std::cell::{Cell, Ref, RefCell};

/// How bare numbers are read, and everything that was found so far.
#[derive(Debug)]
pub(super) struct Context {
    /// The unit of bare numbers, if the document says it.
    pub unit: Option<Unit>,
    /// Bare numbers are whole units of 1/40640 in.
    pub exact: bool,
    bare: Cell<bool>,
    issues: RefCell<Vec<Issue>>,
    more: Cell<bool>,
    assumed: RefCell<Vec<Assumed>>,
}

impl Context {
    pub(super) fn new(issues: Vec<Issue>) -> Self {
        Self {
            unit: None,
            exact: false,
            bare: Cell::new(false),
            issues: RefCell::new(issues),
            more: Cell::new(false),
            assumed: RefCell::new(Vec::new()),
        }
    }

    /// Lists a fault, or notes that there are more than are listed.
    pub(super) fn fault(&self, issue: Issue) {
        let mut issues = self.issues.borrow_mut();
        if issues.len() < ISSUES_MOST {
            issues.push(issue);
        } else {
            self.more.set(true);
        }
    }

    /// Lists a value that the library chose.
    pub(super) fn assume(&self, path: String, value: String, why: &str) {
        self.assumed.borrow_mut().push(Assumed {
            path,
            value,
            why: why.to_owned(),
        });
    }

    /// The unit of a bare number; a document that does not say it is read in inches, which is listed.
    pub(super) fn bare_unit(&self) -> Unit {
        self.unit.unwrap_or_else(|| {
            self.bare.set(true);
            Unit::Inch
        })
    }

    /// What is said, lengths in the document's unit: inches to a sixty-fourth, or millimetres.
    pub(super) fn written(&self, said: &(impl Say + ?Sized)) -> String {
        let style = match self.unit {
            Some(Unit::Millimetre | Unit::Centimetre | Unit::Metre) => Style::Millimetres,
            Some(Unit::Inch | Unit::Foot) | None => Style::Inches(Finest::SixtyFourth),
        };
        Wording::of(said).written(style)
    }

    /// Whether a bare number was read in a unit that the document does not say.
    pub(super) fn assumed_unit(&self) -> bool {
        self.bare.get()
    }

    /// The faults that were found so far.
    pub(super) fn issues(&self) -> Ref<'_, [Issue]> {
        Ref::map(self.issues.borrow(), Vec::as_slice)
    }

    /// The faults and the values that were chosen, in the order in which they were found.
    pub(super) fn finish(self) -> (Vec<Issue>, Vec<Assumed>) {
        let mut issues = self.issues.into_inner();
        if self.more.get() {
            issues.push(Issue {
                code: Code::TooManyIssues,
                path: String::new(),
                wall: String::new(),
                found: format!("more than {ISSUES_MOST} faults"),
                allowed: format!("at most {ISSUES_MOST} faults are listed"),
                message: "there are more faults than are listed here".to_owned(),
            });
        }
        (issues, self.assumed.into_inner())
    }
}
