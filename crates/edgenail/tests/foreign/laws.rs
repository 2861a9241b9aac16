//! What edges land on, and that everything bare is backed or listed.
//!
//! What an edge lands on is told a second time by the slow way, point by point against the members' polygons; every
//! edge that wants backing has it or is listed as impossible; no block can be left out.

use crate::ground::{Ground, on_every_class};
use edgenail::Length;
use edgenail::blocking::{Blocking, blocking};
use edgenail::edges::{EdgeRun, Site, edges, runs_with};
use edgenail::frame::{Axis, Member};
use edgenail::geometry::{Interval, Rect};
use edgenail::house::Practice;
use edgenail::layout::Side;

#[test]
fn the_runs_of_a_piece_sum_to_its_perimeter() {
    on_every_class(|ground| {
        for piece in &ground.layout.pieces {
            let of_piece = ground.runs.iter().filter(|run| run.piece == piece.id);
            let sum: Length = of_piece.map(|run| run.length).sum();
            let perimeter = piece.outline.perimeter();
            if sum != perimeter {
                return Err(format!("{}: {sum} of {perimeter}", piece.mark));
            }
        }
        Ok(())
    });
}

/// Distances from the panel edge, at one point of it, where a nail has its wood on both sides in this member.
fn depths(member: &Member, run: &EdgeRun, along: Length, practice: &Practice) -> Option<Interval> {
    let (plumb, at) = if run.side.is_plumb() {
        (true, run.from.x)
    } else {
        (false, run.from.y)
    };
    let face = if plumb {
        member.face.span_at_y(along)?
    } else {
        member.face.span_at_x(along)?
    };
    let least = practice.member_edge_least;
    let (lo, hi) = match run.side {
        Side::Left | Side::Bottom => (face.lo - at, face.hi - at),
        Side::Right | Side::Top => (at - face.hi, at - face.lo),
    };
    (lo + least <= hi - least).then(|| Interval::new(lo + least, hi - least))
}

#[test]
fn points_along_each_edge_agree_with_its_runs() {
    on_every_class(|ground| {
        let practice = &ground.house.walls[ground.frame.wall as usize].practice;
        let step = Length::sixteenths(1);
        for run in &ground.runs {
            if run.from.x != run.to.x && run.from.y != run.to.y {
                continue;
            }
            // An edge is judged as a seam over its whole length as soon as another panel meets it.
            let mut same = ground
                .runs
                .iter()
                .filter(|other| (other.piece, other.edge) == (run.piece, run.edge));
            let most = if same.any(|other| other.partner.is_some()) {
                practice.edge_distance_most
            } else {
                practice.free_edge_most
            };
            let around = Rect {
                x0: run.from.x,
                y0: run.from.y,
                x1: run.to.x,
                y1: run.to.y,
            }
            .grown(Length::inches(3));
            let near = ground.frame.members.iter();
            let near: Vec<&Member> = near
                .filter(|member| member.nailable && member.face.bounds().overlaps(&around))
                .collect();
            let sloped_near = near.iter().any(|member| member.axis == Axis::Sloped);
            let (mut along, end) = if run.side.is_plumb() {
                (run.from.y, run.to.y)
            } else {
                (run.from.x, run.to.x)
            };
            along += step.half();
            while along < end {
                let holds = |member: &&Member| {
                    let depth = depths(member, run, along, practice);
                    depth
                        .is_some_and(|depth| depth.lo.max(practice.edge_distance_least) <= depth.hi.min(most))
                };
                let slow = near.iter().any(holds);
                let held = run.member().is_some();
                // Beside a slope the library asks for wood over the whole stretch between two nails, and may say no.
                if held != slow && !(sloped_near && slow) {
                    return Err(format!("{run:?} at {along}: held {held}, by points {slow}"));
                }
                along += step;
            }
        }
        Ok(())
    });
}

/// A run overlaps one that is listed as impossible to back.
fn is_listed(run: &EdgeRun, before: &[EdgeRun], added: &Blocking) -> bool {
    added.impossible.iter().any(|impossible| {
        let listed = &before[impossible.run as usize];
        let meets = listed.from <= run.to && run.from <= listed.to;
        (listed.piece, listed.edge) == (run.piece, run.edge) && meets
    })
}

#[test]
fn what_wants_backing_has_it_or_is_listed() {
    on_every_class(|ground| {
        let added = blocking(&ground.house, &ground.frame, &ground.layout, &ground.runs);
        let after = edges(&ground.house, &ground.frame.with(&added), &ground.layout);
        let mut bare = after.iter().filter(|run| run.lacks_backing());
        match bare.find(|run| !is_listed(run, &ground.runs, &added)) {
            Some(run) => Err(format!("{run:?} is neither backed nor listed")),
            None => Ok(()),
        }
    });
}

/// How much edge still wants backing with so much added.
fn bare_length(ground: &Ground, added: &Blocking) -> Length {
    let runs = edges(&ground.house, &ground.frame.with(added), &ground.layout);
    let lacking = runs.iter().filter(|run| run.lacks_backing());
    lacking.map(|run| run.length).sum()
}

#[test]
fn no_block_can_be_left_out() {
    on_every_class(|ground| {
        let added = blocking(&ground.house, &ground.frame, &ground.layout, &ground.runs);
        let all = bare_length(ground, &added);
        // Every block of a short list, some of a long one.
        let every = added.blocks.len() / 6 + 1;
        for left_out in (0..added.blocks.len()).step_by(every) {
            let mut fewer = added.clone();
            let block = fewer.blocks.remove(left_out);
            if block.serves.is_empty() || bare_length(ground, &fewer) <= all {
                return Err(format!("{block:?} is not needed"));
            }
        }
        Ok(())
    });
}

#[test]
fn an_edge_that_is_listed_stays_bare() {
    on_every_class(|ground| {
        let added = blocking(&ground.house, &ground.frame, &ground.layout, &ground.runs);
        let after = edges(&ground.house, &ground.frame.with(&added), &ground.layout);
        for run in &ground.runs {
            let listed = added.impossible.iter().any(|impossible| impossible.run == run.id);
            if added.leaves(run) != listed {
                return Err(format!("{run:?} is listed: {listed}"));
            }
        }
        for impossible in &added.impossible {
            let listed = &ground.runs[impossible.run as usize];
            let mut same = after
                .iter()
                .filter(|run| (run.piece, run.edge) == (listed.piece, listed.edge));
            let bare = |run: &EdgeRun| run.lacks_backing() && listed.from < run.to && run.from < listed.to;
            if !same.any(bare) {
                return Err(format!("{listed:?} is backed, not {}", impossible.because));
            }
        }
        Ok(())
    });
}

#[test]
fn no_stud_can_be_left_out_but_a_second_one() {
    on_every_class(|ground| {
        let added = blocking(&ground.house, &ground.frame, &ground.layout, &ground.runs);
        let all = bare_length(ground, &added);
        for (left_out, stud) in added.studs.iter().enumerate() {
            let mut others = added.studs.iter();
            let second = others.any(|other| {
                let touches = other.rect.x0 == stud.rect.x1 || other.rect.x1 == stud.rect.x0;
                touches && other.rect.y_span() == stud.rect.y_span()
            });
            let mut fewer = added.clone();
            fewer.studs.remove(left_out);
            if !second && (stud.serves.is_empty() || bare_length(ground, &fewer) <= all) {
                return Err(format!("{stud:?} is not needed"));
            }
        }
        Ok(())
    });
}

#[test]
fn edges_that_no_added_wood_comes_near_keep_their_runs() {
    on_every_class(|ground| {
        let added = blocking(&ground.house, &ground.frame, &ground.layout, &ground.runs);
        let backed = ground.frame.with(&added);
        let site = Site::new(&ground.house, &backed).ok_or("no site")?;
        let (all, anew) = (
            edges(&ground.house, &backed, &ground.layout),
            runs_with(&site, &ground.layout, &ground.runs, ground.frame.members.len()),
        );
        match all.iter().zip(&anew).find(|(a, b)| a != b) {
            Some((all, anew)) => Err(format!("{anew:?} is {all:?}")),
            None if all.len() == anew.len() => Ok(()),
            None => Err(format!("{} runs of {}", anew.len(), all.len())),
        }
    });
}
