//! Sentences that keep their lengths as data until somebody who knows the house's units writes them.

mod counted;

pub(crate) use counted::counted;

use crate::decimal::Decimal;
use crate::length::{Length, Rounding, Style};
use serde::Serialize;

/// A sentence, or a part of one, whose lengths are not written yet.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(transparent)]
pub struct Wording {
    parts: Vec<Part>,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
enum Part {
    Text(String),
    Length(Length),
}

impl Wording {
    /// The sentence with its lengths in the figures of `style`, to the nearest.
    ///
    /// ```
    /// let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON)?;
    /// let style = plan.house().drawn_in.in_text();
    /// assert!(plan.findings().iter().all(|finding| !finding.message.written(style).is_empty()));
    /// # Ok::<(), edgenail::Error>(())
    /// ```
    pub fn written(&self, style: Style) -> String {
        let mut text = String::new();
        for part in &self.parts {
            match part {
                Part::Text(part) => text.push_str(part),
                Part::Length(length) => text.push_str(&length.show(style, Rounding::Nearest).text),
            }
        }
        text
    }

    /// It says nothing.
    pub const fn is_empty(&self) -> bool {
        self.parts.is_empty()
    }

    /// What is said in one go.
    pub(crate) fn of(said: &(impl Say + ?Sized)) -> Self {
        let mut wording = Self::default();
        said.say(&mut wording);
        wording
    }

    fn text(&mut self, text: &str) {
        match self.parts.last_mut() {
            Some(Part::Text(last)) => last.push_str(text),
            _ => self.parts.push(Part::Text(text.to_owned())),
        }
    }
}

/// What may stand in a sentence.
pub(crate) trait Say {
    /// Puts it at the end of what was said.
    fn say(&self, wording: &mut Wording);
}

impl<T: Say + ?Sized> Say for &T {
    fn say(&self, wording: &mut Wording) {
        (*self).say(wording);
    }
}

impl Say for Length {
    fn say(&self, wording: &mut Wording) {
        wording.parts.push(Part::Length(*self));
    }
}

impl Say for Wording {
    fn say(&self, wording: &mut Wording) {
        for part in &self.parts {
            match part {
                Part::Text(text) => wording.text(text),
                Part::Length(length) => length.say(wording),
            }
        }
    }
}

impl Say for str {
    fn say(&self, wording: &mut Wording) {
        wording.text(self);
    }
}

impl Say for String {
    fn say(&self, wording: &mut Wording) {
        wording.text(self);
    }
}

impl Say for u32 {
    fn say(&self, wording: &mut Wording) {
        wording.text(&self.to_string());
    }
}

impl Say for Decimal {
    fn say(&self, wording: &mut Wording) {
        wording.text(&self.to_string());
    }
}

/// A sentence of texts, lengths and numbers, one after the other.
macro_rules! wording {
    ($($part:expr),+ $(,)?) => {{
        let mut wording = $crate::wording::Wording::default();
        $($crate::wording::Say::say(&$part, &mut wording);)+
        wording
    }};
}

pub(crate) use wording;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::length::Finest;

    /// 1 in. is 25.4 mm (NIST SP 811, B.8).
    #[test]
    fn a_sentence_is_written_in_the_units_that_are_asked_for() {
        let apart = Length::inches(24);
        let said = wording![
            "Seams ",
            wording![apart, " apart"],
            " on ",
            "A1",
            "; keep ",
            Length::mm(610)
        ];
        assert_eq!(
            said.written(Style::Millimetres),
            "Seams 609.6 mm apart on A1; keep 610 mm"
        );
        assert_eq!(
            said.written(Style::Inches(Finest::SixtyFourth)),
            "Seams 24\" apart on A1; keep ≈24 1/64\""
        );
    }
}
