//! An object of the document, read field by field through its rows of the table.

use super::fields::{Field, Kind, Object, Preset};
use super::item::{Item, Voice, nearest, perhaps};
use super::tree::{self, Node, cut, pointer_part};
use super::value::Value;
use crate::issue::{Code, Issue};
use std::borrow::Cow;
use std::rc::Rc;

/// An object at its place.
#[derive(Clone, Debug)]
pub(super) struct Record<'r, 'n> {
    item: Item<'r, 'n>,
    table: &'static Object,
}

/// Faults in the object of this name belong to the wall that it names.
const WALL: &str = "wall";

/// A field as it was found, or as its row gives it.
enum Found<'r, 'n> {
    /// The user, or a default further out, wrote it.
    Written(Item<'r, 'n>),
    /// It is missing.
    Missing(&'static Field),
}

impl<'r, 'n> Record<'r, 'n> {
    /// Reads an object of the kind that the item's row says; lists fields that it does not have.
    pub(super) fn of(item: &Item<'r, 'n>) -> Option<Self> {
        let table = match item.kind {
            Kind::Object(table) => table,
            Kind::OneOf(tables) => tagged(item, tables)?,
            _ => {
                item.table_fault();
                return None;
            }
        };
        let tree::Kind::Object(entries) = &item.node.kind else {
            item.wrong_kind("an object");
            return None;
        };
        let mut item = item.clone();
        if table.name == WALL
            && let Some(tree::Kind::Text(name)) = item.node.get("name").map(|node| &node.kind)
        {
            item.wall = Rc::from(name.as_ref());
        }
        let record = Self { item, table };
        for (key, node) in entries {
            let known = table.field(key).is_some() || (table.tag.is_some() && key == "kind");
            if !known {
                record.unknown(key, node);
            }
        }
        Some(record)
    }

    fn unknown(&self, key: &str, node: &Node<'_>) {
        let names = self.table.fields.iter().map(|field| field.name);
        let message = format!(
            "`{}` has no field `{}`{}",
            self.table.name,
            cut(key),
            perhaps(nearest(key, names.clone()))
        );
        self.fault_at(
            &pointer_part(key),
            Code::UnknownField,
            &node.shown(),
            &names.collect::<Vec<_>>().join(", "),
            &message,
        );
    }

    fn fault_at(&self, part: &str, code: Code, found: &str, allowed: &str, message: &str) {
        if self.item.voice != Voice::Mute {
            self.item.context.fault(Issue {
                code,
                path: format!("{}/{part}", self.item.path),
                wall: self.item.wall.to_string(),
                found: found.to_owned(),
                allowed: allowed.to_owned(),
                message: message.to_owned(),
            });
        }
    }

    /// Whether this is the object of these rows, where several may stand in its place.
    pub(super) fn is(&self, table: &'static Object) -> bool {
        self.table.name == table.name
    }

    /// How many items the list in this field has; none if it is no list.
    pub(super) fn count(&self, name: &str) -> usize {
        match self.item.node.get(name).map(|node| &node.kind) {
            Some(tree::Kind::List(items)) => items.len(),
            _ => 0,
        }
    }

    /// Whether the user wrote this field.
    pub(super) fn has(&self, name: &str) -> bool {
        self.item.node.get(name).is_some()
    }

    fn find(&self, name: &str) -> Option<Found<'r, 'n>> {
        let Some(field) = self.table.field(name) else {
            self.item.table_fault();
            return None;
        };
        Some(match self.item.node.get(name) {
            Some(node) => Found::Written(self.child(field, node, self.item.voice)),
            None => Found::Missing(field),
        })
    }

    fn child<'c, 'm>(&self, field: &'static Field, node: &'c Node<'m>, voice: Voice) -> Item<'c, 'm>
    where
        'r: 'c,
    {
        Item {
            context: self.item.context,
            node,
            kind: &field.kind,
            path: format!("{}/{}", self.item.path, field.name),
            wall: Rc::clone(&self.item.wall),
            voice,
        }
    }

    /// The field's value, or its preset.
    pub(super) fn get<T: Value>(&self, name: &str) -> T {
        match self.find(name) {
            Some(Found::Written(item)) => T::take(&item),
            Some(Found::Missing(field)) => self.preset(field, T::take, T::show),
            None => None,
        }
        .unwrap_or_else(T::placeholder)
    }

    /// The field's value, or the one that follows from others.
    pub(super) fn or<T: Value>(&self, name: &str, follow: impl FnOnce() -> T) -> T {
        match self.find(name) {
            Some(Found::Written(item)) => T::take(&item).unwrap_or_else(T::placeholder),
            Some(Found::Missing(field)) => {
                let value = follow();
                self.assume(field, &value.show());
                value
            }
            None => T::placeholder(),
        }
    }

    /// The field's value, or the one that `follow` makes of the preset; a fault if it makes none.
    pub(super) fn from<T: Value>(&self, name: &str, follow: impl FnOnce(T) -> T) -> T {
        match self.find(name) {
            Some(Found::Written(item)) => T::take(&item).unwrap_or_else(T::placeholder),
            Some(Found::Missing(field)) => {
                let Preset::From(preset, _) = field.preset else {
                    self.item.table_fault();
                    return T::placeholder();
                };
                let node = text_node(preset);
                let base = T::take(&self.child(field, &node, Voice::Listed));
                let value = base.map_or_else(T::placeholder, follow);
                self.assume(field, &value.show());
                value
            }
            None => T::placeholder(),
        }
    }

    /// The field's value, or what it is further out, or its preset.
    pub(super) fn inherit<T: Value + Clone>(&self, name: &str, outer: Option<&T>) -> T {
        match outer {
            Some(outer) if !self.has(name) => outer.clone(),
            _ => self.get(name),
        }
    }

    /// The field's value where its row has no preset but this object needs it.
    pub(super) fn need<T: Value>(&self, name: &str) -> T {
        if self.has(name) {
            return self.get(name);
        }
        self.missing(name);
        T::placeholder()
    }

    fn missing(&self, name: &str) {
        let message = format!("`{}` must say its `{name}`", self.table.name);
        self.fault_at(
            name,
            Code::MissingField,
            "",
            "a value: there is no default",
            &message,
        );
    }

    /// What is built of the object in this field; of an object with presets only, if it is missing.
    pub(super) fn object<T>(&self, name: &str, build: impl Fn(&Record<'_, '_>) -> T) -> T {
        let built = match self.find(name) {
            Some(Found::Written(item)) => Record::of(&item).map(|record| build(&record)),
            Some(Found::Missing(field)) => self.preset(
                field,
                |item| Record::of(item).map(|record| build(&record)),
                |_| String::new(),
            ),
            None => None,
        };
        built.unwrap_or_else(|| self.muted(name, &build))
    }

    /// What is built of the object in this field, or what follows from others where it is missing.
    pub(super) fn object_or<T>(
        &self,
        name: &str,
        build: impl Fn(&Record<'_, '_>) -> T,
        follow: T,
        show: impl FnOnce(&T) -> String,
    ) -> T {
        if let Some(Found::Missing(field)) = self.find(name) {
            self.assume(field, &show(&follow));
            return follow;
        }
        self.object(name, build)
    }

    /// As [`Record::maybe`]; where the field is missing, an object of presets or null.
    pub(super) fn maybe_or<T>(
        &self,
        name: &str,
        build: impl Fn(&Record<'_, '_>) -> T,
        wanted: bool,
    ) -> Option<T> {
        let Some(Found::Missing(field)) = self.find(name) else {
            return self.maybe(name, build);
        };
        if !wanted {
            self.assume(field, "null");
            return None;
        }
        let Kind::Maybe(kind) = &field.kind else {
            self.item.table_fault();
            return None;
        };
        let node = Node {
            kind: tree::Kind::Object(Vec::new()),
            offset: 0,
        };
        let item = self.child(field, &node, self.quieter()).as_kind(kind);
        Record::of(&item).map(|record| build(&record))
    }

    /// As [`Record::object`] for a field that may be null.
    pub(super) fn maybe<T>(&self, name: &str, build: impl Fn(&Record<'_, '_>) -> T) -> Option<T> {
        match self.find(name)? {
            Found::Written(item) if item.node.kind != tree::Kind::Null => {
                let Kind::Maybe(kind) = item.kind else {
                    item.table_fault();
                    return None;
                };
                Record::of(&item.as_kind(kind)).map(|record| build(&record))
            }
            _ => None,
        }
    }

    /// What is built of each object of the list in this field.
    pub(super) fn list<T>(&self, name: &str, mut build: impl FnMut(&Record<'_, '_>) -> T) -> Vec<T> {
        let mut each = |item: &Item<'_, '_>| {
            let mut built = Vec::new();
            for item in item.items()? {
                match Record::of(&item) {
                    Some(record) => built.push(build(&record)),
                    None => built.push(with_muted(&item, &mut build)),
                }
            }
            Some(built)
        };
        match self.find(name) {
            Some(Found::Written(item)) => each(&item),
            Some(Found::Missing(field)) => self.preset(field, each, |_| String::new()),
            None => None,
        }
        .unwrap_or_default()
    }

    /// Reads a missing field's preset and lists it; lists a fault if it has none.
    fn preset<T>(
        &self,
        field: &'static Field,
        take: impl FnOnce(&Item<'_, '_>) -> Option<T>,
        show: impl FnOnce(&T) -> String,
    ) -> Option<T> {
        match field.preset {
            Preset::Null => take(&self.child(
                field,
                &Node {
                    kind: tree::Kind::Null,
                    offset: 0,
                },
                Voice::Listed,
            )),
            Preset::Empty => take(&self.child(
                field,
                &Node {
                    kind: tree::Kind::List(Vec::new()),
                    offset: 0,
                },
                Voice::Listed,
            )),
            Preset::Value(text) => {
                let value = take(&self.child(field, &scalar_node(&field.kind, text), Voice::Listed));
                self.assume(field, &value.as_ref().map(show).unwrap_or_default());
                value
            }
            Preset::Whole(json) => {
                self.assume(field, &one_line(json));
                take(&self.child(field, &json_node(json)?, Voice::Listed))
            }
            Preset::Parts(json) => take(&self.child(field, &json_node(json)?, self.quieter())),
            Preset::Required => {
                if self.item.voice != Voice::Mute {
                    self.missing(field.name);
                }
                None
            }
            Preset::Computed(_) | Preset::From(..) => {
                self.item.table_fault();
                None
            }
        }
    }

    /// The voice of parts that a default gives.
    const fn quieter(&self) -> Voice {
        match self.item.voice {
            Voice::User => Voice::Default,
            other => other,
        }
    }

    fn assume(&self, field: &Field, value: &str) {
        if matches!(self.item.voice, Voice::Listed | Voice::Mute) {
            return;
        }
        let why = match field.preset {
            Preset::Computed(how) => format!("{how} ({})", field.source),
            Preset::From(base, how) => format!("{base} {how} ({})", field.source),
            _ => field.source.to_owned(),
        };
        self.item.context.assume(
            format!("{}/{}", self.item.path, field.name),
            value.to_owned(),
            &why,
        );
    }

    fn muted<T>(&self, name: &str, build: &impl Fn(&Record<'_, '_>) -> T) -> T {
        let kind = self.table.field(name).map_or(self.item.kind, |field| &field.kind);
        with_muted(&self.item.as_kind(kind), build)
    }
}

/// What is built of an object without any field, in place of one with a fault.
fn with_muted<T>(item: &Item<'_, '_>, mut build: impl FnMut(&Record<'_, '_>) -> T) -> T {
    let node = Node {
        kind: tree::Kind::Object(Vec::new()),
        offset: 0,
    };
    let table = match item.kind {
        Kind::Object(table) | Kind::Maybe(Kind::Object(table)) => table,
        Kind::OneOf(tables) | Kind::Maybe(Kind::OneOf(tables)) => {
            tables.first().copied().unwrap_or(&super::fields::HOUSE)
        }
        _ => &super::fields::HOUSE,
    };
    let item = Item {
        context: item.context,
        node: &node,
        kind: item.kind,
        path: item.path.clone(),
        wall: Rc::clone(&item.wall),
        voice: Voice::Mute,
    };
    build(&Record { item, table })
}

/// The object of this kind.
fn tagged(item: &Item<'_, '_>, tables: &'static [&'static Object]) -> Option<&'static Object> {
    let tags = || tables.iter().filter_map(|table| table.tag);
    let allowed = || tags().collect::<Vec<_>>().join(", ");
    let fault = |code, found: String, message: &str| {
        if item.voice != Voice::Mute {
            item.context.fault(Issue {
                code,
                path: format!("{}/kind", item.path),
                wall: item.wall.to_string(),
                found,
                allowed: allowed(),
                message: message.to_owned(),
            });
        }
        None
    };
    if !matches!(item.node.kind, tree::Kind::Object(_)) {
        item.wrong_kind("an object");
        return None;
    }
    match item.node.get("kind") {
        None => fault(
            Code::MissingField,
            String::new(),
            "the object must say its `kind`",
        ),
        Some(node) => {
            let tree::Kind::Text(word) = &node.kind else {
                return fault(Code::WrongKind, node.shown(), "`kind` must be text");
            };
            if let Some(table) = tables.iter().find(|table| table.tag == Some(word.as_ref())) {
                return Some(table);
            }
            let help = perhaps(nearest(word, tags()));
            let message = format!("`{}` is none of the kinds{help}", cut(word));
            fault(Code::NotAChoice, node.shown(), &message)
        }
    }
}

fn text_node(text: &'static str) -> Node<'static> {
    Node {
        kind: tree::Kind::Text(Cow::Borrowed(text)),
        offset: 0,
    }
}

/// The text of a preset as the value that its kind wants.
fn scalar_node(kind: &Kind, text: &'static str) -> Node<'static> {
    let kind = match kind {
        Kind::Whole { .. } => tree::Kind::Number(Cow::Borrowed(text)),
        Kind::Flag => tree::Kind::Flag(text == "true"),
        _ => return text_node(text),
    };
    Node { kind, offset: 0 }
}

/// The tree of a preset; its text is part of the library, and a test reads every one.
fn json_node(json: &'static str) -> Option<Node<'static>> {
    tree::parse(json.as_bytes()).ok().map(|(node, _)| node)
}

fn one_line(json: &str) -> String {
    json.lines().map(str::trim).collect::<Vec<_>>().join(" ")
}
