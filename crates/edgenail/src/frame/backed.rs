//! The frame with everything that the plan adds to it.

use super::builder::{Material, Piece};
use super::{Axis, Frame, MemberKind, Origin};
use crate::blocking::{BlockLie, Blocking};
use crate::geometry::Rect;

impl Frame {
    /// The backed frame: blocks, added studs and the pieces beside widened members are members like any other,
    /// of the species of the storey that they stand in.
    #[must_use]
    pub fn with(&self, blocking: &Blocking) -> Self {
        let mut backed = self.clone();
        let added = |kind, axis| Piece {
            origin: Origin::Added,
            ..Piece::said(kind, axis)
        };
        for block in &blocking.blocks {
            let mut material = self.material_at(&block.rect);
            if block.lie == BlockLie::Flat && !block.fills_depth {
                material.depth = material.depth.min(block.depth);
            }
            backed.put(&material, added(MemberKind::Block, Axis::Horizontal), block.rect);
        }
        for stud in &blocking.studs {
            let upright = stud.rect.height() >= stud.rect.width();
            let axis = if upright { Axis::Vertical } else { Axis::Horizontal };
            backed.put(
                &self.material_at(&stud.rect),
                added(MemberKind::AddedStud, axis),
                stud.rect,
            );
        }
        for wide in &blocking.widened {
            let axis = self
                .member(wide.member)
                .map_or(Axis::Vertical, |member| member.axis);
            backed.put(
                &self.material_at(&wide.rect),
                added(MemberKind::AddedStud, axis),
                wide.rect,
            );
        }
        backed
    }

    /// What a member that stands here is made of.
    fn material_at(&self, rect: &Rect) -> Material {
        let storeys = self.storeys.iter().zip(0u32..);
        let here = storeys
            .filter(|(storey, _)| storey.base <= rect.y0 && rect.y1 <= storey.top)
            .find(|(storey, _)| {
                self.sections
                    .get(storey.section as usize)
                    .is_some_and(|place| place.x.overlaps(rect.x_span()))
            });
        let storey = here.map(|(_, index)| index);
        let like = self
            .members
            .iter()
            .find(|member| storey.is_none() || member.storey == storey);
        Material {
            depth: here.map_or_else(
                || like.map_or_else(Default::default, |m| m.depth),
                |(storey, _)| storey.stud_depth,
            ),
            specific_gravity: like.map(|member| member.specific_gravity).unwrap_or_default(),
            storey,
        }
    }
}
