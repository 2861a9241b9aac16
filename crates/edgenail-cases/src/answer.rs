//! What a language answers to a case, and the answers of Rust itself.

use crate::case::Case;
use edgenail::Length;
use edgenail::batch::Batch;
use edgenail::changes::what_if_json;
use edgenail::length::{Finest, Rounding, Style, Unit};
use serde::Deserialize;
use serde_json::Value;
use serde_json::value::RawValue;

/// What an operation gave.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    /// A result: a JSON document.
    Result(String),
    /// An error: the document that every language gives for it.
    Error(String),
}

impl Answer {
    /// The document.
    pub fn text(&self) -> &str {
        match self {
            Self::Result(text) | Self::Error(text) => text,
        }
    }
}

/// The input of the operation `length`: a text, and the unit of a number without one.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LengthInput {
    /// The text.
    pub text: String,
    /// The unit's name, such as `inch`.
    pub unit: String,
}

/// The input of the operation `show`: a length, the look of it, and the direction of rounding.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ShowInput {
    /// The length in 1/40640 in.
    pub units: i64,
    /// The name of the style, listed in [`STYLES`].
    pub style: String,
    /// The name of the direction, listed in [`ROUNDINGS`].
    pub rounding: String,
}

/// The styles by the names that cases use, in the order of the C numbers from 1.
pub const STYLES: [(&str, Style); 8] = [
    ("inches_sixteenth", Style::Inches(Finest::Sixteenth)),
    ("inches_thirty_second", Style::Inches(Finest::ThirtySecond)),
    ("inches_sixty_fourth", Style::Inches(Finest::SixtyFourth)),
    ("feet_inches_sixteenth", Style::FeetInches(Finest::Sixteenth)),
    (
        "feet_inches_thirty_second",
        Style::FeetInches(Finest::ThirtySecond),
    ),
    ("feet_inches_sixty_fourth", Style::FeetInches(Finest::SixtyFourth)),
    ("decimal_inches", Style::DecimalInches),
    ("millimetres", Style::Millimetres),
];

/// The directions of rounding by the names that cases use, in the order of the C numbers from 1.
pub const ROUNDINGS: [(&str, Rounding); 3] = [
    ("down", Rounding::Down),
    ("up", Rounding::Up),
    ("nearest", Rounding::Nearest),
];

/// The answer of the Rust library.
///
/// # Errors
///
/// A sentence when the operation is unknown or its input has another form.
pub fn rust(case: &Case) -> Result<Answer, String> {
    match case.operation.as_str() {
        "plan" => Ok(answer(edgenail::plan_json(&case.text).map(|plan| plan.json()))),
        "batch" => {
            let outcomes = Batch::of(houses(&case.text)?).map(|outcome| outcome.json());
            Ok(Answer::Result(format!(
                "[{}]",
                outcomes.collect::<Vec<_>>().join(",")
            )))
        }
        "what_if" => {
            let input: WhatIfInput<'_> = parse(&case.text)?;
            Ok(answer(what_if_json(input.house.get(), input.changes.get())))
        }
        "capacity" => Ok(answer(edgenail::capacity_json(&case.text))),
        "length" => {
            let input: LengthInput = parse(&case.text)?;
            let unit = Unit::named(&input.unit).ok_or("no such unit")?;
            let parsed = Length::parse(&input.text, unit).map_err(edgenail::Error::from);
            Ok(answer(parsed.map(|parsed| {
                format!(
                    r#"{{"units":{},"exact":{}}}"#,
                    parsed.length.units(),
                    parsed.exact
                )
            })))
        }
        "show" => {
            let input: ShowInput = parse(&case.text)?;
            let style = named(&STYLES, &input.style)?;
            let shown = Length::from_units(input.units).show(style.1, named(&ROUNDINGS, &input.rounding)?.1);
            let text = shown.text.replace('"', "\\\"");
            Ok(Answer::Result(format!(
                r#"{{"text":"{text}","rounded":{}}}"#,
                shown.rounded
            )))
        }
        other => Err(format!("no operation `{other}`")),
    }
}

fn answer(result: Result<String, edgenail::Error>) -> Answer {
    match result {
        Ok(text) => Answer::Result(text),
        Err(error) => Answer::Error(error.json()),
    }
}

/// The input of the operation `what_if`: a house, and the changes to it.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WhatIfInput<'a> {
    /// The house.
    #[serde(borrow)]
    pub house: &'a RawValue,
    /// The changes.
    #[serde(borrow)]
    pub changes: &'a RawValue,
}

/// The input of the operation `batch`: documents of houses, each on one line.
///
/// # Errors
///
/// It is no list.
pub fn houses(text: &str) -> Result<Vec<String>, String> {
    let houses: Vec<Value> = parse(text)?;
    Ok(houses.iter().map(Value::to_string).collect())
}

/// The input of an operation.
///
/// # Errors
///
/// What is wrong with it.
pub fn parse<'a, T: Deserialize<'a>>(text: &'a str) -> Result<T, String> {
    serde_json::from_str(text).map_err(|error| error.to_string())
}

/// The position from 1, and the value, of a name in a list.
///
/// # Errors
///
/// The list does not have the name.
pub fn named<T: Copy>(list: &[(&str, T)], name: &str) -> Result<(usize, T), String> {
    let found = (1..).zip(list).find(|(_, (known, _))| *known == name);
    found
        .map(|(number, (_, value))| (number, *value))
        .ok_or_else(|| format!("no `{name}`"))
}
