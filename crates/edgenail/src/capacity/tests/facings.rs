//! Faces of other materials against the cells that they were collected in.

use crate::capacity::*;
use crate::decimal::Decimal;
use crate::length::Length;
use crate::published::{FACING_ROWS, FacingMaterial, FacingRow, FacingTable};

fn query(row: &FacingRow) -> FacingQuery {
    use FacingMaterial::*;
    let wood = matches!(
        row.material,
        Particleboard
            | PlywoodSiding
            | PlywoodSidingOverGypsum
            | StructuralIOverGypsum
            | SheathingOverGypsum
            | StapledStructuralI
            | StapledStructuralIOverGypsum
    );
    FacingQuery {
        edition: if row.table == FacingTable::Cmr23063 {
            FacingEdition::Cmr780
        } else {
            FacingEdition::Sdpws2015
        },
        load: LoadKind::Seismic,
        method: Method::Asd,
        facing: Facing {
            material: row.material,
            thickness: row.thickness,
            fastener: row.fastener,
            edge_spacing: row.edge_spacing,
            field_spacing: if wood {
                Some(Length::inches(6))
            } else {
                row.field_spacing
            },
            stud_spacing: row.stud_spacing.unwrap_or(Length::inches(16)),
            blocked: row.blocked,
            specific_gravity: wood.then(|| Decimal::hundredths(50)),
            seam_member: Length::inches(3),
        },
        high_seismic: false,
        accept_unverified: true,
    }
}

/// The values of rows are the numbers in their cells, and no two rows answer one question.
#[test]
fn every_row_answers_and_says_what_its_cell_says() {
    for row in &FACING_ROWS {
        let found = facing(&query(row)).unwrap();
        assert!(std::ptr::eq(found.row, row), "{row:?}");
        for (place, value) in [(0, Some(row.seismic)), (1, row.stiffness), (2, row.wind)] {
            let Some(value) = value else { continue };
            let cell: Vec<f64> = value
                .cell
                .value
                .split('|')
                .map(|part| part.parse().unwrap())
                .collect();
            let printed = if cell.len() == 1 { cell[0] } else { cell[place] };
            assert!((value.value.as_f64() - printed).abs() < 1e-12, "{row:?}");
        }
    }
}

/// Own arithmetic: nails closer together never carry less, nor do closer studs, nor a blocked wall.
#[test]
fn more_of_a_face_carries_no_less() {
    for one in &FACING_ROWS {
        for two in &FACING_ROWS {
            let like = one.material == two.material
                && one.thickness == two.thickness
                && one.fastener == two.fastener
                && one.field_spacing == two.field_spacing;
            let more = two.edge_spacing <= one.edge_spacing
                && two.stud_spacing <= one.stud_spacing
                && two.blocked >= one.blocked;
            assert!(
                !like || !more || two.seismic.value >= one.seismic.value,
                "{one:?} {two:?}"
            );
        }
    }
}

/// Own wording: a cell that is not there is named, with what is listed instead.
#[test]
fn a_missing_cell_is_named() {
    let row = FACING_ROWS
        .iter()
        .find(|row| row.material == FacingMaterial::GypsumWallboard)
        .unwrap();
    let mut asked = query(row);
    asked.facing.edge_spacing = Length::inches(5);
    let issue = facing(&asked).unwrap_err().remove(0);
    assert_eq!(
        (issue.path.as_str(), issue.allowed.as_str()),
        ("/facing/edge_spacing", "7\", 4\"")
    );
    assert!(
        issue
            .message
            .contains("gypsum wallboard of 1/2\", 5d cooler nails, 5\" along edges, unblocked, studs 24\""),
        "{}",
        issue.message
    );
    assert!(
        issue.message.contains("SDPWS 2008/2015 Table 4.3C"),
        "{}",
        issue.message
    );
}
