//! The fields of an object that hold objects and lists.

use super::field::{Kind, Record, Variant};
use super::fields::TAG;
use super::object::{Object, Outcome};
use super::spot::Spot;
use super::tree::{self, Node, within};
use crate::issue::Code;

impl<'a> Object<'a> {
    /// An object.
    pub fn object<T>(&self, name: &str, read: impl Fn(&Object<'_>) -> T) -> T {
        let record = record(&self.row(name).kind);
        let outcome = self.look_object(name, &read);
        outcome
            .value()
            .unwrap_or_else(|| self.stand_in_for(record, &read))
    }

    /// An object, or none.
    pub fn object_or_null<T>(&self, name: &str, read: impl Fn(&Object<'_>) -> T) -> Option<T> {
        self.look_object(name, &read).value()
    }

    fn look_object<T>(&self, name: &str, read: &impl Fn(&Object<'_>) -> T) -> Outcome<T> {
        let kind = self.row(name).kind;
        let lower = self.layers_below(name);
        self.look(name, |spot| {
            let mut object = of_record(spot, &kind)?;
            object.layers.extend(lower);
            if self.layers.len() > 1 {
                object.home = within(&self.home, name);
            }
            Some(read(&object))
        })
    }

    /// An object over another that says the same kind of things: what neither says is assumed at `home`.
    pub fn layered<T>(
        &self,
        name: &str,
        below: Option<(String, &Node)>,
        home: &str,
        read: impl Fn(&Object<'_>) -> T,
    ) -> T {
        let kind = self.row(name).kind;
        let path = self.place_of(name);
        let own = self.given(name).and_then(|(_, node)| {
            let spot = Spot {
                notes: self.notes,
                path: &path,
                node,
            };
            of_record(spot, &kind)
        });
        let mut layers: Vec<(String, &Node)> = own.map_or_else(Vec::new, |object| object.layers);
        layers.extend(below);
        read(&Object {
            notes: self.notes,
            record: record(&kind),
            layers,
            home: home.to_owned(),
        })
    }

    /// What the layers after the first that has a field say about it, if that is an object.
    fn layers_below(&self, name: &str) -> Vec<(String, &'a Node)> {
        let having = self
            .layers
            .iter()
            .filter_map(|(path, node)| Some((within(path, name), node.field(name)?)));
        having
            .skip(1)
            .filter(|(_, node)| matches!(node.kind, tree::Kind::Object(_)))
            .collect()
    }

    /// One of several objects, told by its `kind`.
    pub fn variant<T>(&self, name: &str, read: impl Fn(&str, &Object<'_>) -> T) -> T {
        let kind = self.row(name).kind;
        let outcome = self.look(name, |spot| of_variants(spot, &kind, &read));
        outcome.value().unwrap_or_else(|| {
            let first = variants(&kind).first();
            let word = first.map_or("", |variant| variant.word);
            self.stand_in_for(record(&kind), |object| read(word, object))
        })
    }

    /// One of several objects, or none.
    pub fn variant_or_null<T>(&self, name: &str, read: impl Fn(&str, &Object<'_>) -> T) -> Option<T> {
        let kind = self.row(name).kind;
        self.look(name, |spot| of_variants(spot, &kind, &read)).value()
    }

    /// A list of objects.
    pub fn list<T>(&self, name: &str, read: impl Fn(&Object<'_>) -> T) -> Vec<T> {
        let read = |spot: &Spot<'_>, kind: &Kind| Some(read(&of_record(*spot, kind)?));
        self.entries(name, read).unwrap_or_default()
    }

    /// A list of several objects, each told by its `kind`.
    pub fn variants<T>(&self, name: &str, read: impl Fn(&str, &Object<'_>) -> T) -> Vec<T> {
        let read = |spot: &Spot<'_>, kind: &Kind| of_variants(*spot, kind, &read);
        self.entries(name, read).unwrap_or_default()
    }

    /// The entries of a list that are not faulty, each read by its place and the kind of the list's entries.
    pub(super) fn entries<T>(
        &self,
        name: &str,
        read: impl Fn(&Spot<'_>, &Kind) -> Option<T>,
    ) -> Option<Vec<T>> {
        let kind = self.row(name).kind;
        let outcome = self.look(name, |spot| {
            let (Kind::List { of, least, most }, tree::Kind::List(nodes)) = (kind, &spot.node.kind) else {
                return spot.wrong_kind(&kind.allowed());
            };
            if !(least..=most).contains(&nodes.len()) {
                return spot.fault(
                    Code::ListLength,
                    &kind.allowed(),
                    "The list has too few entries or too many",
                );
            }
            let entries = nodes.iter().enumerate().filter_map(|(position, node)| {
                let path = &within(spot.path, position);
                read(&Spot { path, node, ..spot }, of)
            });
            Some(entries.collect())
        });
        outcome.value()
    }

    /// Reads a stand-in; nothing that is noted there is listed.
    fn stand_in_for<T>(&self, record: &'static Record, read: impl Fn(&Object<'_>) -> T) -> T {
        let before = std::mem::replace(&mut self.notes.borrow_mut().muted, true);
        let value = read(&Object::stand_in(self.notes, record));
        self.notes.borrow_mut().muted = before;
        value
    }
}

static EMPTY: Record = Record {
    name: "nothing",
    meaning: "Stands in where the table of fields has no object",
    fields: &[],
};

fn record(kind: &Kind) -> &'static Record {
    match kind {
        Kind::Object(record) => record,
        Kind::Variant(variants) => variants.first().map_or(&EMPTY, |variant| variant.record),
        _ => &EMPTY,
    }
}

fn variants(kind: &Kind) -> &'static [Variant] {
    match kind {
        Kind::Variant(variants) => variants,
        _ => &[],
    }
}

fn of_record<'a>(spot: Spot<'a>, kind: &Kind) -> Option<Object<'a>> {
    match (kind, &spot.node.kind) {
        (Kind::Object(record), tree::Kind::Object(_)) => Some(Object::new(spot, record, false)),
        _ => spot.wrong_kind(&kind.allowed()),
    }
}

fn of_variants<T>(spot: Spot<'_>, kind: &Kind, read: &impl Fn(&str, &Object<'_>) -> T) -> Option<T> {
    if !matches!(spot.node.kind, tree::Kind::Object(_)) {
        return spot.wrong_kind(&kind.allowed());
    }
    let variants = variants(kind);
    let words: Vec<&str> = variants.iter().map(|variant| variant.word).collect();
    let path = &within(spot.path, TAG);
    let Some(node) = spot.node.field(TAG) else {
        let problem = "`kind` is absent";
        let mut notes = spot.notes.borrow_mut();
        notes.fault(Code::MissingField, path, "nothing", &words.join(", "), problem);
        return None;
    };
    let word = Spot { path, node, ..spot }.choice(&words)?;
    let variant = variants.get(word)?;
    Some(read(variant.word, &Object::new(spot, variant.record, true)))
}
