//! The line of a roof over a wall, and members cut to it.

use crate::geometry::{Interval, Point, Rect, Slope};
use crate::house::Pitch;
use crate::length::Length;

/// Two slopes that meet at a highest point, and how thick the wood along them is.
#[derive(Clone, Copy, Debug)]
pub(super) struct Roofline {
    left: Slope,
    right: Slope,
    peak: Point,
    left_pitch: Pitch,
    right_pitch: Pitch,
    /// Thickness of what lies along the slopes, square to them.
    pub thickness: Length,
}

impl Roofline {
    /// Slopes falling from the peak to both sides; `None` where a run is not above zero.
    pub fn new(peak: Point, left: Pitch, right: Pitch, thickness: Length) -> Option<Self> {
        Some(Self {
            left: Slope::new(peak, left.rise, left.run)?,
            right: Slope::new(peak, -right.rise, right.run)?,
            peak,
            left_pitch: left,
            right_pitch: right,
            thickness,
        })
    }

    /// The same line over wood of another thickness.
    pub fn with_thickness(self, thickness: Length) -> Self {
        Self { thickness, ..self }
    }

    /// Height of the line.
    pub fn y_at(&self, x: Length) -> Length {
        if x <= self.peak.x {
            self.left.y_at(x)
        } else {
            self.right.y_at(x)
        }
    }

    /// Plumb thickness of what lies along the slope over this place.
    fn plumb(&self, pitch: Pitch) -> Length {
        let (rise, run) = (i128::from(pitch.rise.units()), i128::from(pitch.run.units()));
        let slant = (rise * rise + run * run).unsigned_abs().isqrt();
        let thickness = i128::from(self.thickness.units());
        let plumb = i128::try_from(slant).unwrap_or(run) * thickness;
        Length::from_units(i64::try_from(plumb / run.max(1)).unwrap_or_default())
    }

    /// Underside of what lies along the slopes.
    pub fn under(&self, x: Length) -> Length {
        let pitch = if x <= self.peak.x {
            self.left_pitch
        } else {
            self.right_pitch
        };
        self.y_at(x) - self.plumb(pitch)
    }

    /// Corners of the line over this stretch, from left to right.
    pub fn line(&self, x: Interval) -> Vec<Point> {
        self.stops(x)
            .into_iter()
            .map(|x| Point::new(x, self.y_at(x)))
            .collect()
    }

    /// Ends of a stretch, with the peak where it lies between them.
    fn stops(&self, x: Interval) -> Vec<Length> {
        let mut stops = vec![x.lo];
        if x.lo < self.peak.x && self.peak.x < x.hi {
            stops.push(self.peak.x);
        }
        stops.push(x.hi);
        stops
    }

    /// Corners of an upright whose head is cut to the underside of the slope; nothing of it is left where that lies below
    /// its foot.
    pub fn cut_stud(&self, stud: Rect) -> Vec<Point> {
        // At a peak the lower of the two undersides would leave a stud too short on one side: the peak is a corner.
        let heads = self.stops(stud.x_span()).into_iter().rev();
        let heads: Vec<Point> = heads.map(|x| Point::new(x, self.under(x))).collect();
        let low = heads.iter().map(|head| head.y).fold(stud.y0, Length::min);
        let mut ring = vec![Point::new(stud.x0, low), Point::new(stud.x1, low)];
        ring.extend(heads);
        cut_level(&ring, stud.y0)
    }

    /// Quadrilaterals of what lies along the slopes over a stretch: `deep` layers from the line down.
    pub fn layers(&self, x: Interval, deep: &[Length]) -> Vec<Vec<Point>> {
        let mut quads = Vec::new();
        for ends in self.stops(x).windows(2) {
            let [x0, x1] = ends else { continue };
            let pitch = if *x1 <= self.peak.x {
                self.left_pitch
            } else {
                self.right_pitch
            };
            let mut above = Length::ZERO;
            for thickness in deep {
                let line = Self {
                    thickness: above + *thickness,
                    ..*self
                };
                let (from, to) = (
                    Self {
                        thickness: above,
                        ..*self
                    }
                    .plumb(pitch),
                    line.plumb(pitch),
                );
                quads.push(vec![
                    Point::new(*x0, self.y_at(*x0) - to),
                    Point::new(*x1, self.y_at(*x1) - to),
                    Point::new(*x1, self.y_at(*x1) - from),
                    Point::new(*x0, self.y_at(*x0) - from),
                ]);
                above += *thickness;
            }
        }
        quads
    }
}

/// What of a convex polygon lies above a level line: a chord that is cut to stand on another.
pub(super) fn cut_level(corners: &[Point], y: Length) -> Vec<Point> {
    let mut above = Vec::with_capacity(corners.len() + 1);
    let next = corners.iter().cycle().skip(1);
    for (from, to) in corners.iter().zip(next) {
        if from.y >= y {
            above.push(*from);
        }
        if (from.y < y) != (to.y < y) {
            let (low, high) = if from.y < to.y { (from, to) } else { (to, from) };
            // Measured from the lower end, so that a tie falls on that side in a mirrored wall too.
            let away = |x: Length| if low.x <= high.x { x - low.x } else { low.x - x };
            let side = Slope::through(Point::new(Length::ZERO, low.y), Point::new(away(high.x), high.y));
            let crossing = side.and_then(|side| side.x_at(y)).unwrap_or_default();
            let x = if low.x <= high.x {
                low.x + crossing
            } else {
                low.x - crossing
            };
            above.push(Point::new(x, y));
        }
    }
    above
}

#[cfg(test)]
mod tests;
