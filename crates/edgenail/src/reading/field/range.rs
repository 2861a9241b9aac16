//! Ranges of lengths and numbers.

use crate::length::{Finest, Length, Rounding, Style};

/// From one length to another, both allowed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Lengths {
    /// The least.
    pub least: Length,
    /// The most.
    pub most: Length,
}

impl Lengths {
    /// The farthest from zero that a length may be: 1,000 ft.
    pub const FARTHEST: Length = Length::feet(1000);
    /// A place, which may lie below zero.
    pub const PLACE: Self = Self {
        least: Length::feet(-1000),
        most: Self::FARTHEST,
    };
    /// A distance that may be zero.
    pub const DISTANCE: Self = Self {
        least: Length::ZERO,
        most: Self::FARTHEST,
    };
    /// A size: at least 1/64 in.
    pub const SIZE: Self = Self {
        least: Length::from_units(635),
        most: Self::FARTHEST,
    };

    /// A size of at most so many inches.
    pub const fn size(most: i64) -> Self {
        Self {
            least: Self::SIZE.least,
            most: Length::inches(most),
        }
    }

    /// A distance from zero to so many inches.
    pub const fn up_to(most: i64) -> Self {
        Self {
            least: Length::ZERO,
            most: Length::inches(most),
        }
    }

    /// From so many inches to so many.
    pub const fn inches(least: i64, most: i64) -> Self {
        Self {
            least: Length::inches(least),
            most: Length::inches(most),
        }
    }

    /// The range in words.
    pub fn words(self) -> String {
        let show = |length: Length| {
            let style = if length.abs() < Length::feet(100) {
                Style::Inches(Finest::SixtyFourth)
            } else {
                Style::FeetInches(Finest::SixtyFourth)
            };
            length.show(style, Rounding::Nearest).text
        };
        format!("from {} to {}", show(self.least), show(self.most))
    }
}

/// From one whole number to another, both allowed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Numbers {
    /// The least.
    pub least: i64,
    /// The most.
    pub most: i64,
}

impl Numbers {
    /// From one number to another.
    pub const fn new(least: i64, most: i64) -> Self {
        Self { least, most }
    }

    /// The range in words.
    pub fn words(self) -> String {
        format!("from {} to {}", self.least, self.most)
    }
}
