//! One demand, and how to do without it.

use crate::error::Unmet;
use crate::house::House;
use crate::length::{Finest, Length, Rounding, Style};
use serde_json::Value;

/// A demand of practice or stock that can be lifted.
pub(super) struct Lift {
    pub path: String,
    pub found: Value,
    /// What is demanded, in words.
    pub demand: String,
    /// What takes its place.
    pub to: To,
    pub set: Set,
}

/// A change of the house; only a length asks how far.
pub(super) type Set = Box<dyn Fn(&mut House, Length)>;

/// What takes the place of a demand.
pub(super) enum To {
    /// This value, in these words.
    Value(Value, String),
    /// A length, found in steps from what is demanded towards the loosest.
    Length(Range),
}

/// Lengths that may take the place of a demand.
pub(super) struct Range {
    /// What is demanded.
    pub from: Length,
    /// The loosest that is tried.
    pub loosest: Length,
    /// They are multiples of this.
    pub step: Length,
    /// Words before and behind the length.
    pub words: (String, &'static str),
    /// How it is written.
    pub style: Style,
}

impl Lift {
    /// The loosest that is tried.
    pub fn loosest(&self) -> Length {
        match &self.to {
            To::Value(..) => Length::ZERO,
            To::Length(range) => range.loosest,
        }
    }

    /// How many steps lie between what is demanded and the loosest.
    pub fn steps(&self) -> i64 {
        match &self.to {
            To::Value(..) => 0,
            To::Length(range) => (range.loosest - range.before()).abs().spaces(range.step),
        }
    }

    /// So many steps from what is demanded.
    pub fn at(&self, count: i64) -> Length {
        match &self.to {
            To::Value(..) => Length::ZERO,
            To::Length(range) if range.rises() => (range.before() + range.step * count).min(range.loosest),
            To::Length(range) => (range.before() - range.step * count).max(range.loosest),
        }
    }

    /// Changes the house.
    pub fn apply(&self, house: &mut House, to: Length) {
        (self.set)(house, to);
    }

    /// The demand with what was tried in its place.
    pub fn unmet(&self, to: Length) -> Unmet {
        let (wanted, remedy) = match &self.to {
            To::Value(wanted, remedy) => (wanted.clone(), remedy.clone()),
            To::Length(range) => {
                let text = exact(to, range.style);
                let remedy = format!("{}{text}{}", range.words.0, range.words.1);
                (Value::from(text), remedy)
            }
        };
        Unmet {
            path: self.path.clone(),
            found: self.found.clone(),
            wanted,
            demand: self.demand.clone(),
            remedy,
        }
    }
}

impl Range {
    fn rises(&self) -> bool {
        self.from < self.loosest
    }

    /// The last whole step that is not beyond what is demanded, on the way to the loosest.
    fn before(&self) -> Length {
        let away = if self.rises() {
            Rounding::Down
        } else {
            Rounding::Up
        };
        self.from.round_to(self.step, away)
    }
}

/// A length as text that reads back as the same, where a sixty-fourth of an inch or a tenth of a millimetre tells it.
pub(super) fn exact(length: Length, style: Style) -> String {
    let shown = |style: Style| length.show(style, Rounding::Nearest);
    let styles = [style, Style::Inches(Finest::SixtyFourth), Style::Millimetres];
    let exact = styles.into_iter().map(shown).find(|shown| !shown.rounded);
    exact.unwrap_or_else(|| shown(style)).text
}
