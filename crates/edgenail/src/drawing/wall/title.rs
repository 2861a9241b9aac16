//! The title block.

use super::arrange::Pages;
use super::{Canvas, Shows};
use crate::drawing::page::Cell;
use crate::drawing::{MM, Micron};
use crate::house::Face;
use crate::length::{Length, Rounding};
use crate::wording::counted;

impl Canvas<'_> {
    /// The cells of the title block of a page.
    pub(super) fn title_cells(&self, shows: Shows, scale: &str, pages: Pages, page: Micron) -> Vec<Cell> {
        let of_pages = if pages.count > 1 {
            format!(", page {} of {}", page + 1, pages.count)
        } else {
            String::new()
        };
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
        let spacing = |length: Length| self.spacing(length);
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
                    format!(
                        "scale {scale} on paper {} × {} mm{of_pages}",
                        self.drawing.width / MM,
                        pages.height / MM
                    ),
                ],
            },
            Cell {
                share: 14,
                heading: "SHEATHING",
                lines: vec![
                    kinds.join(", "),
                    counted(self.input.layout.pieces.len(), "piece", "pieces"),
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
