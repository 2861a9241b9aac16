//! Every nail of layouts that nobody chose: wood and panel round it, no nail twice, its kind.

use crate::ground::{Ground, on_every_class};
use crate::nailed::{member, nailed};
use edgenail::Length;
use edgenail::geometry::{Point, Rect};
use edgenail::house::{Coating, Nail, Segment};
use std::cell::Cell;

#[test]
fn a_nail_has_wood_and_panel_on_all_sides_and_stands_alone() {
    let moved = Cell::new(0);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        let practice = ground.practice();
        let least = practice.edge_distance_least;
        let mut places = Vec::new();
        for row in &nailed.nailing.rows {
            // Along a slope places are rounded to whole units.
            let wood = member(&nailed, row)?
                .face
                .inset(practice.member_edge_least - Length::from_units(2));
            let outline = &ground.layout.pieces[row.piece as usize].outline;
            for at in row.positions() {
                if !wood.as_ref().is_some_and(|wood| wood.contains(at)) {
                    return Err(format!(
                        "{row:?} has too little wood at {at:?} {:?}",
                        member(&nailed, row)?
                    ));
                }
                // To a sloped edge the distance counts square to it; along level and plumb edges corner by corner.
                let corners = [(-least, -least), (least, -least), (-least, least), (least, least)];
                let is_out =
                    |(right, up): &(Length, Length)| !outline.contains(Point::new(at.x + *right, at.y + *up));
                if outline.is_rect().is_some() && corners.iter().any(is_out) {
                    return Err(format!("{row:?} is too near the panel's edge at {at:?}"));
                }
                if !outline.contains(at) {
                    return Err(format!("{row:?} misses its panel at {at:?}"));
                }
                let in_strap = |place: &edgenail::frame::PatchPlace| place.rect.contains(at);
                if nailed.frame.straps.iter().any(in_strap) {
                    return Err(format!("{row:?} is driven into a strap at {at:?}"));
                }
                let too_near = |place: &edgenail::frame::PatchPlace| {
                    place.rect.grown(least - Length::from_units(1)).contains(at)
                };
                if nailed.frame.penetrations.iter().any(too_near) {
                    return Err(format!("{row:?} is too near a penetration at {at:?}"));
                }
                places.push((row.piece, at));
            }
            moved.set(moved.get() + usize::from(row.moved));
        }
        places.sort_unstable();
        match places.windows(2).find(|pair| pair[0] == pair[1]) {
            Some(pair) => Err(format!("two nails at {:?}", pair[0])),
            None => Ok(()),
        }
    });
    assert!(moved.get() > 50, "{moved:?}");
}

/// The nail that practice and segments ask for: into treated lumber one whose coating is accepted there (IRC R317.3).
fn nail_for(ground: &Ground, segments: &[(&Segment, Rect)], treated: bool) -> String {
    let nails = &ground.house.stock.nails;
    let practice = ground.practice();
    let named = |name: &String| nails.iter().find(|nail| nail.name == *name);
    let resists = |nail: &&Nail| practice.treated_coatings.contains(&nail.coating);
    let of_segment = segments
        .iter()
        .find_map(|(segment, _)| segment.nail.as_ref().and_then(named));
    let asked = of_segment.or_else(|| practice.assembly.nail.as_ref().and_then(named));
    let bright = nails.iter().find(|nail| nail.coating == Coating::Bright);
    let plain = asked.or(bright).unwrap_or(&nails[0]);
    let into_treated = practice
        .assembly
        .treated_nail
        .as_ref()
        .and_then(named)
        .filter(resists);
    let into_treated = into_treated.or_else(|| nails.iter().find(resists));
    let chosen = if treated {
        asked.filter(resists).or(into_treated).unwrap_or(plain)
    } else {
        plain
    };
    chosen.name.clone()
}

#[test]
fn a_nail_is_of_the_kind_that_its_wood_and_its_segment_ask_for() {
    let kinds: Cell<[u32; 3]> = Cell::new([0; 3]);
    on_every_class(|ground| {
        let nailed = nailed(ground);
        for row in nailed
            .nailing
            .rows
            .iter()
            .filter(|row| !row.moved && row.spaces > 0)
        {
            let treated = member(&nailed, row)?.treated;
            let name = &ground.house.stock.nails[row.nail as usize].name;
            // An edge row asks along the panel's edge, which may lie in a segment that its nails are beside.
            let (a, b) = (row.position(row.first), row.position(row.last));
            let mut asked = vec![
                nail_for(ground, &ground.segments_on(a, b), treated),
                nail_for(ground, &ground.segments_on(row.from, row.to), treated),
            ];
            let of_runs = nailed
                .runs
                .iter()
                .filter(|run| run.piece == row.piece && run.member() == Some(row.member));
            asked.extend(of_runs.map(|run| nail_for(ground, &ground.segments_on(run.from, run.to), treated)));
            if !asked.contains(name) {
                return Err(format!("{row:?} is nailed with {name}, not one of {asked:?}"));
            }
            let mut counts = kinds.get();
            counts[row.nail.min(2) as usize] += 1;
            kinds.set(counts);
        }
        Ok(())
    });
    assert!(kinds.get().iter().all(|count| *count > 200), "{kinds:?}");
}
