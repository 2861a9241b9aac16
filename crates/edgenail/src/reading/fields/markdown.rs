//! The table of fields as documentation.

use super::{Field, HOUSE, Kind, Object, Preset, QUESTIONS};
use crate::reading::value::Value as _;
use std::fmt::Write as _;

/// Every object and field of the input in Markdown: kind, range, default, source and meaning.
///
/// ```
/// let text = edgenail::reading::fields_markdown();
/// assert!(text.contains("| `gap` | length, 0\" to 1\" | `1/8` |"));
/// ```
pub fn fields_markdown() -> String {
    markdown(&[&HOUSE], &[])
}

/// The same of every question of capacity; what a house is made of too is told in the document of the house.
///
/// ```
/// let text = edgenail::reading::question_markdown();
/// assert!(text.contains("Told apart by `\"kind\": \"unit_shear\"`."));
/// ```
pub fn question_markdown() -> String {
    markdown(&QUESTIONS, &super::objects(&[&HOUSE]))
}

/// The objects of these roots, but for those that are told elsewhere.
fn markdown(roots: &[&'static Object], elsewhere: &[&'static Object]) -> String {
    let mut text = String::new();
    for object in super::objects(roots) {
        if told(object, elsewhere) {
            continue;
        }
        // Writing into memory has no way to fail.
        let _ = write!(text, "## {}\n\n{}\n\n", object.name, object.meaning);
        if let Some(tag) = object.tag {
            let _ = write!(text, "Told apart by `\"kind\": \"{tag}\"`.\n\n");
        }
        if object.fields.is_empty() {
            continue;
        }
        text.push_str("| field | kind | default | source | meaning |\n| --- | --- | --- | --- | --- |\n");
        for field in object.fields {
            let _ = writeln!(
                text,
                "| `{}` | {} | {} | {} | {} |",
                field.name,
                kind(&field.kind, elsewhere),
                preset(field),
                field.source,
                field.meaning,
            );
        }
        text.push('\n');
    }
    text
}

fn told(object: &Object, elsewhere: &[&'static Object]) -> bool {
    elsewhere.iter().any(|other| std::ptr::eq(*other, object))
}

fn kind(kind: &Kind, elsewhere: &[&'static Object]) -> String {
    match kind {
        Kind::Length { least, most } => format!("length, {} to {}", least.show(), most.show()),
        Kind::Whole { least, most } if least == most => format!("{least}"),
        Kind::Whole { least, most } => format!("whole number, {least} to {most}"),
        Kind::Number { least, most } => format!("number, {least} to {most}"),
        Kind::Amount { most } => format!("amount, 0 to {most}"),
        Kind::Text { most, .. } => format!("text of at most {most} characters"),
        Kind::Choice(words) => words
            .iter()
            .map(|word| format!("`{word}`"))
            .collect::<Vec<_>>()
            .join(", "),
        Kind::Flag => "true or false".to_owned(),
        Kind::Object(object) => link(object, elsewhere),
        Kind::OneOf(objects) => objects
            .iter()
            .map(|object| link(object, elsewhere))
            .collect::<Vec<_>>()
            .join(" or "),
        Kind::List { of, least, most } => format!("list of {least} to {most}: {}", self::kind(of, elsewhere)),
        Kind::Maybe(of) => format!("null or {}", self::kind(of, elsewhere)),
    }
}

fn link(object: &Object, elsewhere: &[&'static Object]) -> String {
    let document = if told(object, elsewhere) { "FIELDS.md" } else { "" };
    format!("[{0}]({document}#{0})", object.name)
}

fn preset(field: &Field) -> String {
    match field.preset {
        Preset::Required => "required".to_owned(),
        Preset::Null => "null".to_owned(),
        Preset::Empty => "`[]`".to_owned(),
        Preset::Value("") => "empty".to_owned(),
        Preset::Value(text) => format!("`{text}`"),
        Preset::Whole(json) => format!("`{}`", json.lines().map(str::trim).collect::<Vec<_>>().join(" ")),
        Preset::Parts("{}") => "its fields' defaults".to_owned(),
        Preset::Parts(json) => format!("`{json}`"),
        Preset::Computed(how) => how.to_owned(),
        Preset::From(value, how) => format!("`{value}` {how}"),
    }
}
