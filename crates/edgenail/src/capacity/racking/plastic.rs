//! Nails that keep their strength: a field of forces in equilibrium, so a lower bound.

use super::elastic::NailForce;
use super::input::{RackingSheet, from_middle};

/// A field of nail forces in equilibrium, none above its nail's strength.
///
/// Each edge nail spends one share of its strength along the plates and the rest along the posts, so the force it carries
/// is at most its strength. Its place decides: nails that look steeply up or down from the middle of the sheet push along
/// the plates, the others along the posts, and the border lies where both directions give the same moment; on a whole
/// rectangle these are the plate rows and the post rows, corner nails half and half. In each direction the nails on one
/// side of their median push one way, those on the other side the other way, so the forces cancel; the direction with the
/// larger moment is turned down to the other. Forces at most at strength and in equilibrium: by the lower bound theorem the
/// wall carries at least this much, as long as nails keep their strength while they slip and the ends are held down. With
/// a nail less there is no division that was not there before, so the value never rises.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plastic {
    /// Force times height in inch-pounds.
    pub moment: f64,
    /// Where the shares divide: a nail whose place in the order is lower than this pushes along the plates.
    border: f64,
    /// Moment of the nails along the plates before it is turned down.
    pub(super) along_plates: Couple,
    /// Moment of the nails along the posts before it is turned down.
    pub(super) along_posts: Couple,
}

/// Forces one way on one side of a line and the other way on the other.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Couple {
    /// The line, in inches from the middle of the sheet.
    pub line: f64,
    /// What the forces turn about, in inch-pounds.
    pub moment: f64,
    /// The part of the nails on the line that pushes as those above it do, from -1 to 1.
    pub on_line: f64,
}

/// A nail of the field.
#[derive(Clone, Copy, Debug)]
struct Place {
    nail: usize,
    x: f64,
    y: f64,
    strength: f64,
    /// Place in the order of steepness; nails of the same steepness have the same.
    order: f64,
}

impl Place {
    /// The share of the strength that is spent along the plates.
    fn share(&self, border: f64) -> f64 {
        (border - self.order).clamp(0.0, 1.0)
    }
}

impl Plastic {
    /// Of a sheet with its nails.
    pub fn of(sheet: &RackingSheet) -> Self {
        let places = places(sheet);
        let last = places.last().map_or(0.0, |place| place.order + 1.0);
        let by_height = sorted(&places, |place| place.y);
        let by_side = sorted(&places, |place| place.x);
        let couples = |border: f64| {
            (
                couple(
                    &by_height,
                    |place| place.y,
                    |place| place.share(border) * place.strength,
                ),
                couple(
                    &by_side,
                    |place| place.x,
                    |place| (1.0 - place.share(border)) * place.strength,
                ),
            )
        };
        // Along the plates the moment grows with the border, along the posts it falls: they cross once.
        let (mut low, mut high) = (0.0, last);
        for _ in 0..60 {
            let middle = f64::midpoint(low, high);
            let (plates, posts) = couples(middle);
            if plates.moment < posts.moment {
                low = middle;
            } else {
                high = middle;
            }
        }
        let (along_plates, along_posts) = couples(high);
        Self {
            moment: along_plates.moment.min(along_posts.moment),
            border: high,
            along_plates,
            along_posts,
        }
    }

    /// What each nail does to the sheet, in the order of its nails.
    pub fn forces(&self, sheet: &RackingSheet) -> Vec<NailForce> {
        let mut forces = vec![NailForce::default(); sheet.nails.len()];
        if self.moment <= 0.0 {
            return forces;
        }
        for share in self.shares(sheet) {
            let force = &mut forces[share.nail];
            force.along_plates = share.along_plates * self.moment / self.along_plates.moment;
            force.along_posts = share.along_posts * self.moment / self.along_posts.moment;
        }
        forces
    }

    /// What each edge nail would do before the larger direction is turned down: signed, in pounds.
    pub(super) fn shares(&self, sheet: &RackingSheet) -> Vec<Share> {
        let signed = |couple: &Couple, at: f64| {
            if at > couple.line {
                1.0
            } else if at < couple.line {
                -1.0
            } else {
                couple.on_line
            }
        };
        let mut shares: Vec<Share> = places(sheet)
            .iter()
            .map(|place| {
                let along = place.share(self.border);
                Share {
                    nail: place.nail,
                    x: place.x,
                    y: place.y,
                    along_plates: signed(&self.along_plates, place.y) * along * place.strength,
                    along_posts: signed(&self.along_posts, place.x) * (1.0 - along) * place.strength,
                }
            })
            .collect();
        shares.sort_by_key(|share| share.nail);
        shares
    }
}

/// A nail's part in both couples.
#[derive(Clone, Copy, Debug)]
pub(super) struct Share {
    pub nail: usize,
    pub x: f64,
    pub y: f64,
    pub along_plates: f64,
    pub along_posts: f64,
}

/// The edge nails, the steepest from the middle of the sheet first.
fn places(sheet: &RackingSheet) -> Vec<Place> {
    let edge = sheet.nails.iter().enumerate().filter(|(_, nail)| nail.edge);
    let mut places: Vec<Place> = edge
        .map(|(number, nail)| {
            let (x, y) = from_middle(&sheet.outline, nail.at);
            Place {
                nail: number,
                x,
                y,
                strength: nail.strength,
                order: 0.0,
            }
        })
        .collect();
    let steep = |place: &Place| place.y.abs() / place.x.abs().max(f64::MIN_POSITIVE);
    places.sort_by(|a, b| steep(b).total_cmp(&steep(a)));
    let (mut order, mut before) = (0.0, None);
    for place in &mut places {
        let steepness = steep(place);
        if before.is_some_and(|before: f64| before.total_cmp(&steepness).is_ne()) {
            order += 1.0;
        }
        before = Some(steepness);
        place.order = order;
    }
    places
}

fn sorted(places: &[Place], at: impl Fn(&Place) -> f64) -> Vec<Place> {
    let mut sorted = places.to_vec();
    sorted.sort_by(|a, b| at(a).total_cmp(&at(b)));
    sorted
}

/// The largest moment of forces along one direction that cancel: each at its strength, one way below the median of the
/// strengths, the other way above it.
fn couple(sorted: &[Place], at: impl Fn(&Place) -> f64, strength: impl Fn(&Place) -> f64) -> Couple {
    let total: f64 = sorted.iter().map(&strength).sum();
    if total <= 0.0 {
        return Couple::default();
    }
    let (mut below, mut line) = (0.0, 0.0);
    for place in sorted {
        line = at(place);
        below += strength(place);
        if 2.0 * below >= total {
            break;
        }
    }
    let (mut under, mut on, mut over, mut moment) = (0.0, 0.0, 0.0, 0.0);
    for place in sorted {
        let (force, arm) = (strength(place), at(place) - line);
        moment += force * arm.abs();
        if arm < 0.0 {
            under += force;
        } else if arm > 0.0 {
            over += force;
        } else {
            on += force;
        }
    }
    Couple {
        line,
        moment,
        on_line: if on > 0.0 {
            ((under - over) / on).clamp(-1.0, 1.0)
        } else {
            0.0
        },
    }
}
