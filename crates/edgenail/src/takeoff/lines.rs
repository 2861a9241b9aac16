//! Entries added up to lines.

use super::area::{Areas, area_sheets, nominal_area};
use super::entry::{Entry, Key, Sum};
use super::line::{Serves, TakeoffLine, TakeoffWhat, wall_scope};
use super::weight::nail_micropounds;
use super::{Part, PartKind};
use crate::amount::Amount;
use crate::decimal::Decimal;
use crate::house::{House, Nail, NailTool, Practice, Sheet};
use crate::length::{Area, Length};
use crate::wording::wording;
use std::collections::BTreeMap;

/// What a line is for.
pub(super) enum Scope<'a> {
    House,
    Storey(&'a str),
    Wall(u32),
}

impl Scope<'_> {
    fn holds(&self, wall: u32, storey: &str) -> bool {
        match self {
            Self::House => true,
            Self::Storey(name) => *name == storey,
            Self::Wall(index) => *index == wall,
        }
    }

    fn name(&self, house: &House) -> String {
        match self {
            Self::House => "house".to_owned(),
            Self::Storey(name) => format!("storey: {name}"),
            Self::Wall(index) => house
                .walls
                .get(*index as usize)
                .map_or_else(String::new, |wall| wall_scope(&wall.name)),
        }
    }
}

/// The lines of a scope.
pub(super) fn lines(
    house: &House,
    entries: &[Entry<'_>],
    areas: &Areas<'_>,
    scope: &Scope<'_>,
) -> Vec<TakeoffLine> {
    let mut sums: BTreeMap<Key, Sum> = BTreeMap::new();
    for entry in entries
        .iter()
        .filter(|entry| scope.holds(entry.wall, entry.storey))
    {
        let mut key = entry.key;
        // A box holds nails for everything.
        if key.what == TakeoffWhat::Nails && matches!(scope, Scope::House) {
            key.serves = Serves::All;
        }
        sums.entry(key).or_default().include(&entry.sum);
    }
    let name = scope.name(house);
    let mut lines: Vec<TakeoffLine> = by_area(house, areas, scope, &name).into_iter().collect();
    lines.extend(sums.iter().filter_map(|(key, sum)| {
        let line = Line {
            house,
            order: matches!(scope, Scope::House),
            key,
            sum,
            scope: &name,
        };
        match key.what {
            TakeoffWhat::Pieces => line.pieces(),
            TakeoffWhat::Blocks | TakeoffWhat::AddedStuds => line.lumber(),
            TakeoffWhat::Nails => line.nails(),
            TakeoffWhat::Labour => line.labour(),
            TakeoffWhat::Sheets
            | TakeoffWhat::AreaMethod
            | TakeoffWhat::BlocksFromScrap
            | TakeoffWhat::Sticks => None,
        }
    }));
    lines
}

/// What the area method would ask for, with its rule.
fn by_area(house: &House, areas: &Areas<'_>, scope: &Scope<'_>, name: &str) -> Option<TakeoffLine> {
    let sheet = areas.sheet?;
    let practice = practice(house)?;
    let own = areas
        .storeys
        .iter()
        .filter(|area| scope.holds(area.wall, area.storey));
    let (gross, deducted) = own.fold((0, 0), |(gross, deducted), area| {
        (gross + area.gross, deducted + area.deducted)
    });
    let one = nominal_area(sheet.width, sheet.length);
    let sheets = area_sheets(gross - deducted, one);
    let rule = if practice.area_method_deducts {
        format!(
            "openings of more than {} sq ft deducted, {} sq ft",
            practice.area_method_opening_least,
            square_feet(deducted)
        )
    } else {
        "openings not deducted".to_owned()
    };
    Some(TakeoffLine {
        used: whole(sheets),
        unit: "sheets".to_owned(),
        because: format!(
            "for comparison: {} sq ft over {} sq ft a sheet, rounded up, no waste added; {rule}",
            square_feet(gross - deducted),
            square_feet(one)
        ),
        sheets,
        square_feet: square_feet(gross - deducted),
        ..TakeoffLine::blank(
            TakeoffWhat::AreaMethod,
            sheet.name.clone(),
            name.to_owned(),
            Serves::All,
        )
    })
}

struct Line<'a> {
    house: &'a House,
    order: bool,
    key: &'a Key,
    sum: &'a Sum,
    scope: &'a str,
}

impl Line<'_> {
    /// The line as far as it is the same for everything.
    fn plain(&self, item: &str, unit: &str) -> TakeoffLine {
        TakeoffLine {
            used: whole(self.sum.used),
            unit: unit.to_owned(),
            minutes: self.sum.minutes,
            place: self.key.place,
            charged: self.sum.charged,
            ..TakeoffLine::blank(
                self.key.what,
                item.to_owned(),
                self.scope.to_owned(),
                self.key.serves,
            )
        }
    }

    fn pieces(&self) -> Option<TakeoffLine> {
        let sheet = self.house.stock.sheets.get(self.key.item)?;
        Some(TakeoffLine {
            pounds: pounds(sheet, self.sum.square_units),
            money: sheet.price.times(self.sum.sheets).unwrap_or_default(),
            because: "a sheet of the cut plan is counted where the first piece that is cut from it hangs"
                .to_owned(),
            sheets: self.sum.sheets,
            square_feet: square_feet(self.sum.square_units),
            ..self.plain(&sheet.name, "pieces")
        })
    }

    fn lumber(&self) -> Option<TakeoffLine> {
        let stick = self.house.stock.sticks.get(self.key.item)?;
        let unit = if self.key.what == TakeoffWhat::Blocks {
            "blocks"
        } else {
            "studs"
        };
        Some(TakeoffLine {
            feet: feet(self.sum.length),
            because: wording!["cut from sticks of ", stick.length].written(self.house.drawn_in.in_text()),
            ..self.plain(&stick.name, unit)
        })
    }

    fn nails(&self) -> Option<TakeoffLine> {
        let nail = self.house.stock.nails.get(self.key.item)?;
        let practice = practice(self.house)?;
        let (loss, sold) = match nail.tool {
            NailTool::Gun => (practice.gun_loss_percent, "collated"),
            NailTool::Hand => (practice.hand_loss_percent, "loose"),
        };
        let with_loss = raised(self.sum.used, loss);
        let mut line = TakeoffLine {
            pounds: nail_pounds(nail, self.sum.used),
            because: format!("{sold} nails: {loss} % lost"),
            extra: with_loss - self.sum.used,
            ..self.plain(&nail.name, "nails")
        };
        if self.order {
            let per_box = i64::from(nail.per_box.max(1));
            let boxes = Length::from_units(with_loss).spaces(Length::from_units(per_box));
            line.ordered = u32::try_from(boxes).ok();
            line.order_unit = format!("boxes of {}", nail.per_box);
            line.money = nail.price.times(boxes).unwrap_or_default();
            line.because.push_str(", then rounded up to boxes");
        }
        Some(line)
    }

    fn labour(&self) -> Option<TakeoffLine> {
        let part = *Part::ALL.get(self.key.item)?;
        (part.kind() == PartKind::Labour).then(|| TakeoffLine {
            because: "person-minutes".to_owned(),
            part: Some(part),
            ..self.plain(part.name(), part.counts())
        })
    }
}

impl TakeoffLine {
    /// A line with nothing in it.
    pub(super) fn blank(what: TakeoffWhat, item: String, scope: String, serves: Serves) -> Self {
        Self {
            what,
            item,
            scope,
            used: Decimal::ZERO,
            ordered: None,
            unit: String::new(),
            order_unit: String::new(),
            pounds: Decimal::ZERO,
            money: Amount::ZERO,
            minutes: Amount::ZERO,
            because: String::new(),
            serves,
            place: None,
            extra: 0,
            sheets: 0,
            square_feet: Decimal::ZERO,
            feet: Decimal::ZERO,
            charged: Amount::ZERO,
            part: None,
        }
    }
}

pub(super) fn whole(count: i64) -> Decimal {
    Decimal::new(count, 0).unwrap_or_default()
}

/// The practice that holds for the house: that of its first wall.
pub(super) fn practice(house: &House) -> Option<&Practice> {
    house.walls.first().map(|wall| &wall.practice)
}

/// A count raised by a percentage, rounded up.
pub(super) fn raised(count: i64, percent: Decimal) -> i64 {
    let share = percent
        .scaled(i128::from(count), 100, 4)
        .and_then(|share| share.in_units_of(4))
        .unwrap_or_default();
    count + Length::from_units(share).spaces(Length::from_units(10_000))
}

/// Pounds of an area of sheet, to a tenth.
pub(super) fn pounds(sheet: &Sheet, square_units: i128) -> Decimal {
    sheet
        .pounds_per_square_foot
        .scaled(square_units, Area::SQUARE_FOOT.square_units(), 1)
        .unwrap_or_default()
}

fn nail_pounds(nail: &Nail, count: i64) -> Decimal {
    Decimal::new(nail_micropounds(nail), 6)
        .and_then(|each| each.scaled(i128::from(count), 1, 1))
        .unwrap_or_default()
}

/// Square feet, to a tenth.
fn square_feet(square_units: i128) -> Decimal {
    Area::from_square_units(square_units)
        .square_feet(1)
        .unwrap_or_default()
}

/// Lineal feet, to a tenth.
pub(super) fn feet(length: Length) -> Decimal {
    Decimal::ONE
        .scaled(i128::from(length.units()), i128::from(Length::feet(1).units()), 1)
        .unwrap_or_default()
}
