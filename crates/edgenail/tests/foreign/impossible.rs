//! Edges that cannot be backed: the reason that is given is true, and where wood would fit it is set.

use crate::edge_shape::{along, ends, holds, is_sloped};
use crate::ground::{Ground, on_every_class};
use edgenail::Length;
use edgenail::blocking::{blocking, findings};
use edgenail::edges::{EdgeRun, Side, Site, Support, Unsupported};
use edgenail::finding::{FindingCode, Severity};
use edgenail::frame::{Axis, Frame};
use edgenail::geometry::{Point, Rect};
use edgenail::layout::Joint;
use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;

/// The middle of the joint that an edge is half of, or nothing where no panel faces it.
fn facing(ground: &Ground, run: &EdgeRun) -> Option<Length> {
    let partner = run.partner?;
    let opposite = |other: &&EdgeRun| {
        let overlaps = if run.side.is_plumb() {
            other.from.y < run.to.y && run.from.y < other.to.y
        } else {
            other.from.x < run.to.x && run.from.x < other.to.x
        };
        other.piece == partner && other.side == run.side.opposite() && overlaps
    };
    let at = |run: &EdgeRun| {
        if run.side.is_plumb() {
            run.from.x
        } else {
            run.from.y
        }
    };
    let others = ground.runs.iter().filter(opposite).map(at);
    others.min_by_key(|other| (*other - at(run)).abs())
}

/// The face of lumber of this width behind a stretch of an edge, so far across it.
fn place(run: &EdgeRun, across: Length, width: Length) -> Rect {
    if run.side.is_plumb() {
        Rect {
            x0: across,
            x1: across + width,
            y0: run.from.y,
            y1: run.to.y,
        }
    } else {
        Rect {
            x0: run.from.x,
            x1: run.to.x,
            y0: across,
            y1: across + width,
        }
    }
}

fn near_slope(frame: &Frame, face: &Rect) -> bool {
    let around = face.grown(Length::inches(4));
    frame
        .members
        .iter()
        .any(|member| member.axis == Axis::Sloped && member.face.bounds().overlaps(&around))
}

/// A sloped member comes near the bay.
fn under_slope(frame: &Frame, run: &EdgeRun) -> bool {
    let mut sloped = frame.members.iter().filter(|member| member.axis == Axis::Sloped);
    sloped.any(|member| {
        let face = member.face.bounds();
        if run.side.is_plumb() {
            face.x0 <= run.from.x && run.from.x <= face.x1
        } else {
            face.y0 <= run.from.y + Length::inches(8) && run.from.y <= face.y1 + Length::inches(8)
        }
    })
}

fn is_clear(frame: &Frame, face: &Rect, but: &Rect) -> bool {
    let mut others = frame.members.iter().map(|member| member.face.bounds());
    !others.any(|bounds| bounds != *but && bounds.overlaps(face))
}

/// Places for a face of this width, 1/16 in. apart, from which the edge's nail line is served.
fn places(ground: &Ground, run: &EdgeRun, width: Length) -> Vec<Length> {
    let at = if run.side.is_plumb() {
        run.from.x
    } else {
        run.from.y
    };
    let reach = (width.units() * 2) / Length::sixteenths(1).units();
    let all = (-reach..=reach).map(|step| at + Length::sixteenths(step));
    all.filter(|across| holds(ground.practice(), run, &place(run, *across, width)))
        .collect()
}

#[test]
fn added_wood_is_as_near_to_the_joint_as_it_can_stand() {
    let seen = Cell::new([0; 2]);
    on_every_class(|ground| {
        let added = blocking(&ground.house, &ground.frame, &ground.layout, &ground.runs);
        let frame = ground.frame.with(&added);
        let blocks = added.blocks.iter().map(|block| (block.rect, &block.serves));
        let studs = added.studs.iter().map(|stud| (stud.rect, &stud.serves));
        for (rect, served) in blocks.chain(studs) {
            // Wood that serves one edge, or both edges of one joint, was set for it.
            let Some(run) = served.first().map(|run| &ground.runs[*run as usize]) else {
                continue;
            };
            let joint = facing(ground, run);
            let of_joint = |other: &u32| {
                let other = &ground.runs[*other as usize];
                other.piece == run.piece && other.edge == run.edge || Some(other.piece) == run.partner
            };
            if !served.iter().all(of_joint) || near_slope(&frame, &rect) {
                continue;
            }
            let (across, width) = if run.side.is_plumb() {
                (rect.x0, rect.width())
            } else {
                (rect.y0, rect.height())
            };
            let at = if run.side.is_plumb() {
                run.from.x
            } else {
                run.from.y
            };
            let home = match joint {
                Some(other) => (at + other - width).half(),
                // Behind the panel, with its side flush with the panel's edge.
                None if matches!(run.side, Side::Left | Side::Bottom) => at,
                None => at - width,
            };
            let off = (across - home).abs();
            let both = |across: Length| {
                joint.is_none_or(|other| {
                    let face = place(run, across, width);
                    let opposite = EdgeRun {
                        side: run.side.opposite(),
                        from: if run.side.is_plumb() {
                            Point::new(other, run.from.y)
                        } else {
                            Point::new(run.from.x, other)
                        },
                        ..run.clone()
                    };
                    holds(ground.practice(), &opposite, &face)
                })
            };
            let nearer = places(ground, run, width).into_iter().find(|other| {
                let better = (both(*other), (*other - home).abs());
                let ours = both(across);
                let wins = (better.0 && !ours) || (better.0 == ours && better.1 < off);
                wins && is_clear(&frame, &place(run, *other, width), &rect)
            });
            if let Some(nearer) = nearer {
                return Err(format!("{rect:?} stands {off} off {run:?}; {nearer} is nearer"));
            }
            let mut counts = seen.get();
            counts[usize::from(run.side.is_plumb())] += 1;
            seen.set(counts);
        }
        Ok(())
    });
    assert!(seen.get().iter().all(|count| *count > 200), "{seen:?}");
}

/// Across which width lumber of stock shows behind an edge: studs on edge, blocks either way.
fn widths(ground: &Ground, run: &EdgeRun) -> Vec<Length> {
    let sticks = &ground.house.stock.sticks;
    let thin = sticks.iter().map(|stick| stick.thickness);
    let flat = sticks
        .iter()
        .filter(|_| !run.side.is_plumb())
        .map(|stick| stick.depth);
    thin.chain(flat).collect()
}

/// Places along a run, of which wood that was added before may leave any part bare.
fn parts(run: &EdgeRun) -> impl Iterator<Item = Length> {
    let (lo, hi) = ends(run);
    (1..64).map(move |part| lo + Length::from_units((hi - lo).units() * part / 64))
}

/// From some place that serves the edge, and somewhere along it, the wood that stands below or left of it and the wood
/// above or right of it, as far as there is any, lie so.
fn somewhere(ground: &Ground, run: &EdgeRun, lie: impl Fn(Option<Length>, Option<Length>) -> bool) -> bool {
    let wheres = widths(ground, run).into_iter().flat_map(|width| {
        let rows = places(ground, run, width).into_iter();
        rows.map(move |across| place(run, across, width))
    });
    wheres.into_iter().any(|row| {
        let faces = ground.frame.members.iter().map(|member| member.face.bounds());
        let in_row = |face: &Rect| {
            if run.side.is_plumb() {
                face.x_span().overlaps(row.x_span())
            } else {
                face.y_span().overlaps(row.y_span())
            }
        };
        let faces: Vec<(Length, Length)> = faces.filter(in_row).map(|face| along(run, &face)).collect();
        parts(run).any(|middle| {
            let below = faces
                .iter()
                .filter(|(_, hi)| *hi <= middle)
                .map(|(_, hi)| *hi)
                .max();
            let above = faces
                .iter()
                .filter(|(_, hi)| middle < *hi)
                .map(|(lo, _)| *lo)
                .min();
            lie(below, above)
        })
    })
}

/// The longest piece that stock has for the edge: a stud comes from the longest stick as deep as the wall, a block from
/// the stick that practice names.
fn longest(ground: &Ground, run: &EdgeRun) -> Length {
    let (sticks, practice) = (&ground.house.stock.sticks, ground.practice());
    let (stick, clearance) = if run.side.is_plumb() {
        let deep = sticks
            .iter()
            .filter(|stick| stick.depth == ground.stud_depth(run.from.y));
        (deep.max_by_key(|stick| stick.length), Length::ZERO)
    } else {
        let named = sticks
            .iter()
            .find(|stick| Some(&stick.name) == practice.block_stick.as_ref());
        (named, practice.block_clearance)
    };
    stick
        .or(sticks.first())
        .map_or(Length::ZERO, |stick| stick.length + clearance)
}

/// No place that serves the edge is clear of what stands behind the whole run.
fn no_room(ground: &Ground, frame: &Frame, run: &EdgeRun) -> bool {
    let nothing = Rect::new(Length::ZERO, Length::ZERO, Length::ZERO, Length::ZERO);
    widths(ground, run).into_iter().any(|width| {
        let mut places = places(ground, run, width).into_iter();
        places.all(|across| !is_clear(frame, &place(run, across, width), &nothing))
    })
}

#[test]
fn the_reason_why_an_edge_cannot_be_backed_is_true() {
    let seen: RefCell<BTreeMap<String, u32>> = RefCell::default();
    on_every_class(|ground| {
        let added = blocking(&ground.house, &ground.frame, &ground.layout, &ground.runs);
        let frame = ground.frame.with(&added);
        let no_lumber = ground.house.stock.sticks.is_empty();
        for impossible in &added.impossible {
            let run = &ground.runs[impossible.run as usize];
            let plumb = run.side.is_plumb();
            let sloped = is_sloped(run);
            let holds_no_nail = run.support
                == (Support::Nothing {
                    reason: Unsupported::NotNailable,
                });
            let is_true = match impossible.because.as_str() {
                "stock has no lumber to cut a stud from" => no_lumber && plumb,
                "stock has no lumber to cut a block from" => no_lumber && !plumb,
                "no stick in stock is as long as the clear bay" => {
                    let longest = longest(ground, run);
                    somewhere(ground, run, |below, above| {
                        below
                            .zip(above)
                            .is_some_and(|(below, above)| above - below > longest)
                    })
                }
                "the edge follows a rake without a raked plate behind it" => sloped,
                "what lies behind it holds no nail and leaves no room for wood that does" => {
                    holds_no_nail && no_room(ground, &frame, run)
                }
                "what stands there leaves no room for wood on its nail line" => {
                    !holds_no_nail && no_room(ground, &frame, run)
                }
                "there is nothing below to stand a stud on" => {
                    plumb && somewhere(ground, run, |below, _| below.is_none())
                }
                "there is nothing above to nail a stud to" => {
                    plumb && somewhere(ground, run, |_, above| above.is_none())
                }
                "there is nothing on the left to nail a block to" => {
                    !plumb && somewhere(ground, run, |below, _| below.is_none())
                }
                "there is nothing on the right to nail a block to" => {
                    !plumb && somewhere(ground, run, |_, above| above.is_none())
                }
                _ => false,
            };
            // Under a slope the wood that stands is seen coarsely, as the rectangle around what comes near.
            if !is_true && !under_slope(&ground.frame, run) && run.length > Length::inches(1) {
                return Err(format!("{run:?}: {}", impossible.because));
            }
            *seen.borrow_mut().entry(impossible.because.clone()).or_default() += 1;
        }
        Ok(())
    });
    assert!(seen.borrow().len() >= 9, "{seen:?}");
}

#[test]
fn an_edge_that_cannot_be_backed_forbids_a_blocked_segment() {
    let seen = Cell::new([0; 4]);
    on_every_class(|ground| {
        let added = blocking(&ground.house, &ground.frame, &ground.layout, &ground.runs);
        let site = Site::new(&ground.house, &ground.frame).ok_or("no site")?;
        let findings = findings(&site, &ground.layout, &ground.runs, &added);
        if findings.len() != added.impossible.len() {
            return Err(format!(
                "{} findings of {}",
                findings.len(),
                added.impossible.len()
            ));
        }
        for (finding, impossible) in findings.iter().zip(&added.impossible) {
            let run = &ground.runs[impossible.run as usize];
            let relied_on = ground.segments_of(run).iter().any(|segment| segment.blocked);
            let severity = if relied_on {
                Severity::Refuse
            } else {
                Severity::Mend
            };
            let seam = run.side.is_plumb() && run.joint != Joint::Opening;
            let code = if seam {
                FindingCode::SeamOffFraming
            } else {
                FindingCode::EdgeUnsupported
            };
            let mark = &ground.layout.pieces[run.piece as usize].mark;
            if (finding.severity, finding.code, &finding.piece) != (severity, code, mark) {
                return Err(format!("{finding:?} of {run:?}"));
            }
            let mut counts = seen.get();
            counts[usize::from(relied_on) + 2 * usize::from(seam)] += 1;
            seen.set(counts);
        }
        Ok(())
    });
    assert!(seen.get().iter().all(|count| *count > 20), "{seen:?}");
}
