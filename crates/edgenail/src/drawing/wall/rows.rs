//! What is dimensioned: rows of places along the wall, levels up the wall.

use super::{Shows, spacing};
use crate::drawing::Micron;
use crate::drawing::input::WallDrawingInput;
use crate::frame::MemberKind;
use crate::house::End;
use crate::length::{Length, Rounding};

/// Least distance of two turned figures.
pub(super) const STEP: Micron = 3_700;

/// One row of running dimensions under the wall.
pub(super) struct Row {
    pub name: String,
    /// Places, rising, with the way in which each is rounded.
    pub places: Vec<(Length, Rounding)>,
    /// Stretches with a text instead of figures.
    pub brackets: Vec<(Length, Length, String)>,
}

impl Row {
    /// The least width that its figures need.
    pub(super) fn least_width(&self) -> Micron {
        Micron::try_from(self.places.len()).unwrap_or(0) * STEP
    }
}

/// The height that so many levels need.
pub(super) fn least_height(count: usize) -> Micron {
    Micron::try_from(count).unwrap_or(0) * STEP
}

/// The rows of dimensions that a wall needs.
pub(super) fn rows(input: &WallDrawingInput<'_>, shows: Shows) -> Vec<Row> {
    let mut rows = Vec::new();
    let span = input.frame.lower.span();
    match shows {
        Shows::Sheathing => seam_rows(input, &mut rows),
        Shows::Frame => stud_rows(input, &mut rows),
    }
    let far_first = input.start.end == End::Right;
    let (near, far) = (Rounding::Down, Rounding::Up);
    let mut edges: Vec<(Length, Rounding)> = input
        .frame
        .openings
        .iter()
        .flat_map(|opening| {
            let (left, right) = if far_first { (far, near) } else { (near, far) };
            [(opening.rect.x0, left), (opening.rect.x1, right)]
        })
        .collect();
    edges.sort_by_key(|&(x, rounding)| (x, rounding == Rounding::Up));
    edges.dedup();
    if !edges.is_empty() {
        rows.push(Row {
            name: "Openings".into(),
            places: edges,
            brackets: Vec::new(),
        });
    }
    for (index, storey) in input.frame.storeys.iter().enumerate() {
        let of_storey = input
            .frame
            .segments
            .iter()
            .filter(|segment| segment.storey as usize == index);
        let brackets: Vec<(Length, Length, String)> = of_storey
            .map(|segment| {
                let said = input.house.walls.get(input.frame.wall as usize);
                let said = said.and_then(|wall| wall.segments.get(segment.segment as usize));
                let nails = said.map_or_else(String::new, |said| {
                    let shown = |length: Length| spacing(length, input.style);
                    format!(
                        "  nails {} / {}",
                        shown(said.edge_spacing),
                        shown(said.field_spacing)
                    )
                });
                (
                    segment.rect.x0,
                    segment.rect.x1,
                    format!("{}{nails}", segment.mark),
                )
            })
            .collect();
        if brackets.is_empty() || shows == Shows::Frame {
            continue;
        }
        let mut places: Vec<(Length, Rounding)> = brackets
            .iter()
            .flat_map(|b| [(b.0, Rounding::Nearest), (b.1, Rounding::Nearest)])
            .collect();
        places.retain(|(x, _)| *x != span.lo && *x != span.hi);
        places.sort_by_key(|&(x, _)| x);
        places.dedup();
        let name = if input.frame.storeys.len() > 1 {
            format!("Segments, {}", storey.name)
        } else {
            "Segments".into()
        };
        rows.push(Row {
            name,
            places,
            brackets,
        });
    }
    rows
}

/// Seams of each course; courses with the same seams share a row.
fn seam_rows(input: &WallDrawingInput<'_>, rows: &mut Vec<Row>) {
    let span = input.frame.lower.span();
    let mut by_course: Vec<(String, Vec<Length>)> = Vec::new();
    let courses = input
        .layout
        .pieces
        .iter()
        .map(|piece| piece.band)
        .max()
        .map_or(0, |most| most + 1);
    for course in 0..courses {
        let pieces = || {
            input
                .layout
                .pieces
                .iter()
                .filter(move |piece| piece.band == course)
        };
        let ends = pieces().map(|piece| piece.cell.bounds());
        let mut seams: Vec<Length> = match input.layout.bands.get(course as usize) {
            Some(band) => band.seams.clone(),
            None => ends.flat_map(|cell| [cell.x0, cell.x1]).collect(),
        };
        seams.extend([span.lo, span.hi]);
        seams.sort_unstable();
        seams.dedup();
        let Some(first) = pieces().next() else {
            continue;
        };
        let letter: String = first.mark.chars().take_while(|c| c.is_alphabetic()).collect();
        match by_course.iter_mut().find(|(_, same)| *same == seams) {
            Some((letters, _)) => {
                letters.push_str(", ");
                letters.push_str(&letter);
            }
            None => by_course.push((letter, seams)),
        }
    }
    for (letters, seams) in by_course {
        let places = seams.into_iter().map(|x| (x, Rounding::Nearest)).collect();
        rows.push(Row {
            name: format!("Seams {letters}"),
            places,
            brackets: Vec::new(),
        });
    }
}

/// Centres of the studs of each storey, and the ends.
fn stud_rows(input: &WallDrawingInput<'_>, rows: &mut Vec<Row>) {
    let span = input.frame.lower.span();
    for (index, storey) in input.frame.storeys.iter().enumerate() {
        let mut places: Vec<Length> = input
            .frame
            .members
            .iter()
            .filter(|member| member.storey == u32::try_from(index).ok())
            .filter(|member| {
                matches!(
                    member.kind,
                    MemberKind::Stud | MemberKind::KingStud | MemberKind::AddedStud | MemberKind::PostStud
                )
            })
            .map(|member| {
                let face = member.face.bounds();
                face.x0 + face.width().half()
            })
            .collect();
        places.extend([span.lo, span.hi]);
        places.sort_unstable();
        places.dedup();
        let places = places.into_iter().map(|x| (x, Rounding::Nearest)).collect();
        rows.push(Row {
            name: format!("Stud centres, {}", storey.name),
            places,
            brackets: Vec::new(),
        });
    }
}

/// Levels at the left, of the sheathing; at the right, of the frame and its openings.
pub(super) fn levels(input: &WallDrawingInput<'_>, shows: Shows) -> (Vec<Length>, Vec<Length>) {
    let sorted = |mut levels: Vec<Length>| {
        levels.sort_unstable();
        levels.dedup();
        levels
    };
    let mut sheathing: Vec<Length> = Vec::new();
    if shows == Shows::Sheathing {
        sheathing.extend(input.layout.pieces.iter().flat_map(|piece| {
            let cell = piece.cell.bounds();
            match input.layout.bands.get(piece.band as usize) {
                Some(band) => [band.y0.max(cell.y0).min(band.y1), cell.y1],
                None => [cell.y0, cell.y1],
            }
        }));
        let of_openings = |y: &Length| {
            input
                .frame
                .openings
                .iter()
                .any(|o| o.rect.y0 == *y || o.rect.y1 == *y)
        };
        sheathing.retain(|y| !of_openings(y));
        sheathing.extend(input.layout.bands.iter().flat_map(|band| [band.y0, band.y1]));
    }
    let mut frame: Vec<Length> = Vec::new();
    for section in &input.frame.sections {
        frame.extend([section.base, section.top]);
    }
    for storey in &input.frame.storeys {
        frame.extend([storey.base, storey.studs_from, storey.studs_to, storey.top]);
    }
    frame.extend(input.frame.bands.iter().flat_map(|band| [band.y.lo, band.y.hi]));
    frame.extend(
        input
            .frame
            .openings
            .iter()
            .flat_map(|opening| [opening.rect.y0, opening.rect.y1]),
    );
    (sorted(sheathing), sorted(frame))
}
