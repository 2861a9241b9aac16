//! A length to text: exactly, or rounded in a stated direction and marked.

use super::Length;
use std::fmt;

/// Which way a size that the shown figures cannot carry is rounded.
///
/// Cut sizes of panels and blocks round down, clear sizes that must be kept round up, positions round to the
/// nearest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Rounding {
    /// Towards minus infinity.
    Down,
    /// Towards plus infinity.
    Up,
    /// To the nearest, ties away from zero.
    Nearest,
}

/// The finest fraction of an inch that is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Finest {
    /// 1/16 in.
    Sixteenth,
    /// 1/32 in.
    ThirtySecond,
    /// 1/64 in.
    SixtyFourth,
}

impl Finest {
    const fn denominator(self) -> u32 {
        match self {
            Self::Sixteenth => 16,
            Self::ThirtySecond => 32,
            Self::SixtyFourth => 64,
        }
    }
}

/// How a length is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Style {
    /// Inches and a reduced fraction: `97 1/8"`.
    Inches(Finest),
    /// Feet, inches and a reduced fraction: `8'-1 1/8"`.
    FeetInches(Finest),
    /// Inches to a thousandth: `97.125"`.
    DecimalInches,
    /// Millimetres to a tenth: `2467 mm`.
    Millimetres,
}

/// A length as it is shown.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Shown {
    /// The text; it begins with [`Shown::MARK`] if it was rounded.
    pub text: String,
    /// The shown size differs from the length.
    pub rounded: bool,
}

impl Shown {
    /// What a rounded figure begins with.
    pub const MARK: char = '≈';
}

impl fmt::Display for Shown {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)
    }
}

impl Length {
    /// The length in the figures of `style`, rounded in the given direction, and marked if it was.
    ///
    /// [`Length::parse`] reads the text, unless rounding took it past [`Length::LIMIT`]. What it then gives is never
    /// above the length for [`Rounding::Down`] and never below it for [`Rounding::Up`], and is the length itself if
    /// the figure is not marked.
    ///
    /// ```
    /// use edgenail::Length;
    /// use edgenail::length::{Finest, Rounding, Style};
    /// let wall = Length::inches(97) + Length::sixteenths(2);
    /// assert_eq!(wall.show(Style::FeetInches(Finest::Sixteenth), Rounding::Down).text, "8'-1 1/8\"");
    ///
    /// // A quarter of 97 1/8 in. is 24 9/32 in.
    /// let quarter = wall.half().half();
    /// let shown = quarter.show(Style::Inches(Finest::Sixteenth), Rounding::Down);
    /// assert_eq!((shown.text.as_str(), shown.rounded), ("≈24 1/4\"", true));
    /// assert_eq!(quarter.show(Style::Inches(Finest::ThirtySecond), Rounding::Down).text, "24 9/32\"");
    /// ```
    pub fn show(self, style: Style, rounding: Rounding) -> Shown {
        let (parts, per) = match style {
            Style::Inches(finest) | Style::FeetInches(finest) => (finest.denominator(), Self::PER_INCH),
            Style::DecimalInches => (1000, Self::PER_INCH),
            Style::Millimetres => (10, Self::PER_MM),
        };
        let scaled = i128::from(self.units()) * i128::from(parts);
        let count = quotient(scaled, i128::from(per), rounding);
        let rounded = count * i128::from(per) != scaled;
        let size = count.unsigned_abs();
        let parts = u128::from(parts);
        let figure = match style {
            Style::Inches(_) => format!("{}\"", mixed(size, parts)),
            Style::FeetInches(_) => feet(size, parts),
            Style::DecimalInches => format!("{}\"", decimal(size, 3)),
            Style::Millimetres => format!("{} mm", decimal(size, 1)),
        };
        let mark = if rounded {
            Shown::MARK.to_string()
        } else {
            String::new()
        };
        let sign = if count < 0 { "-" } else { "" };
        Shown {
            text: format!("{mark}{sign}{figure}"),
            rounded,
        }
    }

    /// The multiple of `step` that lies next to this length in the given direction.
    ///
    /// A step of zero or less leaves the length as it is.
    ///
    /// ```
    /// use edgenail::Length;
    /// use edgenail::length::Rounding;
    /// let third = Length::inches(1).units() / 3;
    /// let eighth = Length::sixteenths(2);
    /// assert_eq!(Length::from_units(third).round_to(eighth, Rounding::Down), eighth * 2);
    /// assert_eq!(Length::from_units(third).round_to(eighth, Rounding::Up), eighth * 3);
    /// ```
    #[must_use]
    pub fn round_to(self, step: Self, rounding: Rounding) -> Self {
        if step <= Self::ZERO {
            return self;
        }
        let count = quotient(self.units().into(), step.units().into(), rounding);
        // The multiple next to an i64 is within i64 for every length that the library accepts.
        i64::try_from(count * i128::from(step.units())).map_or(self, Self::from_units)
    }
}

/// `numerator` / `denominator` as a whole number; the denominator is above zero.
fn quotient(numerator: i128, denominator: i128, rounding: Rounding) -> i128 {
    let down = numerator.div_euclid(denominator);
    let remainder = numerator.rem_euclid(denominator);
    let up = match rounding {
        Rounding::Down => false,
        Rounding::Up => remainder > 0,
        Rounding::Nearest if numerator < 0 => remainder * 2 > denominator,
        Rounding::Nearest => remainder * 2 >= denominator,
    };
    down + i128::from(up)
}

/// `count` / `parts` as a mixed number; `parts` is a power of two.
fn mixed(count: u128, parts: u128) -> String {
    let whole = count / parts;
    let rest = count % parts;
    if rest == 0 {
        return whole.to_string();
    }
    let common = 1 << rest.trailing_zeros().min(parts.trailing_zeros());
    let fraction = format!("{}/{}", rest / common, parts / common);
    if whole == 0 {
        fraction
    } else {
        format!("{whole} {fraction}")
    }
}

fn feet(count: u128, parts: u128) -> String {
    let foot = 12 * parts;
    let inches = mixed(count % foot, parts);
    if count < foot {
        format!("{inches}\"")
    } else {
        format!("{}'-{inches}\"", count / foot)
    }
}

/// `count` / 10^`places` without trailing zeros.
fn decimal(count: u128, places: u32) -> String {
    let power = 10_u128.pow(places);
    let width = usize::try_from(places).unwrap_or(0);
    let text = format!("{}.{:0width$}", count / power, count % power);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// Prints the exact length, so that [`Length::parse`] reads the same length back.
///
/// Inches with a fraction if it is a multiple of 1/64 in., else decimal inches if it is a multiple of 1/10 in., else
/// decimal millimetres.
///
/// ```
/// use edgenail::Length;
/// assert_eq!((Length::inches(97) + Length::sixteenths(2)).to_string(), "97 1/8 in.");
/// assert_eq!(Length::from_units(780_288).to_string(), "19.2 in.");
/// assert_eq!((Length::mm(2440)).to_string(), "2440 mm");
/// assert_eq!(Length::from_units(-1).to_string(), "-0.000625 mm");
/// ```
impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.units() < 0 { "-" } else { "" };
        let size = u128::from(self.units().unsigned_abs());
        let inch = u128::from(Self::PER_INCH.unsigned_abs());
        let mm = u128::from(Self::PER_MM.unsigned_abs());
        if (size * 64).is_multiple_of(inch) {
            write!(f, "{sign}{} in.", mixed(size * 64 / inch, 64))
        } else if (size * 10).is_multiple_of(inch) {
            write!(f, "{sign}{} in.", decimal(size * 10 / inch, 1))
        } else {
            // A millionth of a millimetre divides a unit: 1/1600 = 0.000625.
            write!(f, "{sign}{} mm", decimal(size * 1_000_000 / mm, 6))
        }
    }
}

#[cfg(test)]
mod tests;
