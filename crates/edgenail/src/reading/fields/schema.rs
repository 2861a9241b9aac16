//! The table of fields as a JSON schema (draft 2020-12).

use super::{Field, HOUSE, Kind, Object, Preset, QUESTIONS};
use serde_json::{Map, Value, json};

/// The JSON schema of the input.
///
/// It says the shape and the choices. That lengths may be text in many forms, and what values go together, only the
/// reading itself can say.
///
/// ```
/// let schema: serde_json::Value = serde_json::from_str(&edgenail::reading::house_schema()).unwrap();
/// assert_eq!(schema["$ref"], "#/$defs/house");
/// assert_eq!(schema["$defs"]["wall"]["required"], serde_json::json!(["name", "length"]));
/// ```
pub fn house_schema() -> String {
    schema(
        "House",
        &[&HOUSE],
        "$ref",
        &json!("#/$defs/house"),
        &Names::default(),
    )
}

/// The JSON schema of a question of capacity. What a house is made of has names that begin with `house`.
///
/// ```
/// let schema: serde_json::Value = serde_json::from_str(&edgenail::reading::question_schema()).unwrap();
/// assert_eq!(schema["oneOf"][0]["$ref"], "#/$defs/unit_shear");
/// ```
pub fn question_schema() -> String {
    let kinds = Value::from_iter(QUESTIONS.map(|object| reference(object.name)));
    let names = Names {
        of_house: super::objects(&[&HOUSE]),
    };
    schema("Question of capacity", &QUESTIONS, "oneOf", &kinds, &names)
}

/// What objects are called: two documents have objects of one name.
#[derive(Default)]
struct Names {
    of_house: Vec<&'static Object>,
}

impl Names {
    fn of(&self, object: &Object) -> String {
        let of_house = self.of_house.iter().any(|other| std::ptr::eq(*other, object));
        if of_house && object.name != HOUSE.name {
            format!("{}_{}", HOUSE.name, object.name)
        } else {
            object.name.to_owned()
        }
    }
}

fn schema(title: &str, roots: &[&'static Object], key: &str, root: &Value, names: &Names) -> String {
    let mut definitions = Map::new();
    definitions.insert(
        "length".to_owned(),
        json!({
            "description": "A length: text such as \"97 1/8\", \"8' 1 1/8\\\"\" or \"2467 mm\", or a bare number in the document's unit.",
            "type": ["string", "number"],
        }),
    );
    definitions.insert(
        "decimal".to_owned(),
        json!({ "description": "A decimal number, as a number or as text.", "type": ["string", "number"] }),
    );
    for object in super::objects(roots) {
        definitions.insert(names.of(object), definition(object, names));
    }
    let schema = json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": title,
        key: root,
        "$defs": definitions,
    });
    let mut text = serde_json::to_string_pretty(&schema).unwrap_or_default();
    text.push('\n');
    text
}

fn definition(object: &Object, names: &Names) -> Value {
    let mut properties = Map::new();
    let mut required = Vec::new();
    if let Some(tag) = object.tag {
        properties.insert("kind".to_owned(), json!({ "const": tag }));
        required.push("kind");
    }
    for field in object.fields {
        properties.insert(field.name.to_owned(), property(field, names));
        if matches!(field.preset, Preset::Required) {
            required.push(field.name);
        }
    }
    json!({
        "description": object.meaning,
        "type": "object",
        "properties": properties,
        "required": required,
        "additionalProperties": false,
    })
}

fn property(field: &Field, names: &Names) -> Value {
    let mut property = kind(&field.kind, names);
    let mut meaning = field.meaning.to_owned();
    match field.preset {
        Preset::Computed(how) => meaning = format!("{meaning} Default: {how}."),
        Preset::From(value, how) => meaning = format!("{meaning} Default: {value} {how}."),
        Preset::Value(value) => {
            add(&mut property, "default", scalar(&field.kind, value));
        }
        Preset::Null => add(&mut property, "default", Value::Null),
        Preset::Empty => add(&mut property, "default", json!([])),
        Preset::Whole(text) | Preset::Parts(text) => {
            add(
                &mut property,
                "default",
                serde_json::from_str(text).unwrap_or_default(),
            );
        }
        Preset::Required => {}
    }
    if !field.source.is_empty() {
        meaning = format!("{meaning} Source of the default: {}.", field.source);
    }
    add(&mut property, "description", json!(meaning));
    property
}

fn scalar(kind: &Kind, text: &str) -> Value {
    match kind {
        Kind::Whole { .. } | Kind::Flag => serde_json::from_str(text).unwrap_or_default(),
        _ => json!(text),
    }
}

fn add(property: &mut Value, key: &str, value: Value) {
    if let Value::Object(map) = property {
        map.insert(key.to_owned(), value);
    }
}

fn reference(name: &str) -> Value {
    json!({ "$ref": format!("#/$defs/{name}") })
}

fn kind(kind: &Kind, names: &Names) -> Value {
    match kind {
        Kind::Length { .. } => reference("length"),
        Kind::Number { .. } | Kind::Amount { .. } => reference("decimal"),
        Kind::Whole { least, most } => json!({ "type": "integer", "minimum": least, "maximum": most }),
        Kind::Text { most, blank } => {
            json!({ "type": "string", "minLength": u8::from(!blank), "maxLength": most })
        }
        Kind::Choice(words) => json!({ "enum": words }),
        Kind::Flag => json!({ "type": "boolean" }),
        Kind::Object(object) => reference(&names.of(object)),
        Kind::OneOf(objects) => {
            json!({ "oneOf": objects.iter().map(|object| reference(&names.of(object))).collect::<Vec<_>>() })
        }
        Kind::List { of, least, most } => {
            json!({ "type": "array", "items": self::kind(of, names), "minItems": least, "maxItems": most })
        }
        Kind::Maybe(of) => json!({ "anyOf": [self::kind(of, names), { "type": "null" }] }),
    }
}
