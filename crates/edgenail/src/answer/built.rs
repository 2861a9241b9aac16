//! The answer of the segments of a planned wall, as they were built.

use super::planned::{planned, unknown, wall_of};
use super::unit_shear::Numbers as UnitNumbers;
use super::{Answer, refuse_recalled};
use crate::capacity::{
    Assembly, BuiltQuery, BuiltSegment, Derivation, PanelMaterial, UnitShear, UnitShearQuery, built_segment,
    unit_shear, within,
};
use crate::decimal::Decimal;
use crate::error::Error;
use crate::frame::SegmentPlace;
use crate::house::Coating;
use crate::issue::{Code, Issue};
use crate::published::{Confidence, Grade};
use serde::Serialize;

/// Numbers of a wall's segments.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    wall: String,
    segments: Vec<Segment>,
}

#[derive(Debug, Serialize)]
struct Segment {
    mark: String,
    storey: String,
    from_in: f64,
    to_in: f64,
    /// None where the segment could not be read off the plan.
    built: Option<Built>,
    /// None where the tables do not have what was built.
    unit_shear: Option<UnitNumbers>,
    aspect_factor: Option<f64>,
    capacity_lb: Option<f64>,
    /// Why it has no capacity.
    faults: Vec<Issue>,
}

/// A segment as it was read off its nails, edges and members.
#[derive(Debug, Serialize)]
struct Built {
    height_over_length: f64,
    grade: Grade,
    thickness_in: f64,
    material: PanelMaterial,
    nail: Nail,
    edge_spacing_in: f64,
    field_spacing_in: f64,
    blocked: bool,
    stud_spacing_in: f64,
    across_studs: bool,
    specific_gravity: Decimal,
    seam_member_in: f64,
    /// The widest gap between nails of a panel edge or a boundary.
    widest_gap_in: f64,
    widest_at: String,
}

#[derive(Debug, Serialize)]
struct Nail {
    shank_in: Decimal,
    head_in: Decimal,
    length_in: f64,
    coating: Coating,
}

impl Built {
    fn of(segment: &BuiltSegment) -> Self {
        let Assembly {
            grade,
            thickness,
            material,
            nail,
            edge_spacing,
            field_spacing,
            blocked,
            stud_spacing,
            across_studs,
            specific_gravity,
            seam_member,
            wet_framing: _,
            inside_hold_downs: _,
        } = segment.assembly;
        Self {
            height_over_length: segment.pier.ratio(),
            grade,
            thickness_in: thickness.as_inches(),
            material,
            nail: Nail {
                shank_in: nail.shank,
                head_in: nail.head,
                length_in: nail.length.as_inches(),
                coating: nail.coating,
            },
            edge_spacing_in: edge_spacing.as_inches(),
            field_spacing_in: field_spacing.as_inches(),
            blocked,
            stud_spacing_in: stud_spacing.as_inches(),
            across_studs,
            specific_gravity,
            seam_member_in: seam_member.as_inches(),
            widest_gap_in: segment.widest_gap.as_inches(),
            widest_at: segment.widest_at.clone(),
        }
    }
}

pub(super) fn answer(query: &BuiltQuery) -> Result<Answer<Numbers>, Error> {
    let plan = planned(&query.house)?;
    let wall = wall_of(&plan, &query.wall)?;
    if wall.frame.segments.is_empty() {
        return Err(unknown(
            "/wall",
            &query.wall,
            "a wall with segments",
            "the wall has no segments that could resist anything",
        ));
    }
    let mut reading = Reading {
        query,
        derivation: Derivation::default(),
        confidence: Confidence::TwoSources,
        estimate: false,
    };
    let mut segments = Vec::new();
    for place in &wall.frame.segments {
        let path = format!("house/walls/{}/segments/{}", wall.index, place.segment);
        let storey = wall.frame.storeys.get(place.storey as usize);
        let mut segment = Segment {
            mark: place.mark.clone(),
            storey: storey.map_or_else(String::new, |storey| storey.name.clone()),
            from_in: place.rect.x0.as_inches(),
            to_in: place.rect.x1.as_inches(),
            built: None,
            unit_shear: None,
            aspect_factor: None,
            capacity_lb: None,
            faults: Vec::new(),
        };
        match built_segment(&query.house, &wall.built, place) {
            Ok(found) => reading.take(place, &found, &path, &mut segment)?,
            Err(faults) => segment.faults = within(&format!("house/walls/{}", wall.index), faults),
        }
        segments.push(segment);
    }
    let issues = |issues| Error::Issues { issues };
    refuse_recalled(&reading.derivation, query.accept_unverified).map_err(issues)?;
    let numbers = Numbers {
        wall: query.wall.clone(),
        segments,
    };
    let edition = Some(query.edition.name());
    let answer = Answer::new("built", edition, numbers, reading.derivation);
    Ok(Answer {
        confidence: answer.confidence.max(reading.confidence),
        estimate: reading.estimate,
        ..answer
    })
}

/// What is gathered over the segments.
#[derive(Debug)]
struct Reading<'q> {
    query: &'q BuiltQuery,
    derivation: Derivation,
    confidence: Confidence,
    estimate: bool,
}

impl Reading<'_> {
    /// What the tables make of a segment that was read off the plan.
    fn take(
        &mut self,
        place: &SegmentPlace,
        found: &BuiltSegment,
        path: &str,
        segment: &mut Segment,
    ) -> Result<(), Error> {
        let query = self.query;
        segment.built = Some(Built::of(found));
        let asked = UnitShearQuery {
            edition: query.edition,
            load: query.load,
            method: query.method,
            assembly: Assembly {
                wet_framing: query.wet_framing,
                ..found.assembly
            },
            high_seismic: query.high_seismic,
            accept_unverified: query.accept_unverified,
            estimate: query.estimate,
        };
        match unit_shear(&asked) {
            Ok(unit) => {
                segment.unit_shear = Some(UnitNumbers::of(&unit));
                self.resists(place, found, &unit, path, segment);
            }
            // What is recalled is for the caller to accept, whatever was built.
            Err(issues) if issues.iter().any(|issue| issue.code == Code::Unverified) => {
                return Err(Error::Issues { issues });
            }
            Err(issues) => segment.faults = within(path, issues),
        }
        Ok(())
    }

    /// The steps to the capacity of a segment.
    fn resists(
        &mut self,
        place: &SegmentPlace,
        found: &BuiltSegment,
        unit: &UnitShear,
        path: &str,
        segment: &mut Segment,
    ) {
        let query = self.query;
        let aspect =
            found
                .pier
                .aspect_factor(query.edition, query.load, query.sharing, found.assembly.blocked);
        self.confidence = self.confidence.max(unit.confidence);
        self.estimate |= unit.estimate.is_some();
        unit.explain_stiffness(&mut self.derivation);
        let design = unit.explain(&mut self.derivation);
        let symbol = self
            .derivation
            .steps
            .last()
            .map_or_else(String::new, |step| step.symbol.clone());
        let Some(factor) = aspect.factor else {
            segment.faults.push(Issue {
                code: Code::NothingResists,
                path: format!("/{path}"),
                wall: query.wall.clone(),
                found: format!("{:.2} times as high as long", aspect.ratio),
                allowed: aspect.source.to_owned(),
                message: "the segment is too slender to count".to_owned(),
            });
            return;
        };
        segment.aspect_factor = Some(factor);
        aspect.explain("C_ar", &found.pier, &mut self.derivation);
        let capacity = self
            .derivation
            .step(
                "V_R",
                &format!("design capacity of segment {}", place.mark),
                &format!("{symbol} * b * C_ar"),
            )
            .from(&symbol, design, "plf")
            .given("b", found.pier.length, "ft")
            .from("C_ar", factor, "")
            .rule("statics", Confidence::TwoSources)
            .gives(design * found.pier.length * factor, "lb");
        segment.capacity_lb = Some(capacity);
    }
}
