//! A value that takes another's place: mostly one that a user might have meant, sometimes nonsense.

use super::place::{Place, places, write};
use arbitrary::{Result, Unstructured};
use edgenail::Length;
use edgenail::length::Unit;
use edgenail::reading::fields::{HOUSE, Kind, Object, Preset};
use serde_json::{Map, Value, json};

/// Spacings of studs and joists in the trade; 19.2 in. is a fifth of 8 ft.
const SPACINGS: [&str; 5] = ["12", "16", "19.2", "24", "48"];

/// Replaces, adds or takes away one field of a house, and says which.
///
/// # Errors
///
/// When the bytes are used up.
pub fn spoil(house: &mut Value, bytes: &mut Unstructured<'_>) -> Result<String> {
    let all = places(&HOUSE, house);
    // What is written down is what a user changes most; what is left out is the larger part of the table.
    let written = bytes.ratio(3, 4)?;
    let some: Vec<&Place> = all.iter().filter(|place| place.written == written).collect();
    let place = *bytes.choose(&some)?;
    let old = house.pointer(&place.pointer).cloned();
    let names = names(house);
    let new = match bytes.int_in_range(0..=15u8)? {
        0 => Some(nonsense(bytes)?),
        1 => None,
        _ if place.field.name == "spacing" => Some(json!(bytes.choose(&SPACINGS)?)),
        _ => Some(legal(
            &place.field.kind,
            &place.field.preset,
            old.as_ref(),
            &names,
            bytes,
        )?),
    };
    write(house, &place.pointer, new);
    Ok(place.pointer.clone())
}

/// Everything that has a name in a document.
fn names(node: &Value) -> Vec<String> {
    let mut found: Vec<String> = match node {
        Value::Object(fields) => fields.values().flat_map(names).collect(),
        Value::Array(items) => items.iter().flat_map(names).collect(),
        _ => Vec::new(),
    };
    found.extend(node.get("name").and_then(Value::as_str).map(str::to_owned));
    found
}

/// A value that the field's own row allows; what it says together with others may still be wrong.
fn legal(
    kind: &Kind,
    preset: &Preset,
    old: Option<&Value>,
    names: &[String],
    bytes: &mut Unstructured<'_>,
) -> Result<Value> {
    Ok(match *kind {
        Kind::Length { least, most } => length(least, most, preset, old, bytes)?,
        Kind::Whole { least, most } => {
            let old = old
                .and_then(Value::as_u64)
                .or_else(|| standard(preset)?.parse().ok())
                .unwrap_or(least);
            let step = bytes.int_in_range(0..=4u64)?;
            json!((old + step).saturating_sub(2).clamp(least, most))
        }
        Kind::Number { least, most } => {
            let old = old
                .and_then(Value::as_str)
                .or_else(|| standard(preset))
                .and_then(|text| text.parse().ok());
            let factor = bytes.choose(&[0.5, 0.9, 0.99, 1.01, 1.1, 2.0])?;
            let near: f64 = old.unwrap_or(1.0) * factor;
            json!(format!("{:.3}", near.clamp(least.as_f64(), most.as_f64())))
        }
        Kind::Amount { .. } => json!(bytes.choose(&["0", "0.0001", "0.05", "0.75", "3", "18.50", "999999"])?),
        Kind::Text { .. } if names.is_empty() => json!("x"),
        Kind::Text { .. } => json!(bytes.choose(names)?),
        Kind::Choice(words) => json!(bytes.choose(words)?),
        Kind::Flag => json!(
            !old.and_then(Value::as_bool)
                .unwrap_or(standard(preset) == Some("true"))
        ),
        Kind::Object(object) => made(object, names, bytes)?,
        Kind::OneOf(objects) => made(bytes.choose(objects)?, names, bytes)?,
        Kind::List { of, .. } => {
            let mut items = old.and_then(Value::as_array).cloned().unwrap_or_default();
            match bytes.int_in_range(0..=2u8)? {
                0 if !items.is_empty() => {
                    items.remove(bytes.choose_index(items.len())?);
                }
                1 if items.len() > 1 => {
                    let (one, other) = (bytes.choose_index(items.len())?, bytes.choose_index(items.len())?);
                    items.swap(one, other);
                }
                _ => items.push(legal(of, &Preset::Required, None, names, bytes)?),
            }
            Value::Array(items)
        }
        Kind::Maybe(_) if bytes.ratio(1, 8)? => Value::Null,
        Kind::Maybe(kind) => legal(kind, preset, old, names, bytes)?,
    })
}

/// What the table takes where nothing is said.
const fn standard(preset: &Preset) -> Option<&'static str> {
    match preset {
        Preset::Value(text) | Preset::From(text, _) => Some(text),
        _ => None,
    }
}

/// A length not far from what stood there, as exact text; where nothing did, one from the lower end of the range.
fn length(
    least: Length,
    most: Length,
    preset: &Preset,
    old: Option<&Value>,
    bytes: &mut Unstructured<'_>,
) -> Result<Value> {
    let text = old.and_then(Value::as_str).or_else(|| standard(preset));
    let old = text.and_then(|text| Length::parse_exact(text, Unit::Inch).ok());
    let sixteenths: i64 = if old.is_some() {
        let step = *bytes.choose(&[1, 2, 2, 4, 4, 8, 8, 12, 16, 24, 32, 64, 16 * 12, 16 * 48])?;
        if bytes.arbitrary()? { step } else { -step }
    } else {
        bytes.int_in_range(0..=16 * 120)?
    };
    // One in 32 is finer than a tape shows.
    let fine = i64::from(bytes.ratio(1, 32)?);
    let new = old.unwrap_or(least) + Length::sixteenths(sixteenths) + Length::from_units(fine);
    Ok(exact(new.clamp(least, most)))
}

/// Text that reads back as the same length in a document of any unit: 1600 units are a millimetre.
fn exact(length: Length) -> Value {
    let (sign, units) = (if length < Length::ZERO { "-" } else { "" }, length.abs().units());
    json!(format!("{sign}{}.{:06} mm", units / 1600, units % 1600 * 625))
}

/// An object with the fields that it must have and some of the others.
fn made(object: &Object, names: &[String], bytes: &mut Unstructured<'_>) -> Result<Value> {
    let mut fields = Map::new();
    if let Some(tag) = object.tag {
        fields.insert("kind".to_owned(), json!(tag));
    }
    for field in object.fields {
        if matches!(field.preset, Preset::Required) || bytes.ratio(1, 8)? {
            let value = legal(&field.kind, &field.preset, None, names, bytes)?;
            fields.insert(field.name.to_owned(), value);
        }
    }
    Ok(Value::Object(fields))
}

/// What no user means.
fn nonsense(bytes: &mut Unstructured<'_>) -> Result<Value> {
    let text = |text: &str| Value::String(text.to_owned());
    Ok(match bytes.int_in_range(0..=13u8)? {
        0 => Value::Null,
        1 => json!(true),
        2 => text(""),
        3 => text("NaN"),
        4 => json!(1e308),
        5 => json!(i64::MIN),
        6 => text("99999999999999999999 in"),
        7 => text("1/0"),
        8 => text("-12"),
        9 => json!([]),
        10 => json!({}),
        11 => json!([[[[{"kind": "storey"}]]]]),
        12 => text(&"\u{202e}8' ".repeat(60)),
        _ => text(&String::from_utf8_lossy(bytes.bytes(8)?)),
    })
}
