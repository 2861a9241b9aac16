//! What the walls of a planned house resist, storey by storey from the top down, as they were built.

mod construction;
mod group;
mod interface;
mod line;
mod loads;
mod schedule;
mod strapped;

pub use construction::SegmentBuilt;
pub use interface::{Carrier, InterfaceShear};
pub use schedule::{LineCandidate, LineSchedule, schedule_house};

use super::built::EndPosts;
use super::derivation::Derivation;
use super::fault::fault;
use super::line::{EndAbove, FromAbove, LineCapacity, LineMethod, WallLine};
use super::recalled::refuse_recalled;
use super::{Transfer, TransferRatio, TransferWall};
use crate::evaluate::Evaluated;
use crate::geometry::Interval;
use crate::house::{House, Interface, LateralDemand, Load, LoadKind, Method};
use crate::issue::{Code, Issue};
use crate::length::Length;
use crate::published::Confidence;
use group::{StoreyGroup, floor_between, storeys};
use interface::{Handed, Handing};
use loads::{StoreyLoad, storey_load};

/// How a storey's line resists.
#[derive(Clone, Debug)]
pub enum Resists {
    /// By its segments, or as a perforated wall.
    Line {
        /// The line as it was taken, from its first segment's left end.
        line: Box<WallLine>,
        /// What it resists.
        found: Box<LineCapacity>,
    },
    /// By force transfer around openings.
    Transfer {
        /// The wall as it was taken.
        wall: TransferWall,
        /// The forces.
        forces: Transfer,
        /// What resists them.
        ratio: Box<TransferRatio>,
        /// Tension at its ends in pounds, with what comes from above.
        tension: f64,
    },
}

/// The line of one storey of one wall under one kind of load.
#[derive(Clone, Debug)]
pub struct StoreyLine {
    /// Place of the wall in the house.
    pub wall: u32,
    /// Name of the storey.
    pub storey: String,
    /// What acts.
    pub load: LoadKind,
    /// Shear with all from above, in pounds at the level of the method.
    pub demand: f64,
    /// Left end of its first segment.
    pub from: Length,
    /// Its segments as they were built, those that the tables have.
    pub segments: Vec<SegmentBuilt>,
    /// What it resists; none where nothing could be taken.
    pub resists: Option<Resists>,
    /// Where it hands its shear on.
    pub interfaces: Vec<InterfaceShear>,
    /// Why a segment, or the line, does not count.
    pub faults: Vec<Issue>,
    /// What was not checked or was taken carefully, a sentence each.
    pub notes: Vec<String>,
    /// The least confidence of all that was used.
    pub confidence: Confidence,
    /// The steps.
    pub derivation: Derivation,
}

impl StoreyLine {
    /// Design capacity in pounds; of force transfer the demand at which its worst place is full.
    pub fn capacity(&self) -> Option<f64> {
        self.resists.as_ref().map(|resists| match resists {
            Resists::Line { found, .. } => found.capacity,
            Resists::Transfer { ratio, .. } => self.demand / ratio.ratio,
        })
    }

    /// Demand over capacity of the sheathing.
    pub fn ratio(&self) -> Option<f64> {
        self.resists.as_ref().map(|resists| match resists {
            Resists::Line { found, .. } => found.ratio,
            Resists::Transfer { ratio, .. } => ratio.ratio,
        })
    }

    /// The largest ratio of all that was checked, interfaces with given fasteners too.
    pub fn governing(&self) -> Option<f64> {
        let own = match self.resists.as_ref()? {
            Resists::Line { found, .. } => found.governing(),
            Resists::Transfer { ratio, .. } => ratio.ratio,
        };
        let fastened = self.interfaces.iter().map(|at| match at.carrier {
            Carrier::Fasteners { ratio, .. } => ratio,
            Carrier::Sheathing { .. } | Carrier::Nothing => 0.0,
        });
        Some(fastened.fold(own, f64::max))
    }

    /// The largest hold-down tension in pounds.
    pub fn hold_down(&self) -> Option<f64> {
        self.resists.as_ref().map(|resists| match resists {
            Resists::Line { found, .. } => found.hold_down,
            Resists::Transfer { tension, .. } => *tension,
        })
    }

    /// Shear of the bottom plate in pounds per foot.
    pub fn plate(&self) -> Option<f64> {
        self.resists.as_ref().map(|resists| match resists {
            Resists::Line { found, .. } => found.plate,
            Resists::Transfer { wall, .. } => {
                self.demand / wall.piers.iter().chain(&wall.openings).sum::<f64>()
            }
        })
    }

    /// Some number is an engineering estimate.
    pub fn estimate(&self) -> bool {
        self.segments
            .iter()
            .any(|segment| segment.unit.estimate.is_some())
    }
}

/// The lines of a planned house under its demand: wall by wall, wind before earthquake, from the highest storey down.
///
/// Everything is read off what was built: nail rows, boundary rows, edges, member widths; never the schedule.
pub fn storey_lines(house: &House, walls: &[&Evaluated]) -> Vec<StoreyLine> {
    let Some(demand) = &house.demand else {
        return Vec::new();
    };
    let mut found = Vec::new();
    for wall in walls {
        for load in [LoadKind::Wind, LoadKind::Seismic] {
            found.extend(wall_lines(house, wall, demand, load));
        }
    }
    found
}

fn wall_lines(house: &House, wall: &Evaluated, demand: &LateralDemand, load: LoadKind) -> Vec<StoreyLine> {
    let name = house
        .walls
        .get(wall.backed.wall as usize)
        .map_or("", |wall| wall.name.as_str());
    let groups = storeys(&wall.backed);
    let mut lines: Vec<StoreyLine> = Vec::new();
    let mut upper: Option<&StoreyGroup<'_>> = None;
    for group in &groups {
        let loads: Vec<&Load> = demand
            .loads
            .iter()
            .filter(|load| load.wall == name && load.storey == group.name)
            .collect();
        let mut derivation = Derivation::default();
        let comes = lines.last().map_or((0.0, Confidence::TwoSources), |line| {
            (line.demand, line.confidence)
        });
        let Some(load_here) = storey_load(demand, load, &loads, comes, &mut derivation) else {
            continue;
        };
        let floor = upper.map_or(Length::ZERO, |upper| floor_between(&wall.backed, group, upper));
        let taken = Taken {
            house,
            wall,
            name,
            demand,
            load,
            group,
            topmost: lines.is_empty(),
        };
        let line = taken.line(load_here, lines.last(), floor, derivation);
        lines.push(line);
        upper = Some(group);
    }
    lines
}

/// One storey of one wall under one kind of load, being taken.
struct Taken<'a> {
    house: &'a House,
    wall: &'a Evaluated,
    name: &'a str,
    demand: &'a LateralDemand,
    load: LoadKind,
    group: &'a StoreyGroup<'a>,
    topmost: bool,
}

impl Taken<'_> {
    fn line(
        &self,
        load: StoreyLoad,
        upper: Option<&StoreyLine>,
        floor: Length,
        mut derivation: Derivation,
    ) -> StoreyLine {
        let (mut faults, mut notes) = (Vec::new(), Vec::new());
        let method = self.method(&mut faults, &mut notes);
        let mut segments = Vec::new();
        for place in self
            .group
            .segments
            .iter()
            .filter(|place| Some(place.method) == method)
        {
            let pieces = strapped::full_height(self.wall, place);
            for (index, part) in pieces.iter().enumerate() {
                let posts = EndPosts {
                    left: index == 0,
                    right: index + 1 == pieces.len(),
                };
                match construction::segment(self.house, self.wall, (part, posts), self.demand, self.load) {
                    Ok(segment) => segments.push(segment),
                    Err(issues) => faults.extend(issues),
                }
            }
        }
        if construction::unlike(&segments) {
            notes.push("segments of this line are not built alike: all are taken as the weakest".to_owned());
        }
        let from = segments
            .first()
            .map_or(Length::ZERO, |segment| segment.place.rect.x0);
        let above = FromAbove {
            shear: load.above,
            floor,
            ends: upper.map_or_else(Vec::new, |upper| ends(upper, from)),
        };
        let resists = match method {
            Some(Method::ForceTransfer) => strapped::resists(self, &segments, load, &above, &mut derivation),
            Some(method) => {
                let method = if method == Method::Perforated {
                    LineMethod::Perforated
                } else {
                    LineMethod::Segmented
                };
                let taken = line::of_segments(
                    self.house,
                    self.wall,
                    &segments,
                    method,
                    self.demand,
                    (load, above),
                );
                taken.map(|(line, found)| {
                    derivation.steps.append(&mut found.derive(&line).steps);
                    Resists::Line {
                        line: Box::new(line),
                        found: Box::new(found),
                    }
                })
            }
            None => Err(Vec::new()),
        };
        let resists = match resists {
            Ok(resists) => Some(resists),
            Err(issues) => {
                faults.extend(issues);
                None
            }
        };
        let mut line = StoreyLine {
            wall: self.wall.backed.wall,
            storey: self.group.name.to_owned(),
            load: self.load,
            demand: load.shear,
            from,
            segments,
            resists,
            interfaces: Vec::new(),
            faults,
            notes,
            confidence: Confidence::TwoSources,
            derivation,
        };
        self.hand_on(load, &mut line);
        self.settle(&mut line);
        line
    }

    /// Why the line resists nothing.
    fn fault(&self, found: &str, allowed: &str, message: &str) -> Issue {
        let field = format!("walls/{}/segments", self.wall.backed.wall);
        Issue {
            wall: self.name.to_owned(),
            ..fault(Code::NothingResists, &field, found, allowed, message)
        }
    }

    /// The one method of the segments that resist; portals and braced panels resist nothing here.
    fn method(&self, faults: &mut Vec<Issue>, notes: &mut Vec<String>) -> Option<Method> {
        let geometry = |method: Method| matches!(method, Method::Portal | Method::BracedPanel);
        for segment in self
            .group
            .segments
            .iter()
            .filter(|segment| geometry(segment.method))
        {
            notes.push(format!(
                "{} is checked as geometry only: its required length is not checked, and nothing is counted of it",
                segment.mark
            ));
        }
        let mut methods = self
            .group
            .segments
            .iter()
            .map(|segment| segment.method)
            .filter(|method| !geometry(*method));
        let first = methods.next();
        let Some(first) = first else {
            faults.push(self.fault(
                &format!("no segment in `{}`", self.group.name),
                "segments that resist the storey's shear",
                "a force comes into the wall and nothing resists it",
            ));
            return None;
        };
        if methods.any(|method| method != first) {
            faults.push(self.fault(
                "segments of more than one method",
                "one method in a storey of a wall",
                "how a line shares its shear between unlike methods is left to the designer",
            ));
            return None;
        }
        Some(first)
    }

    /// Interfaces over and under the line.
    fn hand_on(&self, load: StoreyLoad, line: &mut StoreyLine) {
        let spans: Vec<Interval> = line
            .segments
            .iter()
            .map(|segment| segment.place.rect.x_span())
            .collect();
        let (Some(first), Some(last)) = (spans.first(), spans.last()) else {
            return;
        };
        let feet = (last.hi - first.lo).as_inches() / 12.0;
        let handing = Handing {
            wall: self.wall,
            name: self.name,
            storey: self.group,
            segments: &spans,
            demand: self.demand,
        };
        let over = Handed {
            shear: load.shear,
            per_foot: load.shear / feet,
            over: Some(feet),
        };
        let under = match line.plate() {
            Some(per_foot) => Handed {
                shear: load.shear,
                per_foot,
                over: None,
            },
            None => over,
        };
        // A floor's own force comes in at its rim: what is under the rim hands on all of the storey below.
        let top = if self.topmost {
            Interface::RoofToPlate
        } else {
            Interface::RimToPlate
        };
        let at = handing.at(top, self.group.y.hi, &over, &mut line.derivation);
        line.interfaces.push(at);
        for (interface, y) in interface::below(self.wall, self.group) {
            let at = handing.at(interface, y, &under, &mut line.derivation);
            line.interfaces.push(at);
        }
    }

    /// What is not checked, and what rests on values that were recalled.
    fn settle(&self, line: &mut StoreyLine) {
        if line.resists.is_some() {
            line.notes.push(
                "bearing of the end posts on the plate, and the posts themselves, are not checked".to_owned(),
            );
        }
        if let Some(Resists::Transfer { .. }) = &line.resists {
            line.notes.push(
                "sheathing above and below openings is taken to be built as the parts beside them".to_owned(),
            );
        }
        if let Some(Resists::Line { found, .. }) = &line.resists
            && !found.unsupported.is_empty()
        {
            let loose = found.unsupported.len();
            line.notes.push(format!(
                "{} from above on no end post of this line: the designer has to carry {}",
                crate::wording::counted(loose, "tension comes", "tensions come"),
                if loose == 1 { "it" } else { "them" },
            ));
        }
        line.confidence = line.derivation.confidence().unwrap_or(Confidence::TwoSources);
        if let Err(issues) = refuse_recalled(&line.derivation, self.demand.accept_unverified) {
            let named = issues.into_iter().map(|issue| Issue {
                wall: self.name.to_owned(),
                path: format!("/demand{}", issue.path),
                ..issue
            });
            line.faults.extend(named);
            line.resists = None;
            line.interfaces.clear();
            line.derivation = Derivation::default();
        }
    }
}

/// Tensions at the ends of a line, in the coordinates of the line below that begins at `from`.
fn ends(upper: &StoreyLine, from: Length) -> Vec<EndAbove> {
    let at = |x: Length, tension: f64| EndAbove {
        at: upper.from + x - from,
        tension,
    };
    match &upper.resists {
        Some(Resists::Line { line, found }) if line.method == LineMethod::Perforated => {
            vec![
                at(Length::ZERO, found.hold_down),
                at(line.length, found.hold_down),
            ]
        }
        Some(Resists::Line { found, .. }) => found
            .piers
            .iter()
            .filter(|pier| pier.capacity > 0.0)
            .flat_map(|pier| [at(pier.from, pier.ends.tension), at(pier.to, pier.ends.tension)])
            .collect(),
        Some(Resists::Transfer { tension, .. }) => {
            let last = upper
                .segments
                .last()
                .map_or(upper.from, |segment| segment.place.rect.x1);
            vec![at(Length::ZERO, *tension), at(last - upper.from, *tension)]
        }
        None => Vec::new(),
    }
}
