use super::{Data, Field, Kind, Schema};
use proptest::prelude::*;

struct Row {
    mark: String,
    x: i64,
    force: f64,
}

fn schema() -> Schema<Row> {
    Schema {
        name: "rows",
        meaning: "Rows of a test.",
        fields: vec![
            Field::text("mark", "A mark.", |r: &Row| r.mark.as_str().into()),
            Field::int_in("in.", "x", "A place.", |r: &Row| r.x),
            Field::float(Some("lbf"), "force", "A force.", |r: &Row| r.force),
        ],
    }
}

/// Reads RFC 4180 text back, written independently of the writer.
fn read_csv(text: &str) -> Vec<Vec<String>> {
    let mut records = vec![vec![String::new()]];
    let mut quoted = false;
    let mut letters = text.chars().peekable();
    while let Some(letter) = letters.next() {
        let record = records.last_mut().unwrap();
        match letter {
            '"' if quoted && letters.peek() == Some(&'"') => {
                letters.next();
                record.last_mut().unwrap().push('"');
            }
            '"' => quoted = !quoted,
            ',' if !quoted => record.push(String::new()),
            '\r' if !quoted => {}
            '\n' if !quoted => records.push(vec![String::new()]),
            other => record.last_mut().unwrap().push(other),
        }
    }
    records.pop();
    records
}

proptest! {
    #[test]
    fn csv_and_json_read_back_to_the_same_values(
        rows in prop::collection::vec((any::<String>(), any::<i64>(), -1e9..1e9), 0..20)
    ) {
        let rows: Vec<Row> = rows.into_iter().map(|(mark, x, force)| Row { mark, x, force }).collect();
        let table = schema().table(&rows);
        prop_assert_eq!(table.len(), rows.len());

        let read = read_csv(&table.csv());
        prop_assert_eq!(read.len(), rows.len() + 1);
        let json: serde_json::Value = serde_json::from_str(&table.json()).unwrap();
        for (index, row) in rows.iter().enumerate() {
            prop_assert_eq!(&read[index + 1][0], &row.mark);
            prop_assert_eq!(read[index + 1][1].parse::<i64>().unwrap(), row.x);
            prop_assert_eq!(read[index + 1][2].parse::<f64>().unwrap().to_bits(), row.force.to_bits());
            prop_assert_eq!(json["rows"][index][0].as_str(), Some(row.mark.as_str()));
            prop_assert_eq!(json["rows"][index][1].as_i64(), Some(row.x));
            prop_assert!((json["rows"][index][2].as_f64().unwrap() - row.force).abs() <= row.force.abs() * 1e-15);
        }
    }
}

#[test]
fn columns_are_found_by_name_and_know_their_kind() {
    let table = schema().table(&[Row {
        mark: "A".into(),
        x: 7,
        force: 0.5,
    }]);
    assert_eq!(
        table.column("x").map(|column| &column.data),
        Some(&Data::Int(vec![7]))
    );
    assert_eq!(
        table.column("force").map(|column| column.data.kind()),
        Some(Kind::Float)
    );
    assert!(table.column("y").is_none());
    assert!(schema().table(&[]).is_empty());
}
