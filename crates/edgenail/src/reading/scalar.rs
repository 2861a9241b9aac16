//! The fields of an object that hold lengths, numbers, texts, words and flags.

use super::field::Kind;
use super::object::{Object, Outcome};
use super::spot::Spot;
use crate::amount::Amount;
use crate::decimal::Decimal;
use crate::length::Length;

impl Object<'_> {
    fn look_length(&self, name: &str) -> Outcome<Length> {
        let kind = self.row(name).kind;
        self.look(name, |spot| length(&spot, &kind))
    }

    /// A length.
    pub fn length(&self, name: &str) -> Length {
        self.look_length(name).value().unwrap_or(Length::ZERO)
    }

    /// A length, or none.
    pub fn length_or_null(&self, name: &str) -> Option<Length> {
        self.look_length(name).value()
    }

    /// A length, or what follows from other fields.
    pub fn length_or(&self, name: &str, computed: Length) -> Length {
        match self.look_length(name) {
            Outcome::Read(length) => length,
            Outcome::Computed(phrase) => {
                self.assume(name, &computed.to_string(), phrase);
                computed
            }
            Outcome::Nothing | Outcome::Fault => Length::ZERO,
        }
    }

    /// A length that has to be given here, though elsewhere it may follow from other fields.
    pub fn required_length(&self, name: &str) -> Length {
        match self.look_length(name) {
            Outcome::Read(length) => length,
            Outcome::Computed(_) => {
                self.missing(name);
                Length::ZERO
            }
            Outcome::Nothing | Outcome::Fault => Length::ZERO,
        }
    }

    fn look_integer(&self, name: &str) -> Outcome<i64> {
        let kind = self.row(name).kind;
        self.look(name, |spot| match kind {
            Kind::Integer(range) => spot.integer(range),
            _ => spot.wrong_kind(&kind.allowed()),
        })
    }

    /// A count.
    pub fn count(&self, name: &str) -> u32 {
        self.count_or_null(name).unwrap_or(0)
    }

    /// A count, or none.
    pub fn count_or_null(&self, name: &str) -> Option<u32> {
        let number = self.look_integer(name).value()?;
        u32::try_from(number).ok()
    }

    /// A count, or what follows from other fields.
    pub fn count_or(&self, name: &str, computed: u32) -> u32 {
        match self.look_integer(name) {
            Outcome::Read(number) => u32::try_from(number).unwrap_or(0),
            Outcome::Computed(phrase) => {
                self.assume(name, &computed.to_string(), phrase);
                computed
            }
            Outcome::Nothing | Outcome::Fault => 0,
        }
    }

    /// A large count.
    pub fn large_count(&self, name: &str) -> u64 {
        let number = self.look_integer(name).value().unwrap_or(0);
        u64::try_from(number).unwrap_or(0)
    }

    /// A decimal number.
    pub fn decimal(&self, name: &str) -> Decimal {
        let kind = self.row(name).kind;
        let outcome = self.look(name, |spot| match kind {
            Kind::Decimal(range) => spot.decimal(range),
            _ => spot.wrong_kind(&kind.allowed()),
        });
        outcome.value().unwrap_or(Decimal::ZERO)
    }

    /// An amount of money or minutes.
    pub fn amount(&self, name: &str) -> Amount {
        let kind = self.row(name).kind;
        let outcome = self.look(name, |spot| match kind {
            Kind::Amount(range) => spot.amount(range),
            _ => spot.wrong_kind(&kind.allowed()),
        });
        outcome.value().unwrap_or(Amount::ZERO)
    }

    /// A text.
    pub fn text(&self, name: &str) -> String {
        self.text_or_null(name).unwrap_or_default()
    }

    /// A text, or none.
    pub fn text_or_null(&self, name: &str) -> Option<String> {
        let kind = self.row(name).kind;
        self.look(name, |spot| text(&spot, &kind)).value()
    }

    /// True or false.
    pub fn flag(&self, name: &str) -> bool {
        let kind = self.row(name).kind;
        let outcome = self.look(name, |spot| match kind {
            Kind::Flag => spot.flag(),
            _ => spot.wrong_kind(&kind.allowed()),
        });
        outcome.value().unwrap_or(false)
    }

    /// One of several values, in the order of the words in the table.
    pub fn choice<T: Copy, const N: usize>(&self, name: &str, values: [T; N]) -> T {
        let kind = self.row(name).kind;
        let outcome = self.look(name, |spot| choice(&spot, &kind, &values));
        outcome.value().unwrap_or(values[0])
    }

    /// A list of lengths.
    pub fn lengths(&self, name: &str) -> Vec<Length> {
        self.lengths_or_null(name).unwrap_or_default()
    }

    /// A list of lengths, or none.
    pub fn lengths_or_null(&self, name: &str) -> Option<Vec<Length>> {
        self.entries(name, length)
    }

    /// A list of texts.
    pub fn texts(&self, name: &str) -> Vec<String> {
        self.entries(name, text).unwrap_or_default()
    }

    /// A list of values, in the order of the words in the table.
    pub fn choices<T: Copy, const N: usize>(&self, name: &str, values: [T; N]) -> Vec<T> {
        let read = |spot: &Spot<'_>, kind: &Kind| choice(spot, kind, &values);
        self.entries(name, read).unwrap_or_default()
    }
}

fn length(spot: &Spot<'_>, kind: &Kind) -> Option<Length> {
    match kind {
        Kind::Length(range) => spot.length(*range),
        _ => spot.wrong_kind(&kind.allowed()),
    }
}

fn text(spot: &Spot<'_>, kind: &Kind) -> Option<String> {
    match kind {
        Kind::Text => spot.text(false),
        Kind::Note => spot.text(true),
        _ => spot.wrong_kind(&kind.allowed()),
    }
}

fn choice<T: Copy>(spot: &Spot<'_>, kind: &Kind, values: &[T]) -> Option<T> {
    match kind {
        Kind::Choice(words) => values.get(spot.choice(words)?).copied(),
        _ => spot.wrong_kind(&kind.allowed()),
    }
}
