//! Where a storey's line hands its shear on, and what carries it there.

use super::group::StoreyGroup;
use crate::capacity::derivation::Derivation;
use crate::evaluate::Evaluated;
use crate::frame::{Axis, Member, MemberKind};
use crate::geometry::Interval;
use crate::house::{Bearing, Fasteners, Interface, LateralDemand};
use crate::length::Length;
use crate::published::Confidence;
use serde::Serialize;

/// What carries the shear of an interface.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "by", rename_all = "snake_case")]
pub enum Carrier {
    /// The designer's fasteners.
    Fasteners {
        /// What they are.
        name: String,
        /// What they carry in pounds per foot.
        capacity_plf: f64,
        /// Demand over capacity.
        ratio: f64,
    },
    /// Sheathing that crosses, with nails on both sides; whether they carry it beside their own load is not checked.
    Sheathing {
        /// Nails above, within the segments.
        nails_above: u32,
        /// Nails below.
        nails_below: u32,
        /// Load of each on the side that has fewer, in pounds, from this shear alone.
        each_lb: f64,
    },
    /// Nothing: the designer has to say.
    Nothing,
}

/// An interface with its demand.
#[derive(Clone, Debug, PartialEq)]
pub struct InterfaceShear {
    /// Which.
    pub interface: Interface,
    /// Its height in wall coordinates.
    pub y: Length,
    /// What it hands on in pounds.
    pub demand_lb: f64,
    /// The same over the length that carries it, in pounds per foot.
    pub demand_plf: f64,
    /// What carries it.
    pub carrier: Carrier,
}

/// What hands shear on: the wall, its storey, the stretches of its segments, its rules.
#[derive(Clone, Copy, Debug)]
pub(super) struct Handing<'a> {
    pub wall: &'a Evaluated,
    pub name: &'a str,
    pub storey: &'a StoreyGroup<'a>,
    pub segments: &'a [Interval],
    pub demand: &'a LateralDemand,
}

/// A shear that is handed on.
#[derive(Clone, Copy, Debug)]
pub(super) struct Handed {
    /// All of it in pounds.
    pub shear: f64,
    /// By each foot.
    pub per_foot: f64,
    /// Feet that it is spread over; none where the plate's own steps say it.
    pub over: Option<f64>,
}

impl Handing<'_> {
    /// One interface under its shear, with the steps to its demand and to what carries it.
    pub fn at(
        &self,
        interface: Interface,
        y: Length,
        handed: &Handed,
        steps: &mut Derivation,
    ) -> InterfaceShear {
        let Handed {
            shear,
            per_foot,
            over,
        } = *handed;
        let step = match over {
            Some(feet) => steps
                .step("v_i", "shear handed on by each foot of the line", "V / L")
                .given("V", shear, "lb")
                .given("L", feet, "ft"),
            None => steps
                .step("v_i", "shear handed on by each foot of the plate", "v_plate")
                .from("v_plate", per_foot, "plf"),
        };
        step.rule("statics", Confidence::TwoSources)
            .gives(per_foot, "plf");
        let carrier = match self.fasteners(interface) {
            Some(given) => fastened(given, per_foot, steps),
            None => self.crossing(y, shear, steps).unwrap_or(Carrier::Nothing),
        };
        InterfaceShear {
            interface,
            y,
            demand_lb: shear,
            demand_plf: per_foot,
            carrier,
        }
    }

    fn fasteners(&self, interface: Interface) -> Option<&Fasteners> {
        self.demand.fasteners.iter().find(|given| {
            given.interface == interface && given.wall == self.name && given.storey == self.storey.name
        })
    }

    /// Sheathing that is nailed on both sides of a height within the segments.
    fn crossing(&self, y: Length, shear: f64, steps: &mut Derivation) -> Option<Carrier> {
        let (mut above, mut below) = (0, 0);
        let (up, down) = self.layers_at(y);
        for piece in &self.wall.layout.pieces {
            let blank = piece.blank();
            if blank.y0 >= y || blank.y1 <= y {
                continue;
            }
            let nails = |of_side: &dyn Fn(&Member) -> bool| -> u32 {
                let rows = self.wall.nailing.rows.iter().filter(|row| row.piece == piece.id);
                let on_side = rows.filter(|row| {
                    let member = self.wall.backed.member(row.member);
                    member.is_some_and(|member| level_wood(member) && of_side(member))
                });
                let within = on_side
                    .flat_map(crate::nailing::NailRow::positions)
                    .filter(|at| self.segments.iter().any(|segment| segment.contains(at.x)));
                u32::try_from(within.count()).unwrap_or(u32::MAX)
            };
            let of_layer = |layer: Option<Length>, lower: bool| {
                move |member: &Member| {
                    let face = member.face.bounds();
                    layer == Some(if lower { face.y1 } else { face.y0 })
                }
            };
            let (over, under) = (nails(&of_layer(up, false)), nails(&of_layer(down, true)));
            if over > 0 && under > 0 {
                above += over;
                below += under;
            }
        }
        let fewer = above.min(below);
        (fewer > 0).then(|| Carrier::Sheathing {
            nails_above: above,
            nails_below: below,
            each_lb: steps
                .step("F_nail", "load of each nail on the side that has fewer", "V / n")
                .given("V", shear, "lb")
                .given("n", f64::from(fewer), "")
                .rule("statics", Confidence::TwoSources)
                .gives(shear / f64::from(fewer), "lb"),
        })
    }

    /// The faces of the nearest level wood over and under a height.
    fn layers_at(&self, y: Length) -> (Option<Length>, Option<Length>) {
        let wood = || {
            let members = self.wall.backed.members.iter();
            members
                .filter(|member| level_wood(member))
                .map(|member| member.face.bounds())
        };
        let up = wood().map(|face| face.y0).filter(|low| *low >= y).min();
        let down = wood().map(|face| face.y1).filter(|high| *high <= y).max();
        (up, down)
    }
}

/// Plates, rims and what else lies level and takes nails; blocks and headers hand nothing on between storeys.
fn level_wood(member: &Member) -> bool {
    member.nailable
        && member.axis == Axis::Horizontal
        && matches!(
            member.kind,
            MemberKind::Mudsill
                | MemberKind::BottomPlate
                | MemberKind::TopPlate
                | MemberKind::Rim
                | MemberKind::EdgeJoist
                | MemberKind::TrussChord
        )
}

fn fastened(given: &Fasteners, per_foot: f64, steps: &mut Derivation) -> Carrier {
    let (each, spacing) = (given.each.as_f64(), given.spacing.as_inches());
    let capacity = steps
        .step("v_f", &format!("what {} carry", given.name), "12 * Z / s")
        .given("Z", each, "lb")
        .given("s", spacing, "in")
        .rule("the designer's figures", Confidence::TwoSources)
        .gives(12.0 * each / spacing, "plf");
    let ratio = steps
        .step("r_f", "demand over capacity of the fasteners", "v_i / v_f")
        .from("v_i", per_foot, "plf")
        .from("v_f", capacity, "plf")
        .rule("at most 1", Confidence::TwoSources)
        .gives(per_foot / capacity, "");
    Carrier::Fasteners {
        name: given.name.clone(),
        capacity_plf: capacity,
        ratio,
    }
}

/// Interfaces under a storey, with their heights from above down.
pub(super) fn below(wall: &Evaluated, storey: &StoreyGroup<'_>) -> Vec<(Interface, Length)> {
    let frame = &wall.backed;
    let places = storey
        .places
        .iter()
        .filter_map(|place| frame.storeys.get(*place as usize));
    let mut found = Vec::new();
    for place in places {
        let band = frame
            .bands
            .iter()
            .find(|band| band.section == place.section && band.y.hi == place.base);
        let bears = frame
            .sections
            .get(place.section as usize)
            .map(|section| section.bears);
        match (band, bears) {
            (Some(band), _) => {
                found.push((Interface::PlateToRim, place.base));
                let lowest = frame
                    .sections
                    .get(place.section as usize)
                    .is_some_and(|section| section.base == band.y.lo);
                let mudsill = frame
                    .members
                    .iter()
                    .filter(|member| member.kind == MemberKind::Mudsill)
                    .map(|member| member.face.bounds())
                    .filter(|face| face.y0 >= band.y.lo && face.y1 <= band.y.hi)
                    .map(|face| face.y1)
                    .max();
                if let Some(top) = mudsill {
                    found.push((Interface::RimToSill, top));
                }
                if lowest {
                    let stands = match bears {
                        Some(Bearing::Concrete) => Interface::SillToConcrete,
                        _ => Interface::PlateToFloor,
                    };
                    found.push((stands, band.y.lo));
                }
            }
            (None, Some(Bearing::Concrete)) => found.push((Interface::SillToConcrete, place.base)),
            (None, _) => found.push((Interface::PlateToFloor, place.base)),
        }
    }
    let mut seen: Vec<Interface> = Vec::new();
    found.retain(|(interface, _)| {
        let new = !seen.contains(interface);
        if new {
            seen.push(*interface);
        }
        new
    });
    found
}
