//! What may be asked of this module in one document.

use super::assembly::{Assembly, Edition, Framing, LoadKind, Method, PanelMaterial};
use super::bending::PanelSpans;
use super::diaphragm::{DiaphragmLine, StoreyForce};
use super::drift::Racked;
use super::facing::{Facing, FacingQuery};
use super::line::WallLine;
use super::nail_inspection::NailInspectionQuery;
use super::pier::{Pier, Sharing};
use super::racking::{AtOpenings, FoundNails, NailResistance};
use super::schedule::Demand;
use super::transfer::TransferWall;
use super::uniform_load::UniformLoadQuery;
use super::unit_shear::UnitShearQuery;
use crate::house::{House, JobRates, Stock};
use crate::length::Length;
use crate::published::{FacingMaterial, Grade, Pennyweight};
use serde::Serialize;

/// A question, told apart by its field `kind`.
#[derive(Clone, Debug, PartialEq)]
pub enum Question {
    /// The unit shear of one sheathed face.
    UnitShear(UnitShearQuery),
    /// The unit shear of a face of another material.
    Facing(FacingQuery),
    /// Both faces of a wall.
    Faces(FacesQuery),
    /// A wall line under its demand.
    WallLine(WallLine),
    /// Force transfer around openings.
    Transfer(TransferQuery),
    /// The ends of a segment.
    HoldDown(HoldDownQuery),
    /// The anchors of a bottom plate.
    Anchorage(AnchorageQuery),
    /// A storey's force on its lines.
    Diaphragm(DiaphragmQuery),
    /// What of a stock carries a demand for the least.
    Schedule(Box<ScheduleQuery>),
    /// The segments of a planned wall, as they were built.
    Built(Box<BuiltQuery>),
    /// A storey of a planned wall, nail by nail.
    Racking(Box<RackingQuery>),
    /// Nails along the edges of a panel, as somebody counted them.
    NailInspection(NailInspectionQuery),
    /// One nail.
    Nail(NailQuery),
    /// A panel as the skin of a wall.
    Panel(PanelQuery),
    /// Wind across sheathing, by the table.
    UniformLoad(UniformLoadQuery),
    /// The drift of a segment.
    Drift(DriftQuery),
    /// A cell of a published table.
    Cell(CellQuery),
}

/// A wall sheathed on both faces.
#[derive(Clone, Debug, PartialEq)]
pub struct FacesQuery {
    /// The face of wood structural panels, and what is asked of the tables.
    pub one: UnitShearQuery,
    /// The other face.
    pub other: OtherFace,
    /// Joints of the two faces lie on different members.
    pub joints_apart: bool,
}

/// What the other face of a wall is sheathed with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum OtherFace {
    /// Wood structural panels.
    Panels(Assembly),
    /// Another material, looked up in its own table.
    Facing(Facing),
    /// Another material, whose nominal unit shear is given.
    Material {
        /// Which.
        material: FaceMaterial,
        /// Its nominal unit shear for the load, from its own table, in pounds per foot.
        nominal: f64,
    },
}

/// A material that is no wood structural panel, as the rule on both faces tells them apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum FaceMaterial {
    /// Gypsum wallboard.
    GypsumWallboard,
    /// Anything else.
    Other,
}

impl From<FacingMaterial> for FaceMaterial {
    fn from(material: FacingMaterial) -> Self {
        match material {
            FacingMaterial::GypsumWallboard | FacingMaterial::TwoPlyGypsumWallboard => Self::GypsumWallboard,
            _ => Self::Other,
        }
    }
}

/// A wall whose sheathing is strapped around its openings.
#[derive(Clone, Debug, PartialEq)]
pub struct TransferQuery {
    /// The wall under its shear.
    pub wall: TransferWall,
    /// Its construction; none asks for forces alone.
    pub query: Option<UnitShearQuery>,
    /// Values and rules that were recalled may be used.
    pub accept_unverified: bool,
}

/// A segment under unit shear, whose ends are asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HoldDownQuery {
    /// Unit shear in pounds per foot.
    pub shear: f64,
    /// The segment.
    pub pier: Pier,
    /// Factored dead load along its top in pounds per foot.
    pub dead: f64,
    /// From the outer faces to the rod and the middle of the compression post, in feet.
    pub inset: f64,
}

/// A bottom plate that shear pushes along and perhaps lifts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AnchorageQuery {
    /// Shear along the plate in pounds per foot.
    pub shear: f64,
    /// Length of the plate in feet.
    pub length: f64,
    /// What one anchor carries of the shear, in pounds.
    pub each: f64,
    /// Uniform uplift of the plate in pounds per foot.
    pub uplift: f64,
    /// What one anchor carries of the uplift, in pounds.
    pub each_uplift: Option<f64>,
    /// Nominal unit shear of the wall in pounds per foot; none asks nothing of plate washers.
    pub nominal: Option<f64>,
    /// The level of the shear, where the sill of a wall in seismic design category D, E or F is asked for.
    pub sill: Option<Method>,
    /// Values and rules that were recalled may be used.
    pub accept_unverified: bool,
}

/// A storey's force, to be shared by its wall lines.
#[derive(Clone, Debug, PartialEq)]
pub struct DiaphragmQuery {
    /// The lines.
    pub lines: Vec<DiaphragmLine>,
    /// The force.
    pub force: StoreyForce,
}

/// A demand, and the stock that is to carry it.
#[derive(Clone, Debug, PartialEq)]
pub struct ScheduleQuery {
    /// Sheets and nails.
    pub stock: Stock,
    /// What the work costs.
    pub rates: JobRates,
    /// What has to be carried.
    pub demand: Demand,
    /// The edition.
    pub edition: Edition,
    /// What the load comes from.
    pub load: LoadKind,
    /// How nominal becomes design.
    pub method: Method,
    /// The building is in seismic design category D, E or F.
    pub high_seismic: bool,
    /// The framing that every candidate has.
    pub framing: Framing,
    /// Values that were recalled may be used.
    pub accept_unverified: bool,
}

/// A wall of a house, whose segments are read off its plan.
#[expect(
    clippy::struct_excessive_bools,
    reason = "the flags of the question, as it has them"
)]
#[derive(Clone, Debug, PartialEq)]
pub struct BuiltQuery {
    /// The house.
    pub house: House,
    /// The wall's name.
    pub wall: String,
    /// The edition.
    pub edition: Edition,
    /// What the load comes from.
    pub load: LoadKind,
    /// How nominal becomes design.
    pub method: Method,
    /// How segments share the shear, which decides what slender ones lose.
    pub sharing: Sharing,
    /// The building is in seismic design category D, E or F.
    pub high_seismic: bool,
    /// The framing is wetter than 19 % when it is built.
    pub wet_framing: bool,
    /// Values that were recalled may be used.
    pub accept_unverified: bool,
    /// A nail that the table does not list is taken by an engineering estimate.
    pub estimate: bool,
}

/// A storey of a wall of a house, to be racked nail by nail.
#[derive(Clone, Debug, PartialEq)]
pub struct RackingQuery {
    /// The house.
    pub house: House,
    /// The wall's name.
    pub wall: String,
    /// The storey's name; none takes the wall's only one.
    pub storey: Option<String>,
    /// Force along its top in pounds.
    pub force: f64,
    /// Whether pieces over, under and around openings count.
    pub openings: AtOpenings,
    /// What nails of the stock hold, by their names.
    pub nails: Vec<(String, NailResistance)>,
    /// Nails that were found missing or driven too deep.
    pub found: Vec<FoundNails>,
}

/// An edition of the standard for nails; there is no default.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub enum NailEdition {
    /// NDS 2005.
    #[serde(rename = "2005")]
    Nds2005,
    /// NDS 2018.
    #[serde(rename = "2018")]
    Nds2018,
}

impl NailEdition {
    /// As results name it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Nds2005 => "NDS 2005",
            Self::Nds2018 => "NDS 2018",
        }
    }
}

/// A nail through a side member into a main member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NailQuery {
    /// The edition.
    pub edition: NailEdition,
    /// Shank diameter in inches.
    pub shank: f64,
    /// Length.
    pub length: Length,
    /// Head diameter in inches; none asks for no pull-through.
    pub head: Option<f64>,
    /// Bending yield strength in psi; none takes the one by diameter.
    pub bending_yield: Option<f64>,
    /// Thickness of the side member.
    pub side_thickness: Length,
    /// Specific gravity of the side member.
    pub side_gravity: f64,
    /// Thickness of what lies between.
    pub between: Length,
    /// Specific gravity of the main member.
    pub main_gravity: f64,
    /// Thickness of the main member along the nail; none where the nail ends within it.
    pub main_depth: Option<Length>,
    /// Load duration factor.
    pub load_duration: f64,
    /// Values that were recalled may be used.
    pub accept_unverified: bool,
}

/// A panel under pressure across its face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PanelQuery {
    /// The panel and its spans.
    pub panel: PanelSpans,
    /// The span over the deflection that is allowed; none asks for no pressure at it.
    pub deflection_ratio: Option<f64>,
    /// Pressure in psf; none asks for no deflection.
    pub pressure: Option<f64>,
    /// Load duration factor.
    pub load_duration: f64,
    /// Values that were recalled may be used.
    pub accept_unverified: bool,
}

/// A segment under unit shear, and the equation of its drift.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DriftQuery {
    /// The segment.
    pub wall: Racked,
    /// The equation.
    pub equation: DriftEquation,
    /// Values that were recalled may be used.
    pub accept_unverified: bool,
}

/// An equation of drift.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DriftEquation {
    /// Panels and nails together in an apparent stiffness in kips per inch.
    ThreeTerms {
        /// Apparent stiffness.
        stiffness: f64,
    },
    /// Panels and nails apart.
    FourTerms {
        /// The common nail.
        nail: Pennyweight,
        /// Grade of the panel.
        grade: Grade,
        /// What the panel is made of.
        material: PanelMaterial,
        /// Nominal thickness.
        thickness: Length,
        /// Spacing of the edge nails.
        edge_spacing: Length,
    },
}

/// A cell of a published table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CellQuery {
    /// Name of the table.
    pub table: String,
    /// Row and column.
    pub key: String,
    /// Values that were recalled may be used.
    pub accept_unverified: bool,
}
