//! Panels and courses from bytes on a generated wall.

use super::{Reached, laws};
use arbitrary::{Result, Unstructured};
use edgenail::evaluate::evaluate;
use edgenail::frame::{Frame, frame_wall};
use edgenail::generate::house_json;
use edgenail::geometry::Rect;
use edgenail::layout::{BandSpec, LayoutSpec, PieceSpec, Running};
use edgenail::length::Length;
use edgenail::read_house;

/// A layout that nobody would choose: it is judged and never trusted, and what follows from it keeps the laws.
pub fn foreign(bytes: &[u8]) -> Reached {
    let mut bytes = Unstructured::new(bytes);
    let Ok(seed) = bytes.arbitrary::<u16>() else {
        return Reached::Nothing;
    };
    let Ok((house, _)) = read_house(house_json(u64::from(seed)).0.as_bytes()) else {
        panic!("generated house {seed} is refused")
    };
    let Some(frame) = frame_wall(&house, 0) else {
        panic!("wall 0 of generated house {seed} has no frame")
    };
    let sheets = u32::try_from(house.stock.sheets.len()).unwrap_or(0);
    let spec = if bytes.ratio(1, 2).unwrap_or(false) {
        courses(&frame, sheets, &mut bytes)
    } else {
        panels(&frame, sheets, &mut bytes)
    };
    let Ok(spec) = spec else {
        return Reached::Nothing;
    };
    let built = evaluate(&house, &frame, spec);
    laws::built(&house, &frame, &built, &built.findings);
    if built.nailing.rows.is_empty() {
        Reached::Refused
    } else {
        Reached::Nailing
    }
}

/// Mostly an even number of sixteenths near nothing.
fn nudge(bytes: &mut Unstructured<'_>) -> Result<Length> {
    let sixteenths: i8 = bytes.arbitrary()?;
    let fine = i64::from(bytes.ratio(1, 16)?);
    Ok(Length::sixteenths(i64::from(sixteenths / 4)) + Length::from_units(fine))
}

fn running(bytes: &mut Unstructured<'_>) -> Result<Running> {
    Ok(if bytes.arbitrary()? {
        Running::Upright
    } else {
        Running::Flat
    })
}

/// Panels in rows that nearly fit, each moved a little, some far away.
fn panels(frame: &Frame, sheets: u32, bytes: &mut Unstructured<'_>) -> Result<LayoutSpec> {
    let (mut left, mut bottom) = (frame.lower.span().lo, Length::ZERO);
    let mut pieces = Vec::new();
    while !bytes.is_empty() && pieces.len() < 40 {
        let running = running(bytes)?;
        let (width, height) = if running == Running::Upright {
            (48, 96)
        } else {
            (96, 48)
        };
        let (width, height) = (Length::inches(width), Length::inches(height));
        let far = if bytes.ratio(1, 16)? {
            Length::inches(bytes.int_in_range(-600..=600)?)
        } else {
            Length::ZERO
        };
        let rect = Rect::from_size(
            left + nudge(bytes)? + far,
            bottom + nudge(bytes)?,
            width + nudge(bytes)?,
            height + nudge(bytes)?,
        );
        // One past the last is a sheet that is not in stock.
        let sheet = if bytes.ratio(1, 32)? {
            sheets
        } else {
            bytes.int_in_range(0..=sheets.saturating_sub(1))?
        };
        pieces.push(PieceSpec { rect, running, sheet });
        left += width;
        if left >= frame.lower.span().hi {
            (left, bottom) = (frame.lower.span().lo, bottom + height);
        }
    }
    Ok(LayoutSpec::Pieces(pieces))
}

/// Courses with seams anywhere, rising.
fn courses(frame: &Frame, sheets: u32, bytes: &mut Unstructured<'_>) -> Result<LayoutSpec> {
    let reach = *bytes.choose(&[0, -8, 8, 16, -12])?;
    let reach = Length::sixteenths(reach);
    let span = frame.lower.span();
    let top = frame
        .upper
        .points()
        .iter()
        .map(|point| point.y)
        .max()
        .unwrap_or_default();
    let mut bands = Vec::new();
    let mut y0 = -reach;
    while y0 < top && bands.len() < 6 {
        let height = Length::inches(*bytes.choose(&[24, 48, 48, 96, 96, 108, 120])?) + nudge(bytes)?;
        let y1 = if bytes.ratio(1, 3)? {
            top
        } else {
            (y0 + height).min(top)
        };
        let mut seams = Vec::new();
        let mut x = span.lo;
        while seams.len() < 40 {
            x += Length::inches(*bytes.choose(&[8, 16, 24, 32, 48, 48, 48, 96])?) + nudge(bytes)?;
            if x >= span.hi {
                break;
            }
            seams.push(x);
        }
        let strips = 0..=seams.len();
        let sheets = strips
            .map(|_| bytes.int_in_range(0..=sheets.saturating_sub(1)))
            .collect::<Result<_>>()?;
        bands.push(BandSpec {
            y0,
            y1,
            running: running(bytes)?,
            seams,
            sheets,
        });
        y0 = y1;
    }
    Ok(LayoutSpec::Bands { reach, bands })
}
