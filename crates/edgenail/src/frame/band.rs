//! The members of a floor band.

use super::builder::{Material, Piece};
use super::grid::Grid;
use super::{Axis, BandPlace, Frame, MemberKind};
use crate::geometry::{Interval, Rect};
use crate::house::{BandLayer, BandMembers, Direction, FloorBand, MemberKindInBand};
use crate::length::Length;

/// Where a band lies.
#[derive(Clone, Copy, Debug)]
pub(super) struct Lying {
    /// The wall's frame, and past it what laps to a sheathing corner: floor framing runs to the corner.
    pub x: Interval,
    /// The sheathing's ends, from which layout is pulled.
    pub sheathed: Interval,
    pub y: Length,
    pub section: u32,
    pub material: Material,
}

/// Frames a floor band and returns where it ends.
pub(super) fn frame_band(frame: &mut Frame, band: &FloorBand, at: Lying) -> Length {
    let mut y = at.y;
    let (mut rim, mut blocked) = (None, false);
    for layer in &band.layers {
        let span = Interval::new(y, y + layer.height());
        let whole = Rect::from_spans(at.x, span);
        match layer {
            BandLayer::Plate(plate) => {
                let piece = Piece {
                    treated: plate.treated,
                    ..Piece::said(MemberKind::Mudsill, Axis::Horizontal)
                };
                frame.put(&at.material, piece, whole);
            }
            BandLayer::Subfloor { .. } => frame.put(
                &at.material,
                Piece::said(MemberKind::SubfloorEdge, Axis::Horizontal),
                whole,
            ),
            BandLayer::Members(members) => {
                if let Some(board) = members.rim {
                    rim = Some((span, board.kind));
                    let material = Material {
                        depth: board.thickness,
                        ..at.material
                    };
                    frame.put(&material, Piece::said(MemberKind::Rim, Axis::Horizontal), whole);
                } else {
                    blocked |= bare_members(frame, members, &at, span);
                }
            }
        }
        y = span.hi;
    }
    frame.bands.push(BandPlace {
        name: band.name.clone(),
        section: at.section,
        y: Interval::new(at.y, y),
        rim,
        blocked,
    });
    y
}

/// Members of a band without a rim. Says whether something level closes it.
fn bare_members(frame: &mut Frame, members: &BandMembers, at: &Lying, y: Interval) -> bool {
    let grid = Grid::new(members.origin, members.spacing, at.sheathed);
    let ends = grid.faces_with_ends(members.width, at.x);
    match (members.direction, members.member) {
        (Direction::Across, kind) => {
            let kind = if kind == MemberKindInBand::Truss {
                MemberKind::TrussEnd
            } else {
                MemberKind::JoistEnd
            };
            for end in &ends {
                frame.put(
                    &at.material,
                    Piece::said(kind, Axis::Vertical),
                    Rect::from_spans(*end, y),
                );
            }
            if members.blocking_between {
                for bay in Interval::subtract(at.x, &Interval::union(ends)) {
                    frame.put(
                        &at.material,
                        Piece::said(MemberKind::Block, Axis::Horizontal),
                        Rect::from_spans(bay, y),
                    );
                }
            }
            members.blocking_between
        }
        (Direction::Along, MemberKindInBand::Truss) => {
            let chord = members.chord.min(y.len().half());
            let (low, high) = (
                Interval::new(y.lo, y.lo + chord),
                Interval::new(y.hi - chord, y.hi),
            );
            for chord in [low, high] {
                frame.put(
                    &at.material,
                    Piece::said(MemberKind::TrussChord, Axis::Horizontal),
                    Rect::from_spans(at.x, chord),
                );
            }
            for web in &ends {
                let between = Interval::new(low.hi, high.lo);
                frame.put(
                    &at.material,
                    Piece::said(MemberKind::TrussWeb, Axis::Vertical),
                    Rect::from_spans(*web, between),
                );
            }
            true
        }
        (Direction::Along, _) => {
            let material = Material {
                depth: members.width,
                ..at.material
            };
            frame.put(
                &material,
                Piece::said(MemberKind::EdgeJoist, Axis::Horizontal),
                Rect::from_spans(at.x, y),
            );
            true
        }
    }
}
