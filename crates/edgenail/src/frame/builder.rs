//! A frame being put together.

use super::{Axis, Frame, Member, MemberId, MemberKind, Origin};
use crate::decimal::Decimal;
use crate::geometry::{Convex, Rect};
use crate::length::Length;

/// What every member of one storey or band has in common.
#[derive(Clone, Copy, Debug)]
pub(super) struct Material {
    /// Depth behind the face.
    pub depth: Length,
    /// Specific gravity.
    pub specific_gravity: Decimal,
    /// The storey's place in the frame's list.
    pub storey: Option<u32>,
}

/// What sets one member apart.
#[derive(Clone, Copy, Debug)]
pub(super) struct Piece {
    pub kind: MemberKind,
    pub axis: Axis,
    pub origin: Origin,
    pub treated: bool,
    pub setback: Length,
    pub opening: Option<u32>,
}

impl Piece {
    /// A member that the user's words ask for.
    pub const fn said(kind: MemberKind, axis: Axis) -> Self {
        Self {
            kind,
            axis,
            origin: Origin::Said,
            treated: false,
            setback: Length::ZERO,
            opening: None,
        }
    }
}

impl Frame {
    /// Adds a member with a rectangular face; a face without area is no member.
    pub(super) fn put(&mut self, material: &Material, piece: Piece, face: Rect) {
        if let Some(face) = Convex::from_rect(face) {
            self.put_convex(material, piece, face);
        }
    }

    /// Adds a member.
    pub(super) fn put_convex(&mut self, material: &Material, piece: Piece, face: Convex) {
        let id = MemberId(u32::try_from(self.members.len()).unwrap_or(u32::MAX));
        self.members.push(Member {
            id,
            kind: piece.kind,
            face,
            axis: piece.axis,
            nailable: piece.setback == Length::ZERO && piece.kind != MemberKind::SubfloorEdge,
            setback: piece.setback,
            depth: material.depth,
            treated: piece.treated,
            specific_gravity: material.specific_gravity,
            origin: piece.origin,
            storey: material.storey,
            opening: piece.opening,
        });
    }
}
