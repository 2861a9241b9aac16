//! Corners.

use super::storey::end;
use crate::house::{Corner, CornerTurn, WallEnd};
use crate::reading::object::Object;

/// A corner.
pub(super) fn corner(object: &Object<'_>) -> Corner {
    Corner {
        through: object.object("through", wall_end),
        butting: object.object("butting", wall_end),
        turn: object.choice("turn", [CornerTurn::Outside, CornerTurn::Inside]),
    }
}

fn wall_end(object: &Object<'_>) -> WallEnd {
    WallEnd {
        wall: object.text("wall"),
        end: end(object, "end"),
    }
}
