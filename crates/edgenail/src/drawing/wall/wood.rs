//! Members, blocks, what the wall stands on, segments.

use super::{Canvas, Shows};
use crate::blocking::{Block, BlockLie};
use crate::drawing::page::{LEAST_TYPE, SMALL};
use crate::drawing::{Extent, Form, Label, Layer, MM, Says, Spot};
use crate::frame::{Member, MemberKind};
use crate::geometry::{Point, Rect};
use crate::house::Bearing;
use crate::length::Length;

/// Blocks of one length, lie and stick.
pub(super) struct BlockGroup {
    /// Cut length.
    pub length: Length,
    /// How they lie.
    pub lie: BlockLie,
    /// The stick, as a place in the stock's list.
    pub stick: u32,
    /// The blocks, as places in the list of blocks.
    pub blocks: Vec<usize>,
}

/// The blocks by length, the longest first.
pub(super) fn groups(blocks: &[Block]) -> Vec<BlockGroup> {
    let mut groups: Vec<BlockGroup> = Vec::new();
    for (index, block) in blocks.iter().enumerate() {
        let same = |group: &&mut BlockGroup| {
            group.length == block.length && group.lie == block.lie && group.stick == block.stick
        };
        match groups.iter_mut().find(same) {
            Some(group) => group.blocks.push(index),
            None => groups.push(BlockGroup {
                length: block.length,
                lie: block.lie,
                stick: block.stick,
                blocks: vec![index],
            }),
        }
    }
    groups.sort_by_key(|group| (std::cmp::Reverse(group.length), group.lie, group.stick));
    groups
}

impl Canvas<'_> {
    /// Members, what was added, the ground, segments.
    pub(super) fn wood(&mut self, shows: Shows) {
        let layer = if shows == Shows::Frame {
            Layer::Member
        } else {
            Layer::HiddenMember
        };
        let members: Vec<Member> = self.input.frame.members.clone();
        for member in &members {
            let layer = match member.kind {
                MemberKind::SubfloorEdge => Layer::SubfloorEdge,
                MemberKind::AddedStud => Layer::AddedStud,
                _ if self.is_added_block(member) => continue,
                _ => layer,
            };
            let ring = member
                .face
                .points()
                .iter()
                .map(|&point| self.view.spot(point))
                .collect();
            self.drawing.mark(layer, Form::Polygon { rings: vec![ring] });
        }
        for rect in self
            .input
            .blocking
            .blocks
            .iter()
            .map(|block| block.rect)
            .collect::<Vec<Rect>>()
        {
            let extent = self.view.extent(&rect);
            self.drawing.rect(Layer::Block, &extent);
            self.room.spare(extent);
        }
        let added = self.input.blocking.studs.iter().map(|stud| stud.rect);
        let widened = self.input.blocking.widened.iter().map(|widened| widened.rect);
        for rect in added.chain(widened).collect::<Vec<Rect>>() {
            let extent = self.view.extent(&rect);
            self.drawing.rect(Layer::AddedStud, &extent);
        }
        self.ground();
        for segment in &self.input.frame.segments {
            let extent = self.view.extent(&segment.rect).grown(-700);
            self.drawing.rect(Layer::Segment, &extent);
            let [a, b, c, d] = extent.corners();
            for (from, to) in [(a, b), (b, c), (d, c), (a, d)] {
                self.room
                    .spare(Extent::new(from.x, from.y, to.x, to.y).grown(300));
            }
        }
    }

    /// Blocks that were added are drawn from the list of blocks, with their own hatch.
    fn is_added_block(&self, member: &Member) -> bool {
        let face = member.face.is_rect();
        member.kind == MemberKind::Block
            && self
                .input
                .blocking
                .blocks
                .iter()
                .any(|block| Some(block.rect) == face)
    }

    fn ground(&mut self) {
        for section in &self.input.frame.sections {
            if section.bears != Bearing::Concrete {
                continue;
            }
            let corner = self.view.spot(Point::new(section.x.lo, section.base));
            let wide = self.view.x(section.x.hi) - corner.x;
            self.drawing
                .rect(Layer::Ground, &Extent::sized(corner, wide, 2 * MM));
        }
    }

    /// Each segment's mark in its upper corner.
    pub(super) fn segment_marks(&mut self) {
        let segments: Vec<(String, Extent)> = self
            .input
            .frame
            .segments
            .iter()
            .map(|s| (s.mark.clone(), self.view.extent(&s.rect)))
            .collect();
        for (mark, extent) in segments {
            let at = Spot::new(extent.middle().x, extent.y0 + 5 * MM);
            self.call_out(Says::Note, &mark, at, SMALL, true);
        }
    }

    /// A key beside every block, where there are blocks of several lengths.
    pub(super) fn block_keys(&mut self) {
        let groups = groups(&self.input.blocking.blocks);
        if groups.len() < 2 {
            return;
        }
        for (index, group) in groups.iter().enumerate() {
            let key = format!("b{}", index + 1);
            let rects = group
                .blocks
                .iter()
                .filter_map(|&b| self.input.blocking.blocks.get(b))
                .map(|b| b.rect);
            for rect in rects.collect::<Vec<Rect>>() {
                let block = self.view.extent(&rect);
                let label = Label::centred(Says::Note, key.clone(), block.middle(), LEAST_TYPE, false, false);
                let (wide, high) = (label.extent.width(), label.extent.height());
                let middle = block.middle();
                let shift = block.width() / 4;
                let off = block.height() / 2 + high / 2 + 200;
                let spots = [
                    (0, -off),
                    (0, off),
                    (shift, -off),
                    (-shift, -off),
                    (shift, off),
                    (-shift, off),
                ];
                let places = spots.map(|(dx, dy)| Extent::around(middle.moved(dx, dy), wide, high));
                match self.room.best(places) {
                    Some((place, _)) => {
                        self.put(
                            Label::centred(Says::Note, key.clone(), place.middle(), LEAST_TYPE, false, false)
                                .backed(),
                        );
                    }
                    None => self.call_out(Says::Note, &key, middle, LEAST_TYPE, false),
                }
            }
        }
    }
}
