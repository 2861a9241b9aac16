//! Which nails are asked for at a place, and how far apart.

use super::Site;
use crate::geometry::Rect;
use crate::house::{Coating, House, Nail, Practice, Segment};
use crate::length::Length;

impl Site<'_> {
    /// Spacing of nails at the panel edges in an area: the closest of the segments that it touches; practice's outside
    /// them, which counts too where the area reaches beyond them.
    pub fn edge_spacing(&self, area: Rect) -> Length {
        self.closest(area, self.practice.assembly.edge_spacing, |segment| {
            segment.edge_spacing
        })
    }

    /// Spacing of nails on members between panel edges, as [`Site::edge_spacing`].
    pub fn field_spacing(&self, area: Rect) -> Length {
        self.closest(area, self.practice.assembly.field_spacing, |segment| {
            segment.field_spacing
        })
    }

    fn closest(&self, area: Rect, outside: Length, spacing: impl Fn(&Segment) -> Length) -> Length {
        let closest = self.segments_at(area).map(|site| spacing(site.segment)).min();
        let inside = self.segments_at(area).any(|site| site.rect.covers(&area));
        closest.map_or(
            outside,
            |closest| if inside { closest } else { closest.min(outside) },
        )
    }

    /// The nail for an area, as a place in the stock's list; `None` if stock has none that may go there.
    ///
    /// Into treated lumber goes practice's nail for it, else the first in stock with an accepted coating (IRC
    /// R317.3). Elsewhere goes the nail of the segment, else practice's, else the first bright nail, else the first.
    pub fn nail(&self, area: Rect, treated: bool) -> Option<u32> {
        let asked = self.segments_at(area).find_map(|site| site.nail);
        let plain = asked.or(self.nails.named);
        if treated {
            let resists = |at: &u32| resists(self.house, self.practice, *at);
            plain.filter(resists).or(self.nails.treated)
        } else {
            plain.or(self.nails.plain)
        }
    }
}

/// The nails that practice and stock offer, as places in the stock's list.
#[derive(Clone, Copy, Debug)]
pub(super) struct NailChoice {
    /// The nail that practice names.
    named: Option<u32>,
    /// Where nothing is named: the first bright nail, else the first.
    plain: Option<u32>,
    /// Into treated lumber: practice's nail for it, else the first with an accepted coating.
    treated: Option<u32>,
}

impl NailChoice {
    pub(super) fn new(house: &House, practice: &Practice) -> Self {
        let find = |wanted: &dyn Fn(&Nail) -> bool| find(house, wanted);
        let own = named(house, practice.assembly.treated_nail.as_ref());
        Self {
            named: named(house, practice.assembly.nail.as_ref()),
            plain: find(&|nail| nail.coating == Coating::Bright).or_else(|| find(&|_| true)),
            treated: own
                .filter(|at| resists(house, practice, *at))
                .or_else(|| find(&|nail| practice.treated_coatings.contains(&nail.coating))),
        }
    }
}

/// The nail of this name.
pub(super) fn named(house: &House, name: Option<&String>) -> Option<u32> {
    find(house, &|nail| Some(&nail.name) == name)
}

fn find(house: &House, wanted: &dyn Fn(&Nail) -> bool) -> Option<u32> {
    let mut nails = house.stock.nails.iter().zip(0u32..);
    nails.find(|(nail, _)| wanted(nail)).map(|(_, at)| at)
}

/// Practice accepts this nail's coating in treated lumber.
fn resists(house: &House, practice: &Practice, at: u32) -> bool {
    let nail = house.stock.nails.get(at as usize);
    nail.is_some_and(|nail| practice.treated_coatings.contains(&nail.coating))
}
