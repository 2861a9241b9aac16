//! The parts that a cost is made of.

use crate::amount::Amount;
use serde::Serialize;

/// A part of a cost.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// Sheets, by how many such blanks one gives.
    Sheets,
    /// Setting pieces.
    Setting,
    /// Cutting pieces out of sheets.
    Cutting,
    /// Cutting out openings in place.
    Openings,
    /// Nails and driving them.
    Nails,
    /// Blocks and setting them.
    Blocks,
    /// Added studs and setting them.
    AddedStuds,
    /// Chalk lines.
    ChalkLines,
    /// Seams at corners of openings.
    SeamsAtCorners,
    /// Seams where members meet.
    SeamsOnJoints,
    /// Narrow pieces.
    NarrowPieces,
    /// Seams offset from the course below by other than half a sheet.
    UnevenOffsets,
    /// Sheets of unlike length in one course.
    UnlikeLengths,
}

impl Part {
    /// All parts, in the order in which they are listed.
    pub const ALL: [Self; 13] = [
        Self::Sheets,
        Self::Setting,
        Self::Cutting,
        Self::Openings,
        Self::Nails,
        Self::Blocks,
        Self::AddedStuds,
        Self::ChalkLines,
        Self::SeamsAtCorners,
        Self::SeamsOnJoints,
        Self::NarrowPieces,
        Self::UnevenOffsets,
        Self::UnlikeLengths,
    ];

    /// What its quantity counts.
    pub const fn counts(self) -> &'static str {
        match self {
            Self::Sheets | Self::Setting | Self::NarrowPieces => "pieces",
            Self::Cutting => "cuts",
            Self::Openings => "cut-outs",
            Self::Nails => "nails",
            Self::Blocks => "blocks",
            Self::AddedStuds => "studs",
            Self::ChalkLines => "pulls",
            Self::SeamsAtCorners => "corners",
            Self::SeamsOnJoints => "stretches of 4 ft",
            Self::UnevenOffsets => "seams",
            Self::UnlikeLengths => "sheets",
        }
    }
}

/// One part of a cost.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct CostPart {
    /// Which.
    pub part: Part,
    /// How many of what it counts.
    pub quantity: i64,
    /// What they cost, in the unit of the objective.
    pub amount: Amount,
}

/// A cost and its parts.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Cost {
    /// The sum of the parts, in the unit of the objective.
    pub total: Amount,
    /// Parts that are not nothing.
    pub parts: Vec<CostPart>,
}

/// Parts being added up, without allocation.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally([(i64, Amount); Part::ALL.len()]);

impl Tally {
    /// Adds to a part.
    pub fn add(&mut self, part: Part, quantity: i64, amount: Amount) {
        if let Some((count, sum)) = self.0.get_mut(part as usize) {
            *count += quantity;
            *sum += amount;
        }
    }

    /// Adds another tally, part by part.
    pub fn include(&mut self, other: &Self) {
        for ((count, sum), (more, amount)) in self.0.iter_mut().zip(&other.0) {
            *count += more;
            *sum += *amount;
        }
    }

    /// The sum of all parts.
    pub fn total(&self) -> Amount {
        self.0.iter().map(|(_, amount)| *amount).sum()
    }

    /// The cost with its parts.
    pub fn cost(&self) -> Cost {
        let parts = Part::ALL
            .iter()
            .zip(&self.0)
            .filter(|(_, (quantity, _))| *quantity != 0);
        Cost {
            total: self.total(),
            parts: parts
                .map(|(part, (quantity, amount))| CostPart {
                    part: *part,
                    quantity: *quantity,
                    amount: *amount,
                })
                .collect(),
        }
    }
}
