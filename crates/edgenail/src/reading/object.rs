//! An object of the document beside its record of fields: finding each field, given or by default.

use super::field::{Absent, Field, Kind, Record};
use super::fields::TAG;
use super::nearest::nearest;
use super::notes::Notes;
use super::spot::Spot;
use super::tree::{self, Node, within};
use crate::issue::Code;
use std::cell::RefCell;

/// An object of the document. Every fault goes into the notes, and a stand-in is returned instead of the value.
#[derive(Clone, Debug)]
pub(super) struct Object<'a> {
    pub(super) notes: &'a RefCell<Notes>,
    pub(super) record: &'static Record,
    /// The objects that say something here, the first before the others; none for a stand-in.
    pub(super) layers: Vec<(String, &'a Node)>,
    /// Where a field that is absent from every layer would stand.
    pub(super) home: String,
}

/// What looking for a field gave.
#[derive(Debug)]
pub(super) enum Outcome<T> {
    /// A value.
    Read(T),
    /// It is absent and follows from other fields, as the phrase says.
    Computed(&'static str),
    /// It is null, or absent where nothing follows from that.
    Nothing,
    /// A fault was noted.
    Fault,
}

impl<T> Outcome<T> {
    pub fn value(self) -> Option<T> {
        match self {
            Self::Read(value) => Some(value),
            _ => None,
        }
    }
}

impl<T> From<Option<T>> for Outcome<T> {
    fn from(value: Option<T>) -> Self {
        value.map_or(Self::Fault, Self::Read)
    }
}

/// The row for a name that the table lacks: every use of it is a fault, so that no test passes with one.
static UNLISTED: Field = Field::new("unlisted", Kind::Flag, "A field that the table of fields lacks");

impl<'a> Object<'a> {
    /// The object at a place; fields that it does not have are faults.
    pub fn new(spot: Spot<'a>, record: &'static Record, tagged: bool) -> Self {
        let object = Self {
            notes: spot.notes,
            record,
            layers: vec![(spot.path.to_owned(), spot.node)],
            home: spot.path.to_owned(),
        };
        object.unknown_fields(tagged);
        object
    }

    /// An object that stands in for a faulty one.
    pub fn stand_in(notes: &'a RefCell<Notes>, record: &'static Record) -> Self {
        Self {
            notes,
            record,
            layers: Vec::new(),
            home: String::new(),
        }
    }

    /// The row of a field.
    pub fn row(&self, name: &str) -> &'static Field {
        self.record.field(name).unwrap_or(&UNLISTED)
    }

    /// Where a field stands, or would stand.
    pub fn place_of(&self, name: &str) -> String {
        within(self.given(name).map_or(&self.home, |(path, _)| path), name)
    }

    /// The layer that has a field, and its value.
    pub fn given(&self, name: &str) -> Option<(&str, &'a Node)> {
        let mut layers = self.layers.iter();
        layers.find_map(|(path, node)| node.field(name).map(|value| (path.as_str(), value)))
    }

    /// Finds a field and reads it.
    pub fn look<T>(&self, name: &str, read: impl FnOnce(Spot<'_>) -> Option<T>) -> Outcome<T> {
        let row = self.row(name);
        if let Some((path, node)) = self.given(name) {
            let path = &within(path, name);
            let spot = Spot {
                notes: self.notes,
                path,
                node,
            };
            return match node.kind {
                tree::Kind::Null if row.nullable => Outcome::Nothing,
                tree::Kind::Null => spot.wrong_kind::<T>(&row.kind.allowed()).into(),
                _ => read(spot).into(),
            };
        }
        let path = &within(&self.home, name);
        match row.absent {
            Absent::Nothing => Outcome::Nothing,
            Absent::Computed(phrase) => Outcome::Computed(phrase),
            Absent::Default(json, source) => self.default(path, json, source.words(), read).into(),
            Absent::Required => {
                self.missing(name);
                Outcome::Fault
            }
        }
    }

    /// Notes that a field is absent that has to be given.
    pub fn missing(&self, name: &str) {
        let problem = format!("`{name}` is absent from the {}", self.record.name);
        let allowed = self.row(name).kind.allowed();
        let path = within(&self.home, name);
        self.notes
            .borrow_mut()
            .fault(Code::MissingField, &path, "nothing", &allowed, &problem);
    }

    /// Reads a default: an empty object lists its own defaults one by one, anything else is listed as a whole.
    fn default<T>(
        &self,
        path: &str,
        json: &str,
        why: &str,
        read: impl FnOnce(Spot<'_>) -> Option<T>,
    ) -> Option<T> {
        let node = &tree::parse(json.as_bytes()).ok()?;
        let spot = Spot {
            notes: self.notes,
            path,
            node,
        };
        if json == "{}" {
            return read(spot);
        }
        let shown = match &node.kind {
            tree::Kind::Text(text) => text.as_str(),
            _ => json,
        };
        self.notes.borrow_mut().assume(path, shown, why);
        // A default is written in inches and its parts were listed with it.
        let before = {
            let mut notes = self.notes.borrow_mut();
            let before = (notes.unit, notes.counts_units, notes.quiet);
            (notes.unit, notes.counts_units, notes.quiet) = (crate::length::Unit::Inch, false, true);
            before
        };
        let value = read(spot);
        let mut notes = self.notes.borrow_mut();
        (notes.unit, notes.counts_units, notes.quiet) = before;
        value
    }

    /// Notes what was assumed for a field.
    pub fn assume(&self, name: &str, value: &str, why: &str) {
        let path = within(&self.home, name);
        self.notes.borrow_mut().assume(&path, value, why);
    }

    fn unknown_fields(&self, tagged: bool) {
        let names = || self.record.fields.iter().map(|field| field.name);
        for (path, node) in &self.layers {
            let tree::Kind::Object(fields) = &node.kind else {
                continue;
            };
            for (key, _) in fields {
                if (tagged && key == TAG) || self.record.field(key).is_some() {
                    continue;
                }
                if !self.notes.borrow().lists_more() {
                    self.notes
                        .borrow_mut()
                        .fault(Code::UnknownField, path, key, "", "");
                    continue;
                }
                let known = names().collect::<Vec<_>>().join(", ");
                let hint = nearest(key, names()).map_or(String::new(), |name| format!("; `{name}` is near"));
                let key: String = key.chars().take(200).collect();
                let problem = format!("The {} has no field `{key}`{hint}", self.record.name);
                let place = within(path, &key);
                self.notes
                    .borrow_mut()
                    .fault(Code::UnknownField, &place, &key, &known, &problem);
            }
        }
    }
}
