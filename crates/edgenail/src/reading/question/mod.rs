//! Records to a question, one question in a file of its own.

mod built;
mod diaphragm;
mod drift;
mod faces;
mod facing;
mod line;
mod nail;
mod nail_inspection;
mod panel;
mod schedule;
mod transfer;
mod uniform_load;
mod unit_shear;

use super::fields::{
    ANCHORAGE, BUILT, DIAPHRAGM, DRIFT, FACES, FACING, HOLD_DOWN, Kind, NAIL, NAIL_INSPECTION, PANEL,
    QUESTIONS, RACKING, SCHEDULE, TRANSFER, UNIFORM_LOAD, UNIT_SHEAR, WALL_LINE,
};
use super::item::Item;
use super::record::Record;
use super::tree::Node;
use super::value::Value;
use super::{Assumed, check, context_of, house_of, root, tree};
use crate::capacity::{CellQuery, Question, RATINGS, SpanRating, within};
use crate::house::House;
use crate::issue::Issue;
use crate::length::Unit;

/// The document as a whole.
static DOCUMENT: Kind = Kind::OneOf(&QUESTIONS);

/// Reads a question of capacity, and lists what the text left to the library.
///
/// # Errors
/// Every fault of the text, in the order of the document.
///
/// ```
/// use edgenail::capacity::Question;
/// let text = br#"{"kind": "cell", "table": "nail length x shank in", "key": "8d common"}"#;
/// let (question, assumed) = edgenail::reading::read_question(text).unwrap();
/// assert!(matches!(question, Question::Cell(_)));
/// assert_eq!((assumed[0].path.as_str(), assumed[0].value.as_str()), ("/accept_unverified", "false"));
/// ```
pub fn read_question(bytes: &[u8]) -> Result<(Question, Vec<Assumed>), Vec<Issue>> {
    let (tree, doubles) = tree::parse(bytes).map_err(|issue| vec![*issue])?;
    question_of(&tree, doubles)
}

/// The question that a tree asks; `doubles` are the keys that its document has twice.
pub(crate) fn question_of(
    tree: &Node<'_>,
    doubles: Vec<Issue>,
) -> Result<(Question, Vec<Assumed>), Vec<Issue>> {
    let context = context_of(tree, doubles);
    let (house, mut inside, of_house) = carried_house(tree);
    let question = Record::of(&root(&context, tree, &DOCUMENT)).and_then(|record| question(&record, house));
    if let Some(Question::Schedule(query)) = &question {
        check::stock_relations(&query.stock, &context);
    }
    let unit_said = !context.assumed_unit();
    let (mut issues, mut assumed) = context.finish();
    issues.append(&mut inside);
    assumed.extend(of_house);
    match question {
        Some(question) if issues.is_empty() => {
            if !unit_said {
                assumed.insert(0, Assumed::inches());
            }
            Ok((question, assumed))
        }
        _ => {
            issues.sort_by_key(|issue| tree.offset_at(&issue.path));
            Err(issues)
        }
    }
}

/// The house of a question that carries one: a document of its own, whose unit is its own too. Its faults, and what was
/// assumed of it, with paths from the question.
fn carried_house(tree: &Node<'_>) -> (Option<House>, Vec<Issue>, Vec<Assumed>) {
    let asked = tree.get("kind").map(|kind| &kind.kind);
    let carries = [&BUILT, &RACKING]
        .iter()
        .any(|object| matches!(asked, Some(tree::Kind::Text(word)) if Some(word.as_ref()) == object.tag));
    let Some(node) = tree.get("house").filter(|_| carries) else {
        return (None, Vec::new(), Vec::new());
    };
    match house_of(node, Vec::new()) {
        Ok((house, assumed)) => {
            let inside = assumed.into_iter().map(|assumed| Assumed {
                path: format!("/house{}", assumed.path),
                ..assumed
            });
            (Some(house), Vec::new(), inside.collect())
        }
        Err(issues) => (None, within("house", issues), Vec::new()),
    }
}

/// What a record asks; nothing where its house has a fault.
fn question(record: &Record<'_, '_>, house: Option<House>) -> Option<Question> {
    if record.is(&BUILT) || record.is(&RACKING) {
        if !record.has("house") {
            record.object("house", |_| ());
        }
        return if record.is(&BUILT) {
            built::built(record, house).map(|query| Question::Built(Box::new(query)))
        } else {
            built::racking(record, house).map(|query| Question::Racking(Box::new(query)))
        };
    }
    Some(alone(record))
}

/// A question that carries no house.
fn alone(record: &Record<'_, '_>) -> Question {
    if record.is(&UNIT_SHEAR) {
        unit(record);
        Question::UnitShear(unit_shear::query(record))
    } else if record.is(&FACES) {
        unit(record);
        Question::Faces(faces::faces(record))
    } else if record.is(&FACING) {
        unit(record);
        Question::Facing(facing::query(record))
    } else if record.is(&WALL_LINE) {
        unit(record);
        Question::WallLine(line::line(record))
    } else if record.is(&TRANSFER) {
        unit(record);
        Question::Transfer(transfer::transfer(record))
    } else if record.is(&HOLD_DOWN) {
        unit(record);
        Question::HoldDown(line::hold_down(record))
    } else if record.is(&ANCHORAGE) {
        unit(record);
        Question::Anchorage(line::anchorage(record))
    } else if record.is(&DIAPHRAGM) {
        unit(record);
        Question::Diaphragm(diaphragm::diaphragm(record))
    } else if record.is(&SCHEDULE) {
        unit(record);
        Question::Schedule(Box::new(schedule::schedule(record)))
    } else if record.is(&NAIL_INSPECTION) {
        unit(record);
        Question::NailInspection(nail_inspection::query(record))
    } else if record.is(&NAIL) {
        unit(record);
        Question::Nail(nail::nail(record))
    } else if record.is(&PANEL) {
        unit(record);
        Question::Panel(panel::panel(record))
    } else if record.is(&UNIFORM_LOAD) {
        unit(record);
        Question::UniformLoad(uniform_load::query(record))
    } else if record.is(&DRIFT) {
        unit(record);
        Question::Drift(drift::drift(record))
    } else {
        Question::Cell(CellQuery {
            table: record.get("table"),
            key: record.get("key"),
            accept_unverified: record.get("accept_unverified"),
        })
    }
}

/// How bare numbers are read was settled before; here faults of these two fields are found.
fn unit(record: &Record<'_, '_>) {
    let _: Option<Unit> = record.get("unit");
    let _: Option<u64> = record.maybe("length_unit", |record| record.get("per_inch"));
}

/// The names of all span ratings.
pub(super) static RATING_NAMES: [&str; RATINGS.len()] = {
    let mut names = [""; RATINGS.len()];
    let mut index = 0;
    while index < names.len() {
        names[index] = RATINGS[index].name;
        index += 1;
    }
    names
};

impl Value for &'static SpanRating {
    fn take(item: &Item<'_, '_>) -> Option<Self> {
        let name = item.choice()?;
        RATINGS.iter().find(|rating| rating.name == name)
    }

    fn placeholder() -> Self {
        const { &RATINGS[0] }
    }

    fn show(&self) -> String {
        self.name.to_owned()
    }
}
