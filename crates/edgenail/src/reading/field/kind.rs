//! What may stand in a field.

use super::{Field, Lengths, Numbers};

/// What may stand in a field.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Kind {
    /// A length.
    Length(Lengths),
    /// A whole number.
    Integer(Numbers),
    /// A decimal number.
    Decimal(Numbers),
    /// Money or minutes.
    Amount(Numbers),
    /// A text of at most 200 characters that says something.
    Text,
    /// A text of at most 200 characters, which may be empty.
    Note,
    /// One of these words.
    Choice(&'static [&'static str]),
    /// True or false.
    Flag,
    /// An object.
    Object(&'static Record),
    /// An object whose `kind` says which of these it is.
    Variant(&'static [Variant]),
    /// So many values of one kind.
    List {
        /// What each entry is.
        of: &'static Kind,
        /// Fewest entries.
        least: usize,
        /// Most entries.
        most: usize,
    },
}

impl Kind {
    /// A list of at most so many values.
    pub const fn list(of: &'static Self, most: usize) -> Self {
        Self::List { of, least: 0, most }
    }

    /// What is allowed, as a phrase for a person.
    pub fn allowed(&self) -> String {
        match self {
            Self::Length(range) => format!("a length {}", range.words()),
            Self::Integer(range) => format!("a whole number {}", range.words()),
            Self::Decimal(range) | Self::Amount(range) => format!("a number {}", range.words()),
            Self::Text => "a text of 1 to 200 characters".into(),
            Self::Note => "a text of at most 200 characters".into(),
            Self::Choice(words) => words.join(", "),
            Self::Flag => "true or false".into(),
            Self::Object(record) => format!("an object: {}", record.name),
            Self::Variant(variants) => {
                let names: Vec<&str> = variants.iter().map(|variant| variant.word).collect();
                format!("an object whose `kind` is {}", names.join(", "))
            }
            Self::List { of, least, most } => {
                let fewest = if *least == 0 {
                    String::new()
                } else {
                    format!("{least} to ")
                };
                format!("a list of {fewest}at most {most}, each {}", of.allowed())
            }
        }
    }
}

/// A kind of object: its fields.
#[derive(Debug)]
pub(crate) struct Record {
    /// Its name, as the documentation shows it.
    pub name: &'static str,
    /// What it is, as a sentence without its full stop.
    pub meaning: &'static str,
    /// Its fields, in the order in which they are written.
    pub fields: &'static [Field],
}

impl Record {
    /// The row of a field.
    pub fn field(&self, name: &str) -> Option<&'static Field> {
        self.fields.iter().find(|field| field.name == name)
    }
}

/// One of several kinds of object, told by the field `kind`.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Variant {
    /// The word in `kind`.
    pub word: &'static str,
    /// Its other fields.
    pub record: &'static Record,
}
