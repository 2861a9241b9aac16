//! Running dimensions along the wall, levels beside it, the marks of the stud layout.

use super::{Canvas, Shows, start_x};
use crate::drawing::glyphs::{line, width};
use crate::drawing::input::WallDrawingInput;
use crate::drawing::page::{SMALL, TYPE};
use crate::drawing::place::spread;
use crate::drawing::{Along, Dimension, Form, Label, Layer, MM, Micron, Says, Spot};
use crate::frame::MemberKind;
use crate::house::End;
use crate::length::{Length, Rounding};

/// Least distance of two turned figures.
const STEP: Micron = 2_900;

/// One row of running dimensions under the wall.
pub(super) struct Row {
    name: String,
    /// Places, rising, with the way in which each is rounded.
    places: Vec<(Length, Rounding)>,
    /// Stretches with a text instead of figures.
    brackets: Vec<(Length, Length, String)>,
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
                    let shown = |length: Length| length.show(input.style, Rounding::Down).text;
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
        let Some(first) = pieces().next() else { continue };
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

impl Canvas<'_> {
    /// Sets the rows under the wall; gives the line under the last.
    pub(super) fn rows(&mut self, rows: &[Row]) -> Micron {
        let mut y = self.place.y1 + 7 * MM;
        for row in rows {
            y = self.row(row, y);
        }
        y
    }

    fn row(&mut self, row: &Row, top: Micron) -> Micron {
        let from = self.start_x();
        let texts: Vec<String> = row
            .places
            .iter()
            .map(|&(x, rounding)| self.show((x - from).abs(), rounding))
            .collect();
        let spots: Vec<Micron> = row.places.iter().map(|&(x, _)| self.view.x(x)).collect();
        let wide: Vec<Micron> = texts.iter().map(|text| width(text, TYPE, false)).collect();
        let level = spots
            .windows(2)
            .zip(wide.windows(2))
            .all(|(x, w)| x[1] - x[0] > w[0].midpoint(w[1]) + MM);
        let tall = if level {
            line(TYPE)
        } else {
            wide.iter().copied().max().unwrap_or(0)
        };
        let bracket_top = top;
        let rule = if row.brackets.is_empty() {
            top + 800
        } else {
            top + 5 * MM
        };
        self.brackets(row, bracket_top);
        let (left, right) = (self.view.across(self.input.frame.lower.span()), self.place);
        let ends = (left.0.min(right.x0), left.1.max(right.x1));
        if !row.places.is_empty() {
            self.drawing.line(
                Layer::Dimension,
                &[Spot::new(ends.0, rule), Spot::new(ends.1, rule)],
            );
        }
        let apart = if level {
            spots.clone()
        } else {
            spread(&spots, STEP, (self.place.x0 - 20 * MM, self.place.x1 + 20 * MM))
        };
        for (((text, &(x, _)), &spot), &at) in texts.iter().zip(&row.places).zip(&spots).zip(&apart) {
            let tick = Spot::new(spot, rule);
            self.drawing
                .line(Layer::Dimension, &[tick.moved(0, -800), tick.moved(0, 800)]);
            let bottom = rule + 2_200;
            if !level {
                self.drawing
                    .line(Layer::Leader, &[tick.moved(0, 800), Spot::new(at, bottom)]);
            }
            let middle = if level {
                Spot::new(at, rule + 1_200 + line(TYPE) / 2)
            } else {
                Spot::new(at, bottom + 200 + width(text, TYPE, false) / 2)
            };
            self.dimension(
                Along::Wall,
                from,
                x,
                Spot::new(self.view.x(from), rule),
                tick,
                text,
                middle,
                !level,
            );
        }
        let tail = if row.places.is_empty() {
            0
        } else {
            tall + if level { 2_400 } else { 3_400 }
        };
        let name = crate::drawing::glyphs::fitted(
            &row.name,
            self.place.x0 - self.drawing.sheet().x0 - 16 * MM,
            SMALL,
            true,
        );
        let corner = Spot::new(self.place.x0 - 5 * MM, top + 200);
        // The names stand left of the wall, clear of a first figure that is centred on its end.
        let gap = wide.first().copied().unwrap_or(0) / 2;
        let label = Label::new(Says::Note, name, corner.moved(-gap.min(6 * MM), 0), SMALL)
            .bold()
            .ending();
        let label = if self.room.is_free(&label.extent) {
            Some(label)
        } else {
            None
        };
        if let Some(label) = label {
            self.put(label);
        }
        rule + tail + if row.places.is_empty() { 2 * MM } else { MM }
    }

    fn brackets(&mut self, row: &Row, top: Micron) {
        for (from, to, text) in &row.brackets {
            let (x0, x1) = (self.view.x(*from), self.view.x(*to));
            let y = top + 3_600;
            self.drawing.line(
                Layer::Dimension,
                &[
                    Spot::new(x0, y - MM),
                    Spot::new(x0, y),
                    Spot::new(x1, y),
                    Spot::new(x1, y - MM),
                ],
            );
            let middle = Spot::new(x0.midpoint(x1), top + 1_800);
            let sizes = [TYPE, SMALL, 1_500, 1_200];
            let label = sizes
                .iter()
                .map(|&size| Label::centred(Says::Note, text.clone(), middle, size, true, false));
            let fitting = label
                .into_iter()
                .find(|label| label.extent.width() < x1 - x0 + MM && self.room.is_free(&label.extent));
            if let Some(label) = fitting {
                self.put(label);
            } else {
                let short = text.split("  ").next().unwrap_or_default().to_owned();
                self.call_out(Says::Note, &short, Spot::new(x0.midpoint(x1), y), 1_500, true);
            }
        }
    }

    #[expect(
        clippy::too_many_arguments,
        reason = "a dimension is its two ends in the wall and on paper, and its label"
    )]
    fn dimension(
        &mut self,
        along: Along,
        from: Length,
        to: Length,
        from_at: Spot,
        to_at: Spot,
        text: &str,
        middle: Spot,
        turned: bool,
    ) {
        let value = match along {
            Along::Wall => (to - from).abs(),
            Along::Height => to - from,
        };
        let dimension = u32::try_from(self.drawing.dimensions.len()).unwrap_or(u32::MAX);
        self.drawing.dimensions.push(Dimension {
            along,
            from,
            to,
            value,
            from_at,
            to_at,
        });
        let label = Label::centred(Says::Dimension { dimension }, text, middle, TYPE, false, turned);
        self.put(label);
    }

    /// Sets the levels at both sides.
    pub(super) fn levels(&mut self, left: &[Length], right: &[Length]) {
        self.level_side(left, true);
        self.level_side(right, false);
    }

    fn level_side(&mut self, levels: &[Length], left: bool) {
        let edge = if left {
            self.place.x0 - MM
        } else {
            self.place.x1 + MM
        };
        let out = if left { -1 } else { 1 };
        let spots: Vec<Micron> = levels.iter().rev().map(|&y| self.view.y(y)).collect();
        let top = self.place.y1 - self.place.height().max(least_height(levels.len()));
        let moved = spread(&spots, STEP, (top, self.place.y1 + 1_500));
        for ((&level, &spot), &at) in levels.iter().rev().zip(&spots).zip(&moved) {
            let text = self.show(level, Rounding::Nearest);
            let tick = Spot::new(edge, spot);
            let near = Spot::new(edge + out * 5 * MM, at);
            self.drawing
                .line(Layer::Dimension, &[tick, tick.moved(out * 2 * MM, 0), near]);
            let half = width(&text, TYPE, false) / 2;
            let middle = near.moved(out * (half + 600), 0);
            let zero = Spot::new(edge, self.view.y(Length::ZERO));
            self.dimension(
                Along::Height,
                Length::ZERO,
                level,
                zero,
                tick,
                &text,
                middle,
                false,
            );
        }
        if levels.is_empty() {
            return;
        }
        let text = if left { "sheathing levels" } else { "frame levels" };
        let y = moved.first().copied().unwrap_or(self.place.y0) - 3_600;
        let middle = Spot::new(edge + out * 13 * MM, y);
        let label = Label::centred(Says::Note, text, middle, 1_700, true, false);
        if self.room.is_free(&label.extent) {
            self.put(label);
        }
    }

    /// The end that the stud layout is pulled from, over the wall.
    pub(super) fn layout_marks(&mut self) {
        let mut seen: Vec<(Length, Length, bool)> = Vec::new();
        let storeys: Vec<_> = self
            .input
            .frame
            .storeys
            .iter()
            .map(|s| (s.zero, s.spacing, s.from_right))
            .collect();
        for layout in storeys {
            if !seen.contains(&layout) {
                seen.push(layout);
            }
        }
        for (index, &(zero, spacing, from_right)) in seen.iter().take(3).enumerate() {
            let lift = Micron::try_from(index).unwrap_or(0) * 4 * MM;
            let at = Spot::new(self.view.x(zero), self.place.y0 - 3 * MM - lift);
            let out: Micron = if from_right { -1 } else { 1 };
            let end = at.moved(out * 9 * MM, 0);
            self.drawing
                .line(Layer::Start, &[at.moved(0, -MM), at.moved(0, MM)]);
            self.drawing.line(Layer::Start, &[at, end]);
            let corners = [end, end.moved(-out * 2_200, -800), end.moved(-out * 2_200, 800)];
            self.drawing.mark(Layer::Start, Form::Tip { corners });
            let text = format!(
                "stud layout from here, {} on centre",
                self.show(spacing, Rounding::Nearest)
            );
            let label = Label::new(Says::Note, text, end.moved(out * MM, -line(SMALL) / 2), SMALL);
            let label = if from_right { label.ending() } else { label };
            if self.room.is_free(&label.extent) {
                self.put(label);
            }
        }
    }

    /// The corner that sheets are laid from, and the line that is snapped first.
    pub(super) fn start(&mut self) {
        let x = start_x(self.input);
        let out: Micron = if self.input.start.end == End::Left { 1 } else { -1 };
        let lowest = self
            .input
            .frame
            .lower
            .points()
            .iter()
            .filter(|p| p.x == x)
            .map(|p| p.y)
            .min();
        let y = lowest
            .unwrap_or(Length::ZERO)
            .min(lowest.unwrap_or(Length::ZERO) - self.input.layout.reach);
        let corner = Spot::new(self.view.x(x), self.view.y(y).max(self.place.y1) + 600);
        let corners = [
            corner,
            corner.moved(out * 4 * MM, 1_400),
            corner.moved(out * 1_400, 4 * MM),
        ];
        self.drawing.mark(Layer::Start, Form::Tip { corners });
        let label = Label::new(
            Says::Note,
            "START: lay sheets and measure from this corner",
            corner.moved(out * 5 * MM, 1_200),
            SMALL,
        )
        .bold();
        let label = if out < 0 { label.ending() } else { label };
        if self.room.is_free(&label.extent) {
            self.put(label);
        }
        let Some(datum) = self.input.start.datum else {
            return;
        };
        let y = self.view.y(datum);
        let (left, right) = (
            Spot::new(self.place.x0 - 3 * MM, y),
            Spot::new(self.place.x1 + 3 * MM, y),
        );
        self.drawing.line(Layer::Datum, &[left, right]);
        let text = format!("DATUM {}", self.show(datum, Rounding::Nearest));
        let end = if out > 0 {
            right.moved(-22 * MM, 0)
        } else {
            left.moved(22 * MM, 0)
        };
        self.call_out(Says::Note, &text, end, SMALL, true);
    }

    /// Writes a text as near to a place as there is room, with a line to it where the text is moved away.
    pub(super) fn call_out(&mut self, says: Says, text: &str, at: Spot, size: Micron, bold: bool) {
        for size in [size, size * 3 / 4, size / 2] {
            let (wide, high) = (width(text, size, bold), line(size));
            let Some(place) = self.room.nearest(at, wide, high, 120 * MM) else {
                continue;
            };
            let mut label = Label::centred(says, text, place.middle(), size, bold, false).backed();
            if !label.extent.grown(600).holds(at) {
                let end = label.extent.middle();
                let side = Spot::new(
                    at.x.clamp(label.extent.x0, label.extent.x1),
                    at.y.clamp(label.extent.y0, label.extent.y1),
                );
                self.drawing
                    .line(Layer::Leader, &[at, if side == at { end } else { side }]);
            }
            label.points_at = Some(at);
            self.put(label);
            return;
        }
    }
}
