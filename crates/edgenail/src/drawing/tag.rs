//! What is written on a piece: mark, turn of hanging, cut size.

use crate::drawing::glyphs::{line, width};
use crate::drawing::{Extent, Form, Label, Layer, Mark, Micron, Says, Spot};

/// The words of a piece.
#[derive(Clone)]
pub(super) struct Words {
    /// The piece's place in its list; nothing where no piece is named.
    pub piece: Option<u32>,
    /// Its mark.
    pub mark: String,
    /// Its turn of hanging, from 1; empty where it is not set.
    pub turn: String,
    /// Its cut size in one line or two; empty where only the mark is set.
    pub size: Vec<String>,
}

/// Words set as a block: sizes known, place not yet.
pub(super) struct Tag<'a> {
    words: &'a Words,
    /// Scale of all type, in hundredths.
    scale: Micron,
    turned: bool,
    long: Micron,
    high: Micron,
}

const MARK: Micron = 3_600;
const SIZE: Micron = 2_800;
const TURN: Micron = 2_800;

impl<'a> Tag<'a> {
    /// Sets the words.
    pub(super) fn new(words: &'a Words, scale: Micron, turned: bool) -> Self {
        let scaled = |size: Micron| size * scale / 100;
        let first = width(&words.mark, scaled(MARK), true) + Self::ring_room(words, scale);
        let sizes = words
            .size
            .iter()
            .map(|text| width(text, scaled(SIZE), false))
            .max()
            .unwrap_or(0);
        let rows = Micron::try_from(words.size.len()).unwrap_or(0);
        let high = line(scaled(MARK)) + rows * line(scaled(SIZE));
        Self {
            words,
            scale,
            turned,
            long: first.max(sizes),
            high,
        }
    }

    /// Room that the ring takes beside the mark.
    fn ring_room(words: &Words, scale: Micron) -> Micron {
        if words.turn.is_empty() {
            0
        } else {
            2 * Self::radius(words, scale) + MARK * scale / 300
        }
    }

    fn radius(words: &Words, scale: Micron) -> Micron {
        let text = width(&words.turn, TURN * scale / 100, false);
        text.max(line(TURN * scale / 100)) * 6 / 10
    }

    /// Its size on paper.
    pub(super) fn size(&self) -> (Micron, Micron) {
        if self.turned {
            (self.high, self.long)
        } else {
            (self.long, self.high)
        }
    }

    /// Its labels and marks in a box of its size.
    pub(super) fn set(&self, place: &Extent) -> (Vec<Label>, Vec<Mark>) {
        let scaled = |size: Micron| size * self.scale / 100;
        // u runs along the text, v across it.
        let at = |u: Micron, v: Micron| {
            if self.turned {
                Spot::new(place.x0 + v, place.y1 - u)
            } else {
                Spot::new(place.x0 + u, place.y0 + v)
            }
        };
        let piece = self.words.piece;
        let (mut labels, mut marks) = (Vec::new(), Vec::new());
        let mark_wide = width(&self.words.mark, scaled(MARK), true);
        let ring = Self::ring_room(self.words, self.scale);
        let left = (self.long - mark_wide - ring) / 2;
        let middle = line(scaled(MARK)) / 2;
        let says = piece.map_or(Says::Note, |piece| Says::PieceMark { piece });
        let text = self.words.mark.clone();
        labels.push(
            Label::centred(
                says,
                text,
                at(left + mark_wide / 2, middle),
                scaled(MARK),
                true,
                self.turned,
            )
            .backed(),
        );
        if ring > 0 {
            let radius = Self::radius(self.words, self.scale);
            let centre = at(left + mark_wide + ring - radius, middle);
            marks.push(Mark {
                layer: Layer::Ring,
                form: Form::Circle {
                    middle: centre,
                    radius,
                },
            });
            let text = self.words.turn.clone();
            labels.push(Label::centred(
                Says::Note,
                text,
                centre,
                scaled(TURN),
                false,
                self.turned,
            ));
        }
        let mut v = line(scaled(MARK));
        for text in &self.words.size {
            let high = line(scaled(SIZE));
            let spot = at(self.long / 2, v + high / 2);
            let says = piece.map_or(Says::Note, |piece| Says::PieceSize { piece });
            labels.push(Label::centred(says, text.clone(), spot, scaled(SIZE), false, self.turned).backed());
            v += high;
        }
        (labels, marks)
    }
}
