//! Where a nail keeps its distance from the edges of its member.

use crate::geometry::{Convex, Interval};
use crate::length::Length;

/// A stretch without a place: a nail that falls on it is reported.
pub(super) const NOWHERE: Interval = Interval {
    lo: Length::LIMIT,
    hi: Length::from_units(-Length::LIMIT.units()),
};

/// The stretch of a plumb or level line at `at` whose places have so much of a face on all sides of them, square to a
/// sloping edge too.
pub(super) fn clear_stretch(face: &Convex, plumb: bool, at: Length, wood: Length) -> Interval {
    let Some(rect) = face.is_rect() else {
        let inner = face.inset(wood);
        let along = inner.and_then(|inner| {
            if plumb {
                inner.span_at_x(at)
            } else {
                inner.span_at_y(at)
            }
        });
        return along.unwrap_or(NOWHERE);
    };
    let (along, beside) = if plumb {
        (rect.y_span(), rect.x_span())
    } else {
        (rect.x_span(), rect.y_span())
    };
    if at < beside.lo + wood || beside.hi - wood < at {
        return NOWHERE;
    }
    Interval {
        lo: along.lo + wood,
        hi: along.hi - wood,
    }
}
