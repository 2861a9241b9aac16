//! How each layer looks. Layers differ in dash or hatch, so that they are told apart in black and white too.

use super::{Layer, Micron};

/// A dash pattern: stroke, space, stroke, space, in micrometres; empty for a full line.
type Dash = &'static [Micron];

/// What fills an area.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fill {
    /// Nothing.
    None,
    /// Paper: what lies behind is covered.
    Paper,
    /// The colour of the line.
    Ink,
    /// Lines of a direction.
    Hatch(Hatch),
}

/// A pattern of lines.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Hatch {
    /// Rising to the right.
    Rising,
    /// Falling to the right.
    Falling,
    /// Both.
    Crossed,
    /// Upright.
    Upright,
    /// Dots.
    Dotted,
}

/// How a layer is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Pen {
    /// Width of its lines.
    pub width: Micron,
    /// Their dashes.
    pub dash: Dash,
    /// Their colour.
    pub ink: &'static str,
    /// What fills its areas.
    pub fill: Fill,
}

const BLACK: &str = "#111";
const GREY: &str = "#777";
const BLUE: &str = "#1b4f8a";
const GREEN: &str = "#25603b";
const RED: &str = "#a8201a";
const BROWN: &str = "#7a4a12";

const fn pen(width: Micron, dash: Dash, ink: &'static str, fill: Fill) -> Pen {
    Pen {
        width,
        dash,
        ink,
        fill,
    }
}

/// The pen of a layer.
pub(super) const fn pen_of(layer: Layer) -> Pen {
    match layer {
        Layer::Border => pen(400, &[], BLACK, Fill::None),
        Layer::Table => pen(130, &[], GREY, Fill::None),
        Layer::Ground => pen(150, &[], GREY, Fill::Hatch(Hatch::Dotted)),
        Layer::HiddenMember => pen(120, &[1_200, 800], GREY, Fill::None),
        Layer::Member => pen(180, &[], BLACK, Fill::Paper),
        Layer::SubfloorEdge => pen(100, &[], GREY, Fill::Hatch(Hatch::Upright)),
        Layer::Block => pen(200, &[], BROWN, Fill::Hatch(Hatch::Rising)),
        Layer::AddedStud => pen(200, &[], BROWN, Fill::Hatch(Hatch::Crossed)),
        Layer::Opening => pen(250, &[], BLACK, Fill::Paper),
        Layer::Cutout => pen(90, &[2_000, 600, 400, 600], GREY, Fill::None),
        Layer::Sheet => pen(350, &[], BLACK, Fill::None),
        Layer::Waste => pen(90, &[], GREY, Fill::Hatch(Hatch::Falling)),
        Layer::Leftover => pen(150, &[800, 500], GREEN, Fill::Hatch(Hatch::Dotted)),
        Layer::Panel => pen(300, &[], BLACK, Fill::None),
        Layer::FreeEdge => pen(900, &[300, 900], RED, Fill::None),
        Layer::Segment => pen(600, &[5_000, 1_000, 800, 1_000], BLUE, Fill::None),
        Layer::EdgeNails => pen(90, &[1_600, 700], BLUE, Fill::None),
        Layer::BoundaryNails => pen(90, &[3_000, 600, 600, 600], BLUE, Fill::None),
        Layer::OpeningNails => pen(90, &[700, 500], BLUE, Fill::None),
        Layer::FieldNails => pen(70, &[400, 1_800], BLUE, Fill::None),
        Layer::Notch => pen(200, &[1_200, 500], BLACK, Fill::None),
        Layer::Cut => pen(250, &[2_500, 700], RED, Fill::None),
        Layer::StrengthAxis => pen(180, &[], GREEN, Fill::None),
        Layer::Datum => pen(250, &[6_000, 1_000, 1_000, 1_000], RED, Fill::None),
        Layer::Start => pen(350, &[], BLACK, Fill::Ink),
        Layer::Dimension | Layer::Leader => pen(120, &[], BLACK, Fill::None),
        Layer::Flag => pen(300, &[], RED, Fill::Paper),
        Layer::Ring => pen(200, &[], BLACK, Fill::Paper),
    }
}

/// The name of a layer in the file.
pub(super) const fn name_of(layer: Layer) -> &'static str {
    match layer {
        Layer::Border => "border",
        Layer::Table => "table",
        Layer::Ground => "ground",
        Layer::HiddenMember => "hidden-members",
        Layer::Member => "members",
        Layer::SubfloorEdge => "subfloor-edge",
        Layer::Block => "blocks",
        Layer::AddedStud => "added-studs",
        Layer::Opening => "openings",
        Layer::Cutout => "cut-outs",
        Layer::Sheet => "sheet",
        Layer::Waste => "waste",
        Layer::Leftover => "leftovers",
        Layer::Panel => "panels",
        Layer::FreeEdge => "free-edges",
        Layer::Segment => "segments",
        Layer::EdgeNails => "edge-nails",
        Layer::BoundaryNails => "boundary-nails",
        Layer::OpeningNails => "opening-nails",
        Layer::FieldNails => "field-nails",
        Layer::Notch => "notches",
        Layer::Cut => "cuts",
        Layer::StrengthAxis => "strength-axis",
        Layer::Datum => "datum",
        Layer::Start => "start",
        Layer::Dimension => "dimensions",
        Layer::Leader => "leaders",
        Layer::Flag => "flags",
        Layer::Ring => "rings",
    }
}

/// The name of a hatch in the file.
pub(super) const fn hatch_name(hatch: Hatch) -> &'static str {
    match hatch {
        Hatch::Rising => "rising",
        Hatch::Falling => "falling",
        Hatch::Crossed => "crossed",
        Hatch::Upright => "upright",
        Hatch::Dotted => "dotted",
    }
}
