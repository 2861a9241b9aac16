//! What the segments of each storey have to be sheathed and nailed with, chosen before anything is framed.

use super::loads::storey_load;
use crate::amount::Amount;
use crate::capacity::assembly::Framing;
use crate::capacity::derivation::Derivation;
use crate::capacity::pier::Pier;
use crate::capacity::question::ScheduleQuery;
use crate::capacity::schedule::{Candidate, Demand, schedule};
use crate::house::{House, LateralDemand, Level, Load, LoadKind, Method, Scheduling, Segment, Storey, Wall};
use crate::length::Length;
use crate::published::Confidence;
use serde::Serialize;

/// A sheet, a nail and an edge nailing for a storey's segments.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LineCandidate {
    /// Name of the sheet.
    pub sheet: String,
    /// Performance category of the sheet.
    pub category: String,
    /// Name of the nail.
    pub nail: String,
    /// Edge nailing.
    pub edge_spacing: Length,
    /// Largest demand over design unit shear of all loads; none where the tables do not allow it.
    pub ratio: Option<f64>,
    /// Sheets and nails, bought and driven, for one foot of wall.
    pub cost_per_foot: Amount,
    /// Why it was not chosen; empty of the chosen one.
    pub why_not: String,
}

/// What was weighed for the segments of one storey of a wall.
#[derive(Clone, Debug)]
pub struct LineSchedule {
    /// Place of the wall in the house.
    pub wall: u32,
    /// Name of the storey.
    pub storey: String,
    /// Unit shear that has to be carried in pounds per foot, by wind and by earthquake.
    pub required: Vec<(LoadKind, f64)>,
    /// The chosen one first, if one carries the demand, then the others in the order of their cost.
    pub candidates: Vec<LineCandidate>,
    /// The steps to the unit shears.
    pub derivation: Derivation,
}

impl LineSchedule {
    /// The one that was chosen; none where nothing in stock carries the demand.
    pub fn chosen(&self) -> Option<&LineCandidate> {
        self.candidates.first().filter(|first| first.why_not.is_empty())
    }
}

/// Chooses for every storey of a wall whose segments stand for themselves what they are sheathed and nailed with, where the
/// demand asks for that, and writes it into the segments. What nothing in stock carries stays as it was given.
///
/// Perforated walls, force transfer, portals and braced panels stay as given. Where segments are to deflect alike, what is
/// built is checked with their stiffness afterwards.
pub fn schedule_house(house: &mut House) -> Vec<LineSchedule> {
    let Some(demand) = house
        .demand
        .clone()
        .filter(|demand| demand.schedule == Scheduling::Cheapest)
    else {
        return Vec::new();
    };
    let mut found = Vec::new();
    for (index, wall) in (0..).zip(&house.walls) {
        for storey in names_down(wall) {
            found.extend(of_line(house, &demand, (index, wall), storey));
        }
    }
    for line in &found {
        if let (Some(chosen), Some(wall)) = (line.chosen(), house.walls.get_mut(line.wall as usize)) {
            let of_line =
                |segment: &&mut Segment| segment.storey == line.storey && segment.method == Method::Segmented;
            for segment in wall.segments.iter_mut().filter(of_line) {
                segment.category = Some(chosen.category.clone());
                segment.nail = Some(chosen.nail.clone());
                segment.edge_spacing = chosen.edge_spacing;
                segment.field_spacing = segment.field_spacing.max(chosen.edge_spacing);
                segment.blocked = true;
            }
        }
    }
    found
}

/// The storeys of a wall from the highest down, each name once.
fn names_down(wall: &Wall) -> Vec<&str> {
    let mut names: Vec<&str> = Vec::new();
    let storeys = wall
        .sections
        .iter()
        .flat_map(|section| section.stack.iter().rev());
    for level in storeys {
        if let Level::Storey(storey) = level
            && !names.contains(&storey.name.as_str())
        {
            names.push(&storey.name);
        }
    }
    names
}

fn storeys<'w>(wall: &'w Wall, name: &'w str) -> impl Iterator<Item = &'w Storey> {
    let levels = wall.sections.iter().flat_map(|section| &section.stack);
    levels.filter_map(move |level| match level {
        Level::Storey(storey) if storey.name == name => Some(storey),
        _ => None,
    })
}

/// What is weighed for one storey; nothing where no load comes or no segment stands for itself.
fn of_line(
    house: &House,
    demand: &LateralDemand,
    (index, wall): (u32, &Wall),
    name: &str,
) -> Option<LineSchedule> {
    let segments: Vec<&Segment> = wall
        .segments
        .iter()
        .filter(|segment| segment.storey == name && segment.method == Method::Segmented)
        .collect();
    let height = storeys(wall, name)
        .map(|storey| {
            let plates = storey.bottom_plates.iter().chain(&storey.top_plates);
            storey.stud.length + plates.map(|plate| plate.thickness).sum()
        })
        .max()?;
    let (first, others) = segments.split_first()?;
    let framing = Framing {
        wet_framing: demand.wet_framing,
        ..framing(wall, name, first, others)
    };
    let mut line = LineSchedule {
        wall: index,
        storey: name.to_owned(),
        required: Vec::new(),
        candidates: Vec::new(),
        derivation: Derivation::default(),
    };
    let mut weighed: Vec<(LoadKind, Vec<Candidate>)> = Vec::new();
    for load in [LoadKind::Wind, LoadKind::Seismic] {
        let Some(shear) = shear(demand, wall, name, load, &mut line.derivation) else {
            continue;
        };
        let unit_shear = required(demand, load, &segments, height, shear, &mut line.derivation);
        line.required.push((load, unit_shear));
        let query = ScheduleQuery {
            stock: house.stock.clone(),
            rates: house.rates,
            demand: Demand { unit_shear, height },
            edition: demand.edition,
            load,
            method: demand.method,
            high_seismic: demand.high_seismic,
            framing,
            accept_unverified: demand.accept_unverified,
        };
        weighed.push((load, schedule(&query).unwrap_or_default()));
    }
    if weighed.is_empty() {
        return None;
    }
    line.candidates = together(house, &weighed);
    Some(line)
}

/// The shear of a storey with all from above.
fn shear(
    demand: &LateralDemand,
    wall: &Wall,
    storey: &str,
    load: LoadKind,
    steps: &mut Derivation,
) -> Option<f64> {
    let mut comes = (0.0, Confidence::TwoSources);
    for name in names_down(wall) {
        let loads: Vec<&Load> = demand
            .loads
            .iter()
            .filter(|load| load.wall == wall.name && load.storey == name)
            .collect();
        let here = storey_load(demand, load, &loads, comes, steps);
        if let Some(here) = here {
            comes = (here.shear, steps.confidence().unwrap_or(Confidence::TwoSources));
        }
        if name == storey {
            return here.map(|here| here.shear);
        }
    }
    None
}

/// The unit shear that a storey's segments have to carry, and the step to it; infinite where none of them counts.
fn required(
    demand: &LateralDemand,
    load: LoadKind,
    segments: &[&Segment],
    height: Length,
    shear: f64,
    steps: &mut Derivation,
) -> f64 {
    let mut terms = Vec::new();
    for (number, segment) in (1..).zip(segments) {
        let pier = Pier::new(segment.to - segment.from, height);
        let aspect = pier.aspect_factor(demand.edition, load, demand.sharing, true);
        let name = format!("C_ar{number}");
        let factor = aspect.explain(&name, &pier, steps);
        if factor > 0.0 {
            terms.push((number, name, factor, pier.length));
        }
    }
    let counted: f64 = terms.iter().map(|(.., factor, length)| factor * length).sum();
    if counted <= 0.0 {
        return f64::INFINITY;
    }
    let formula: Vec<String> = terms
        .iter()
        .map(|(number, name, ..)| format!("b{number} * {name}"))
        .collect();
    let mut step = steps
        .step(
            "v",
            "unit shear that the segments have to carry",
            &format!("V / ({})", formula.join(" + ")),
        )
        .from("V", shear, "lb");
    for (number, name, factor, length) in &terms {
        step = step
            .given(&format!("b{number}"), *length, "ft")
            .from(name, *factor, "");
    }
    step.rule("sum over the segments that count", Confidence::TwoSources)
        .gives(shear / counted, "plf")
}

/// The framing that all segments of the storey have at least.
fn framing(wall: &Wall, name: &str, first: &Segment, others: &[&Segment]) -> Framing {
    let mut framing = Framing {
        field_spacing: first.field_spacing,
        stud_spacing: Length::ZERO,
        across_studs: false,
        specific_gravity: crate::decimal::Decimal::ONE,
        seam_member: seam_member(wall, name, first),
        wet_framing: false,
    };
    for segment in others {
        framing.field_spacing = framing.field_spacing.max(segment.field_spacing);
        framing.seam_member = framing.seam_member.min(seam_member(wall, name, segment));
    }
    for storey in storeys(wall, name) {
        framing.stud_spacing = framing.stud_spacing.max(storey.spacing);
        framing.specific_gravity = framing.specific_gravity.min(storey.species.specific_gravity);
    }
    framing
}

/// Width of members that panels share: what the segment asks for, else its studs'.
fn seam_member(wall: &Wall, name: &str, segment: &Segment) -> Length {
    let studs = storeys(wall, name).map(|storey| storey.stud.width).min();
    segment.seam_member_width.max(studs).unwrap_or_default()
}

/// Candidates under all loads: what carries them all for the least first.
fn together(house: &House, weighed: &[(LoadKind, Vec<Candidate>)]) -> Vec<LineCandidate> {
    let Some((_, first)) = weighed.first() else {
        return Vec::new();
    };
    let mut found: Vec<LineCandidate> = Vec::new();
    for candidate in first {
        let same = |other: &&Candidate| {
            other.sheet == candidate.sheet
                && other.nail == candidate.nail
                && other.assembly.edge_spacing == candidate.assembly.edge_spacing
        };
        let of_all: Vec<&Candidate> = weighed
            .iter()
            .filter_map(|(_, all)| all.iter().find(same))
            .collect();
        let ratios: Option<Vec<f64>> = of_all.iter().map(|candidate| candidate.ratio).collect();
        let ratio = ratios.map(|ratios| ratios.into_iter().fold(0.0, f64::max));
        let fails = weighed.iter().zip(&of_all).find_map(|((load, _), candidate)| {
            let fault = candidate.unit.as_ref().err().and_then(|issues| issues.first());
            let short = candidate.ratio.is_some_and(|ratio| ratio > 1.0);
            let load = match load {
                LoadKind::Wind => "wind",
                LoadKind::Seismic => "earthquake",
            };
            match fault {
                Some(fault) => Some(fault.message.clone()),
                None if short => candidate
                    .ratio
                    .map(|ratio| format!("{load}: demand is {ratio:.2} times what it carries")),
                None => None,
            }
        });
        let sheet = house.stock.sheets.get(candidate.sheet as usize);
        let nail = house.stock.nails.get(candidate.nail as usize);
        found.push(LineCandidate {
            sheet: sheet.map_or_else(String::new, |sheet| sheet.name.clone()),
            category: sheet.map_or_else(String::new, |sheet| sheet.category.clone()),
            nail: nail.map_or_else(String::new, |nail| nail.name.clone()),
            edge_spacing: candidate.assembly.edge_spacing,
            ratio,
            cost_per_foot: candidate.cost,
            why_not: fails.unwrap_or_default(),
        });
    }
    // Among equal costs the order of the stock and the wider nailing stay first.
    found.sort_by_key(|candidate| (!candidate.why_not.is_empty(), candidate.cost_per_foot));
    if let Some((chosen, others)) = found.split_first_mut()
        && chosen.why_not.is_empty()
    {
        for other in others.iter_mut().filter(|other| other.why_not.is_empty()) {
            let more = other.cost_per_foot - chosen.cost_per_foot;
            other.why_not = if more > Amount::default() {
                format!("costs {more:.2} more a foot")
            } else {
                "costs as much, and comes later in the stock".to_owned()
            };
        }
    }
    found
}
