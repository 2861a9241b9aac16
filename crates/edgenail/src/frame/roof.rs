//! What is above the uppermost plate: rakes, gable trusses, heels.

use super::builder::{Material, Piece};
use super::grid::Grid;
use super::plates::lay_plates;
use super::rake::{Roofline, cut_level};
use super::{Axis, Frame, MemberKind};
use crate::geometry::{Convex, Interval, Point, Rect};
use crate::house::{EaveTrusses, GableTruss, Plate, Rake, RakeBuild, Storey, Top};
use crate::length::Length;

/// Where the top of a section is.
#[derive(Clone, Copy, Debug)]
pub(super) struct Under {
    /// The frame.
    pub x: Interval,
    /// The sheathing.
    pub sheathed: Interval,
    /// Top of the uppermost plate of a flat wall.
    pub top: Length,
    pub material: Material,
}

/// The slopes that a section's uppermost studs are cut to.
pub(super) fn roofline(rake: &Rake, storey: &Storey, top: Length) -> Option<Roofline> {
    let thickness = storey.top_plates.iter().map(|plate| plate.thickness).sum();
    Roofline::new(
        Point::new(rake.ridge_x, top + rake.peak),
        rake.left,
        rake.right,
        thickness,
    )
}

/// Lays raked plates, or a ladder between level plates and a raked one.
pub(super) fn lay_rake(
    frame: &mut Frame,
    at: &Under,
    build: RakeBuild,
    line: &Roofline,
    plates: &[Plate],
    grid: &Grid,
    width: Length,
) {
    let all: Vec<Length> = match build {
        RakeBuild::RakedPlates => plates.iter().rev().map(|plate| plate.thickness).collect(),
        RakeBuild::Ladder => plates.last().map(|plate| plate.thickness).into_iter().collect(),
    };
    for quad in line.layers(at.x, &all) {
        // Where a ladder runs out, its raked plate is cut to lie on the level one.
        let corners = match build {
            RakeBuild::RakedPlates => quad,
            RakeBuild::Ladder => cut_level(&quad, at.top),
        };
        if let Some(face) = Convex::from_points(&corners) {
            frame.put_convex(
                &at.material,
                Piece::said(MemberKind::RakedPlate, Axis::Sloped),
                face,
            );
        }
    }
    if build == RakeBuild::Ladder {
        let under = line.with_thickness(all.iter().copied().sum());
        for x in grid.faces_with_ends(width, at.x) {
            let stud = Rect::from_spans(x, Interval::new(at.top, at.top));
            if let Some(face) = Convex::from_points(&under.cut_stud(stud)) {
                frame.put_convex(
                    &at.material,
                    Piece::said(MemberKind::LadderStud, Axis::Vertical),
                    face,
                );
            }
        }
    }
}

/// Frames what stands on the uppermost plate and returns the line that sheathing may reach, from left to right.
pub(super) fn frame_top(frame: &mut Frame, top: &Top, at: &Under, line: Option<&Roofline>) -> Vec<Point> {
    let level = |y: Length| vec![Point::new(at.sheathed.lo, y), Point::new(at.sheathed.hi, y)];
    match top {
        Top::Flat => level(at.top),
        Top::Rake(_) => line.map_or_else(|| level(at.top), |line| line.line(at.sheathed)),
        Top::GableTruss(truss) => gable(frame, truss, at).unwrap_or_else(|| level(at.top + truss.hold_up)),
        Top::EaveTrusses(trusses) => {
            heels(frame, trusses, at);
            level(at.top + trusses.hold_up)
        }
    }
}

/// A gable truss: bottom chord, upright webs, top chords. Where it is sheathed, its line.
fn gable(frame: &mut Frame, truss: &GableTruss, at: &Under) -> Option<Vec<Point>> {
    let line = Roofline::new(
        Point::new(truss.ridge_x, Length::ZERO),
        truss.pitch,
        truss.pitch,
        truss.chord,
    )?;
    // The heel is the height over the end farther from the ridge; over the other end the truss is higher.
    let peak = at.top + truss.heel - line.y_at(at.x.lo).min(line.y_at(at.x.hi));
    let line = Roofline::new(
        Point::new(truss.ridge_x, peak),
        truss.pitch,
        truss.pitch,
        truss.chord,
    )?;
    let piece = |kind, axis| Piece {
        setback: truss.setback,
        ..Piece::said(kind, axis)
    };
    let bottom = Rect::from_spans(
        at.x,
        Interval::new(at.top, at.top + truss.chord.min(truss.heel.max(Length::ZERO))),
    );
    frame.put(
        &at.material,
        piece(MemberKind::TrussChord, Axis::Horizontal),
        bottom,
    );
    for quad in line.layers(at.x, &[truss.chord]) {
        if let Some(face) = Convex::from_points(&cut_level(&quad, bottom.y1)) {
            frame.put_convex(&at.material, piece(MemberKind::TrussChord, Axis::Sloped), face);
        }
    }
    let mut offset = Length::ZERO;
    while truss.web_spacing > Length::ZERO && offset < at.x.len() {
        for centre in [truss.ridge_x - offset, truss.ridge_x + offset] {
            let x0 = centre - truss.web_width.half();
            let web = Rect {
                x0,
                x1: x0 + truss.web_width,
                y0: bottom.y1,
                y1: bottom.y1,
            };
            let inside = at.x.lo <= web.x0 && web.x1 <= at.x.hi;
            if inside && let Some(face) = Convex::from_points(&line.cut_stud(web)) {
                frame.put_convex(&at.material, piece(MemberKind::TrussWeb, Axis::Vertical), face);
            }
            if offset == Length::ZERO {
                break;
            }
        }
        offset += truss.web_spacing;
    }
    truss.sheathed.then(|| line.line(at.sheathed))
}

/// Heels of roof trusses, with blocks between them where there are some.
fn heels(frame: &mut Frame, trusses: &EaveTrusses, at: &Under) {
    let grid = Grid::new(trusses.origin, trusses.spacing, at.sheathed);
    let heels = grid.faces_with_ends(trusses.width, at.x);
    let y = Interval::new(at.top, at.top + trusses.heel);
    for heel in &heels {
        frame.put(
            &at.material,
            Piece::said(MemberKind::TrussEnd, Axis::Vertical),
            Rect::from_spans(*heel, y),
        );
    }
    let closed = trusses.heel - trusses.vent_space;
    if trusses.blocked && closed > Length::ZERO {
        let y = Interval::new(at.top, at.top + closed);
        for bay in Interval::subtract(at.x, &Interval::union(heels)) {
            frame.put(
                &at.material,
                Piece::said(MemberKind::Block, Axis::Horizontal),
                Rect::from_spans(bay, y),
            );
        }
    }
}

/// Lays the level plates over a storey; under raked plates there are none.
pub(super) fn lay_top_plates(
    frame: &mut Frame,
    material: &Material,
    storey: &Storey,
    x: Interval,
    y: Length,
    raked: bool,
    kind: MemberKind,
) {
    if !raked {
        lay_plates(frame, material, kind, &storey.top_plates, x, y, &[]);
    }
}
