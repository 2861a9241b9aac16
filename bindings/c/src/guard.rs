//! The wall between Rust and C: catches panics, and keeps what went wrong for the calling thread.

use crate::status::edgenail_status as Status;
use std::cell::RefCell;
use std::panic::{AssertUnwindSafe, catch_unwind};

/// Why a call failed: its status and the entries of the thread's error list.
#[derive(Debug)]
pub(crate) struct Fault {
    pub(crate) status: Status,
    pub(crate) entries: Vec<Entry>,
    pub(crate) json: String,
}

/// One entry of the error list.
#[derive(Clone, Debug, Default)]
pub(crate) struct Entry {
    pub(crate) code: String,
    pub(crate) path: String,
    pub(crate) wall: String,
    pub(crate) found: String,
    pub(crate) allowed: String,
    pub(crate) message: String,
}

/// The error list of a thread.
#[derive(Debug, Default)]
pub(crate) struct Errors {
    pub(crate) entries: Vec<Entry>,
    pub(crate) json: String,
}

impl Errors {
    const fn none() -> Self {
        Self {
            entries: Vec::new(),
            json: String::new(),
        }
    }
}

thread_local! {
    static ERRORS: RefCell<Errors> = const { RefCell::new(Errors::none()) };
}

impl Fault {
    /// A fault of the call itself, at one argument.
    pub(crate) fn argument(status: Status, argument: &str, message: &str) -> Self {
        let code = format!("{status:?}");
        let entry = Entry {
            code: snake_case(&code),
            path: argument.to_owned(),
            message: format!("{argument}: {message}"),
            ..Entry::default()
        };
        Self {
            status,
            entries: vec![entry],
            json: String::new(),
        }
    }

    fn length(error: &edgenail::length::LengthError, json: String) -> Self {
        let entry = Entry {
            code: snake_case(&format!("{:?}", error.fault)),
            found: error.text.clone(),
            allowed: error.fault.allowed().to_owned(),
            message: error.to_string(),
            ..Entry::default()
        };
        Self {
            status: Status::Input,
            entries: vec![entry],
            json,
        }
    }

    /// The rule that cannot be kept, then every demand whose change was tried and makes the wall possible.
    fn no_layout(wall: &str, message: &str, remedies: &[edgenail::error::Remedy], json: String) -> Self {
        let first = Entry {
            code: "no_layout".into(),
            wall: wall.to_owned(),
            message: message.to_owned(),
            ..Entry::default()
        };
        let changes = remedies.iter().flat_map(|remedy| &remedy.changes);
        let unmet = changes.map(|unmet| Entry {
            code: "unmet_demand".into(),
            path: unmet.path.clone(),
            wall: wall.to_owned(),
            found: unmet.found_text(),
            allowed: unmet.wanted_text(),
            message: format!("{}; possible with {}", unmet.demand, unmet.remedy),
        });
        Self {
            status: Status::NoLayout,
            entries: std::iter::once(first).chain(unmet).collect(),
            json,
        }
    }

    fn panic() -> Self {
        Self::argument(
            Status::Internal,
            "edgenail",
            "the library failed; please report the input that led here",
        )
    }
}

impl From<edgenail::Error> for Fault {
    fn from(error: edgenail::Error) -> Self {
        let json = error.json();
        let (status, code) = match &error {
            edgenail::Error::Issues { .. } => (Status::Input, "input"),
            edgenail::Error::Length { error } => return Self::length(error, json),
            edgenail::Error::NoLayout {
                wall,
                message,
                remedies,
            } => return Self::no_layout(wall, message, remedies, json),
            _ => (Status::Internal, "internal"),
        };
        let mut entries: Vec<Entry> = error.issues().iter().map(Entry::from).collect();
        if entries.is_empty() {
            let message = error.to_string();
            entries.push(Entry {
                code: code.into(),
                message,
                ..Entry::default()
            });
        }
        Self {
            status,
            entries,
            json,
        }
    }
}

impl From<&edgenail::issue::Issue> for Entry {
    fn from(issue: &edgenail::issue::Issue) -> Self {
        Self {
            code: snake_case(&format!("{:?}", issue.code)),
            path: issue.path.clone(),
            wall: issue.wall.clone(),
            found: issue.found.clone(),
            allowed: issue.allowed.clone(),
            message: issue.message.clone(),
        }
    }
}

fn snake_case(name: &str) -> String {
    let mut text = String::new();
    for letter in name.chars() {
        if letter.is_ascii_uppercase() && !text.is_empty() {
            text.push('_');
        }
        text.push(letter.to_ascii_lowercase());
    }
    text
}

/// Runs the body of an exported function: clears the thread's error list, then keeps what went wrong in it.
pub(crate) fn guard(body: impl FnOnce() -> Result<(), Fault>) -> i32 {
    keep(Errors::none());
    match caught(body) {
        Ok(()) => Status::Ok as i32,
        Err(fault) => {
            keep(Errors {
                entries: fault.entries,
                json: fault.json,
            });
            fault.status as i32
        }
    }
}

/// Runs the body of a function that reads the error list, and therefore leaves the list as it is.
pub(crate) fn read_only(body: impl FnOnce() -> Result<(), Fault>) -> i32 {
    caught(body).map_or_else(|fault| fault.status as i32, |()| Status::Ok as i32)
}

/// Reads the thread's error list; nothing while the thread is ending.
pub(crate) fn errors<T>(read: impl FnOnce(&Errors) -> T) -> Option<T> {
    ERRORS.try_with(|errors| read(&errors.borrow())).ok()
}

fn caught(body: impl FnOnce() -> Result<(), Fault>) -> Result<(), Fault> {
    // Nothing is left half-changed by a panic: outputs are written last, and plans are immutable.
    catch_unwind(AssertUnwindSafe(body)).unwrap_or_else(|_| Err(Fault::panic()))
}

fn keep(errors: Errors) {
    // A thread that is ending has no list any more, and nobody who could read it.
    let _ = ERRORS.try_with(|kept| *kept.borrow_mut() = errors);
}

#[cfg(test)]
mod tests;
