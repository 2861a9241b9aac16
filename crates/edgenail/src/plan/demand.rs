//! What a plan's document says of the house's demand.

use super::Plan;
use crate::capacity::{
    Carrier, Check, Derivation, InterfaceShear, LineCandidate, LineSchedule, Resists, StoreyLine,
};
use crate::caution::CAUTION;
use crate::house::{DesignMethod, Interface, LoadKind};
use crate::issue::Issue;
use crate::length::Length;
use crate::published::Confidence;
use serde::Serialize;

/// What the walls resist; null where the house has no demand.
#[derive(Serialize)]
pub(super) struct ResistanceDocument<'a> {
    edition: &'static str,
    method: DesignMethod,
    confidence: Confidence,
    unverified: bool,
    estimate: bool,
    caution: &'static str,
    schedules: Vec<Schedule<'a>>,
    lines: Vec<Line<'a>>,
}

/// What was weighed for the segments of a storey.
#[derive(Serialize)]
struct Schedule<'a> {
    wall: &'a str,
    storey: &'a str,
    required: Vec<Required>,
    /// The chosen one first, if one carries the demand.
    carried: bool,
    candidates: &'a [LineCandidate],
    derivation: &'a Derivation,
}

#[derive(Serialize)]
struct Required {
    load: LoadKind,
    /// None where no segment counts.
    unit_shear_plf: Option<f64>,
}

#[derive(Serialize)]
struct Line<'a> {
    wall: &'a str,
    storey: &'a str,
    load: LoadKind,
    demand_lb: f64,
    capacity_lb: Option<f64>,
    ratio: Option<f64>,
    governing_ratio: Option<f64>,
    plate_shear_plf: Option<f64>,
    hold_down_lb: Option<f64>,
    checks: &'a [Check],
    straps: Vec<Straps>,
    interfaces: Vec<Handed<'a>>,
    faults: &'a [Issue],
    notes: &'a [String],
    confidence: Confidence,
    estimate: bool,
    derivation: &'a Derivation,
}

/// At the corners of one opening that force is handed around.
#[derive(Serialize)]
struct Straps {
    left_lb: f64,
    right_lb: f64,
}

#[derive(Serialize)]
struct Handed<'a> {
    interface: Interface,
    y: Length,
    demand_lb: f64,
    demand_plf: f64,
    carrier: &'a Carrier,
}

impl<'a> ResistanceDocument<'a> {
    pub(super) fn of(plan: &'a Plan) -> Option<Self> {
        let demand = plan.house.demand.as_ref()?;
        let lines: Vec<Line<'a>> = plan.capacity().iter().map(|line| Line::of(plan, line)).collect();
        let confidence = lines
            .iter()
            .map(|line| line.confidence)
            .max()
            .unwrap_or(Confidence::TwoSources);
        Some(Self {
            edition: demand.edition.name(),
            method: demand.method,
            confidence,
            unverified: confidence == Confidence::Memory,
            estimate: lines.iter().any(|line| line.estimate),
            caution: CAUTION,
            schedules: plan
                .schedules()
                .iter()
                .map(|line| Schedule::of(plan, line))
                .collect(),
            lines,
        })
    }
}

impl<'a> Schedule<'a> {
    fn of(plan: &'a Plan, line: &'a LineSchedule) -> Self {
        let required = line.required.iter().map(|(load, unit_shear)| Required {
            load: *load,
            unit_shear_plf: unit_shear.is_finite().then_some(*unit_shear),
        });
        Self {
            wall: wall_name(plan, line.wall),
            storey: &line.storey,
            required: required.collect(),
            carried: line.chosen().is_some(),
            candidates: &line.candidates,
            derivation: &line.derivation,
        }
    }
}

fn wall_name(plan: &Plan, index: u32) -> &str {
    plan.house
        .walls
        .get(index as usize)
        .map_or("", |wall| wall.name.as_str())
}

impl<'a> Line<'a> {
    fn of(plan: &'a Plan, line: &'a StoreyLine) -> Self {
        let (checks, straps): (&[Check], Vec<Straps>) = match &line.resists {
            Some(Resists::Line { found, .. }) => (&found.checks, Vec::new()),
            Some(Resists::Transfer { forces, .. }) => {
                let straps = forces.straps.iter().map(|(left, right)| Straps {
                    left_lb: *left,
                    right_lb: *right,
                });
                (&[], straps.collect())
            }
            None => (&[], Vec::new()),
        };
        let interface = |at: &'a InterfaceShear| Handed {
            interface: at.interface,
            y: at.y,
            demand_lb: at.demand_lb,
            demand_plf: at.demand_plf,
            carrier: &at.carrier,
        };
        Self {
            wall: wall_name(plan, line.wall),
            storey: &line.storey,
            load: line.load,
            demand_lb: line.demand,
            capacity_lb: line.capacity(),
            ratio: line.ratio(),
            governing_ratio: line.governing(),
            plate_shear_plf: line.plate(),
            hold_down_lb: line.hold_down(),
            checks,
            straps,
            interfaces: line.interfaces.iter().map(interface).collect(),
            faults: &line.faults,
            notes: &line.notes,
            confidence: line.confidence,
            estimate: line.estimate(),
            derivation: &line.derivation,
        }
    }
}
