//! The lists under the wall and the title block.

use super::flags::MOST;
use super::nails::layer_of;
use super::wood::groups;
use super::{Canvas, Shows};
use crate::blocking::BlockLie;
use crate::drawing::page::{Cell, List, MARGIN, ROW, Row, Sample};
use crate::drawing::{Layer, MM, Micron, Spot};
use crate::finding::Severity;
use crate::house::{End, Face, OpeningKind};
use crate::length::{Length, Rounding};
use crate::nailing::Zone;

/// Width of one column of lists.
const COLUMN: Micron = 96 * MM;
/// From column to column.
const PITCH: Micron = 98 * MM + 500;

impl Canvas<'_> {
    /// Sets all lists in columns from a line downwards; gives the line under the longest column.
    pub(super) fn lists(&mut self, shows: Shows, top: Micron) -> Micron {
        let mut rows: Vec<(Vec<Micron>, Row)> = Vec::new();
        let mut add = |columns: &[Micron], list: Vec<Row>| {
            if list.len() > 1 {
                rows.extend(list.into_iter().map(|row| (columns.to_vec(), row)));
            }
        };
        if shows == Shows::Sheathing {
            add(&[7 * MM, 11 * MM, 7 * MM, 31 * MM, 40 * MM], self.piece_rows());
        }
        add(&[8 * MM, 38 * MM, 32 * MM, 18 * MM], self.opening_rows());
        add(&[], self.wood_rows());
        if shows == Shows::Sheathing {
            add(&[], self.start_rows());
            add(&[], self.finding_rows());
        }
        add(&[], self.legend_rows(shows));
        self.flow(rows, top)
    }

    /// Lets rows flow from column to column.
    fn flow(&mut self, rows: Vec<(Vec<Micron>, Row)>, top: Micron) -> Micron {
        let inner = self.drawing.width - 2 * (MARGIN + 3 * MM);
        let count = (inner / PITCH).max(1);
        let lists: Vec<List> = rows
            .into_iter()
            .map(|(columns, row)| List {
                columns,
                rows: vec![row],
                width: COLUMN,
            })
            .collect();
        let total: Micron = lists.iter().map(List::height).sum();
        // A column ends a little late at most, by the longest row.
        let longest = lists.iter().map(List::height).max().unwrap_or(ROW);
        let high = total / count + longest + 3 * ROW;
        let mut corner = Spot::new(MARGIN + 3 * MM, top);
        let mut lowest = top;
        for (index, list) in lists.iter().enumerate() {
            let is_heading = |list: &List| matches!(list.rows.first(), Some(Row::Heading(_)));
            let with_next = if is_heading(list) {
                lists.get(index + 1).map_or(0, List::height)
            } else {
                0
            };
            if corner.y > top && corner.y + list.height() + with_next > top + high {
                corner = Spot::new(corner.x + PITCH, top);
            } else if is_heading(list) && corner.y > top {
                corner.y += ROW * 2 / 3;
            }
            list.set(&mut self.drawing, &mut self.room, corner);
            corner.y += list.height();
            lowest = lowest.max(corner.y);
        }
        lowest
    }

    fn piece_rows(&self) -> Vec<Row> {
        let mut pieces: Vec<_> = self.input.layout.pieces.iter().collect();
        pieces.sort_by_key(|piece| piece.hang_order);
        let mut rows = vec![Row::Heading(
            "Pieces in order of hanging: sheet, width × height, cut-outs".into(),
        )];
        for piece in pieces {
            let blank = piece.blank();
            let mut cuts = self.cut_outs(piece).into_iter();
            rows.push(Row::Cells(vec![
                (piece.hang_order + 1).to_string(),
                piece.mark.clone(),
                format!("S{}", self.sheet_key(piece.sheet)),
                self.size(blank.width(), blank.height(), Rounding::Down),
                cuts.next().unwrap_or_default(),
            ]));
            rows.extend(cuts.map(|cut| {
                Row::Cells(vec![
                    String::new(),
                    String::new(),
                    String::new(),
                    String::new(),
                    cut,
                ])
            }));
        }
        rows
    }

    /// Sheets that this wall uses, as places in the stock's list.
    fn sheets(&self) -> Vec<u32> {
        let mut sheets: Vec<u32> = self.input.layout.pieces.iter().map(|piece| piece.sheet).collect();
        sheets.sort_unstable();
        sheets.dedup();
        sheets
    }

    fn sheet_key(&self, sheet: u32) -> usize {
        self.sheets()
            .iter()
            .position(|&used| used == sheet)
            .map_or(0, |index| index + 1)
    }

    fn opening_rows(&self) -> Vec<Row> {
        let mut rows = vec![Row::Heading("Rough openings: width × height, sill level".into())];
        for (index, opening) in self.input.frame.openings.iter().enumerate() {
            let kind = match opening.kind {
                OpeningKind::Door => "door",
                OpeningKind::Window => "window",
                OpeningKind::Garage => "garage door",
                OpeningKind::Other => "opening",
            };
            let name = if opening.name.contains(kind) {
                opening.name.clone()
            } else {
                format!("{}, {kind}", opening.name)
            };
            rows.push(Row::Cells(vec![
                format!("O{}", index + 1),
                name,
                self.size(opening.rect.width(), opening.rect.height(), Rounding::Up),
                self.show(opening.rect.y0, Rounding::Down),
            ]));
        }
        let from = self.start_x();
        let holes = self
            .input
            .frame
            .penetrations
            .iter()
            .enumerate()
            .map(|(i, patch)| (format!("P{}", i + 1), patch));
        let bare = self
            .input
            .frame
            .bare_zones
            .iter()
            .enumerate()
            .map(|(i, patch)| (format!("Z{}", i + 1), patch));
        for (key, patch) in holes.chain(bare) {
            let near = (patch.rect.x0 - from).abs().min((patch.rect.x1 - from).abs());
            rows.push(Row::Cells(vec![
                key,
                format!("{} at {}", patch.name, self.show(near, Rounding::Down)),
                self.size(patch.rect.width(), patch.rect.height(), Rounding::Up),
                self.show(patch.rect.y0, Rounding::Down),
            ]));
        }
        rows
    }

    fn wood_rows(&self) -> Vec<Row> {
        let blocking = self.input.blocking;
        let stick = |index: u32| {
            self.input
                .house
                .stock
                .sticks
                .get(index as usize)
                .map_or_else(String::new, |stick| stick.name.clone())
        };
        let mut rows = vec![Row::Heading("Set before the sheets".into())];
        let groups = groups(&blocking.blocks);
        for (index, group) in groups.iter().enumerate() {
            let lie = match group.lie {
                BlockLie::Flat => "flat, wide face to the sheets",
                BlockLie::OnEdge => "on edge",
            };
            let lead = if groups.len() > 1 {
                format!("b{}", index + 1)
            } else {
                String::new()
            };
            let count = group.blocks.len();
            let plural = if count == 1 { "block" } else { "blocks" };
            let length = self.show(group.length, Rounding::Down);
            rows.push(Row::Text(
                lead,
                format!("{count} {plural} {length} of {}, {lie}", stick(group.stick)),
            ));
        }
        for stud in &blocking.studs {
            let middle = stud.rect.x0 + stud.rect.width().half();
            let at = self.show((middle - self.start_x()).abs(), Rounding::Nearest);
            rows.push(Row::Text(
                String::new(),
                format!(
                    "stud of {}, {} long, centre at {at}",
                    stick(stud.stick),
                    self.show(stud.rect.height(), Rounding::Down)
                ),
            ));
        }
        for widened in &blocking.widened {
            let long = widened.rect.width().max(widened.rect.height());
            rows.push(Row::Text(
                String::new(),
                format!(
                    "{} {} beside a member: {}",
                    stick(widened.stick),
                    self.show(long, Rounding::Down),
                    widened.because
                ),
            ));
        }
        for none in &blocking.impossible {
            rows.push(Row::Text(
                "!".into(),
                format!("edge that cannot be backed: {}", none.because),
            ));
        }
        rows
    }

    fn start_rows(&self) -> Vec<Row> {
        let mut rows = vec![Row::Heading("Start".into())];
        let end = match self.input.start.end {
            End::Left => "left",
            End::Right => "right",
        };
        rows.push(Row::Text(
            String::new(),
            format!("Lay sheets from the {end} end. Seams and openings are measured running from that end of the sheathing, levels from the wall's zero line."),
        ));
        if let Some(datum) = self.input.start.datum {
            rows.push(Row::Text(
                String::new(),
                format!(
                    "Snap the datum line {} above the zero line.",
                    self.show(datum, Rounding::Nearest)
                ),
            ));
        }
        rows.extend(
            self.input
                .start
                .notes
                .iter()
                .map(|note| Row::Text(String::new(), note.clone())),
        );
        let gap = self.wall.practice.gap;
        if gap > Length::ZERO {
            rows.push(Row::Text(
                String::new(),
                format!("Leave {} at every panel joint.", self.show(gap, Rounding::Up)),
            ));
        }
        rows
    }

    fn finding_rows(&self) -> Vec<Row> {
        let mut rows = vec![Row::Heading("Findings".into())];
        for (index, finding) in self.listed().iter().enumerate() {
            let weight = match finding.severity {
                Severity::Refuse => "REFUSE",
                Severity::Mend => "MEND",
                Severity::Advise => "advice",
            };
            let piece = if finding.piece.is_empty() {
                String::new()
            } else {
                format!(" {}", finding.piece)
            };
            rows.push(Row::Text(
                (index + 1).to_string(),
                format!("{weight}{piece}: {}", finding.message),
            ));
        }
        let more = self.input.findings.len().saturating_sub(MOST);
        if more > 0 {
            rows.push(Row::Text(
                String::new(),
                format!("and {more} more, listed in the plan"),
            ));
        }
        rows
    }

    fn legend_rows(&self, shows: Shows) -> Vec<Row> {
        let drawn = |layer: Layer| self.drawing.marks.iter().any(|mark| mark.layer == layer);
        let mut rows = vec![Row::Heading("Legend".into())];
        let mut add = |used: bool, sample: Sample, text: &str| {
            if used {
                rows.push(Row::Sample(sample, text.to_owned()));
            }
        };
        add(drawn(Layer::Panel), Sample::Line(Layer::Panel), "panel edge");
        add(
            shows == Shows::Sheathing,
            Sample::Axis,
            "strength axis of the sheet",
        );
        add(drawn(Layer::Ring), Sample::Ring, "turn in the order of hanging");
        add(
            drawn(Layer::HiddenMember),
            Sample::Line(Layer::HiddenMember),
            "member behind the sheets",
        );
        add(drawn(Layer::Member), Sample::Patch(Layer::Member), "member");
        add(
            drawn(Layer::Block),
            Sample::Patch(Layer::Block),
            "block, set before the sheets",
        );
        add(
            drawn(Layer::AddedStud),
            Sample::Patch(Layer::AddedStud),
            "stud or piece added to carry a seam",
        );
        add(
            drawn(Layer::SubfloorEdge),
            Sample::Patch(Layer::SubfloorEdge),
            "edge of the subfloor: no nails",
        );
        add(drawn(Layer::Ground), Sample::Patch(Layer::Ground), "concrete");
        add(
            drawn(Layer::FreeEdge),
            Sample::Line(Layer::FreeEdge),
            "panel edge that nothing backs",
        );
        add(
            drawn(Layer::Segment),
            Sample::Line(Layer::Segment),
            "shear segment or braced panel: mark, nails edge / field",
        );
        add(drawn(Layer::Datum), Sample::Line(Layer::Datum), "datum line");
        add(drawn(Layer::Flag), Sample::Flag, "finding, see the list");
        let words = [
            (Zone::Edge, "nails along panel edges"),
            (
                Zone::Boundary,
                "nails along plates, rims and end posts of a segment",
            ),
            (Zone::Opening, "nails along openings"),
            (Zone::Field, "nails on members between"),
        ];
        for (zone, text) in words {
            add(drawn(layer_of(zone)), Sample::Nails(layer_of(zone), false), text);
        }
        if shows == Shows::Sheathing {
            for (index, &kind) in self.nail_kinds().iter().enumerate() {
                let name = self
                    .input
                    .house
                    .stock
                    .nails
                    .get(kind as usize)
                    .map(|nail| nail.name.as_str());
                let count: u64 = self
                    .input
                    .nailing
                    .rows
                    .iter()
                    .filter(|row| row.nail == kind)
                    .map(|row| u64::from(row.count()))
                    .sum();
                let text = format!("{}: {count} nails", name.unwrap_or_default());
                rows.push(Row::Sample(Sample::Nails(Layer::EdgeNails, index > 0), text));
            }
            for sheet in self.sheets() {
                let name = self
                    .input
                    .house
                    .stock
                    .sheets
                    .get(sheet as usize)
                    .map(|sheet| sheet.name.clone());
                rows.push(Row::Text(
                    format!("S{}", self.sheet_key(sheet)),
                    name.unwrap_or_default(),
                ));
            }
        }
        rows
    }

    /// The cells of the title block.
    pub(super) fn title_cells(&self, shows: Shows, scale: &str) -> Vec<Cell> {
        let house = self.input.house;
        let assembly = &self.wall.practice.assembly;
        let sheets: Vec<String> = self
            .sheets()
            .iter()
            .filter_map(|&index| house.stock.sheets.get(index as usize))
            .map(|sheet| format!("{} {}", sheet.category, sheet.grade))
            .collect();
        let mut kinds = sheets;
        kinds.sort_unstable();
        kinds.dedup();
        let face = match self.wall.face {
            Face::Exterior => "exterior face",
            Face::Interior => "interior face",
            Face::Party => "party wall face",
        };
        let what = match shows {
            Shows::Sheathing => "sheathing",
            Shows::Frame => "frame",
        };
        let length = self.show(self.wall.length, Rounding::Nearest);
        let spacing = |length: Length| self.show(length, Rounding::Down);
        let marks: Vec<&str> = self
            .input
            .frame
            .segments
            .iter()
            .map(|segment| segment.mark.as_str())
            .collect();
        let mut nailing = vec![
            format!(
                "{} / {}",
                spacing(assembly.edge_spacing),
                spacing(assembly.field_spacing)
            ),
            "panel edges / members between, on centre".to_owned(),
        ];
        if !marks.is_empty() {
            nailing.push(format!(
                "Segments {}: as written under the wall",
                marks.join(", ")
            ));
        }
        vec![
            Cell {
                share: 18,
                heading: "HOUSE",
                lines: vec![house.name.clone()],
            },
            Cell {
                share: 20,
                heading: "WALL",
                lines: vec![
                    self.wall.name.clone(),
                    format!("{what}, {face}, frame {length} long"),
                    format!("scale {scale} on A3; as seen from the sheathed face"),
                ],
            },
            Cell {
                share: 14,
                heading: "SHEATHING",
                lines: vec![
                    kinds.join(", "),
                    format!("{} pieces", self.input.layout.pieces.len()),
                ],
            },
            Cell {
                share: 18,
                heading: "NAILING",
                lines: nailing,
            },
        ]
    }
}
