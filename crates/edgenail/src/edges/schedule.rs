//! Which nails are asked for at a place, and how far apart.

use super::Site;
use crate::geometry::Rect;
use crate::house::{Coating, Nail};
use crate::length::Length;

impl Site<'_> {
    /// Spacing of nails at the panel edges in an area: the closest of the segments that it touches, else practice's.
    pub fn edge_spacing(&self, area: Rect) -> Length {
        let closest = self.segments_at(area).map(|site| site.segment.edge_spacing).min();
        closest.unwrap_or(self.practice.assembly.edge_spacing)
    }

    /// Spacing of nails on members between panel edges.
    pub fn field_spacing(&self, area: Rect) -> Length {
        let closest = self
            .segments_at(area)
            .map(|site| site.segment.field_spacing)
            .min();
        closest.unwrap_or(self.practice.assembly.field_spacing)
    }

    /// The nail for an area, as a place in the stock's list; `None` if stock has none that may go there.
    ///
    /// Into treated lumber goes practice's nail for it, else the first in stock with an accepted coating (IRC
    /// R317.3). Elsewhere goes the nail of the segment, else practice's, else the first bright nail, else the first.
    pub fn nail(&self, area: Rect, treated: bool) -> Option<u32> {
        let nails = &self.house.stock.nails;
        let find = |wanted: &dyn Fn(&Nail) -> bool| {
            nails
                .iter()
                .zip(0u32..)
                .find(|(nail, _)| wanted(nail))
                .map(|(_, at)| at)
        };
        let named = |name: &Option<String>| name.as_ref().and_then(|name| find(&|nail| nail.name == *name));
        let assembly = &self.practice.assembly;
        let asked = self.segments_at(area).find_map(|site| named(&site.segment.nail));
        let plain = asked.or_else(|| named(&assembly.nail));
        if treated {
            let resists = |at: &u32| {
                let nail = nails.get(*at as usize);
                nail.is_some_and(|nail| self.practice.treated_coatings.contains(&nail.coating))
            };
            let own = named(&assembly.treated_nail).filter(resists);
            return plain
                .filter(resists)
                .or(own)
                .or_else(|| find(&|nail| self.practice.treated_coatings.contains(&nail.coating)));
        }
        plain
            .or_else(|| find(&|nail| nail.coating == Coating::Bright))
            .or_else(|| find(&|_| true))
    }
}
