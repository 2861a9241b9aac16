//! What is above the uppermost plate.

use super::storey::origin;
use crate::house::{EaveTrusses, GableTruss, Pitch, Rake, RakeBuild, Top};
use crate::reading::object::Object;

/// A top.
pub(super) fn top(word: &str, object: &Object<'_>) -> Top {
    match word {
        "rake" => Top::Rake(rake(object)),
        "gable_truss" => Top::GableTruss(gable_truss(object)),
        "eave_trusses" => Top::EaveTrusses(eave_trusses(object)),
        _ => Top::Flat,
    }
}

fn pitch(object: &Object<'_>) -> Pitch {
    Pitch {
        rise: object.length("rise"),
        run: object.length("run"),
    }
}

fn rake(object: &Object<'_>) -> Rake {
    Rake {
        ridge_x: object.length("ridge_x"),
        peak: object.length("peak"),
        left: object.object("left", pitch),
        right: object.object("right", pitch),
        build: object.choice("build", [RakeBuild::RakedPlates, RakeBuild::Ladder]),
    }
}

fn gable_truss(object: &Object<'_>) -> GableTruss {
    GableTruss {
        ridge_x: object.length("ridge_x"),
        heel: object.length("heel"),
        pitch: object.object("pitch", pitch),
        chord: object.length("chord"),
        web_width: object.length("web_width"),
        web_spacing: object.length("web_spacing"),
        setback: object.length("setback"),
        sheathed: object.flag("sheathed"),
        hold_up: object.length("hold_up"),
    }
}

fn eave_trusses(object: &Object<'_>) -> EaveTrusses {
    EaveTrusses {
        spacing: object.length("spacing"),
        origin: object.object("origin", origin),
        width: object.length("width"),
        heel: object.length("heel"),
        blocked: object.flag("blocked"),
        vent_space: object.length("vent_space"),
        hold_up: object.length("hold_up"),
    }
}
