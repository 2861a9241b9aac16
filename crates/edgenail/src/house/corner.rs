//! Where two walls meet.

use super::End;
use serde::Serialize;

/// An end of a named wall.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct WallEnd {
    /// The wall's name.
    pub wall: String,
    /// Which end.
    pub end: End,
}

/// Which way a corner turns, seen from outside.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum CornerTurn {
    /// An outside corner.
    Outside,
    /// An inside corner.
    Inside,
}

/// A square corner of two walls.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Corner {
    /// The wall whose frame runs to the corner.
    pub through: WallEnd,
    /// The wall whose frame butts against the other. At an outside corner its sheathing laps past the other wall.
    pub butting: WallEnd,
    /// Which way it turns.
    pub turn: CornerTurn,
}
