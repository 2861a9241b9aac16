use super::super::input::{DrawnStart, WallDrawingInput};
use super::super::legible::{dimensions_agree, marks_lie_in_their_pieces, texts_are_apart};
use super::{frame, wall};
use crate::drawing::{Drawing, Form, Layer};
use crate::evaluate::{Evaluated, evaluate};
use crate::frame::Frame;
use crate::geometry::Rect;
use crate::house::{End, House};
use crate::layout::foreign::foreign;
use crate::layout::trial::{Trial, inch};
use crate::layout::{BandSpec, LayoutSpec, Running};
use crate::length::{Finest, Length, Style};
use proptest::prelude::*;

const STYLE: Style = Style::Inches(Finest::Sixteenth);

/// A house with one wall through all stages, and where work on it starts.
struct Built {
    house: House,
    evaluated: Evaluated,
    start: DrawnStart,
}

impl Built {
    fn new(trial: &Trial, spec: LayoutSpec, end: End) -> Self {
        let house = trial.house();
        let bare: Frame = trial.frame();
        let built = evaluate(&house, &bare, spec);
        let start = DrawnStart {
            end,
            datum: Some(inch(48, 0)),
            notes: vec!["The first sheet is whole.".into()],
        };
        Self {
            house,
            evaluated: built,
            start,
        }
    }

    fn input(&self) -> WallDrawingInput<'_> {
        WallDrawingInput {
            house: &self.house,
            frame: &self.evaluated.backed,
            layout: &self.evaluated.layout,
            edges: &self.evaluated.runs,
            blocking: &self.evaluated.blocking,
            nailing: &self.evaluated.nailing,
            capacity: &[],
            findings: &self.evaluated.findings,
            start: &self.start,
            style: STYLE,
        }
    }
}

/// Nails drawn are nails planned: rows by layer, dots in all.
fn nails_are_all_there(drawing: &Drawing, built: &Built) -> Result<(), TestCaseError> {
    let planned: u64 = built
        .evaluated
        .nailing
        .rows
        .iter()
        .map(|row| u64::from(row.count()))
        .sum();
    let in_wall = |mark: &&crate::drawing::Mark| matches!(mark.form, Form::Nails { dot, .. } if dot <= 500);
    let drawn: u64 = drawing
        .marks
        .iter()
        .filter(in_wall)
        .map(|mark| match mark.form {
            Form::Nails { first, last, .. } => u64::from(last - first + 1),
            _ => 0,
        })
        .sum();
    prop_assert_eq!(drawn, planned);
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// On walls and layouts that nobody would choose, from either end.
    #[test]
    fn drawings_of_foreign_layouts_are_legible((trial, spec) in foreign(), right in any::<bool>()) {
        let built = Built::new(&trial, spec, if right { End::Right } else { End::Left });
        let drawing = wall(&built.input()).unwrap();
        texts_are_apart(&drawing)?;
        dimensions_agree(&drawing, STYLE)?;
        marks_lie_in_their_pieces(&drawing, &built.evaluated.layout)?;
        nails_are_all_there(&drawing, &built)?;
        prop_assert_eq!(drawing.svg(), wall(&built.input()).unwrap().svg());
        let bare = frame(&built.input()).unwrap();
        texts_are_apart(&bare)?;
        dimensions_agree(&bare, STYLE)?;
    }

    /// Names that users may write never break the drawing.
    #[test]
    fn any_name_can_be_drawn(name in "\\PC{1,200}", opening in "\\PC{1,200}") {
        let mut built = plain();
        built.house.name.clone_from(&name);
        built.house.walls[0].name = name;
        built.evaluated.backed.openings[0].name = opening;
        let drawing = wall(&built.input()).unwrap();
        texts_are_apart(&drawing)?;
    }
}

/// A 20 ft wall with a window and a segment: five upright sheets.
fn plain() -> Built {
    let mut trial = Trial::new(
        Length::feet(20),
        inch(92, 10),
        inch(16, 0),
        &[(inch(47, 14), inch(95, 14))],
    );
    trial
        .openings
        .push(Rect::new(inch(66, 0), inch(36, 0), inch(114, 0), inch(82, 0)));
    trial.segment(Length::ZERO, inch(48, 0), inch(4, 0), inch(12, 0));
    trial.treated = true;
    let seams = vec![inch(48, 0), inch(96, 0), inch(144, 0), inch(192, 0)];
    let band = BandSpec {
        y0: inch(0, 8),
        y1: inch(96, 8),
        running: Running::Upright,
        seams,
        sheets: vec![0; 5],
    };
    Built::new(
        &trial,
        LayoutSpec::Bands {
            reach: -inch(0, 8),
            bands: vec![band],
        },
        End::Left,
    )
}

/// The seams of full sheets on 16 in. studs run 48, 96, 144, 192 from the start (the module of 4 ft sheets,
/// common practice, no source); the cut size of a first sheet is its cell less half a gap and the end's.
#[test]
fn a_plain_wall_says_what_a_framer_pulls() {
    let built = plain();
    let drawing = wall(&built.input()).unwrap();
    let said = |text: &str| drawing.labels.iter().any(|label| label.text == text);
    for text in [
        "0\"",
        "48\"",
        "96\"",
        "144\"",
        "192\"",
        "240\"",
        "66\"",
        "114\"",
        "97 1/8\"",
        "A1",
        "O1",
        "48\" × 46\"",
    ] {
        assert!(said(text), "{text} is missing");
    }
    let a2 = built
        .evaluated
        .layout
        .pieces
        .iter()
        .find(|piece| piece.mark == "A2")
        .unwrap();
    assert_eq!(a2.blank().width(), inch(47, 14));
    let words: String = crate::CAUTION.split_whitespace().collect();
    let drawn: String = drawing
        .labels
        .iter()
        .map(|label| label.text.split_whitespace().collect::<String>())
        .collect();
    assert!(drawn.contains(&words));
    assert!(said("SW1") || drawing.labels.iter().any(|label| label.text.starts_with("SW1")));
}

/// Taking the window out takes its cut-outs, its diagonals and its dimensions out, and leaves the seams.
#[test]
fn without_the_opening_nothing_speaks_of_it() {
    let mut built = plain();
    built.evaluated.backed.openings.clear();
    let drawing = wall(&built.input()).unwrap();
    let said = |text: &str| drawing.labels.iter().any(|label| label.text == text);
    assert!(!said("O1") && !said("66\"") && !said("114\"") && said("96\""));
    assert!(drawing.marks.iter().all(|mark| mark.layer != Layer::Opening));
}

/// Data that contradicts itself is drawn as far as it goes: no index is trusted.
#[test]
fn foreign_indices_are_survived() {
    let mut built = plain();
    for piece in &mut built.evaluated.layout.pieces {
        piece.sheet = 99;
        piece.band = 7;
    }
    for row in &mut built.evaluated.nailing.rows {
        row.nail = 99;
    }
    for block in &mut built.evaluated.blocking.blocks {
        block.stick = 99;
    }
    assert!(wall(&built.input()).is_some());
    built.evaluated.backed.wall = 9;
    assert!(wall(&built.input()).is_none());
}
