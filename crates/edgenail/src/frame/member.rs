//! One member of the frame.

use crate::decimal::Decimal;
use crate::geometry::Convex;
use crate::length::Length;
use serde::Serialize;

/// A member's place in the frame's list.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(transparent)]
pub struct MemberId(pub u32);

impl MemberId {
    /// The id as an index.
    pub const fn index(self) -> usize {
        self.0 as usize
    }
}

/// What a member is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum MemberKind {
    /// Plate on the foundation, under a floor band.
    Mudsill,
    /// Lowest plate of a storey.
    BottomPlate,
    /// Plate over the studs.
    TopPlate,
    /// Plate that follows the roof.
    RakedPlate,
    /// Stud on layout.
    Stud,
    /// Stud at the end of a wall or section.
    EndStud,
    /// Stud at a segment's end post, beyond the studs that stand there anyway.
    PostStud,
    /// Full-height stud beside an opening.
    KingStud,
    /// Stud that carries a header.
    Trimmer,
    /// Header over an opening.
    Header,
    /// Plate under an opening.
    Sill,
    /// Short stud over a header or under a sill.
    Cripple,
    /// Block between studs.
    Block,
    /// Stud added to carry a seam.
    AddedStud,
    /// Board that closes a floor band.
    Rim,
    /// End of a joist that runs across the wall.
    JoistEnd,
    /// Joist that lies along the wall.
    EdgeJoist,
    /// Edge of the subfloor.
    SubfloorEdge,
    /// Chord of a truss that lies along the wall.
    TrussChord,
    /// Web of a truss that lies along the wall.
    TrussWeb,
    /// End of a truss that runs across the wall.
    TrussEnd,
    /// Stud of a ladder between level plate and rake.
    LadderStud,
    /// End stud of the wall that this one butts against.
    NeighbourStud,
    /// Plate of the wall that this one butts against.
    NeighbourPlate,
}

/// Along which direction a member runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Axis {
    /// Along the wall.
    Horizontal,
    /// Up the wall.
    Vertical,
    /// Along a rake.
    Sloped,
}

/// Why a member is there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Origin {
    /// The user's words ask for it.
    Said,
    /// It stands on layout, so many spaces from the zero.
    Layout(i64),
    /// The plan adds it to back a panel edge.
    Added,
}

/// One member, as the sheathed face shows it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Member {
    /// Its place in the frame's list.
    pub id: MemberId,
    /// What it is.
    pub kind: MemberKind,
    /// Outline of the face that shows.
    pub face: Convex,
    /// Along which direction it runs.
    pub axis: Axis,
    /// It holds nails: false for a subfloor edge and for a face set back.
    pub nailable: bool,
    /// How far its face lies behind the sheathing plane.
    pub setback: Length,
    /// How deep it is behind its face.
    pub depth: Length,
    /// Preservative-treated.
    pub treated: bool,
    /// Specific gravity of its species.
    pub specific_gravity: Decimal,
    /// Why it is there.
    pub origin: Origin,
    /// The storey that it belongs to, as a place in the frame's list; `None` for floor bands.
    pub storey: Option<u32>,
    /// Opening that it frames, as a place in the frame's list.
    pub opening: Option<u32>,
}
