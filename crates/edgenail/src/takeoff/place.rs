//! Where a piece is set from, and in which storey a thing is.

use super::Part;
use crate::amount::Amount;
use crate::decimal::Decimal;
use crate::frame::{Frame, StoreyPlace};
use crate::geometry::Rect;
use crate::house::{JobRates, Practice};
use crate::layout::{hung_on_deck_of, storey_of};
use crate::length::Length;
use serde::Serialize;

/// Where a piece is set from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Place {
    /// On the deck of the lowest storey.
    Deck,
    /// Against a standing wall.
    Standing,
    /// From a ladder.
    Ladder,
    /// In an upper storey.
    UpperStorey,
    /// High up.
    High,
}

impl Place {
    /// How many places there are.
    pub const COUNT: usize = 5;

    /// Where a piece with this blank is set from.
    ///
    /// On the deck go pieces that stay within a storey; from the lowest one they may hang over what is below. All
    /// others, those that lap past a neighbour, and all pieces of a wall that is sheathed standing, wait until the wall
    /// stands.
    pub fn of(frame: &Frame, practice: &Practice, rates: &JobRates, blank: &Rect) -> Self {
        let own = storey_of(frame, blank).map(|(_, storey)| storey);
        if own.is_some_and(|storey| hung_on_deck_of(frame, practice, storey, blank)) {
            return if in_upper_storey(own, blank) {
                Self::UpperStorey
            } else {
                Self::Deck
            };
        }
        Self::against(frame, rates, own, blank)
    }

    /// Where a piece with this blank is set from against a standing wall.
    pub fn standing(frame: &Frame, rates: &JobRates, blank: &Rect) -> Self {
        Self::against(
            frame,
            rates,
            storey_of(frame, blank).map(|(_, storey)| storey),
            blank,
        )
    }

    /// Where a piece that belongs to this storey is set from against a standing wall.
    fn against(frame: &Frame, rates: &JobRates, own: Option<&StoreyPlace>, blank: &Rect) -> Self {
        let ground = own.map_or(Length::ZERO, |storey| ground(frame, storey));
        let places = &rates.places;
        if (blank.y0 + blank.y1).half() - ground > places.high_above {
            Self::High
        } else if in_upper_storey(own, blank) {
            Self::UpperStorey
        } else if blank.y1 - ground > places.ladder_above {
            Self::Ladder
        } else {
            Self::Standing
        }
    }

    /// The part of the cost that holds what the place adds, with its factor; none on the deck.
    pub const fn factor(self, rates: &JobRates) -> Option<(Part, Decimal)> {
        match self {
            Self::Deck => None,
            Self::Standing => Some((Part::Standing, rates.places.standing)),
            Self::Ladder => Some((Part::Ladder, rates.places.ladder)),
            Self::UpperStorey => Some((Part::UpperStorey, rates.places.upper_storey)),
            Self::High => Some((Part::High, rates.places.high)),
        }
    }

    /// What the place adds to so many minutes on the deck, rounded half up.
    pub fn adds(factor: Decimal, minutes: Amount) -> Amount {
        let places = 4;
        let rounded = || factor.scaled(1, 1, places)?.in_units_of(places);
        let factor = factor.in_units_of(places).or_else(rounded);
        let factor = Amount::from_ten_thousandths(factor.unwrap_or(Amount::PER_UNIT));
        minutes.at(factor - Amount::whole(1)).unwrap_or_default()
    }
}

/// The underside of the lowest plate of the section that a storey is in.
fn ground(frame: &Frame, storey: &StoreyPlace) -> Length {
    frame
        .sections
        .get(storey.section as usize)
        .map_or(storey.base, |section| section.base)
}

/// A piece reaches over the bottom plates of an upper storey that it belongs to.
fn in_upper_storey(own: Option<&StoreyPlace>, blank: &Rect) -> bool {
    own.is_some_and(|storey| blank.y1 > storey.studs_from && storey.stage > 0)
}
