//! What no single field can say: values that do not go together.

mod corner;
mod demand;
mod face;
mod height;
mod opening;
mod practice;
mod section;
mod segment;
mod sound;
mod stock;

use super::context::Context;
use crate::house::{House, Stock};
use crate::issue::{Code, Issue};
use crate::length::Length;
use crate::wording::{Say, Wording, wording};
use sound::Faults;

/// A thing whose relations are checked: its place, its wall, and where faults go.
#[derive(Clone, Copy, Debug)]
struct Place<'c> {
    context: &'c Context,
    faults: &'c Faults,
    wall: &'c str,
    path: &'c str,
}

impl Place<'_> {
    /// Everything at and below this field was read without a fault.
    fn sound(&self, field: &str) -> bool {
        self.faults.spare(&format!("{}{field}", self.path))
    }

    fn fault(&self, field: &str, code: Code, found: impl Say, allowed: impl Say) {
        let found = self.context.written(&found);
        let allowed = self.context.written(&allowed);
        self.context.fault(Issue {
            code,
            path: format!("{}{field}", self.path),
            wall: self.wall.to_owned(),
            message: format!("{} Found: {found}; allowed: {allowed}", code.meaning()),
            found,
            allowed,
        });
    }
}

/// Lists every relation that does not hold. A relation of a value that was read with a fault is not known and is left
/// out; those of its neighbours are not.
pub(super) fn relations(house: &House, context: &Context) {
    let faults = &Faults::new(&context.issues());
    let whole = Place {
        context,
        faults,
        wall: "",
        path: "",
    };
    names(
        &whole,
        house.walls.iter().map(|wall| wall.name.as_str()),
        "/walls",
        "/name",
    );
    let named = (0..house.walls.len()).all(|index| whole.sound(&format!("/walls/{index}/name")));
    if named {
        corner::check(&whole, house);
        face::check(&whole, house);
    }
    for (index, name) in house.building_order.iter().enumerate() {
        if named && !house.walls.iter().any(|wall| wall.name == *name) {
            whole.fault(
                &format!("/building_order/{index}"),
                Code::UnknownName,
                name,
                "the name of a wall",
            );
        }
    }
    stock::check(&whole, &house.stock);
    if let Some(demand) = &house.demand {
        demand::check(&whole, house, demand);
    }
    practice::check_breaks(&whole, house);
    for (index, wall) in house.walls.iter().enumerate() {
        let path = format!("/walls/{index}");
        let place = Place {
            wall: &wall.name,
            path: &path,
            ..whole
        };
        section::check(&place, wall);
        segment::check(&place, wall);
        practice::check(&place, wall);
        stock::check_wall(&place, wall, &house.stock);
    }
}

/// The same of a stock by itself.
pub(super) fn stock_relations(stock: &Stock, context: &Context) {
    let whole = Place {
        context,
        faults: &Faults::new(&context.issues()),
        wall: "",
        path: "",
    };
    stock::check(&whole, stock);
}

/// Every name once; sorting keeps this quick for any number.
fn names<'n>(place: &Place<'_>, names: impl Iterator<Item = &'n str>, list: &str, field: &str) {
    let mut sorted: Vec<(&str, usize)> = names.enumerate().map(|(index, name)| (name, index)).collect();
    sorted.sort_unstable();
    for pair in sorted.windows(2) {
        if let [(first, _), (second, index)] = pair
            && first == second
            && !first.is_empty()
        {
            place.fault(
                &format!("{list}/{index}{field}"),
                Code::DuplicateName,
                *first,
                "a name of its own",
            );
        }
    }
}

fn span(from: Length, to: Length) -> Wording {
    wording![from, " to ", to]
}
