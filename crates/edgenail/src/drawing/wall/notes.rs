//! The lists of a drawing: start, pieces, openings, wood, nailing, what it resists, findings.

use super::arrange::split;
use super::flags::MOST;
use super::wood::groups;
use super::{Canvas, Shows};
use crate::blocking::BlockLie;
use crate::drawing::glyphs::fitted;
use crate::drawing::page::{List, Row, SMALL};
use crate::drawing::{MM, Micron};
use crate::finding::Severity;
use crate::house::{End, OpeningKind};
use crate::length::{Length, Rounding};
use crate::wording::counted;

impl Canvas<'_> {
    /// All lists but the legend, row by row.
    pub(super) fn lists(&self, shows: Shows) -> Vec<List> {
        let mut lists: Vec<List> = Vec::new();
        let mut add = |columns: &[Micron], rows: Vec<Row>| {
            if rows.len() > 1 {
                lists.extend(split(columns, rows));
            }
        };
        if shows == Shows::Sheathing {
            add(&[], self.start_rows());
            add(&[8 * MM, 14 * MM, 9 * MM, 60 * MM], self.piece_rows());
        }
        add(&[9 * MM, 34 * MM, 34 * MM, 18 * MM], self.opening_rows());
        if shows == Shows::Frame {
            add(&[], self.member_rows());
        }
        add(&[], self.wood_rows());
        if shows == Shows::Sheathing {
            add(&[], self.nailing_rows());
            add(&[], self.resisted_rows());
            add(&[], self.finding_rows());
        }
        lists
    }

    fn piece_rows(&self) -> Vec<Row> {
        let mut pieces: Vec<_> = self.input.layout.pieces.iter().collect();
        pieces.sort_by_key(|piece| piece.hang_order);
        let mut rows = vec![Row::Heading(
            "Pieces in order of hanging: sheet, width × height".into(),
        )];
        if pieces.iter().any(|piece| piece.outline.is_rect().is_none()) {
            let text = "Cut-outs, slopes: from the piece's lower left corner.";
            rows.push(Row::Text(String::new(), text.to_owned()));
        }
        for piece in pieces {
            let blank = piece.blank();
            rows.push(Row::Cells(vec![
                (piece.hang_order + 1).to_string(),
                piece.mark.clone(),
                format!("S{}", self.sheet_key(piece.sheet)),
                self.size(blank.width(), blank.height(), Rounding::Down),
            ]));
            let cuts = self.cut_outs(piece).into_iter().chain(self.slopes(piece));
            rows.extend(cuts.map(|cut| Row::Text(String::new(), cut)));
        }
        for (index, &sheet) in self.sheets().iter().enumerate() {
            let stock = self.input.house.stock.sheets.get(sheet as usize);
            let name = stock.map_or_else(String::new, |sheet| {
                format!("{}, {} {}", sheet.name, sheet.category, sheet.grade)
            });
            rows.push(Row::Text(format!("S{}", index + 1), name));
        }
        rows
    }

    /// Sheets that this wall uses, as places in the stock's list.
    pub(super) fn sheets(&self) -> Vec<u32> {
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
            let blocks = counted(group.blocks.len(), "block", "blocks");
            let length = self.show(group.length, Rounding::Down);
            rows.push(Row::Text(
                lead,
                format!("{blocks} {length} of {}, {lie}", stick(group.stick)),
            ));
        }
        let mut studs: Vec<(u32, Length, Vec<Length>)> = Vec::new();
        for stud in &blocking.studs {
            let (length, middle) = (stud.rect.height(), stud.rect.x0 + stud.rect.width().half());
            match studs
                .iter_mut()
                .find(|(kind, long, _)| (*kind, *long) == (stud.stick, length))
            {
                Some((_, _, middles)) => middles.push(middle),
                None => studs.push((stud.stick, length, vec![middle])),
            }
        }
        for (kind, length, middles) in studs {
            let from = self.start_x();
            let at = middles
                .iter()
                .map(|&x| self.show((x - from).abs(), Rounding::Nearest));
            rows.push(Row::Text(
                String::new(),
                format!(
                    "{} {} long of {}, centre at {}",
                    counted(middles.len(), "stud", "studs"),
                    self.show(length, Rounding::Down),
                    stick(kind),
                    at.collect::<Vec<String>>().join(", ")
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
                    widened.because.written(self.input.house.drawn_in.in_text())
                ),
            ));
        }
        let mut impossible: Vec<(String, usize)> = Vec::new();
        for none in &blocking.impossible {
            let because = none.because.clone();
            match impossible.iter_mut().find(|(why, _)| *why == because) {
                Some((_, count)) => *count += 1,
                None => impossible.push((because, 1)),
            }
        }
        for (because, count) in impossible {
            let edges = counted(count, "edge", "edges");
            rows.push(Row::Text(
                "!".into(),
                format!("{edges} that cannot be backed: {because}"),
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
                    "Snap the datum line {} {} the zero line.",
                    self.show(datum.abs(), Rounding::Nearest),
                    if datum < Length::ZERO { "below" } else { "above" }
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

    /// What is nailed with what, and how far apart.
    fn nailing_rows(&self) -> Vec<Row> {
        let practice = &self.wall.practice;
        let spacing = |length: Length| self.spacing(length);
        let mut rows = vec![Row::Heading("Nailing".into())];
        let mut add = |lead: &str, text: String| rows.push(Row::Text(lead.to_owned(), text));
        add(
            "",
            format!(
                "{} on centre along panel edges and openings, {} on members between; at least {} from panel edges.",
                spacing(practice.assembly.edge_spacing),
                spacing(practice.assembly.field_spacing),
                self.show(practice.edge_distance_least, Rounding::Up)
            ),
        );
        for segment in &self.input.frame.segments {
            let Some(said) = self.wall.segments.get(segment.segment as usize) else {
                continue;
            };
            let (edge, field) = (spacing(said.edge_spacing), spacing(said.field_spacing));
            add(
                &fitted(&segment.mark, 7 * MM, SMALL, true),
                format!("{edge} along edges, plates and end posts, {field} between."),
            );
        }
        rows
    }

    fn finding_rows(&self) -> Vec<Row> {
        let mut rows = vec![Row::Heading("Findings".into())];
        let mut number = 0;
        for told in self.told().into_iter().take(MOST) {
            let weight = match told.first.severity {
                Severity::Refuse => "REFUSE",
                Severity::Mend => "MEND",
                Severity::Advise => "advice",
            };
            let lead = if told.flagged {
                number += 1;
                number.to_string()
            } else {
                String::new()
            };
            let mut text = format!(
                "{weight}: {}",
                told.first.message.written(self.input.house.drawn_in.in_text())
            );
            if !told.likewise.is_empty() {
                text = format!("{text} Likewise {}.", told.likewise.join(", "));
            }
            rows.push(Row::Text(lead, text));
        }
        if self.told().len() > MOST {
            rows.push(Row::Text(
                String::new(),
                "More are listed in the plan.".to_owned(),
            ));
        }
        rows
    }
}
