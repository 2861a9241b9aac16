//! Outcomes as a table.

use super::Outcome;
use crate::amount::Amount;
use crate::cutting::Proof;
use crate::plan::Figures;
use crate::report::Definition;
use crate::table::{Field, Schema, Table};

/// Outcomes as a table, a row each. Numbers of a house without a plan are −1.
///
/// ```
/// use edgenail::batch::{Batch, table};
/// let houses = [edgenail::generate::house_json(1).0, "{}".to_owned()];
/// let outcomes: Vec<_> = Batch::of(houses).collect();
/// let csv = table(&outcomes).csv();
/// assert!(csv.starts_with("house,fault,index,planned,walls,panels,sheets,"));
/// assert_eq!(csv.lines().count(), 3);
/// ```
pub fn table(outcomes: &[Outcome]) -> Table {
    schema().table(outcomes)
}

/// The table's definition without its rows.
pub fn definition() -> Definition {
    let schema = schema();
    Definition {
        name: schema.name,
        meaning: schema.meaning,
        columns: schema.fields.iter().map(|field| field.head).collect(),
    }
}

fn of(outcome: &Outcome, read: impl FnOnce(&Figures) -> u64) -> i64 {
    outcome
        .result
        .as_ref()
        .map_or(-1, |figures| i64::try_from(read(figures)).unwrap_or(i64::MAX))
}

fn amount(outcome: &Outcome, read: impl FnOnce(&Figures) -> Amount) -> i64 {
    outcome
        .result
        .as_ref()
        .map_or(-1, |figures| read(figures).ten_thousandths())
}

fn fault(outcome: &Outcome) -> String {
    let error = outcome.result.as_ref().err();
    error.map(ToString::to_string).unwrap_or_default()
}

fn schema() -> Schema<Outcome> {
    Schema {
        name: "batch",
        meaning: "What became of one house of a batch.",
        fields: vec![
            Field::text("house", "Name of the house.", |row: &Outcome| {
                row.house.as_str().into()
            }),
            Field::text(
                "fault",
                "Why it has no plan, a line for each fault; empty otherwise.",
                |row| fault(row).into(),
            ),
            Field::int("index", "Place among the houses, from 0.", |row| {
                i64::try_from(row.index).unwrap_or(i64::MAX)
            }),
            Field::int("planned", "1 where it has a plan, else 0.", |row| {
                i64::from(row.result.is_ok())
            }),
            Field::int("walls", "Walls.", |row| of(row, |figures| figures.walls)),
            Field::int("panels", "Pieces of sheathing.", |row| {
                of(row, |figures| figures.panels)
            }),
            Field::int(
                "sheets",
                "New sheets that are cut or used whole, without spare.",
                |row| of(row, |figures| figures.sheets),
            ),
            Field::int("blocks", "Blocks that the plan adds.", |row| {
                of(row, |figures| figures.blocks)
            }),
            Field::int("nails", "Nails.", |row| of(row, |figures| figures.nails)),
            Field::int_in(
                "1/10,000 of the currency",
                "money",
                "Money for all that is ordered.",
                |row| amount(row, |figures| figures.money),
            ),
            Field::int_in("1/10,000 min", "minutes", "Work.", |row| {
                amount(row, |figures| figures.minutes)
            }),
            Field::int_in(
                "1/10,000 of the objective's unit",
                "cost",
                "What the layouts of its walls cost together.",
                |row| amount(row, |figures| figures.cost),
            ),
            Field::int_in(
                "1/10,000 of the objective's unit",
                "house_cost",
                "The same with the sheets that the house buys in place of shares.",
                |row| amount(row, |figures| figures.house_cost),
            ),
            Field::int_in(
                "1/10,000 of the objective's unit",
                "house_cost_least",
                "What that is at least, however its walls are laid out and cut.",
                |row| amount(row, |figures| figures.house_cost_least),
            ),
            Field::int("refuse", "Findings that must not be built so.", |row| {
                of(row, |figures| figures.refuse)
            }),
            Field::int("mend", "Findings to be mended before sheathing goes on.", |row| {
                of(row, |figures| figures.mend)
            }),
            Field::int("advise", "Findings that are worth a thought.", |row| {
                of(row, |figures| figures.advise)
            }),
            Field::int(
                "stopped",
                "Walls whose search ran into its limit of effort.",
                |row| of(row, |figures| figures.stopped),
            ),
            Field::int(
                "cutting_proven",
                "1 where no cutting takes fewer, else 0.",
                |row| of(row, |figures| u64::from(figures.cutting == Proof::Proven)),
            ),
            Field::int_in(
                "1/10,000 of what is bounded",
                "cutting_gap",
                "By how much a better cutting may be better at most: price of sheets, or sheets where all are free.",
                |row| amount(row, |figures| gap(&figures.cutting)),
            ),
        ],
    }
}

const fn gap(proof: &Proof) -> Amount {
    match proof {
        Proof::Proven => Amount::ZERO,
        Proof::Gap { amount } => *amount,
        Proof::Stopped { gap, .. } => *gap,
    }
}
