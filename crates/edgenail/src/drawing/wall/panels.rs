//! Pieces of sheathing with what is written on them, and openings.

use super::{Canvas, Shows};
use crate::drawing::glyphs::{line, wrapped};
use crate::drawing::page::{LEAST_TYPE, SMALL, TYPE, arrow};
use crate::drawing::tag::{Tag, Words};
use crate::drawing::view::holds;
use crate::drawing::{Extent, Form, Label, Layer, MM, Micron, Says, Spot};
use crate::edges::Support;
use crate::geometry::{Point, Shape};
use crate::house::StrengthAxis;
use crate::layout::{Piece, Running};
use crate::length::{Length, Rounding};

/// Places that are tried along each direction of a piece, in hundredths of its size, the middle first.
const TRIES: [Micron; 15] = [50, 42, 58, 34, 66, 26, 74, 18, 82, 12, 88, 46, 54, 8, 92];

impl Canvas<'_> {
    /// The pieces' outlines and the edges that nothing holds.
    pub(super) fn panels(&mut self) {
        for piece in &self.input.layout.pieces {
            let rings = self.view.rings(&piece.outline);
            self.drawing.mark(Layer::Panel, Form::Polygon { rings });
        }
        for run in self.input.edges {
            if matches!(run.support, Support::Nothing { .. }) {
                let ends = [self.view.spot(run.from), self.view.spot(run.to)];
                self.drawing.line(Layer::FreeEdge, &ends);
            }
        }
    }

    /// Mark, turn of hanging, cut size and strength axis of every piece.
    pub(super) fn piece_labels(&mut self) {
        let pieces: Vec<&Piece> = self.input.layout.pieces.iter().collect();
        for piece in pieces {
            let rings = self.view.rings(&piece.outline);
            let columns = self.columns(piece);
            self.tag_piece(piece, &rings, &columns);
            self.axis_arrow(piece, &rings, &columns);
        }
    }

    /// Middles between the upright nail rows of a piece: where writing covers the fewest nails.
    fn columns(&self, piece: &Piece) -> Vec<Micron> {
        let mut xs: Vec<Micron> = self
            .input
            .nailing
            .rows
            .iter()
            .filter(|row| row.piece == piece.id && row.from.x == row.to.x)
            .map(|row| self.view.x(row.from.x))
            .collect();
        xs.sort_unstable();
        xs.dedup();
        let middle = self.view.extent(&piece.blank()).middle().x;
        let mut between: Vec<Micron> = xs.windows(2).map(|pair| pair[0].midpoint(pair[1])).collect();
        between.sort_by_key(|x| (x - middle).abs());
        between
    }

    fn words(&self, piece: &Piece) -> Words {
        let blank = piece.blank();
        let (width, height) = (blank.width(), blank.height());
        Words {
            piece: Some(piece.id),
            mark: piece.mark.clone(),
            turn: (piece.hang_order + 1).to_string(),
            size: vec![
                format!("{} ×", self.show(width, Rounding::Down)),
                self.show(height, Rounding::Down),
            ],
        }
    }

    fn tag_piece(&mut self, piece: &Piece, rings: &[Vec<Spot>], columns: &[Micron]) {
        let split = self.words(piece);
        let joined = Words {
            size: vec![split.size.join(" ")],
            ..split.clone()
        };
        let bare = Words {
            size: Vec::new(),
            ..split.clone()
        };
        let only_mark = Words {
            turn: String::new(),
            ..bare.clone()
        };
        // No type comes out smaller than what is read on paper.
        let sets: [(&Words, &[Micron]); 4] = [
            (&split, &[100, 90]),
            (&joined, &[100, 90]),
            (&bare, &[100]),
            (&only_mark, &[100, 85, 70]),
        ];
        let tags: Vec<Tag<'_>> = sets
            .iter()
            .flat_map(|&(words, scales)| scales.iter().map(move |&scale| (words, scale)))
            .flat_map(|(words, scale)| [false, true].map(|turned| Tag::new(words, scale, turned)))
            .collect();
        let sized = 8;
        // The first tag that covers no nail, unless that costs its size: then the largest with the fewest.
        let mut fallback: Option<(usize, Extent, usize)> = None;
        let bounds = self.view.extent(&piece.blank());
        let is_plain = piece.outline.is_rect().is_some();
        let xs = across(&bounds, columns);
        // The outline is asked only where it is more than the piece's bounds.
        let fits = |place: &Extent| is_plain || holds(rings, place);
        for (index, tag) in tags.iter().enumerate() {
            let least = fallback.map_or(usize::MAX, |(_, _, least)| least);
            if least == 0 || (fallback.is_some() && index >= sized) {
                break;
            }
            let places = candidates(&bounds, &xs, tag.size());
            if let Some((place, hits)) = self.room.best_under(least, places, fits) {
                fallback = Some((index, place, hits));
            }
        }
        if let Some((labels, marks)) =
            fallback.and_then(|(index, place, _)| tags.get(index).map(|tag| tag.set(&place)))
        {
            self.drawing.marks.extend(marks);
            for label in labels {
                self.put(label);
            }
        } else {
            let says = Says::PieceMark { piece: piece.id };
            let at = self.view.spot(inside(&piece.outline));
            self.call_out(says, &piece.mark, at, SMALL, true);
        }
    }

    fn axis_arrow(&mut self, piece: &Piece, rings: &[Vec<Spot>], columns: &[Micron]) {
        let along = self
            .input
            .house
            .stock
            .sheets
            .get(piece.sheet as usize)
            .map(|sheet| sheet.strength_axis);
        let upright = (piece.running == Running::Upright) == (along != Some(StrengthAxis::Width));
        let bounds = self.view.extent(&piece.blank());
        let xs = across(&bounds, columns);
        for long in [14 * MM, 9 * MM, 6 * MM] {
            let size = if upright { (1_400, long) } else { (long, 1_400) };
            let places = candidates(&bounds, &xs, size);
            let best = self
                .room
                .best_under(usize::MAX, places, |place| holds(rings, place));
            let Some((place, _)) = best else {
                continue;
            };
            self.room.take(place);
            let middle = place.middle();
            if upright {
                arrow(
                    &mut self.drawing,
                    middle.moved(0, -long / 2),
                    middle.moved(0, long / 2),
                );
            } else {
                arrow(
                    &mut self.drawing,
                    middle.moved(-long / 2, 0),
                    middle.moved(long / 2, 0),
                );
            }
            return;
        }
    }

    /// Openings with their names and sizes, holes cut in place, places that stay bare.
    pub(super) fn openings(&mut self, shows: Shows) {
        let openings = self.input.frame.openings.clone();
        for (index, opening) in openings.iter().enumerate() {
            let extent = self.view.extent(&opening.rect);
            self.drawing.rect(Layer::Opening, &extent);
            let [a, b, c, d] = extent.corners();
            self.drawing.line(Layer::Cutout, &[a, c]);
            self.drawing.line(Layer::Cutout, &[b, d]);
            let key = format!("O{}", index + 1);
            let size =
                [opening.rect.width(), opening.rect.height()].map(|size| self.show(size, Rounding::Up));
            self.opening_label(&extent, &key, &opening.name, &size);
        }
        let holes = self.input.frame.penetrations.iter().map(|hole| (hole, 'P'));
        let bare = self.input.frame.bare_zones.iter().map(|zone| (zone, 'Z'));
        let patches: Vec<(Extent, String)> = holes
            .enumerate()
            .chain(bare.enumerate())
            .map(|(index, (patch, letter))| (self.view.extent(&patch.rect), format!("{letter}{}", index + 1)))
            .collect();
        for (extent, key) in patches {
            self.drawing.rect(Layer::Cutout, &extent);
            if shows == Shows::Sheathing {
                self.call_out(Says::Note, &key, extent.middle(), LEAST_TYPE, true);
            }
        }
    }

    fn opening_label(&mut self, extent: &Extent, key: &str, name: &str, [wide, high]: &[String; 2]) {
        let joined = vec![format!("{wide} × {high}")];
        let split = vec![format!("{wide} ×"), high.clone()];
        let tries = [
            (TYPE, 2, &joined),
            (SMALL, 3, &joined),
            (LEAST_TYPE, 4, &joined),
            (LEAST_TYPE, 4, &split),
            (LEAST_TYPE, 0, &split),
        ];
        for (type_size, most_lines, size) in tries {
            let room = extent.width() - 2 * MM;
            let mut lines = vec![key.to_owned()];
            if most_lines > 0 {
                lines.extend(wrapped(name, room, type_size));
            }
            if lines.len() > most_lines + 1 {
                continue;
            }
            lines.extend(size.iter().cloned());
            let labels: Vec<Label> = stacked(&lines, extent.middle(), type_size);
            let fits = labels
                .iter()
                .all(|label| extent.grown(-600).covers(&label.extent) && self.room.is_free(&label.extent));
            if fits {
                for label in labels {
                    self.put(label);
                }
                return;
            }
        }
        self.call_out(Says::Note, key, extent.middle(), SMALL, true);
    }

    /// What is cut out of a piece, each as size and place from the piece's lower left corner.
    pub(super) fn cut_outs(&self, piece: &Piece) -> Vec<String> {
        let blank = piece.blank();
        let frame = self.input.frame;
        let back = self.wall.practice.opening_cut_back;
        let holes = frame.holes().into_iter().map(|hole| hole.grown(back));
        let cut = holes.filter_map(|hole| hole.intersect(&blank));
        let cut = cut.filter(|hole| *hole != blank);
        cut.map(|hole| {
            let size = self.size(hole.width(), hole.height(), Rounding::Up);
            let from = |length: Length| self.show(length, Rounding::Down);
            format!(
                "cut out {size}: {} right, {} up",
                from(hole.x0 - blank.x0),
                from(hole.y0 - blank.y0)
            )
        })
        .collect()
    }

    /// Sloping cuts of a piece, each from its lower to its higher end, from the piece's lower left corner.
    pub(super) fn slopes(&self, piece: &Piece) -> Vec<String> {
        let blank = piece.blank();
        let edges = piece.outline.boundary().iter();
        let sloping = edges.filter(|edge| edge.a.x != edge.b.x && edge.a.y != edge.b.y);
        sloping
            .map(|edge| {
                let (low, high) = if edge.a.y < edge.b.y {
                    (edge.a, edge.b)
                } else {
                    (edge.b, edge.a)
                };
                let show = |length: Length| self.show(length, Rounding::Down);
                format!(
                    "slope: {} right, {} up, to {} right, {} up",
                    show(low.x - blank.x0),
                    show(low.y - blank.y0),
                    show(high.x - blank.x0),
                    show(high.y - blank.y0)
                )
            })
            .collect()
    }
}

/// Lines of text, one under another around a middle, the first in bold type.
fn stacked(lines: &[String], middle: Spot, size: Micron) -> Vec<Label> {
    let high = line(size);
    let count = Micron::try_from(lines.len()).unwrap_or(0);
    let mut y = middle.y - count * high / 2 + high / 2;
    let mut labels = Vec::with_capacity(lines.len());
    for (index, text) in lines.iter().enumerate() {
        let spot = Spot::new(middle.x, y);
        labels.push(Label::centred(Says::Note, text.clone(), spot, size, index == 0, false).backed());
        y += high;
    }
    labels
}

/// Middles to be tried from side to side of a piece, those between its nail rows first.
fn across(bounds: &Extent, columns: &[Micron]) -> Vec<Micron> {
    let shares = TRIES.iter().take(9);
    let inside = shares.map(|share| bounds.x0 + bounds.width() * share / 100);
    columns.iter().copied().chain(inside).collect()
}

/// Boxes of a size within the bounds of a piece with their middles at these places across.
fn candidates(bounds: &Extent, xs: &[Micron], size: (Micron, Micron)) -> impl Iterator<Item = Extent> {
    let places = TRIES.iter().flat_map(move |share| {
        let y = bounds.y0 + bounds.height() * share / 100;
        xs.iter()
            .map(move |&x| Extent::around(Spot::new(x, y), size.0, size.1))
    });
    places.filter(|place| bounds.covers(place))
}

/// A place inside a piece: the middle of the largest of its columns.
fn inside(outline: &Shape) -> Point {
    let middle = |a: Length, b: Length| (a + b).half();
    let spots = outline.columns().iter().map(|column| {
        let low = middle(column.bottom.0, column.bottom.1);
        let high = middle(column.top.0, column.top.1);
        let area = (column.x1 - column.x0) * (high - low);
        (area, Point::new(middle(column.x0, column.x1), middle(low, high)))
    });
    spots.max().map_or_else(Point::default, |(_, spot)| spot)
}
