//! Values that are read from one field without knowing any other.

use super::fields::Kind;
use super::item::{Item, Voice};
use super::tree;
use crate::amount::Amount;
use crate::decimal::{Decimal, DecimalError, DecimalFault};
use crate::issue::Code;
use crate::length::{Finest, Length, LengthFault, Rounding, Style, Unit};

/// A value that is read from one field.
pub(super) trait Value: Sized {
    /// Reads the value; lists the fault if it has one.
    fn take(item: &Item<'_, '_>) -> Option<Self>;

    /// What stands in for a value with a fault until all faults are found; it never leaves the reading.
    fn placeholder() -> Self;

    /// The value for a person.
    fn show(&self) -> String;
}

impl Value for Length {
    fn take(item: &Item<'_, '_>) -> Option<Self> {
        let Kind::Length { least, most } = *item.kind else {
            item.table_fault();
            return None;
        };
        let length = match &item.node.kind {
            tree::Kind::Number(number) if item.context.exact && item.voice == Voice::User => {
                whole_units(item, number)?
            }
            tree::Kind::Number(text) | tree::Kind::Text(text) => parse(item, text)?,
            _ => {
                item.wrong_kind("a length");
                return None;
            }
        };
        if length < least || length > most {
            item.out_of_range(least, most);
            return None;
        }
        Some(length)
    }

    fn placeholder() -> Self {
        Self::ZERO
    }

    fn show(&self) -> String {
        self.show_plain()
    }
}

/// A number of units in a document that writes exact lengths.
fn whole_units(item: &Item<'_, '_>, number: &str) -> Option<Length> {
    match number.parse::<i64>() {
        Ok(units) if units.abs() <= Length::LIMIT.units() => Some(Length::from_units(units)),
        Ok(_) => {
            item.out_of_range(-Length::LIMIT, Length::LIMIT);
            None
        }
        Err(_) => {
            let message = "a bare number is a whole number of units in a document with `length_unit`";
            item.fault(Code::NotWhole, "a whole number, or text with a unit", message);
            None
        }
    }
}

fn parse(item: &Item<'_, '_>, text: &str) -> Option<Length> {
    let bare = matches!(item.node.kind, tree::Kind::Number(_)) || is_bare(text);
    let unit = match (item.voice, bare) {
        (Voice::User, true) => item.context.bare_unit(),
        _ => Unit::Inch,
    };
    match Length::parse(text, unit) {
        Ok(parsed) => {
            if !parsed.exact && item.voice == Voice::User {
                let why = format!(
                    "`{}` is not a whole number of 1/40640 in.; the nearest was taken",
                    text.trim()
                );
                item.context.assume(
                    item.path.clone(),
                    format!("{}/40640 in.", parsed.length.units()),
                    &why,
                );
            }
            Some(parsed.length)
        }
        Err(error) => {
            let code = match error.fault {
                LengthFault::Comma
                | LengthFault::SignInside
                | LengthFault::TwoNumbers
                | LengthFault::DashedFeet
                | LengthFault::FeetAfterInches => Code::AmbiguousLength,
                LengthFault::OutOfRange => Code::OutOfRange,
                _ => Code::NotALength,
            };
            item.fault(code, error.fault.allowed(), &error.to_string());
            None
        }
    }
}

/// Whether the text names no unit, so that the document's counts.
fn is_bare(text: &str) -> bool {
    !text
        .chars()
        .any(|c| c.is_alphabetic() || matches!(c, '\'' | '"' | '′' | '″' | '’' | '”'))
}

/// How a length is shown in faults and defaults.
pub(super) trait ShowPlain {
    /// The length in inches, marked if that is not exact.
    fn show_plain(self) -> String;
}

impl ShowPlain for Length {
    fn show_plain(self) -> String {
        self.show(Style::Inches(Finest::SixtyFourth), Rounding::Nearest)
            .text
    }
}

impl Value for Decimal {
    fn take(item: &Item<'_, '_>) -> Option<Self> {
        let Kind::Number { least, most } = *item.kind else {
            item.table_fault();
            return None;
        };
        let number = decimal(item, "a number", Decimal::parse)?;
        if number < least || number > most {
            item.out_of_range(least.to_string(), most.to_string());
            return None;
        }
        Some(number)
    }

    fn placeholder() -> Self {
        Self::ZERO
    }

    fn show(&self) -> String {
        self.to_string()
    }
}

/// A number for formulas; the digits that a double does not carry are nobody's.
impl Value for f64 {
    fn take(item: &Item<'_, '_>) -> Option<Self> {
        let Kind::Number { least, most } = *item.kind else {
            item.table_fault();
            return None;
        };
        let number = double(item)?;
        if number < least.as_f64() || number > most.as_f64() {
            item.out_of_range(least.to_string(), most.to_string());
            return None;
        }
        Some(number)
    }

    fn placeholder() -> Self {
        0.0
    }

    fn show(&self) -> String {
        self.to_string()
    }
}

/// A finite number, written as a number or as text. Rust reads words such as `inf` too.
fn double(item: &Item<'_, '_>) -> Option<f64> {
    let (tree::Kind::Number(text) | tree::Kind::Text(text)) = &item.node.kind else {
        item.wrong_kind("a number");
        return None;
    };
    let text = text.trim();
    let plain = text
        .bytes()
        .all(|byte| byte.is_ascii_digit() || b"+-.eE".contains(&byte));
    let parsed = text
        .parse()
        .ok()
        .filter(|number: &f64| plain && number.is_finite());
    if parsed.is_none() {
        let allowed = DecimalFault::NotANumber.allowed();
        item.fault(
            Code::NotANumber,
            allowed,
            &format!("`{}` is no number", tree::cut(text)),
        );
    }
    parsed
}

impl Value for Amount {
    fn take(item: &Item<'_, '_>) -> Option<Self> {
        let Kind::Amount { most } = *item.kind else {
            item.table_fault();
            return None;
        };
        let amount = decimal(item, "an amount", Amount::parse)?;
        if amount < Self::ZERO || amount > most {
            item.out_of_range("0", most.to_string());
            return None;
        }
        Some(amount)
    }

    fn placeholder() -> Self {
        Self::ZERO
    }

    fn show(&self) -> String {
        self.to_string()
    }
}

/// A decimal number, written as a number or as text.
fn decimal<T>(item: &Item<'_, '_>, wanted: &str, parse: fn(&str) -> Result<T, DecimalError>) -> Option<T> {
    let (tree::Kind::Number(text) | tree::Kind::Text(text)) = &item.node.kind else {
        item.wrong_kind(wanted);
        return None;
    };
    match parse(text.trim()) {
        Ok(number) => Some(number),
        Err(error) => {
            let code = match error.fault {
                DecimalFault::TooFine => Code::NotWhole,
                DecimalFault::OutOfRange => Code::OutOfRange,
                _ => Code::NotANumber,
            };
            item.fault(code, error.fault.allowed(), &error.to_string());
            None
        }
    }
}

impl Value for u64 {
    fn take(item: &Item<'_, '_>) -> Option<Self> {
        let Kind::Whole { least, most } = *item.kind else {
            item.table_fault();
            return None;
        };
        let tree::Kind::Number(text) = &item.node.kind else {
            item.wrong_kind("a whole number");
            return None;
        };
        let Ok(number) = text.parse::<Self>() else {
            // A whole number below zero or beyond 64 bits is out of range, anything else is not whole.
            if text.bytes().all(|byte| byte.is_ascii_digit() || byte == b'-') {
                item.out_of_range(least.to_string(), most.to_string());
            } else {
                item.fault(
                    Code::NotWhole,
                    "a whole number",
                    &format!("`{text}` is not a whole number"),
                );
            }
            return None;
        };
        if number < least || number > most {
            item.out_of_range(least.to_string(), most.to_string());
            return None;
        }
        Some(number)
    }

    fn placeholder() -> Self {
        0
    }

    fn show(&self) -> String {
        self.to_string()
    }
}

impl Value for u32 {
    fn take(item: &Item<'_, '_>) -> Option<Self> {
        let number = u64::take(item)?.try_into();
        if number.is_err() {
            item.table_fault();
        }
        number.ok()
    }

    fn placeholder() -> Self {
        0
    }

    fn show(&self) -> String {
        self.to_string()
    }
}

impl Value for bool {
    fn take(item: &Item<'_, '_>) -> Option<Self> {
        if !matches!(item.kind, Kind::Flag) {
            item.table_fault();
            return None;
        }
        if let tree::Kind::Flag(flag) = item.node.kind {
            return Some(flag);
        }
        item.wrong_kind("true or false");
        None
    }

    fn placeholder() -> Self {
        false
    }

    fn show(&self) -> String {
        self.to_string()
    }
}

impl Value for String {
    fn take(item: &Item<'_, '_>) -> Option<Self> {
        item.text()
    }

    fn placeholder() -> Self {
        Self::new()
    }

    fn show(&self) -> String {
        self.clone()
    }
}

impl Value for Unit {
    fn take(item: &Item<'_, '_>) -> Option<Self> {
        item.choice().and_then(|word| Self::named(&word))
    }

    fn placeholder() -> Self {
        Self::Inch
    }

    fn show(&self) -> String {
        self.length().show_plain()
    }
}

impl<T: Value> Value for Option<T> {
    fn take(item: &Item<'_, '_>) -> Option<Self> {
        let Kind::Maybe(kind) = item.kind else {
            item.table_fault();
            return None;
        };
        if item.node.kind == tree::Kind::Null {
            return Some(None);
        }
        T::take(&item.as_kind(kind)).map(Some)
    }

    fn placeholder() -> Self {
        None
    }

    fn show(&self) -> String {
        self.as_ref().map_or_else(|| "null".to_owned(), T::show)
    }
}

impl<T: Value> Value for Vec<T> {
    fn take(item: &Item<'_, '_>) -> Option<Self> {
        Some(
            item.items()?
                .iter()
                .map(|item| T::take(item).unwrap_or_else(T::placeholder))
                .collect(),
        )
    }

    fn placeholder() -> Self {
        Self::new()
    }

    fn show(&self) -> String {
        self.iter().map(T::show).collect::<Vec<_>>().join(", ")
    }
}

impl Value for [Length; 2] {
    fn take(item: &Item<'_, '_>) -> Option<Self> {
        Vec::take(item)?.try_into().ok()
    }

    fn placeholder() -> Self {
        [Length::ZERO; 2]
    }

    fn show(&self) -> String {
        self.map(ShowPlain::show_plain).join(", ")
    }
}
