//! A value at its place in the document, read as a length, a number, a text, a word or a flag.

use super::field::{Lengths, Numbers};
use super::nearest::nearest;
use super::notes::Notes;
use super::tree::{Kind, Node};
use crate::amount::Amount;
use crate::decimal::Decimal;
use crate::issue::Code;
use crate::length::{Length, LengthError, Parsed, Unit};
use std::cell::RefCell;

/// A value at its place.
#[derive(Clone, Copy, Debug)]
pub(super) struct Spot<'a> {
    /// Where faults and assumptions go.
    pub notes: &'a RefCell<Notes>,
    /// JSON pointer to the value.
    pub path: &'a str,
    /// The value.
    pub node: &'a Node,
}

/// The longest text.
const TEXT_MOST: usize = 200;

impl Spot<'_> {
    /// Notes a fault of this value.
    pub fn fault<T>(&self, code: Code, allowed: &str, problem: &str) -> Option<T> {
        let found = self.node.found();
        self.notes
            .borrow_mut()
            .fault(code, self.path, &found, allowed, problem);
        None
    }

    /// Notes that the value is of another kind.
    pub fn wrong_kind<T>(&self, allowed: &str) -> Option<T> {
        let problem = format!("Here stands {}", self.node.word());
        self.fault(Code::WrongKind, allowed, &problem)
    }

    /// The value as a length within a range.
    pub fn length(&self, range: Lengths) -> Option<Length> {
        let (unit, counts_units) = {
            let notes = self.notes.borrow();
            (notes.unit, notes.counts_units)
        };
        let allowed = format!("a length {}", range.words());
        let parsed = match &self.node.kind {
            Kind::Text(text) => Length::parse(text, unit),
            Kind::Number(text) if counts_units => return self.counted(text, range),
            Kind::Number(text) => number(text, unit),
            _ => return self.wrong_kind(&allowed),
        };
        match parsed {
            Err(error) => self.fault(
                Code::NotALength,
                error.fault.allowed(),
                &format!("`{}` {}", error.text, error.fault.problem()),
            ),
            Ok(Parsed { length, exact }) => {
                if !exact {
                    let why = format!("`{}` is rounded to the nearest 1/40640 in.", self.node.found());
                    self.notes
                        .borrow_mut()
                        .assume(self.path, &length.to_string(), &why);
                }
                self.within(length, range)
            }
        }
    }

    fn counted(&self, text: &str, range: Lengths) -> Option<Length> {
        match Decimal::parse(text).ok().and_then(|number| number.in_units_of(0)) {
            Some(units) if units.abs() <= Length::LIMIT.units() => {
                self.within(Length::from_units(units), range)
            }
            _ => {
                let allowed = "a whole number of 1/40640 in., within 2^29 of zero";
                self.fault(
                    Code::NotALength,
                    allowed,
                    &format!("`{}` is no count of units", self.node.found()),
                )
            }
        }
    }

    fn within(&self, length: Length, range: Lengths) -> Option<Length> {
        if (range.least..=range.most).contains(&length) {
            return Some(length);
        }
        let problem = format!("The length {length} is out of range");
        self.fault(Code::OutOfRange, &format!("a length {}", range.words()), &problem)
    }

    /// The value as a whole number within a range.
    pub fn integer(&self, range: Numbers) -> Option<i64> {
        let allowed = format!("a whole number {}", range.words());
        let Kind::Number(text) = &self.node.kind else {
            return self.wrong_kind(&allowed);
        };
        match Decimal::parse(text).map(|number| number.in_units_of(0)) {
            Ok(Some(number)) if (range.least..=range.most).contains(&number) => Some(number),
            Ok(Some(_)) => self.fault(Code::OutOfRange, &allowed, "The number is out of range"),
            _ => self.fault(Code::NotANumber, &allowed, "This is no whole number"),
        }
    }

    /// The value as a decimal number within a range.
    pub fn decimal(&self, range: Numbers) -> Option<Decimal> {
        let text = self.number_text(range)?;
        match Decimal::parse(text) {
            Ok(number) if between(number, range) => Some(number),
            Ok(_) => self.fault(
                Code::OutOfRange,
                &format!("a number {}", range.words()),
                "The number is out of range",
            ),
            Err(error) => self.fault(Code::NotANumber, error.fault.allowed(), "This is no such number"),
        }
    }

    /// The value as an amount within a range.
    pub fn amount(&self, range: Numbers) -> Option<Amount> {
        let text = self.number_text(range)?;
        match (Amount::parse(text), Decimal::parse(text)) {
            (Ok(amount), Ok(number)) if between(number, range) => Some(amount),
            (Err(error), _) if error.fault != crate::decimal::DecimalFault::OutOfRange => {
                self.fault(Code::NotANumber, error.fault.allowed(), "This is no amount")
            }
            _ => self.fault(
                Code::OutOfRange,
                &format!("a number {}", range.words()),
                "The amount is out of range",
            ),
        }
    }

    fn number_text(&self, range: Numbers) -> Option<&str> {
        match &self.node.kind {
            Kind::Number(text) | Kind::Text(text) => Some(text),
            _ => self.wrong_kind(&format!("a number {}", range.words())),
        }
    }

    /// The value as a text; an empty one only where it may be.
    pub fn text(&self, may_be_empty: bool) -> Option<String> {
        let allowed = if may_be_empty {
            "a text of at most 200 characters"
        } else {
            "a text of 1 to 200 characters"
        };
        let Kind::Text(text) = &self.node.kind else {
            return self.wrong_kind(allowed);
        };
        let count = text.chars().take(TEXT_MOST + 1).count();
        if count > TEXT_MOST {
            return self.fault(Code::TextLength, allowed, "The text is too long");
        }
        if count == 0 && !may_be_empty {
            return self.fault(Code::TextLength, allowed, "The text is empty");
        }
        Some(text.clone())
    }

    /// Which of these words the value is.
    pub fn choice(&self, words: &[&str]) -> Option<usize> {
        let Kind::Text(text) = &self.node.kind else {
            return self.wrong_kind(&words.join(", "));
        };
        let position = words.iter().position(|word| word == text);
        position.or_else(|| {
            let hint = nearest(text, words.iter().copied())
                .map_or(String::new(), |word| format!("; `{word}` is near"));
            let problem = format!("`{}` is not among the choices{hint}", self.node.found());
            self.fault(Code::UnknownChoice, &words.join(", "), &problem)
        })
    }

    /// The value as true or false.
    pub fn flag(&self) -> Option<bool> {
        match self.node.kind {
            Kind::Bool(value) => Some(value),
            _ => self.wrong_kind("true or false"),
        }
    }
}

/// A number of JSON as a length: exact from its text, or else with the noise that doubles carry.
fn number(text: &str, unit: Unit) -> Result<Parsed, LengthError> {
    let written = match Decimal::parse(text) {
        Ok(number) => number.to_string(),
        Err(_) => text.to_owned(),
    };
    let parsed = Length::parse(&written, unit)?;
    let noise = text
        .parse()
        .ok()
        .and_then(|value| Length::from_double(value, unit).ok());
    Ok(Parsed {
        exact: parsed.exact || noise.is_some_and(|noise| noise.exact && noise.length == parsed.length),
        ..parsed
    })
}

fn between(number: Decimal, range: Numbers) -> bool {
    let limit = |count: i64| Decimal::new(count, 0).unwrap_or(Decimal::ZERO);
    limit(range.least) <= number && number <= limit(range.most)
}
