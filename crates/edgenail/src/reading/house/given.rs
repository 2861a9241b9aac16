//! What somebody else made or measured.

use crate::house::{GivenBand, GivenLayout, GivenPiece, Measured, MeasuredOpening};
use crate::reading::fields::GIVEN_PIECES;
use crate::reading::record::Record;

pub(super) fn given_layout(record: &Record<'_, '_>) -> GivenLayout {
    if record.is(&GIVEN_PIECES) {
        return GivenLayout::Pieces {
            pieces: record.list("pieces", piece),
        };
    }
    GivenLayout::Bands {
        bands: record.list("bands", band),
    }
}

fn band(record: &Record<'_, '_>) -> GivenBand {
    GivenBand {
        bottom: record.get("bottom"),
        top: record.get("top"),
        running: record.get("running"),
        sheet: record.get("sheet"),
        seams: record.get("seams"),
    }
}

fn piece(record: &Record<'_, '_>) -> GivenPiece {
    GivenPiece {
        left: record.get("left"),
        bottom: record.get("bottom"),
        width: record.get("width"),
        height: record.get("height"),
        running: record.get("running"),
        sheet: record.get("sheet"),
    }
}

pub(super) fn measured(record: &Record<'_, '_>) -> Measured {
    Measured {
        length: record.get("length"),
        diagonals: record.get("diagonals"),
        out_of_plumb: record.get("out_of_plumb"),
        plumb_height: record.get("plumb_height"),
        bow: record.get("bow"),
        first_stud: record.get("first_stud"),
        openings: record.list("openings", |record| MeasuredOpening {
            opening: record.get("opening"),
            width: record.get("width"),
            height: record.get("height"),
            left: record.get("left"),
            diagonals: record.get("diagonals"),
        }),
    }
}
