//! The table of fields: one row for each field of each object that a user may write.
//!
//! Reading takes names, kinds, ranges and defaults from here; so do the schema and the documentation.

mod kind;
mod range;

pub(crate) use kind::{Kind, Record, Variant};
pub(crate) use range::{Lengths, Numbers};

/// A field of an object.
#[derive(Debug)]
pub(crate) struct Field {
    /// Its key.
    pub name: &'static str,
    /// What may stand there.
    pub kind: Kind,
    /// What holds when it is absent.
    pub absent: Absent,
    /// `null` may stand there.
    pub nullable: bool,
    /// What it says, as a sentence without its full stop.
    pub meaning: &'static str,
}

/// What holds when a field is absent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Absent {
    /// It may not be absent.
    Required,
    /// Nothing was said, and nothing follows from it: an empty list, or no value.
    Nothing,
    /// This JSON is read instead, with lengths in inches.
    Default(&'static str, Source),
    /// The value follows from other fields, as the phrase says.
    Computed(&'static str),
}

/// Where a default is from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Source {
    /// What crews usually do.
    CommonPractice,
    /// A published source, by its title.
    Published(&'static str),
    /// Set by this library.
    Own,
    /// A cost that stands for no market.
    Invented,
}

impl Source {
    /// The source in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::CommonPractice => "common practice, no source",
            Self::Published(title) => title,
            Self::Own => "own value",
            Self::Invented => "invented",
        }
    }
}

impl Field {
    /// A field that must be given.
    pub const fn new(name: &'static str, kind: Kind, meaning: &'static str) -> Self {
        Self {
            name,
            kind,
            absent: Absent::Required,
            nullable: false,
            meaning,
        }
    }

    /// With a default.
    pub const fn or(self, json: &'static str, source: Source) -> Self {
        Self {
            absent: Absent::Default(json, source),
            ..self
        }
    }

    /// With a default of common practice.
    pub const fn usually(self, json: &'static str) -> Self {
        self.or(json, Source::CommonPractice)
    }

    /// With a default that the library sets.
    pub const fn own(self, json: &'static str) -> Self {
        self.or(json, Source::Own)
    }

    /// With an invented default.
    pub const fn invented(self, json: &'static str) -> Self {
        self.or(json, Source::Invented)
    }

    /// With a value that follows from other fields.
    pub const fn computed(self, phrase: &'static str) -> Self {
        Self {
            absent: Absent::Computed(phrase),
            ..self
        }
    }

    /// It may be absent, which says nothing: an empty list.
    pub const fn optional(self) -> Self {
        Self {
            absent: Absent::Nothing,
            ..self
        }
    }

    /// `null` may stand there, also where a default holds when it is absent.
    pub const fn or_null(self) -> Self {
        Self {
            nullable: true,
            absent: match self.absent {
                Absent::Required => Absent::Nothing,
                absent => absent,
            },
            ..self
        }
    }
}
