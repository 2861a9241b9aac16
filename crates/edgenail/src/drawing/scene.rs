//! A drawing as plain data.

use super::glyphs;
use crate::length::Length;
use serde::Serialize;

/// Micrometres on paper.
pub type Micron = i64;

/// One millimetre on paper.
pub const MM: Micron = 1_000;

/// A place on paper: x to the right and y down from the upper left corner, in micrometres.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct Spot {
    /// To the right.
    pub x: Micron,
    /// Down.
    pub y: Micron,
}

impl Spot {
    /// The place at these coordinates.
    pub const fn new(x: Micron, y: Micron) -> Self {
        Self { x, y }
    }

    /// The place so far to the right and down from here.
    #[must_use]
    pub const fn moved(self, right: Micron, down: Micron) -> Self {
        Self::new(self.x + right, self.y + down)
    }
}

/// An upright rectangle on paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct Extent {
    /// Left side.
    pub x0: Micron,
    /// Upper side.
    pub y0: Micron,
    /// Right side.
    pub x1: Micron,
    /// Lower side.
    pub y1: Micron,
}

impl Extent {
    /// The rectangle between these sides.
    pub const fn new(x0: Micron, y0: Micron, x1: Micron, y1: Micron) -> Self {
        Self { x0, y0, x1, y1 }
    }

    /// The rectangle with this upper left corner and size.
    pub const fn sized(corner: Spot, width: Micron, height: Micron) -> Self {
        Self::new(corner.x, corner.y, corner.x + width, corner.y + height)
    }

    /// The rectangle of this size around a middle.
    pub const fn around(middle: Spot, width: Micron, height: Micron) -> Self {
        let corner = Spot::new(middle.x - width / 2, middle.y - height / 2);
        Self::sized(corner, width, height)
    }

    /// Size from left to right.
    pub const fn width(&self) -> Micron {
        self.x1 - self.x0
    }

    /// Size from top to bottom.
    pub const fn height(&self) -> Micron {
        self.y1 - self.y0
    }

    /// The middle, rounded towards the upper left.
    pub const fn middle(&self) -> Spot {
        Spot::new(self.x0 + self.width() / 2, self.y0 + self.height() / 2)
    }

    /// The two share more than an edge.
    pub const fn meets(&self, other: &Self) -> bool {
        self.x0 < other.x1 && other.x0 < self.x1 && self.y0 < other.y1 && other.y0 < self.y1
    }

    /// The other lies within this one.
    pub const fn covers(&self, other: &Self) -> bool {
        self.x0 <= other.x0 && other.x1 <= self.x1 && self.y0 <= other.y0 && other.y1 <= self.y1
    }

    /// The place lies within.
    pub const fn holds(&self, spot: Spot) -> bool {
        self.x0 <= spot.x && spot.x <= self.x1 && self.y0 <= spot.y && spot.y <= self.y1
    }

    /// The rectangle with every side moved outward.
    #[must_use]
    pub const fn grown(&self, by: Micron) -> Self {
        Self::new(self.x0 - by, self.y0 - by, self.x1 + by, self.y1 + by)
    }

    /// The corners, clockwise from the upper left.
    pub const fn corners(&self) -> [Spot; 4] {
        [
            Spot::new(self.x0, self.y0),
            Spot::new(self.x1, self.y0),
            Spot::new(self.x1, self.y1),
            Spot::new(self.x0, self.y1),
        ]
    }
}

/// What a mark stands for. Later layers lie over earlier ones.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Layer {
    /// Edge of the drawing sheet.
    Border,
    /// Lines of tables and of the title block.
    Table,
    /// What the wall stands on.
    Ground,
    /// Members behind the sheets.
    HiddenMember,
    /// Members in a drawing of the frame.
    Member,
    /// Edge of the subfloor, which holds no nail.
    SubfloorEdge,
    /// Blocks set before the sheets.
    Block,
    /// Studs added to carry a seam, and pieces that widen a member.
    AddedStud,
    /// Rough openings.
    Opening,
    /// Diagonals of rough openings, and outlines of holes cut in place.
    Cutout,
    /// A whole sheet before cutting.
    Sheet,
    /// Parts of a sheet that are thrown away.
    Waste,
    /// Parts of a sheet that are kept.
    Leftover,
    /// Pieces of sheathing.
    Panel,
    /// Panel edges that nothing holds.
    FreeEdge,
    /// Shear segments and braced panels.
    Segment,
    /// Nails along panel edges.
    EdgeNails,
    /// Nails along the boundary of a segment where no panel edge falls.
    BoundaryNails,
    /// Nails along openings.
    OpeningNails,
    /// Nails on members between.
    FieldNails,
    /// Notches, holes and slopes of a piece on its sheet.
    Notch,
    /// Saw cuts.
    Cut,
    /// Direction in which a sheet is strong.
    StrengthAxis,
    /// Line that is snapped first.
    Datum,
    /// Where work and layout start.
    Start,
    /// Dimension lines.
    Dimension,
    /// Lines from a label to what it names.
    Leader,
    /// Flags of findings.
    Flag,
    /// Rings around numbers.
    Ring,
}

/// The form of a mark.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Form {
    /// A line from place to place.
    Line {
        /// Its corners.
        through: Vec<Spot>,
    },
    /// An area with all its rings.
    Polygon {
        /// Outer ring and holes.
        rings: Vec<Vec<Spot>>,
    },
    /// A circle.
    Circle {
        /// Its middle.
        middle: Spot,
        /// Its radius.
        radius: Micron,
    },
    /// A filled tip of an arrow.
    Tip {
        /// The three corners.
        corners: [Spot; 3],
    },
    /// A row of nails: nails `first` to `last` of a line divided into `spaces` equal parts, as in
    /// [`NailRow`](crate::nailing::NailRow).
    Nails {
        /// Start of the divided line.
        from: Spot,
        /// End of the divided line.
        to: Spot,
        /// Equal parts of the line.
        spaces: u32,
        /// First nail.
        first: u32,
        /// Last nail.
        last: u32,
        /// Diameter of the dot.
        dot: Micron,
        /// Drawn square: a nail of another kind than the first.
        square: bool,
    },
}

/// One mark on paper.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Mark {
    /// What it stands for.
    pub layer: Layer,
    /// Its form.
    pub form: Form,
}

/// Which point of a text its place is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Anchor {
    /// The left end of its base line.
    Start,
    /// The middle of its base line.
    Middle,
    /// The right end of its base line.
    End,
}

/// What a label says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Says {
    /// The mark of a piece.
    PieceMark {
        /// The piece's place in the layout's list.
        piece: u32,
    },
    /// The cut size of a piece.
    PieceSize {
        /// The piece's place in the layout's list.
        piece: u32,
    },
    /// A dimension.
    Dimension {
        /// Its place in the drawing's list.
        dimension: u32,
    },
    /// Anything else.
    Note,
}

/// A line of text with the box that it may fill.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Label {
    /// What it says.
    pub says: Says,
    /// The text.
    pub text: String,
    /// Its place on the base line.
    pub at: Spot,
    /// Which point of the base line the place is.
    pub anchor: Anchor,
    /// Height of the type.
    pub size: Micron,
    /// In bold type.
    pub bold: bool,
    /// It reads upward instead of to the right.
    pub turned: bool,
    /// What lies behind it is covered.
    pub backed: bool,
    /// The most that it fills in any common sans-serif type.
    pub extent: Extent,
    /// A line from the label to what it names ends here.
    pub points_at: Option<Spot>,
}

impl Label {
    /// A label whose box's upper left corner (lower left when turned) lies at a place.
    pub fn new(says: Says, text: impl Into<String>, corner: Spot, size: Micron) -> Self {
        let text = text.into();
        let width = glyphs::width(&text, size, false);
        Self {
            says,
            at: corner.moved(0, glyphs::ascent(size)),
            anchor: Anchor::Start,
            size,
            bold: false,
            turned: false,
            backed: false,
            extent: Extent::sized(corner, width, glyphs::line(size)),
            points_at: None,
            text,
        }
    }

    /// A label centred in its box around a place.
    pub fn centred(
        says: Says,
        text: impl Into<String>,
        middle: Spot,
        size: Micron,
        bold: bool,
        turned: bool,
    ) -> Self {
        let text = text.into();
        let (along, across) = (glyphs::width(&text, size, bold), glyphs::line(size));
        let (width, height) = if turned { (across, along) } else { (along, across) };
        let extent = Extent::around(middle, width, height);
        let at = if turned {
            Spot::new(extent.x0 + glyphs::ascent(size), middle.y)
        } else {
            Spot::new(middle.x, extent.y0 + glyphs::ascent(size))
        };
        Self {
            says,
            text,
            at,
            anchor: Anchor::Middle,
            size,
            bold,
            turned,
            backed: false,
            extent,
            points_at: None,
        }
    }

    /// The same in bold type.
    #[must_use]
    pub fn bold(mut self) -> Self {
        let wider = glyphs::width(&self.text, self.size, true);
        self.extent.x1 = self.extent.x0 + wider;
        self.bold = true;
        self
    }

    /// The same with its right end where its left end was.
    #[must_use]
    pub fn ending(mut self) -> Self {
        let width = self.extent.width();
        self.extent.x0 -= width;
        self.extent.x1 -= width;
        self.anchor = Anchor::End;
        self
    }

    /// The same over a patch that covers what lies behind.
    #[must_use]
    pub fn backed(mut self) -> Self {
        self.backed = true;
        self
    }
}

/// Which way a dimension is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Along {
    /// Along the wall.
    Wall,
    /// Up the wall.
    Height,
}

/// A running dimension: the distance of a place from where measuring starts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Dimension {
    /// Which way it is measured.
    pub along: Along,
    /// Where measuring starts, in wall coordinates.
    pub from: Length,
    /// The place, in wall coordinates.
    pub to: Length,
    /// What the label says before it is rounded: below zero only for a level under the start.
    pub value: Length,
    /// Where measuring starts, on paper.
    pub from_at: Spot,
    /// The place, on paper.
    pub to_at: Spot,
}

/// A drawing: everything that is to be seen, as plain data.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Drawing {
    /// What it shows.
    pub title: String,
    /// Width of the paper.
    pub width: Micron,
    /// Height of the paper.
    pub height: Micron,
    /// Lines and areas.
    pub marks: Vec<Mark>,
    /// Texts.
    pub labels: Vec<Label>,
    /// Dimensions.
    pub dimensions: Vec<Dimension>,
}

impl Drawing {
    /// The drawing as SVG text: the same bytes for the same drawing.
    ///
    /// ```
    /// use edgenail::drawing::{Drawing, Form, Layer, Mark, Spot, MM};
    /// let line = Form::Line { through: vec![Spot::new(10 * MM, 10 * MM), Spot::new(12_500, 10 * MM)] };
    /// let drawing = Drawing {
    ///     title: "a line".into(),
    ///     width: 20 * MM,
    ///     height: 20 * MM,
    ///     marks: vec![Mark { layer: Layer::Panel, form: line }],
    ///     ..Drawing::default()
    /// };
    /// assert!(drawing.svg().contains("M10 10L12.5 10"));
    /// ```
    pub fn svg(&self) -> String {
        super::svg::write(self)
    }

    /// The whole sheet of paper.
    pub const fn sheet(&self) -> Extent {
        Extent::new(0, 0, self.width, self.height)
    }

    /// Adds a mark.
    pub(super) fn mark(&mut self, layer: Layer, form: Form) {
        self.marks.push(Mark { layer, form });
    }

    /// Adds a line.
    pub(super) fn line(&mut self, layer: Layer, through: &[Spot]) {
        self.mark(
            layer,
            Form::Line {
                through: through.to_vec(),
            },
        );
    }

    /// Adds a rectangle.
    pub(super) fn rect(&mut self, layer: Layer, extent: &Extent) {
        self.mark(
            layer,
            Form::Polygon {
                rings: vec![extent.corners().to_vec()],
            },
        );
    }
}
