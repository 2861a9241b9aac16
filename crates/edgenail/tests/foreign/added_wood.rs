//! Blocks, added studs and widened members, told a second time by the slow way on generated houses of every class.

use crate::edge_shape::{along, ends, holds, is_sloped};
use crate::ground::{Ground, on_every_class};
use crate::slow::stands_at;
use edgenail::Length;
use edgenail::blocking::{Block, BlockLie, Blocking, blocking};
use edgenail::edges::{EdgeRun, Side};
use edgenail::frame::Frame;
use edgenail::geometry::{Point, Rect};
use std::cell::Cell;

fn backed(ground: &Ground) -> (Blocking, Frame) {
    let added = blocking(&ground.house, &ground.frame, &ground.layout, &ground.runs);
    let frame = ground.frame.with(&added);
    (added, frame)
}

const HAIR: Length = Length::from_units(1);
/// Further than an end that follows a slope rises over a hair.
const BEYOND: Length = Length::from_units(9);

/// Some wood lies against this side of a piece of lumber.
fn is_met(frame: &Frame, rect: &Rect, side: Side) -> bool {
    let (x, y) = ((rect.x0 + rect.x1).half(), (rect.y0 + rect.y1).half());
    let places = match side {
        Side::Left | Side::Right => [rect.y0 + HAIR, y, rect.y1 - HAIR].map(|y| match side {
            Side::Left => Point::new(rect.x0 - BEYOND, y),
            _ => Point::new(rect.x1 + BEYOND, y),
        }),
        Side::Bottom | Side::Top => [rect.x0 + HAIR, x, rect.x1 - HAIR].map(|x| match side {
            Side::Bottom => Point::new(x, rect.y0 - BEYOND),
            _ => Point::new(x, rect.y1 + BEYOND),
        }),
    };
    places.into_iter().any(|at| stands_at(frame, at))
}

#[test]
fn a_block_fills_its_bay_and_comes_from_the_right_stick() {
    let (flat, on_edge, full) = (Cell::new(0), Cell::new(0), Cell::new(0));
    on_every_class(|ground| {
        let (added, frame) = backed(ground);
        let practice = ground.practice();
        let sticks = &ground.house.stock.sticks;
        let named = sticks
            .iter()
            .position(|stick| Some(&stick.name) == practice.block_stick.as_ref());
        for block in &added.blocks {
            let stick = &sticks[block.stick as usize];
            if block.stick as usize != named.unwrap_or(0) {
                return Err(format!("{block:?} is not cut from the stick that practice names"));
            }
            let (face, depth) = match block.lie {
                BlockLie::Flat => (stick.depth, stick.thickness),
                BlockLie::OnEdge => (stick.thickness, stick.depth),
            };
            if (block.rect.height(), block.depth) != (face, depth) {
                return Err(format!("{block:?} is no {}", stick.name));
            }
            let shared = |run: &u32| {
                let run = &ground.runs[*run as usize];
                ground.face_to_share(run) > stick.thickness
            };
            let lies_well = match block.lie {
                BlockLie::Flat => practice.blocks_flat || block.serves.iter().any(shared),
                BlockLie::OnEdge => !practice.blocks_flat && !block.serves.iter().all(shared),
            };
            if !lies_well {
                return Err(format!("{block:?} lies the wrong way"));
            }
            if block.length != block.rect.width() - practice.block_clearance || block.length > stick.length {
                return Err(format!("{block:?} is cut to the wrong length"));
            }
            if block.fills_depth != (block.depth >= ground.stud_depth(block.rect.y0)) {
                return Err(format!("{block:?} does not tell whether it stops fire"));
            }
            if !is_met(&frame, &block.rect, Side::Left) || !is_met(&frame, &block.rect, Side::Right) {
                return Err(format!("{block:?} has an end that hangs"));
            }
            match block.lie {
                BlockLie::Flat => flat.set(flat.get() + 1),
                BlockLie::OnEdge => on_edge.set(on_edge.get() + 1),
            }
            full.set(full.get() + usize::from(block.fills_depth));
        }
        Ok(())
    });
    assert!(
        flat.get() > 100 && on_edge.get() > 20 && full.get() > 20,
        "{flat:?} {on_edge:?} {full:?}"
    );
}

#[test]
fn an_added_stud_stands_on_wood_and_is_as_deep_as_the_wall() {
    let seen = Cell::new((0, 0));
    on_every_class(|ground| {
        let (added, frame) = backed(ground);
        let sticks = &ground.house.stock.sticks;
        let studs = added.studs.iter().enumerate().map(|(at, stud)| {
            let beside = |first: &Rect| {
                let touches = first.x0 == stud.rect.x1 || first.x1 == stud.rect.x0;
                touches && first.y_span() == stud.rect.y_span()
            };
            let second = added.studs[..at].iter().any(|first| beside(&first.rect));
            (stud.rect, stud.stick, &stud.serves, second, false)
        });
        let widened = added
            .widened
            .iter()
            .map(|stud| (stud.rect, stud.stick, &stud.serves, true, true));
        for (rect, at, serves, second, widened) in studs.chain(widened) {
            let stick = &sticks[at as usize];
            let middles = serves.iter().map(|run| &ground.runs[*run as usize]);
            let depths: Vec<Length> = middles.map(|run| ground.stud_depth(run.from.y)).collect();
            let at_foot = ground.stud_depth(rect.y0);
            // Wood for one edge is as deep as the wall behind that edge; for several, as behind one of them.
            let depths = if widened || depths.is_empty() {
                vec![at_foot]
            } else {
                depths
            };
            let wanted = |depth: &Length| sticks.iter().any(|stick| stick.depth == *depth);
            let mut offered = depths.iter().filter(|depth| wanted(depth)).peekable();
            if offered.peek().is_some() && !offered.any(|depth| stick.depth == *depth) {
                return Err(format!("{rect:?} of {} is not as deep as the wall", stick.name));
            }
            if rect.width() != stick.thickness {
                return Err(format!("{rect:?} of {} has the wrong face", stick.name));
            }
            // A second stud is as high as the one that it stands beside, also under a slope.
            if !is_met(&frame, &rect, Side::Bottom) || !(second || is_met(&frame, &rect, Side::Top)) {
                return Err(format!("{rect:?} hangs"));
            }
            seen.set((seen.get().0 + 1, seen.get().1));
        }
        for stud in &added.studs {
            if stud.rect.height() > sticks[stud.stick as usize].length {
                return Err(format!("{stud:?} is longer than its stick"));
            }
            // Two panels that need a wider face to share get a second stud beside the first, if there is room.
            let narrow = |run: &&u32| {
                let run = &ground.runs[**run as usize];
                run.partner.is_some() && ground.face_to_share(run) > stud.rect.width()
            };
            let beside = |a: &Rect| {
                let touches = a.x0 == stud.rect.x1 || a.x1 == stud.rect.x0;
                touches && a.y0 == stud.rect.y0 && a.y1 == stud.rect.y1
            };
            if stud.serves.iter().all(|run| narrow(&run)) {
                let doubled = added.studs.iter().any(|other| beside(&other.rect));
                let free = [-stud.rect.width(), stud.rect.width()].into_iter().any(|by| {
                    let place = stud.rect.shifted(by, Length::ZERO);
                    !frame
                        .members
                        .iter()
                        .any(|member| member.face.bounds().overlaps(&place))
                });
                if !doubled && free {
                    return Err(format!("{stud:?} stands alone under two panels"));
                }
                seen.set((seen.get().0, seen.get().1 + usize::from(doubled)));
            }
            // What serves no edge by itself is the second of two that two panels share.
            if stud.serves.is_empty() {
                let mut first = added.studs.iter().filter(|other| beside(&other.rect));
                if !first.any(|first| first.serves.iter().any(|run| narrow(&run))) {
                    return Err(format!("{stud:?} is not needed"));
                }
            }
        }
        Ok(())
    });
    let (studs, doubled) = seen.get();
    assert!(studs > 100 && doubled > 50, "{seen:?}");
}

/// The face lies behind some of the run, seen across the edge.
fn lies_behind(run: &EdgeRun, face: &Rect) -> bool {
    let ((from, to), (lo, hi)) = (ends(run), along(run, face));
    from < hi && lo < to
}

#[test]
fn added_wood_serves_the_runs_that_it_holds_and_no_others() {
    on_every_class(|ground| {
        let (added, _) = backed(ground);
        let of = |rect: &Rect, plumb: bool| -> Vec<u32> {
            let runs = ground.runs.iter();
            let runs =
                runs.filter(|run| run.lacks_backing() && run.side.is_plumb() == plumb && !is_sloped(run));
            let held = runs.filter(|run| lies_behind(run, rect) && holds(ground.practice(), run, rect));
            held.map(|run| run.id).collect()
        };
        for block in &added.blocks {
            if block.serves != of(&block.rect, false) {
                return Err(format!("{block:?} serves {:?}", of(&block.rect, false)));
            }
        }
        for stud in &added.studs {
            if stud.serves != of(&stud.rect, true) {
                return Err(format!("{stud:?} serves {:?}", of(&stud.rect, true)));
            }
        }
        let ids: Vec<u32> = added.blocks.iter().map(|block: &Block| block.id).collect();
        let count = u32::try_from(ids.len()).unwrap_or(0);
        (ids == (0..count).collect::<Vec<u32>>())
            .then_some(())
            .ok_or_else(|| format!("{ids:?}"))
    });
}
