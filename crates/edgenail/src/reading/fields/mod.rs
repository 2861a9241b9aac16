//! The one table of the input: every field with its kind, range, default, source and meaning.
//!
//! Reading, the help with misspelt fields, the JSON schema and the documentation all come out of these rows. The
//! defaults of practice are here and nowhere else.

mod demand;
mod document;
mod given;
mod limits;
mod markdown;
mod opening;
mod practice;
mod question;
mod rates;
mod schema;
mod section;
mod segment;
mod stock;
mod storey;
mod top;
mod wall;

pub use document::HOUSE;
pub use markdown::{fields_markdown, question_markdown};
pub use schema::{house_schema, question_schema};

pub(super) use given::GIVEN_PIECES;
pub(super) use question::{
    ANCHORAGE, BUILT, DIAPHRAGM, DRIFT, EQUATION_THREE, FACE_FACING, FACE_PANELS, FACES, FACING, HOLD_DOWN,
    NAIL, NAIL_INSPECTION, PANEL, QUESTIONS, RACKING, RATED_PANEL, SCHEDULE, TRANSFER, UNIFORM_LOAD,
    UNIT_SHEAR, WALL_LINE,
};
pub(super) use section::{BAND_MEMBERS, BAND_PLATE, LEVEL_BAND};
pub(super) use top::{TOP_EAVES, TOP_GABLE, TOP_RAKE};

use crate::amount::Amount;
use crate::decimal::Decimal;
use crate::length::Length;

/// An object of the input.
#[derive(Debug)]
pub struct Object {
    /// What it is called in the documentation.
    pub name: &'static str,
    /// The value of its field `kind`, where several objects may stand in one place.
    pub tag: Option<&'static str>,
    /// What it is.
    pub meaning: &'static str,
    /// Its fields, in order.
    pub fields: &'static [Field],
}

/// A field of an object.
#[derive(Clone, Copy, Debug)]
pub struct Field {
    /// Its key.
    pub name: &'static str,
    /// What may stand there.
    pub kind: Kind,
    /// What is taken where the field is missing.
    pub preset: Preset,
    /// Where the preset comes from; empty where there is none.
    pub source: &'static str,
    /// What it says.
    pub meaning: &'static str,
}

/// What may stand in a field.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// A length.
    Length {
        /// The least.
        least: Length,
        /// The most.
        most: Length,
    },
    /// A whole number.
    Whole {
        /// The least.
        least: u64,
        /// The most.
        most: u64,
    },
    /// A decimal number.
    Number {
        /// The least.
        least: Decimal,
        /// The most.
        most: Decimal,
    },
    /// An amount of money or minutes.
    Amount {
        /// The most; the least is nothing.
        most: Amount,
    },
    /// Text of at least one character, or of none where it may be blank.
    Text {
        /// The most characters.
        most: usize,
        /// It may be empty.
        blank: bool,
    },
    /// One of these words.
    Choice(&'static [&'static str]),
    /// True or false.
    Flag,
    /// An object.
    Object(&'static Object),
    /// One of several objects, told apart by their field `kind`.
    OneOf(&'static [&'static Object]),
    /// A list.
    List {
        /// What its items are.
        of: &'static Kind,
        /// The fewest items.
        least: usize,
        /// The most items.
        most: usize,
    },
    /// Another kind, or null.
    Maybe(&'static Kind),
}

/// What is taken where a field is missing.
#[derive(Clone, Copy, Debug)]
pub enum Preset {
    /// Nothing: the field must be there.
    Required,
    /// Null: nothing is said.
    Null,
    /// An empty list.
    Empty,
    /// This value; a length is in inches.
    Value(&'static str),
    /// This JSON, listed as a whole.
    Whole(&'static str),
    /// This JSON, whose own fields are then filled and listed one by one.
    Parts(&'static str),
    /// A value that follows from others, in the words of this sentence.
    Computed(&'static str),
    /// A value that follows from this one and others: `9 1/4` and `or less where there is less room`.
    From(&'static str, &'static str),
}

/// Taken from nobody in particular.
pub(super) const COMMON: &str = "common practice, no source";
/// Chosen by this library.
pub(super) const OWN: &str = "own value";
/// Made up, for want of the user's own figure.
pub(super) const INVENTED: &str = "invented";

/// The most characters of a name or text.
const TEXT_MOST: usize = 200;
/// The longest length.
const LONGEST: Length = Length::feet(1000);

const fn inches(least: i64, most: i64) -> Kind {
    Kind::Length {
        least: Length::inches(least),
        most: Length::inches(most),
    }
}

const fn sixteenths(least: i64, most: i64) -> Kind {
    Kind::Length {
        least: Length::sixteenths(least),
        most: Length::sixteenths(most),
    }
}

/// A place along the wall, from its left end.
const fn along() -> Kind {
    Kind::Length {
        least: Length::ZERO,
        most: LONGEST,
    }
}

/// A height, which may be below zero.
const fn height() -> Kind {
    Kind::Length {
        least: Length::feet(-1000),
        most: LONGEST,
    }
}

/// A size above zero.
const fn size() -> Kind {
    Kind::Length {
        least: Length::sixteenths(1),
        most: LONGEST,
    }
}

const fn name() -> Kind {
    Kind::Text {
        most: TEXT_MOST,
        blank: false,
    }
}

const fn whole(least: u64, most: u64) -> Kind {
    Kind::Whole { least, most }
}

const fn amount() -> Kind {
    Kind::Amount {
        most: Amount::whole(1_000_000),
    }
}

const fn percent() -> Kind {
    Kind::Number {
        least: Decimal::ZERO,
        most: Decimal::whole(100),
    }
}

const fn list(of: &'static Kind, least: usize, most: usize) -> Kind {
    Kind::List { of, least, most }
}

const fn required(name: &'static str, kind: Kind, meaning: &'static str) -> Field {
    Field {
        name,
        kind,
        preset: Preset::Required,
        source: "",
        meaning,
    }
}

const fn nullable(name: &'static str, kind: &'static Kind, meaning: &'static str) -> Field {
    Field {
        name,
        kind: Kind::Maybe(kind),
        preset: Preset::Null,
        source: "",
        meaning,
    }
}

const fn empty(name: &'static str, kind: Kind, meaning: &'static str) -> Field {
    Field {
        name,
        kind,
        preset: Preset::Empty,
        source: "",
        meaning,
    }
}

const fn value(
    name: &'static str,
    kind: Kind,
    value: &'static str,
    source: &'static str,
    meaning: &'static str,
) -> Field {
    Field {
        name,
        kind,
        preset: Preset::Value(value),
        source,
        meaning,
    }
}

const fn computed(
    name: &'static str,
    kind: Kind,
    how: &'static str,
    source: &'static str,
    meaning: &'static str,
) -> Field {
    Field {
        name,
        kind,
        preset: Preset::Computed(how),
        source,
        meaning,
    }
}

const fn from(
    name: &'static str,
    kind: Kind,
    value: &'static str,
    how: &'static str,
    source: &'static str,
    meaning: &'static str,
) -> Field {
    Field {
        name,
        kind,
        preset: Preset::From(value, how),
        source,
        meaning,
    }
}

const fn parts(
    name: &'static str,
    kind: Kind,
    json: &'static str,
    source: &'static str,
    meaning: &'static str,
) -> Field {
    Field {
        name,
        kind,
        preset: Preset::Parts(json),
        source,
        meaning,
    }
}

impl Object {
    /// The field of this name.
    pub fn field(&self, name: &str) -> Option<&'static Field> {
        self.fields.iter().find(|field| field.name == name)
    }
}

/// These objects and every object within them, each once, outer ones first.
fn objects(roots: &[&'static Object]) -> Vec<&'static Object> {
    fn enter(kind: &'static Kind, found: &mut Vec<&'static Object>) {
        match kind {
            Kind::Object(object) => visit(object, found),
            Kind::OneOf(objects) => objects.iter().for_each(|object| visit(object, found)),
            Kind::List { of, .. } | Kind::Maybe(of) => enter(of, found),
            _ => {}
        }
    }
    fn visit(object: &'static Object, found: &mut Vec<&'static Object>) {
        if found.iter().any(|other| std::ptr::eq(*other, object)) {
            return;
        }
        found.push(object);
        object.fields.iter().for_each(|field| enter(&field.kind, found));
    }
    let mut found = Vec::new();
    for root in roots {
        visit(root, &mut found);
    }
    found
}

#[cfg(test)]
mod tests;
