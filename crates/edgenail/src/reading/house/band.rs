//! Floor bands.

use super::storey::{origin, plate};
use crate::house::{BandLayer, BandMembers, Direction, FloorBand, MemberKindInBand, Rim, RimKind};
use crate::reading::object::Object;

/// A floor band.
pub(super) fn band(object: &Object<'_>) -> FloorBand {
    FloorBand {
        name: object.text("name"),
        layers: object.variants("layers", layer),
    }
}

fn layer(word: &str, object: &Object<'_>) -> BandLayer {
    match word {
        "plate" => BandLayer::Plate(plate(object)),
        "members" => BandLayer::Members(members(object)),
        _ => BandLayer::Subfloor {
            thickness: object.length("thickness"),
        },
    }
}

fn members(object: &Object<'_>) -> BandMembers {
    let kinds = [
        MemberKindInBand::SawnJoist,
        MemberKindInBand::IJoist,
        MemberKindInBand::Truss,
    ];
    BandMembers {
        direction: object.choice("direction", [Direction::Across, Direction::Along]),
        member: object.choice("member", kinds),
        width: object.length("width"),
        depth: object.length("depth"),
        spacing: object.length("spacing"),
        origin: object.object("origin", origin),
        rim: object.object_or_null("rim", rim),
        blocking_between: object.flag("blocking_between"),
    }
}

fn rim(object: &Object<'_>) -> Rim {
    Rim {
        kind: object.choice("kind", [RimKind::Sawn, RimKind::Engineered]),
        thickness: object.length("thickness"),
    }
}
