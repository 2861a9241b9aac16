//! Which stick a block or stud is cut from, and how it lies.

use super::BlockLie;
use crate::edges::Site;
use crate::house::Stick;
use crate::length::Length;

/// A stick set in one way: what it shows and how deep it goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lumber {
    /// The stick, as a place in the stock's list.
    pub stick: u32,
    /// How it lies.
    pub lie: BlockLie,
    /// Width of the face that shows.
    pub face: Length,
    /// How deep it goes behind its face.
    pub depth: Length,
}

impl Lumber {
    fn set(stick: &Stick, at: u32, lie: BlockLie) -> Self {
        let (face, depth) = match lie {
            BlockLie::Flat => (stick.depth, stick.thickness),
            BlockLie::OnEdge => (stick.thickness, stick.depth),
        };
        Self {
            stick: at,
            lie,
            face,
            depth,
        }
    }
}

/// What a seam block is cut from and how it lies; `None` if stock has no lumber.
///
/// Practice's stick, else the first. It lies as practice says, and flat where panels need a wider face to share.
pub fn block_lumber(site: &Site<'_>, shared: Option<Length>) -> Option<Lumber> {
    let sticks = &site.house.stock.sticks;
    let wanted = site.practice.block_stick.as_ref();
    let named = sticks
        .iter()
        .zip(0u32..)
        .find(|(stick, _)| wanted.is_some_and(|name| stick.name == *name));
    let (stick, at) = named.or_else(|| sticks.first().map(|stick| (stick, 0)))?;
    let on_edge = Lumber::set(stick, at, BlockLie::OnEdge);
    let serves = shared.is_none_or(|width| on_edge.face >= width);
    Some(if site.practice.blocks_flat || !serves {
        Lumber::set(stick, at, BlockLie::Flat)
    } else {
        on_edge
    })
}

/// What an added stud is cut from: the first stick as deep as the wall, else the first; `None` if stock has none.
///
/// Among sticks of that depth one that is long enough goes before one that is not.
pub fn stud_lumber(site: &Site<'_>, depth: Length, length: Length) -> Option<Lumber> {
    let sticks = || site.house.stock.sticks.iter().zip(0u32..);
    let deep = |stick: &Stick| stick.depth == depth;
    let found = sticks()
        .find(|(stick, _)| deep(stick) && stick.length >= length)
        .or_else(|| sticks().find(|(stick, _)| deep(stick)))
        .or_else(|| sticks().next());
    found.map(|(stick, at)| Lumber::set(stick, at, BlockLie::OnEdge))
}

/// The depth of the studs at a height; where no storey is, of the first.
pub fn wall_depth(site: &Site<'_>, y: Length) -> Length {
    let storeys = &site.frame.storeys;
    let here = storeys.iter().find(|storey| storey.base <= y && y <= storey.top);
    here.or_else(|| storeys.first())
        .map_or(Length::ZERO, |storey| storey.stud_depth)
}
