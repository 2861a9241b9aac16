use super::definitions;
use crate::table::Kind;
use std::collections::BTreeSet;

#[test]
fn tables_and_columns_have_names_of_their_own_and_a_meaning() {
    let tables = definitions();
    let names: BTreeSet<_> = tables.iter().map(|table| table.name).collect();
    assert_eq!(names.len(), tables.len());
    for table in &tables {
        let columns: BTreeSet<_> = table.columns.iter().map(|column| column.name).collect();
        assert_eq!(columns.len(), table.columns.len(), "{}", table.name);
        for column in &table.columns {
            let plain =
                |letter: char| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '_';
            assert!(column.name.chars().all(plain), "{}.{}", table.name, column.name);
            assert!(column.meaning.ends_with('.'), "{}.{}", table.name, column.name);
            assert!(
                column.kind != Kind::Text || column.unit.is_none(),
                "{}.{}",
                table.name,
                column.name
            );
        }
    }
}

#[test]
fn an_empty_table_has_the_columns_of_its_definition() {
    for definition in definitions() {
        let table = definition.empty();
        assert!(table.is_empty());
        let kinds: Vec<_> = table
            .columns
            .iter()
            .map(|column| (column.head, column.data.kind()))
            .collect();
        let defined: Vec<_> = definition.columns.iter().map(|head| (*head, head.kind)).collect();
        assert_eq!(kinds, defined);
    }
}
