//! A layout that somebody else made.

use super::practice::RUNNING;
use crate::house::{GivenBand, GivenLayout, GivenPiece};
use crate::reading::object::Object;

/// A given layout.
pub(super) fn layout(word: &str, object: &Object<'_>) -> GivenLayout {
    match word {
        "pieces" => GivenLayout::Pieces {
            pieces: object.list("pieces", piece),
        },
        _ => GivenLayout::Bands {
            bands: object.list("bands", band),
        },
    }
}

fn band(object: &Object<'_>) -> GivenBand {
    GivenBand {
        bottom: object.length("bottom"),
        top: object.length("top"),
        running: object.choice("running", RUNNING),
        sheet: object.text("sheet"),
        seams: object.lengths("seams"),
    }
}

fn piece(object: &Object<'_>) -> GivenPiece {
    GivenPiece {
        left: object.length("left"),
        bottom: object.length("bottom"),
        width: object.length("width"),
        height: object.length("height"),
        running: object.choice("running", RUNNING),
        sheet: object.text("sheet"),
    }
}
