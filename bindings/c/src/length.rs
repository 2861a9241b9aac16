//! Lengths: read, made from doubles, and shown.

use crate::guard::{Fault, guard};
use crate::handle::{check, put};
use crate::status::edgenail_status as Status;
use crate::text::{put_utf8, put_utf16, utf8, utf16};
use edgenail::Length;
use edgenail::length::{Finest, LengthError, Parsed, Rounding, Shown, Style, Unit};
use std::ffi::c_char;

/// The unit of a number that stands without one.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_unit {
    /// Inch.
    Inch = 1,
    /// Foot.
    Foot = 2,
    /// Millimetre.
    Millimetre = 3,
    /// Centimetre.
    Centimetre = 4,
    /// Metre.
    Metre = 5,
}

/// How a length is shown.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_style {
    /// Inches and a fraction to 1/16: `97 1/8"`.
    InchesSixteenth = 1,
    /// Inches and a fraction to 1/32.
    InchesThirtySecond = 2,
    /// Inches and a fraction to 1/64.
    InchesSixtyFourth = 3,
    /// Feet, inches and a fraction to 1/16: `8'-1 1/8"`.
    FeetInchesSixteenth = 4,
    /// Feet, inches and a fraction to 1/32.
    FeetInchesThirtySecond = 5,
    /// Feet, inches and a fraction to 1/64.
    FeetInchesSixtyFourth = 6,
    /// Inches to a thousandth: `97.125"`.
    DecimalInches = 7,
    /// Millimetres to a tenth: `2467 mm`.
    Millimetres = 8,
}

/// Which way a size is rounded that the figures cannot carry.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_rounding {
    /// Down, for cut sizes of panels and blocks.
    Down = 1,
    /// Up, for clear sizes that must be kept.
    Up = 2,
    /// To the nearest, ties away from zero, for positions.
    Nearest = 3,
}

const UNITS: [(edgenail_unit, Unit); 5] = [
    (edgenail_unit::Inch, Unit::Inch),
    (edgenail_unit::Foot, Unit::Foot),
    (edgenail_unit::Millimetre, Unit::Millimetre),
    (edgenail_unit::Centimetre, Unit::Centimetre),
    (edgenail_unit::Metre, Unit::Metre),
];

const STYLES: [(edgenail_style, Style); 8] = [
    (edgenail_style::InchesSixteenth, Style::Inches(Finest::Sixteenth)),
    (
        edgenail_style::InchesThirtySecond,
        Style::Inches(Finest::ThirtySecond),
    ),
    (
        edgenail_style::InchesSixtyFourth,
        Style::Inches(Finest::SixtyFourth),
    ),
    (
        edgenail_style::FeetInchesSixteenth,
        Style::FeetInches(Finest::Sixteenth),
    ),
    (
        edgenail_style::FeetInchesThirtySecond,
        Style::FeetInches(Finest::ThirtySecond),
    ),
    (
        edgenail_style::FeetInchesSixtyFourth,
        Style::FeetInches(Finest::SixtyFourth),
    ),
    (edgenail_style::DecimalInches, Style::DecimalInches),
    (edgenail_style::Millimetres, Style::Millimetres),
];

const ROUNDINGS: [(edgenail_rounding, Rounding); 3] = [
    (edgenail_rounding::Down, Rounding::Down),
    (edgenail_rounding::Up, Rounding::Up),
    (edgenail_rounding::Nearest, Rounding::Nearest),
];

/// Reads a length such as `8' 1 1/8"` or `2466.975 mm` in UTF-8; `unit`, one of `edgenail_unit`, is that of a
/// number without one.
///
/// Writes the length in 1/40640 in., and 1 in `out_exact` when it is what was written, 0 when it was rounded to
/// a whole number of units. Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_INPUT` with one entry in the error
/// list, or a status of misuse.
///
/// # Safety
///
/// `text` points at `length` bytes; `out_units` points at an `int64_t`, `out_exact` at an `int32_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_length_parse(
    text: *const c_char,
    length: i64,
    unit: i32,
    out_units: *mut i64,
    out_exact: *mut i32,
) -> i32 {
    guard(|| {
        let unit = chosen(&UNITS, unit, |known| *known as i32, "unit")?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe {
            let text = utf8(text, length, "text")?;
            put_parsed(Length::parse(text, unit), out_units, out_exact)
        }
    })
}

/// As `edgenail_length_parse`, from UTF-16; `length` counts code units.
///
/// # Safety
///
/// `text` points at `length` code units; `out_units` points at an `int64_t`, `out_exact` at an `int32_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_length_parse_utf16(
    text: *const u16,
    length: i64,
    unit: i32,
    out_units: *mut i64,
    out_exact: *mut i32,
) -> i32 {
    guard(|| {
        let unit = chosen(&UNITS, unit, |known| *known as i32, "unit")?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe {
            let text = utf16(text, length, "text")?;
            put_parsed(Length::parse(&text, unit), out_units, out_exact)
        }
    })
}

/// A length from a double in `unit`, one of `edgenail_unit`, rounded to the nearest 1/40640 in.
///
/// Writes 1 in `out_exact` when no more than the noise of a conversion was rounded away, 0 otherwise. Returns as
/// `edgenail_length_parse` does.
///
/// # Safety
///
/// `out_units` points at an `int64_t`, `out_exact` at an `int32_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_length_from_double(
    value: f64,
    unit: i32,
    out_units: *mut i64,
    out_exact: *mut i32,
) -> i32 {
    guard(|| {
        let unit = chosen(&UNITS, unit, |known| *known as i32, "unit")?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_parsed(Length::from_double(value, unit), out_units, out_exact) }
    })
}

/// A length of `units` of 1/40640 in. as exact text, which `edgenail_length_parse` reads back.
///
/// Returns `EDGENAIL_STATUS_OK`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in `out_needed`.
///
/// # Safety
///
/// `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_length_text(
    units: i64,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        let text = Length::from_units(units).to_string();
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&text, buffer, capacity, out_needed) }
    })
}

/// A length of `units` of 1/40640 in. as a person reads it; `style` is one of `edgenail_style`, `rounding` one
/// of `edgenail_rounding`.
///
/// Writes 1 in `out_rounded` when the figure is rounded, and marked so in the text; else 0. Returns
/// `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_BAD_CHOICE`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed
/// in `out_needed`.
///
/// # Safety
///
/// `buffer` has room for `capacity` bytes; `out_rounded` points at an `int32_t`, `out_needed` at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_length_show(
    units: i64,
    style: i32,
    rounding: i32,
    out_rounded: *mut i32,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        let shown = shown(units, style, rounding)?;
        check(out_rounded, "out_rounded")?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe {
            put_utf8(&shown.text, buffer, capacity, out_needed)?;
            put(out_rounded, i32::from(shown.rounded), "out_rounded")
        }
    })
}

/// As `edgenail_length_show`, giving UTF-16; capacity and size count code units.
///
/// # Safety
///
/// As `edgenail_length_show`, with room for `capacity` code units.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_length_show_utf16(
    units: i64,
    style: i32,
    rounding: i32,
    out_rounded: *mut i32,
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        let shown = shown(units, style, rounding)?;
        check(out_rounded, "out_rounded")?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe {
            put_utf16(&shown.text, buffer, capacity, out_needed)?;
            put(out_rounded, i32::from(shown.rounded), "out_rounded")
        }
    })
}

/// The core's value for a number given in place of a name.
fn chosen<N, T: Copy>(
    known: &[(N, T)],
    number: i32,
    read: impl Fn(&N) -> i32,
    argument: &str,
) -> Result<T, Fault> {
    let found = known.iter().find(|(name, _)| read(name) == number);
    found
        .map(|(_, value)| *value)
        .ok_or_else(|| Fault::argument(Status::BadChoice, argument, "is none of the known ones"))
}

fn shown(units: i64, style: i32, rounding: i32) -> Result<Shown, Fault> {
    let style = chosen(&STYLES, style, |known| *known as i32, "style")?;
    let rounding = chosen(&ROUNDINGS, rounding, |known| *known as i32, "rounding")?;
    Ok(Length::from_units(units).show(style, rounding))
}

/// # Safety
///
/// Pointers that are not NULL point at room for their values.
unsafe fn put_parsed(
    parsed: Result<Parsed, LengthError>,
    out_units: *mut i64,
    out_exact: *mut i32,
) -> Result<(), Fault> {
    check(out_units, "out_units")?;
    check(out_exact, "out_exact")?;
    let parsed = parsed.map_err(edgenail::Error::from)?;
    // SAFETY: not NULL, and the caller's promise is the same as ours.
    unsafe {
        put(out_units, parsed.length.units(), "out_units")?;
        put(out_exact, i32::from(parsed.exact), "out_exact")
    }
}
