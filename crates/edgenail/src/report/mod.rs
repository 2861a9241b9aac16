//! A plan as tables: what stands where, what is cut, what is bought.
//!
//! Each file defines one table, its columns with their units and meaning, and the rows that are read off the
//! stages' results. The C rows, the Python tables and the tables of the documents all come from these definitions.
//!
//! Where a whole number is missing the column holds −1, and its meaning says so.

mod alternatives;
mod blocks;
mod capacity;
mod cells;
mod costs;
mod cut_list;
mod cuts;
mod differences;
mod edges;
mod findings;
mod interfaces;
mod members;
mod nail_rows;
mod nails;
mod openings;
mod outlines;
mod panels;
mod resistance;
mod sheets;
mod steps;
mod takeoff;
mod walls;
mod why;
mod word;

use crate::amount::Amount;
use crate::blocking::Blocking;
use crate::capacity::StoreyLine;
use crate::cutting::CutPlan;
use crate::edges::EdgeRun;
use crate::finding::Finding;
use crate::frame::Frame;
use crate::house::House;
use crate::layout::Layout;
use crate::nailing::Nailing;
use crate::price::Cost;
use crate::proof::Proof;
use crate::search::Alternative;
use crate::steps::Step;
use crate::table::{Column, Data, Head, Kind, Schema, Table, Written};
use crate::takeoff::Takeoff;
use serde::ser::{Serialize, SerializeMap, Serializer};
pub(crate) use why::why;
pub(crate) use word::word;

/// What the stages made of a house, as far as tables show it.
#[derive(Clone, Copy, Debug)]
pub struct Results<'a> {
    /// The house.
    pub house: &'a House,
    /// Its walls, in the order of the house.
    pub walls: &'a [WallResults<'a>],
    /// The cut plan of the house.
    pub cutting: &'a CutPlan,
    /// The take-off of the house.
    pub takeoff: &'a Takeoff,
    /// What its walls resist of its demand.
    pub capacity: &'a [StoreyLine],
    /// What the checks found.
    pub findings: &'a [Finding],
}

/// What the stages made of a wall.
#[derive(Clone, Copy, Debug)]
pub struct WallResults<'a> {
    /// The frame with everything that was added to it.
    pub frame: &'a Frame,
    /// The layout.
    pub layout: &'a Layout,
    /// The edges of the panels on that frame.
    pub edges: &'a [EdgeRun],
    /// What was added to the frame.
    pub blocking: &'a Blocking,
    /// The nails.
    pub nailing: &'a Nailing,
    /// What the layout costs.
    pub cost: &'a Cost,
    /// The order of work.
    pub steps: &'a [Step],
    /// What else was weighed.
    pub alternatives: &'a [Alternative],
    /// Arcs that the search priced.
    pub effort: u64,
    /// Layouts that were built through all stages and priced.
    pub built: u64,
    /// What every layout costs at least.
    pub bound: Amount,
    /// How good the layout is known to be; nothing for one that was given.
    pub proof: Option<&'a Proof>,
}

/// A table's definition without its rows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Definition {
    /// The table's name.
    pub name: &'static str,
    /// What one row is.
    pub meaning: &'static str,
    /// Its columns.
    pub columns: Vec<Head>,
}

/// Every table, in the order in which documents show them: each module defines the one of its name.
macro_rules! tables {
    ($($module:ident)*) => {
        /// The definition of every table.
        ///
        /// ```
        /// let panels = edgenail::report::definitions().into_iter().find(|table| table.name == "panels").unwrap();
        /// assert!(panels.columns.iter().any(|column| column.name == "mark"));
        /// ```
        pub fn definitions() -> Vec<Definition> {
            vec![$(define(&$module::schema())),*]
        }

        /// The table of this name.
        pub fn table(results: &Results<'_>, name: &str) -> Option<Table> {
            match name {
                $(stringify!($module) => Some($module::schema().table(&$module::rows(results))),)*
                _ => None,
            }
        }

        impl Serialize for Tables<'_> {
            /// As an object of tables, in their order.
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                let mut tables = serializer.serialize_map(None)?;
                $(if stringify!($module) != LEFT_OUT {
                    let (schema, rows) = (&$module::schema(), &*$module::rows(self.0));
                    tables.serialize_entry(stringify!($module), &Written { schema, rows })?;
                })*
                tables.end()
            }
        }
    };
}

tables! {
    walls openings members panels outlines edges blocks nail_rows nails sheets cuts cut_list takeoff costs alternatives
    findings cells steps capacity resistance interfaces differences
}

/// All tables of a document. Single nails are left to their rows.
pub(crate) struct Tables<'r>(pub &'r Results<'r>);

const LEFT_OUT: &str = "nails";

/// The unit of what layouts cost.
const OBJECTIVE_UNIT: &str = "1/10,000 of the objective's unit";

impl Definition {
    /// The table without rows.
    pub fn empty(&self) -> Table {
        let columns = self.columns.iter().map(|head| Column {
            head: *head,
            data: match head.kind {
                Kind::Int => Data::Int(Vec::new()),
                Kind::Float => Data::Float(Vec::new()),
                Kind::Text => Data::Text(Vec::new()),
            },
        });
        Table {
            name: self.name,
            meaning: self.meaning,
            columns: columns.collect(),
        }
    }
}

/// Which wall a row belongs to.
#[derive(Clone, Copy)]
struct WallName<'a> {
    name: &'a str,
    index: u32,
}

/// The table `members` of frames to which nothing was added yet.
pub(crate) fn members_of(house: &House, frames: &[Frame]) -> Table {
    let named = house.walls.iter().map(|wall| wall.name.as_str());
    let walls = named.zip(0u32..).map(|(name, index)| WallName { name, index });
    let rows = walls.zip(frames);
    let rows: Vec<_> = rows
        .flat_map(|(wall, frame)| members::of_frame(wall, frame))
        .collect();
    members::schema().table(&rows)
}

impl<'a> Results<'a> {
    /// Each wall with its name.
    fn named_walls(&self) -> impl Iterator<Item = (WallName<'a>, &'a WallResults<'a>)> {
        let walls: &'a [WallResults<'a>] = self.walls;
        walls.iter().map(|wall| (self.wall_name(wall.frame.wall), wall))
    }

    /// The wall of this place with its name.
    fn wall_name(&self, index: u32) -> WallName<'a> {
        let house = self.house;
        let name = house
            .walls
            .get(index as usize)
            .map_or("", |wall| wall.name.as_str());
        WallName { name, index }
    }

    /// The mark of a piece of a wall, empty when there is none.
    fn mark(&self, wall: u32, piece: u32) -> &'a str {
        let walls: &'a [WallResults<'a>] = self.walls;
        let wall = walls.iter().find(|results| results.frame.wall == wall);
        wall.map_or("", |wall| mark(wall, piece))
    }
}

fn define<T>(schema: &Schema<T>) -> Definition {
    Definition {
        name: schema.name,
        meaning: schema.meaning,
        columns: schema.fields.iter().map(|field| field.head).collect(),
    }
}

/// The mark of a piece, empty when there is none.
fn mark<'a>(wall: &WallResults<'a>, piece: u32) -> &'a str {
    let layout: &'a Layout = wall.layout;
    layout
        .pieces
        .get(piece as usize)
        .map_or("", |piece| piece.mark.as_str())
}

/// The name of a thing in stock, empty when there is none.
fn stock_name<T>(list: &[T], place: u32, name: fn(&T) -> &str) -> &str {
    list.get(place as usize).map_or("", name)
}

/// A count of things in memory.
fn count(count: usize) -> i64 {
    i64::try_from(count).unwrap_or(i64::MAX)
}

#[cfg(test)]
mod tests;
