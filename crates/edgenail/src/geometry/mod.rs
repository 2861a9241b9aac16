//! Exact geometry in the wall plane: x to the right, y up, every coordinate a whole number of units.
//!
//! Nothing here knows what a stud or a panel is. Where a sloping line meets a vertical or horizontal one, the
//! crossing is rounded by a pure function of that line ([`Slope`]), so two neighbours that meet on the line
//! always name the same point, and sums of areas stay exact.

mod boundary;
mod columns;
mod components;
mod convex;
mod halfplane;
mod interval;
mod point;
mod profile;
mod rect;
mod region;
mod ring;
mod rounding;
mod shape;
mod slope;

pub use boundary::{BoundaryEdge, Facing};
pub use convex::Convex;
pub use interval::Interval;
pub use point::Point;
pub use profile::{Profile, Toward};
pub use rect::Rect;
pub use region::Region;
pub use shape::{Shape, Trapezoid};
pub use slope::Slope;
