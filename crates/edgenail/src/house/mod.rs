//! The words of the user: a house, its walls, what is in stock, how the crew works.
//!
//! Everything here is plain data. [`crate::reading`] fills it from JSON, supplies the defaults of the trade
//! and reports every fault at once; nothing in this folder computes.

mod band;
mod corner;
mod demand;
mod drawn;
mod given;
mod limits;
mod measured;
mod opening;
mod practice;
mod rates;
mod section;
mod segment;
mod stock;
mod storey;
mod top;
mod wall;

pub use band::{BandLayer, BandMembers, Direction, FloorBand, MemberKindInBand, Rim, RimKind};
pub use corner::{Corner, CornerTurn, WallEnd};
pub use demand::{
    Acting, DesignMethod, Edition, Fasteners, Interface, LateralDemand, Load, LoadKind, LoadLevel,
    Scheduling, Sharing,
};
pub use drawn::DrawnIn;
pub use given::{GivenBand, GivenLayout, GivenPiece};
pub use limits::Limits;
pub use measured::{Measured, MeasuredOpening};
pub use opening::{Header, Opening, OpeningKind, Patch};
pub use practice::{
    Assembly, BlockedEdges, DatumChoice, Practice, RimSeam, RunningChoice, SheathingPlace, StartChoice,
    Tolerances,
};
pub use rates::{JobRates, Judgement, Objective, PlaceFactors};
pub use section::{Bearing, Bottom, Level, Section};
pub use segment::{HoldDown, Method, Segment};
pub use stock::{Coating, Nail, NailTool, Offcut, Sheet, Stick, Stock, StrengthAxis};
pub use storey::{End, EndStuds, LayoutOrigin, Plate, Species, Storey, Stud};
pub use top::{EaveTrusses, GableTruss, Pitch, Rake, RakeBuild, Top};
pub use wall::{Face, Wall};

use serde::Serialize;

/// A house to be sheathed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct House {
    /// What the house is called.
    pub name: String,
    /// The walls, each with a name of its own.
    pub walls: Vec<Wall>,
    /// Where two walls meet.
    pub corners: Vec<Corner>,
    /// What can be bought or is on hand.
    pub stock: Stock,
    /// Names of walls in the order in which they are built; walls not named follow in their own order.
    pub building_order: Vec<String>,
    /// What the work costs.
    pub rates: JobRates,
    /// How lengths are written on drawings.
    pub drawn_in: DrawnIn,
    /// What the house has to resist; `None` asks for no capacity.
    pub demand: Option<LateralDemand>,
}
