//! What is missing shows: take a nail, every third nail of a row or a block out of a segment of a finished plan, and what
//! is read off it resists less, or it is refused with the edge named.
//!
//! A law of statics, no source: a fastener that is not there carries nothing. What a gap is comes from the plan's own
//! nails, before and after, and not from what reads it off the plan.

#![expect(clippy::unwrap_used, reason = "a test fails by a panic")]

use edgenail::Length;
use edgenail::capacity::{
    BuiltSegment, Edition, LoadKind, Method, UnitShearQuery, built_segment, unit_shear,
};
use edgenail::edges::{EdgeRun, Support, Unsupported};
use edgenail::evaluate::Evaluated;
use edgenail::frame::{MemberId, MemberKind, SegmentPlace};
use edgenail::generate::house_json;
use edgenail::geometry::{Point, Rect};
use edgenail::house::House;
use edgenail::nailing::{NailRow, Zone};
use edgenail::plan::plan_house;
use edgenail::read_house;
use serde_json::{Value, json};
use std::collections::BTreeSet;

const HOUSES: u64 = 120;

/// A generated house with a segment on each wall that has room for one, from its left end to the first opening.
fn house(seed: u64) -> Option<House> {
    let (text, _) = house_json(seed);
    let mut document: Value = serde_json::from_str(&text).unwrap();
    for wall in document["walls"].as_array_mut()? {
        let first = &wall["sections"][0]["stack"][0]["openings"][0]["left"];
        let end = first.as_str().unwrap_or(wall["length"].as_str()?);
        let room = Length::parse(end, edgenail::length::Unit::Inch).ok()?.length;
        let to = [96, 64, 48, 40]
            .map(Length::inches)
            .into_iter()
            .find(|to| *to + Length::inches(6) < room);
        if let Some(to) = to {
            let storey = wall["sections"][0]["stack"][0]["name"].clone();
            wall["segments"] = json!([{"storey": storey, "from": "0 in", "to": to.to_string(), "mark": "S1",
                "method": "segmented", "edge_spacing": "4 in", "field_spacing": "6 in", "blocked": true, "end_posts": 2}]);
        }
    }
    Some(read_house(document.to_string().as_bytes()).ok()?.0)
}

/// A segment of a finished wall.
struct Whole<'a> {
    house: &'a House,
    built: &'a Evaluated,
    place: &'a SegmentPlace,
    read: BuiltSegment,
    design: f64,
}

/// A segment as it is read, and what it resists by its unit shear in pounds per foot, 0 where no table has it; or the place
/// for which it is refused.
fn resists(house: &House, built: &Evaluated, place: &SegmentPlace) -> Result<(BuiltSegment, f64), String> {
    let read = built_segment(house, built, place).map_err(|issues| issues[0].found.clone())?;
    let query = UnitShearQuery {
        edition: Edition::Sdpws2015,
        load: LoadKind::Wind,
        method: Method::Asd,
        assembly: read.assembly,
        high_seismic: false,
        accept_unverified: true,
        estimate: false,
    };
    let design = unit_shear(&query).map_or(0.0, |unit| unit.design);
    Ok((read, design))
}

/// The row without its nails at these places of its line.
fn without(row: &NailRow, gone: impl Fn(u32) -> bool) -> Vec<NailRow> {
    let mut left: Vec<NailRow> = Vec::new();
    for index in (row.first..=row.last).filter(|index| !gone(*index)) {
        match left.last_mut() {
            Some(last) if last.last + 1 == index => last.last = index,
            _ => left.push(NailRow {
                first: index,
                last: index,
                ..row.clone()
            }),
        }
    }
    left
}

impl Whole<'_> {
    /// The wall with other nails in place of a row.
    fn with_row(&self, index: usize, rest: Vec<NailRow>) -> Evaluated {
        let mut fewer = self.built.clone();
        fewer.nailing.rows.splice(index..=index, rest);
        fewer
    }

    /// The widest stretch of a row's line without nails of its panel in its member.
    fn gap(&self, built: &Evaluated, row: &NailRow) -> Length {
        let upright = row.from.x == row.to.x;
        let along = |at: Point| if upright { at.y } else { at.x };
        let beside = |at: Point| if upright { at.x } else { at.y };
        let rows = built
            .nailing
            .rows
            .iter()
            .filter(|other| (other.piece, other.member) == (row.piece, row.member));
        let mut at: Vec<Length> = rows
            .flat_map(NailRow::positions)
            .filter(|at| {
                (beside(*at) - beside(row.from)).abs() <= Length::inches(2) && self.place.rect.contains(*at)
            })
            .map(along)
            .collect();
        at.sort_unstable();
        at.windows(2)
            .map(|pair| pair[1] - pair[0])
            .max()
            .unwrap_or_default()
    }

    /// Never better, and worse where the widest gap grew past the nailing that was read.
    fn shows(&self, fewer: &Evaluated, row: &NailRow, what: &str) -> bool {
        let gap = self.gap(fewer, row);
        match resists(self.house, fewer, self.place) {
            Ok((read, design)) => {
                assert!(
                    design <= self.design,
                    "{what}: {design} plf from {} by {row:?}",
                    self.design
                );
                assert!(read.widest_gap >= self.read.widest_gap, "{what}: {row:?}");
                assert!(
                    read.widest_gap >= gap,
                    "{what}: a gap of {gap} is read as {} of the {}: {row:?}",
                    read.widest_gap,
                    read.widest_at
                );
                if gap > self.read.assembly.edge_spacing {
                    assert!(design < self.design, "{what}: {gap} {row:?}");
                    assert!(!read.widest_at.is_empty());
                }
                design < self.design
            }
            Err(told) => {
                assert!(
                    ["edge of", "plate", "post"]
                        .iter()
                        .any(|place| told.contains(place)),
                    "{told}"
                );
                true
            }
        }
    }

    /// The wall without every third nail of each stud of an end post: of these the best nailed one counts, so that a gap
    /// in one alone loses nothing.
    fn without_thirds_of_post(&self, end: Length) -> Evaluated {
        let mut fewer = self.built.clone();
        let of_post =
            |row: &NailRow| row.from.x == row.to.x && (row.from.x - end).abs() <= Length::inches(10);
        let (post, mut rest): (Vec<_>, Vec<_>) = fewer.nailing.rows.into_iter().partition(of_post);
        rest.extend(post.iter().flat_map(|row| without(row, |at| at % 3 == 1)));
        fewer.nailing.rows = rest;
        fewer
    }

    /// Blocks that hold an edge within the segment, where every edge has wood behind it.
    fn blocks(&self) -> Vec<MemberId> {
        if !self.read.assembly.blocked {
            return Vec::new();
        }
        let inside = |area: Rect| {
            let corners = [Point::new(area.x0, area.y0), Point::new(area.x1, area.y1)];
            corners.into_iter().all(|corner| self.place.rect.contains(corner))
        };
        let runs = self.built.runs.iter().filter(|run| inside(run.area()));
        let holding: BTreeSet<MemberId> = runs.filter_map(EdgeRun::member).collect();
        let blocks = self
            .built
            .backed
            .members
            .iter()
            .filter(|member| member.kind == MemberKind::Block);
        blocks
            .map(|block| block.id)
            .filter(|block| holding.contains(block))
            .collect()
    }

    /// The wall without a block: what it held is bare, what went into it is gone.
    fn without_block(&self, block: MemberId) -> Evaluated {
        let mut fewer = self.built.clone();
        fewer.backed.members.retain(|member| member.id != block);
        fewer.nailing.rows.retain(|row| row.member != block);
        for run in &mut fewer.runs {
            if run.member() == Some(block) {
                run.support = Support::Nothing {
                    reason: Unsupported::NoMember,
                };
            }
        }
        fewer
    }
}

#[test]
fn what_is_missing_shows() {
    let [
        mut segments,
        mut single,
        mut thirds,
        mut posts,
        mut blocks,
        mut seen,
    ] = [0_usize; 6];
    for seed in 0..HOUSES {
        let Some(house) = house(seed) else { continue };
        let Ok(plan) = plan_house(house, Vec::new()) else {
            continue;
        };
        for wall in plan.walls() {
            for place in &wall.frame.segments {
                let Ok((read, design)) = resists(plan.house(), &wall.built, place) else {
                    continue;
                };
                if design == 0.0 {
                    continue;
                }
                segments += 1;
                let whole = Whole {
                    house: plan.house(),
                    built: &wall.built,
                    place,
                    read,
                    design,
                };
                for (index, row) in wall.built.nailing.rows.iter().enumerate() {
                    let inside: Vec<u32> = (row.first..=row.last)
                        .filter(|at| place.rect.contains(row.position(*at)))
                        .collect();
                    let stands_alone =
                        row.zone == Zone::Edge || row.from.x != row.to.x && row.zone == Zone::Boundary;
                    if !stands_alone || inside.len() < 4 {
                        continue;
                    }
                    // Another nail of each row, so that every place of a row comes up.
                    let one = inside[(usize::try_from(seed).unwrap() + index) % inside.len()];
                    let fewer = whole.with_row(index, without(row, |at| at == one));
                    seen += usize::from(whole.shows(&fewer, row, "a nail"));
                    single += 1;
                    let fewer = whole.with_row(index, without(row, |at| at % 3 == 1));
                    seen += usize::from(whole.shows(&fewer, row, "every third nail"));
                    thirds += 1;
                }
                for end in [place.rect.x0, place.rect.x1] {
                    let fewer = whole.without_thirds_of_post(end);
                    if let Ok((read, design)) = resists(plan.house(), &fewer, place) {
                        assert!(
                            design < whole.design,
                            "seed {seed}: {} {}",
                            read.widest_gap,
                            read.widest_at
                        );
                    }
                    posts += 1;
                }
                for block in whole.blocks() {
                    let fewer = whole.without_block(block);
                    match resists(plan.house(), &fewer, place) {
                        Ok((read, design)) => {
                            assert!(!read.assembly.blocked, "seed {seed}: {block:?}");
                            assert!(design <= whole.design);
                            // Without blocks a wall of closely spaced studs and field nails loses nothing.
                            let close = read.assembly.stud_spacing <= Length::inches(12)
                                && read.assembly.field_spacing <= Length::inches(6);
                            assert!(close || design < whole.design, "seed {seed}: {block:?}");
                        }
                        Err(told) => assert!(!told.is_empty()),
                    }
                    blocks += 1;
                }
            }
        }
    }
    assert!(segments > 40 && posts == 2 * segments, "{segments} segments");
    assert!(
        single > 200 && thirds > 200 && blocks > 100,
        "{single} nails, {thirds} rows, {blocks} blocks"
    );
    assert!(
        seen * 20 > (single + thirds) * 19,
        "only {seen} of {}",
        single + thirds
    );
}
