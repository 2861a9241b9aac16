//! What a wall resists: unit shears, wall lines, nails, panels under wind — every number with its derivation.
//!
//! Results of this module do not replace the code in force or a licensed design professional; see
//! [`crate::CAUTION`]. Pounds, feet, inches and seconds; lengths are exact, forces are doubles.

mod anchorage;
mod assembly;
mod bending;
mod built;
mod conditions;
mod derivation;
mod diaphragm;
mod dowel;
mod drift;
mod estimate;
mod explain;
mod faces;
mod facing;
mod fault;
mod fit;
pub mod formula;
mod line;
mod nail;
mod nail_inspection;
mod panel;
mod pier;
mod print;
mod question;
mod racking;
mod recalled;
pub mod rule;
mod schedule;
mod slip;
mod storeys;
mod transfer;
mod uniform_load;
mod unit_shear;
mod withdrawal;

pub use anchorage::{PlateAnchors, Sill, SillNeeds, WASHER_SHEAR, plate_anchors};
pub use assembly::{Assembly, DrivenNail, Edition, Framing, LoadKind, Method, PanelMaterial};
pub use bending::{
    PanelSpans, Plies, RATINGS, RATINGS_SOURCE, SpanRating, StrengthAxis, WIND_DURATION, bending_pressure,
    deflection, stiffness_pressure,
};
pub use built::{BuiltSegment, built_segment};
pub use derivation::{Derivation, Input, Step, Writing};
pub use diaphragm::{
    Diaphragm, DiaphragmLine, LineShare, PlanAxis, RigidDiaphragm, StoreyForce, share_storey_force,
};
pub use dowel::{Dowel, Lateral, YieldMode, bearing_length, bearing_strength, yield_strength};
pub use drift::{
    Drift, Racked, Skin, drift_four_terms, drift_three_terms, explain_four_terms, explain_three_terms,
};
pub use estimate::Estimate;
pub use faces::{FacesCapacity, OtherShear, faces};
pub use facing::{
    Facing, FacingEdition, FacingQuery, FacingShear, NOMINAL_43B, Proportion, Reduction, WIND_780_CMR, facing,
};
pub(crate) use fault::within;
pub use fit::penetration;
pub use line::{
    Check, CheckKind, Construction, EndAbove, EndPosts, FromAbove, HoldDown, LineCapacity, LineMethod,
    LineOpening, LinePier, Perforation, PlateAnchor, SegmentDrift, WallLine, perforated_factor, wall_line,
};
pub use nail::{NailValues, nail};
pub use nail_inspection::{
    ADDED_SPACING, EdgeNails, INSPECTION_NATURE, InspectedEdge, NailInspection, NailInspectionQuery,
    NailRemedy, OVERDRIVEN_COUNTS, SHARE_MOST, inspect_nails,
};
pub use panel::{PanelValues, panel};
pub use pier::{AspectFactor, EndLoads, Overturning, Pier, Sharing, explain_overturning, overturning};
pub use question::{
    AnchorageQuery, BuiltQuery, CellQuery, DiaphragmQuery, DriftEquation, DriftQuery, FaceMaterial,
    FacesQuery, HoldDownQuery, NailEdition, NailQuery, OtherFace, PanelQuery, Question, RackingQuery,
    ScheduleQuery, TransferQuery,
};
pub use racking::{
    AtOpenings, Elastic, FoundNails, NATURE, NailForce, NailResistance, Plastic, Racking, RackingNail,
    RackingSheet, RackingWall, SheetRacking, StoreyRacking, explain_unanchored_length, rack,
    racking_of_storey, unanchored_length,
};
pub use recalled::refuse_recalled;
pub(crate) use schedule::nominal_thickness;
pub use schedule::{Candidate, Demand, schedule};
pub use slip::{SlipCurve, grade_factor, rigidity, slip, slip_curve};
pub use storeys::{
    Carrier, InterfaceShear, LineCandidate, LineSchedule, Resists, SegmentBuilt, StoreyLine, schedule_house,
    storey_lines,
};
pub use transfer::{
    Transfer, TransferRatio, TransferWall, explain_transfer, explain_transfer_ratio, transfer, transfer_ratio,
};
pub use uniform_load::{BoardMaterial, UniformLoad, UniformLoadQuery, UniformSheathing, uniform_load};
pub use unit_shear::{UnitShear, UnitShearQuery, unit_shear};
pub use withdrawal::{pull_through, withdrawal};

#[cfg(test)]
mod tests;
