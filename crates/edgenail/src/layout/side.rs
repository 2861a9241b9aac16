//! Sides of a panel and what they meet.

use serde::Serialize;

/// Which side of its panel an edge is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// The panel lies to the right of it.
    Left,
    /// The panel lies to the left of it.
    Right,
    /// The panel lies above it.
    Bottom,
    /// The panel lies below it.
    Top,
}

impl Side {
    /// It is a left or right side.
    pub const fn is_plumb(self) -> bool {
        matches!(self, Self::Left | Self::Right)
    }

    /// The side of a neighbour that faces it.
    #[must_use]
    pub const fn opposite(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
            Self::Bottom => Self::Top,
            Self::Top => Self::Bottom,
        }
    }
}

/// What a side of a panel meets.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Joint {
    /// Another panel, with the joint gap.
    Seam,
    /// Another panel on a sawn rim, with the gap for shrinkage.
    RimSeam,
    /// The end of the sheathing.
    End,
    /// An opening or a bare zone.
    Opening,
}

/// What the four sides of a strip's rectangle meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Sides {
    /// At the left.
    pub left: Joint,
    /// At the right.
    pub right: Joint,
    /// At the bottom.
    pub bottom: Joint,
    /// At the top.
    pub top: Joint,
}

impl Sides {
    /// What this side meets.
    pub const fn at(&self, side: Side) -> Joint {
        match side {
            Side::Left => self.left,
            Side::Right => self.right,
            Side::Bottom => self.bottom,
            Side::Top => self.top,
        }
    }
}
