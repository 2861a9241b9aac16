//! What if: what the changes tell, against the two plans and their tables.

#![expect(clippy::unwrap_used, reason = "a test fails by a panic")]

use edgenail::changes::{
    Changes, PieceChange, PieceWhat, Quantities, TakeoffChange, WallState, WhatIf, patched, what_if,
    what_if_json,
};
use edgenail::demo::HOUSE_JSON;
use edgenail::reading::tree;
use edgenail::table::Data;
use edgenail::takeoff::TakeoffWhat;
use edgenail::{Amount, Decimal, Plan, plan_json};
use std::collections::BTreeMap;

fn asked(house: &str, changes: &str) -> WhatIf {
    what_if(&plan_json(house).unwrap(), house.as_bytes(), changes.as_bytes()).unwrap()
}

fn faults(house: &str, changes: &str) -> Vec<(&'static str, String)> {
    let error = what_if_json(house, changes).unwrap_err();
    let faults = error.issues().iter();
    faults
        .map(|fault| (fault.code.name(), fault.path.clone()))
        .collect()
}

/// Two walls, the first with a window and a segment.
const HOUSE: &str = r#"{"name": "two walls", "walls": [
  {"name": "north", "length": "24'", "sections": [{"stack": [{"kind": "storey", "name": "ground", "spacing": "16",
     "stud": {"width": "1 1/2", "depth": "3 1/2", "length": "92 5/8"},
     "openings": [{"name": "w", "kind": "window", "left": "10'", "sill": "36", "width": "36", "height": "46"}]}]}],
   "segments": [{"storey": "ground", "from": "0", "to": "8'", "mark": "1", "method": "segmented", "edge_spacing": "6", "field_spacing": "12"}]},
  {"name": "south", "length": "16'", "sections": [{"stack": [{"kind": "storey", "name": "ground", "spacing": "16",
     "stud": {"width": "1 1/2", "depth": "3 1/2", "length": "92 5/8"}}]}]}],
 "stock": {"sheets": [{"name": "4x9", "width": "47 7/8", "length": "107 7/8", "category": "7/16", "price": "20"}],
  "nails": [{"name": "8d", "shank": "0.131", "head": "0.281", "length": "2 1/2", "per_box": 2500, "price": "52"},
            {"name": "8d hot-dipped", "shank": "0.131", "head": "0.281", "length": "2 1/2", "coating": "hot_dipped", "per_box": 2000, "price": "68"}],
  "sticks": [{"name": "2x4", "thickness": "1 1/2", "depth": "3 1/2", "length": "8'", "price": "4"}]}}"#;

const WIDER: &str =
    r#"[{"op": "replace", "path": "/walls/0/sections/0/stack/0/openings/0/width", "value": "37 1/2"}]"#;
const LONGER_SHEETS: &str = r#"[{"op": "replace", "path": "/stock/sheets/0/length", "value": "119 7/8"},
  {"op": "replace", "path": "/stock/sheets/0/name", "value": "4x10"}]"#;
const CLOSER_NAILS: &str = r#"[{"op": "add", "path": "/walls/0/segments/0/edge_spacing", "value": "4"},
  {"op": "add", "path": "/walls/0/segments/0/field_spacing", "value": "12"}]"#;

/// Figures of the take-off's table, line by line: used, ordered, money, minutes.
fn lines(plan: &Plan) -> BTreeMap<String, [Decimal; 4]> {
    let table = plan.table("takeoff").unwrap();
    let shown = |column: &str, row: usize| table.column(column).unwrap().data.shown(row);
    let number = |column: &str, row: usize| Decimal::parse(&shown(column, row)).unwrap();
    (0..table.len())
        .map(|row| {
            let key = ["what", "item", "scope", "serves", "place"].map(|column| shown(column, row));
            let ordered = number("ordered", row).max(Decimal::ZERO);
            let figures = [
                number("used", row),
                ordered,
                number("money", row),
                number("minutes", row),
            ];
            (key.join("|"), figures)
        })
        .collect()
}

fn key(change: &TakeoffChange) -> String {
    let word = |value: serde_json::Value| value.as_str().unwrap_or_default().to_owned();
    [
        word(serde_json::to_value(change.what).unwrap()),
        change.item.clone(),
        change.scope.clone(),
        word(serde_json::to_value(change.serves).unwrap()),
        word(serde_json::to_value(change.place).unwrap()),
    ]
    .join("|")
}

#[test]
fn the_differences_are_one_plan_less_the_other_line_by_line() {
    for changes in [WIDER, LONGER_SHEETS, CLOSER_NAILS] {
        let found = asked(HOUSE, changes);
        let (before, after) = (lines(&plan_json(HOUSE).unwrap()), lines(&found.plan));
        let told: BTreeMap<String, &TakeoffChange> = found
            .changes
            .takeoff
            .iter()
            .map(|line| (key(line), line))
            .collect();
        assert!(!told.is_empty() && told.len() == found.changes.takeoff.len());
        let zero = [Decimal::ZERO; 4];
        for name in before.keys().chain(after.keys()) {
            let (old, new) = (
                before.get(name).unwrap_or(&zero),
                after.get(name).unwrap_or(&zero),
            );
            let Some(line) = told.get(name) else {
                assert_eq!(old, new, "{name}");
                continue;
            };
            let says = |side: &Quantities| {
                let whole = |count: i64| Decimal::new(count, 0).unwrap();
                [
                    side.used,
                    whole(side.ordered.unwrap_or(0).into()),
                    whole(side.money.ten_thousandths()),
                    whole(side.minutes.ten_thousandths()),
                ]
            };
            assert_eq!((&says(&line.before), &says(&line.after)), (old, new), "{name}");
        }
    }
}

#[test]
fn the_totals_differ_by_the_sum_of_the_lines_of_the_house() {
    for changes in [WIDER, LONGER_SHEETS, CLOSER_NAILS] {
        let changes = asked(HOUSE, changes).changes;
        let sum = |read: fn(&Quantities) -> Amount| -> i64 {
            let house = changes.takeoff.iter().filter(|line| line.scope == "house");
            house
                .map(|line| read(&line.after).ten_thousandths() - read(&line.before).ten_thousandths())
                .sum()
        };
        let money = changes.after.money.ten_thousandths() - changes.before.money.ten_thousandths();
        let minutes = changes.after.minutes.ten_thousandths() - changes.before.minutes.ten_thousandths();
        assert_eq!(minutes, sum(|side| side.minutes));
        let ordered = |side: &Quantities| side.ordered.map_or(Amount::ZERO, |_| side.money);
        assert_eq!(money, sum(ordered));
        let nails: i64 = changes
            .walls
            .iter()
            .map(|wall| i64::try_from(wall.nails_after).unwrap() - i64::try_from(wall.nails_before).unwrap())
            .sum();
        assert_eq!(
            nails,
            i64::try_from(changes.after.nails).unwrap() - i64::try_from(changes.before.nails).unwrap()
        );
    }
}

#[test]
fn a_wider_opening_changes_its_own_wall_and_no_other() {
    let changes = asked(HOUSE, WIDER).changes;
    let states: Vec<(&str, WallState)> = changes
        .walls
        .iter()
        .map(|wall| (wall.wall.as_str(), wall.state))
        .collect();
    assert_eq!(
        states,
        [("north", WallState::Changed), ("south", WallState::Unchanged)]
    );
    assert!(changes.takeoff.iter().all(|line| line.scope != "wall: south"));
    let south = &changes.walls[1];
    assert!(south.pieces.is_empty() && south.nails_before == south.nails_after);
    // The window's cut-out is another one; a wall of such length keeps its number of sheets.
    let north = &changes.walls[0];
    assert!(
        north
            .pieces
            .iter()
            .any(|piece| piece.what.contains(&PieceWhat::Outline))
    );
    assert_eq!(changes.before.panels, changes.after.panels);
}

#[test]
fn longer_sheets_are_another_line_of_the_take_off() {
    let changes = asked(HOUSE, LONGER_SHEETS).changes;
    let sheets: Vec<(&str, u32, u32)> = changes
        .takeoff
        .iter()
        .filter(|line| line.what == TakeoffWhat::Sheets)
        .map(|line| {
            let ordered = |side: &Quantities| side.ordered.unwrap_or(0);
            (line.item.as_str(), ordered(&line.before), ordered(&line.after))
        })
        .collect();
    assert!(
        sheets
            .iter()
            .any(|(name, before, after)| *name == "4x9" && *before > 0 && *after == 0)
    );
    assert!(
        sheets
            .iter()
            .any(|(name, before, after)| *name == "4x10" && *before == 0 && *after > 0)
    );
    assert!(changes.walls.iter().all(|wall| wall.state == WallState::Changed));
    let sheet = |piece: &PieceChange| piece.what.contains(&PieceWhat::Sheet);
    assert!(changes.walls.iter().all(|wall| wall.pieces.iter().all(sheet)));
}

#[test]
fn closer_nails_in_a_segment_are_more_nails_there() {
    let changes = asked(HOUSE, CLOSER_NAILS).changes;
    assert!(changes.after.nails > changes.before.nails);
    assert_eq!(changes.after.panels, changes.before.panels);
    assert_eq!(changes.after.sheets, changes.before.sheets);
    let north = &changes.walls[0];
    assert!(!north.pieces.is_empty());
    assert!(north.pieces.iter().all(|piece| piece.what == [PieceWhat::Nails]));
    assert_eq!(changes.walls[1].state, WallState::Unchanged);
}

#[test]
fn walls_that_come_and_go_are_told() {
    let gone = asked(HOUSE, r#"[{"op": "remove", "path": "/walls/1"}]"#).changes;
    assert_eq!(gone.walls[0].state, WallState::Unchanged);
    let south = &gone.walls[1];
    assert_eq!((south.wall.as_str(), south.state), ("south", WallState::Went));
    assert!(south.nails_after == 0 && south.nails_before > 0);
    assert!(
        south
            .pieces
            .iter()
            .all(|piece| piece.before.is_some() && piece.after.is_none())
    );
    assert_eq!(south.pieces.len() as u64, gone.before.panels - gone.after.panels);
    assert_eq!(south.cost_before.total, gone.before.cost - gone.after.cost);
    let east = r#"[{"op": "add", "path": "/walls/-", "value": {"name": "east", "length": "8'"}}]"#;
    let came = asked(HOUSE, east).changes;
    assert_eq!(came.walls[2].state, WallState::Came);
    assert!(came.walls[2].seams_came.len() + 1 >= came.walls[2].pieces.len());
}

#[test]
fn what_came_one_way_went_the_other() {
    let longer = asked(HOUSE, LONGER_SHEETS);
    let back = Changes::between(&longer.plan, &plan_json(HOUSE).unwrap());
    let forth = &longer.changes;
    assert_eq!((&back.before, &back.after), (&forth.after, &forth.before));
    assert_eq!((&back.came, &back.went), (&forth.went, &forth.came));
    assert_eq!(back.takeoff.len(), forth.takeoff.len());
    for (back, forth) in back.walls.iter().zip(&forth.walls) {
        assert_eq!((&back.wall, back.state), (&forth.wall, forth.state));
        assert_eq!(
            (&back.seams_came, &back.seams_went),
            (&forth.seams_went, &forth.seams_came)
        );
        assert_eq!(
            (&back.wood_came, &back.wood_went),
            (&forth.wood_went, &forth.wood_came)
        );
        assert_eq!(back.pieces.len(), forth.pieces.len());
    }
}

#[test]
fn capacity_lines_of_the_demo_house_change_with_its_demand() {
    let (tree, _) = tree::parse(HOUSE_JSON.as_bytes()).unwrap();
    assert!(tree.get("demand").is_some());
    let plan = plan_json(HOUSE_JSON).unwrap();
    let first = &plan.house().walls[plan.capacity()[0].wall as usize].name;
    // Without its demand the house has no lines at all.
    let changes = asked(HOUSE_JSON, r#"[{"op": "remove", "path": "/demand"}]"#).changes;
    assert_eq!(changes.capacity.len(), plan.capacity().len());
    for (change, line) in changes.capacity.iter().zip(plan.capacity()) {
        let before = change.before.as_ref().unwrap();
        assert!(change.after.is_none() && before.capacity_lb == line.capacity());
        assert!((before.demand_lb - line.demand).abs() < f64::EPSILON);
    }
    assert_eq!(&changes.capacity[0].wall, first);
}

#[test]
fn faults_of_a_change_and_of_the_changed_house_have_their_pointers() {
    let nowhere = r#"[{"op": "replace", "path": "/walls/7/length", "value": "8'"}]"#;
    assert_eq!(faults(HOUSE, nowhere), [("nothing_there", "/0/path".to_owned())]);
    let negative = r#"[{"op": "replace", "path": "/walls/0/length", "value": "-8'"}]"#;
    assert_eq!(
        faults(HOUSE, negative)[0],
        ("out_of_range", "/walls/0/length".to_owned())
    );
    let unknown = r#"[{"op": "add", "path": "/walls/0/lenght", "value": "8'"}]"#;
    assert_eq!(
        faults(HOUSE, unknown),
        [("unknown_field", "/walls/0/lenght".to_owned())]
    );
    assert_eq!(faults(HOUSE, "[")[0].0, "syntax");
    assert_eq!(faults("{}", WIDER)[0], ("missing_field", "/walls".to_owned()));
    let twice = r#"[{"op": "remove", "op": "add", "path": "/walls/0"}]"#;
    assert_eq!(faults(HOUSE, twice), [("duplicate_key", "/0/op".to_owned())]);
}

#[test]
fn no_changes_change_nothing_and_the_document_is_handed_back() {
    let found = asked(HOUSE, "[]");
    assert_eq!(found.changes.before, found.changes.after);
    assert!(found.changes.takeoff.is_empty() && found.changes.capacity.is_empty());
    assert_eq!(found.plan.json(), plan_json(HOUSE).unwrap().json());
    assert_eq!(found.house, patched(found.house.as_bytes(), b"[]").unwrap());
    let table = found.table();
    // A row a wall that says so.
    assert_eq!(table.len(), 2);
    assert_eq!(
        table.column("change").unwrap().data,
        Data::Text(vec!["unchanged".into(); 2])
    );
}

#[test]
fn the_table_says_what_the_values_say() {
    let found = asked(HOUSE, WIDER);
    let table = found.table();
    let rows = |part: &str| {
        (0..table.len())
            .filter(|row| table.column("part").unwrap().data.shown(*row) == part)
            .count()
    };
    let pieces: usize = found.changes.walls.iter().map(|wall| wall.pieces.len()).sum();
    assert_eq!(rows("piece"), pieces);
    assert_eq!(
        rows("finding"),
        found.changes.came.len() + found.changes.went.len()
    );
    let shown = |column: &str, row: usize| table.column(column).unwrap().data.shown(row);
    let minutes = (0..table.len())
        .find(|row| shown("part", *row) == "total" && shown("quantity", *row) == "minutes")
        .unwrap();
    let (before, after) = (&found.changes.before.minutes, &found.changes.after.minutes);
    assert_eq!(shown("before", minutes), before.to_string());
    assert_eq!(shown("difference", minutes), (*after - *before).to_string());
}
