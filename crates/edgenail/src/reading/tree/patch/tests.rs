//! The examples of RFC 6902, appendix A, for the operations that there are, and those of RFC 6901, section 5 (both from
//! memory).

use super::super::parse;
use super::*;

fn patched(document: &str, changes: &str) -> Result<String, Vec<(&'static str, String)>> {
    let (mut tree, _) = parse(document.as_bytes()).unwrap();
    let (changes, _) = parse(changes.as_bytes()).unwrap();
    patch(&mut tree, &changes)
        .map(|()| tree.json())
        .map_err(|faults| {
            faults
                .into_iter()
                .map(|fault| (fault.code.name(), fault.path))
                .collect()
        })
}

#[test]
fn the_examples_of_the_standard_hold() {
    for (name, document, changes, result) in [
        (
            "A.1 adding an object member",
            r#"{"foo":"bar"}"#,
            r#"[{"op":"add","path":"/baz","value":"qux"}]"#,
            r#"{"foo":"bar","baz":"qux"}"#,
        ),
        (
            "A.2 adding an array element",
            r#"{"foo":["bar","baz"]}"#,
            r#"[{"op":"add","path":"/foo/1","value":"qux"}]"#,
            r#"{"foo":["bar","qux","baz"]}"#,
        ),
        (
            "A.3 removing an object member",
            r#"{"baz":"qux","foo":"bar"}"#,
            r#"[{"op":"remove","path":"/baz"}]"#,
            r#"{"foo":"bar"}"#,
        ),
        (
            "A.4 removing an array element",
            r#"{"foo":["bar","qux","baz"]}"#,
            r#"[{"op":"remove","path":"/foo/1"}]"#,
            r#"{"foo":["bar","baz"]}"#,
        ),
        (
            "A.5 replacing a value",
            r#"{"baz":"qux","foo":"bar"}"#,
            r#"[{"op":"replace","path":"/baz","value":"boo"}]"#,
            r#"{"baz":"boo","foo":"bar"}"#,
        ),
        (
            "A.8 testing a value: success",
            r#"{"baz":"qux","foo":["a",2,"c"]}"#,
            r#"[{"op":"test","path":"/baz","value":"qux"},{"op":"test","path":"/foo/1","value":2}]"#,
            r#"{"baz":"qux","foo":["a",2,"c"]}"#,
        ),
        (
            "A.10 adding a nested member object",
            r#"{"foo":"bar"}"#,
            r#"[{"op":"add","path":"/child","value":{"grandchild":{}}}]"#,
            r#"{"foo":"bar","child":{"grandchild":{}}}"#,
        ),
        (
            "A.11 ignoring unrecognized elements",
            r#"{"foo":"bar"}"#,
            r#"[{"op":"add","path":"/baz","value":"qux","xyz":123}]"#,
            r#"{"foo":"bar","baz":"qux"}"#,
        ),
        (
            "A.14 ~ escape ordering",
            r#"{"/":9,"~1":10}"#,
            r#"[{"op":"test","path":"/~01","value":10}]"#,
            r#"{"/":9,"~1":10}"#,
        ),
        (
            "A.16 adding an array value",
            r#"{"foo":["bar"]}"#,
            r#"[{"op":"add","path":"/foo/-","value":["abc","def"]}]"#,
            r#"{"foo":["bar",["abc","def"]]}"#,
        ),
    ] {
        assert_eq!(patched(document, changes).unwrap(), result, "{name}");
    }
    for (name, document, changes, fault) in [
        (
            "A.9 testing a value: error",
            r#"{"baz":"qux"}"#,
            r#"[{"op":"test","path":"/baz","value":"bar"}]"#,
            ("test_failed", "/0/value"),
        ),
        (
            "A.12 adding to a nonexistent target",
            r#"{"foo":"bar"}"#,
            r#"[{"op":"add","path":"/baz/bat","value":"qux"}]"#,
            ("nothing_there", "/0/path"),
        ),
        (
            "A.15 comparing strings and numbers",
            r#"{"/":9,"~1":10}"#,
            r#"[{"op":"test","path":"/~01","value":"10"}]"#,
            ("test_failed", "/0/value"),
        ),
    ] {
        let fault = vec![(fault.0, fault.1.to_owned())];
        assert_eq!(patched(document, changes).unwrap_err(), fault, "{name}");
    }
}

#[test]
fn pointers_reach_what_the_standard_says() {
    let document =
        r#"{"foo":["bar","baz"],"":0,"a/b":1,"c%d":2,"e^f":3,"g|h":4,"i\\j":5,"k\"l":6," ":7,"m~n":8}"#;
    for (pointer, value) in [
        ("/foo", r#"["bar","baz"]"#),
        ("/foo/0", r#""bar""#),
        ("/", "0"),
        ("/a~1b", "1"),
        ("/c%d", "2"),
        ("/e^f", "3"),
        ("/g|h", "4"),
        (r"/i\\j", "5"),
        (r#"/k\"l"#, "6"),
        ("/ ", "7"),
        ("/m~0n", "8"),
    ] {
        let test = format!(r#"[{{"op":"test","path":"{pointer}","value":{value}}}]"#);
        assert!(patched(document, &test).is_ok(), "{pointer}");
    }
    let whole =
        format!(r#"[{{"op":"test","path":"","value":{document}}},{{"op":"replace","path":"","value":[]}}]"#);
    assert_eq!(patched(document, &whole).unwrap(), "[]");
}

#[test]
fn what_is_no_change_is_told_with_its_place_all_at_once() {
    let changes = r#"[3, {}, {"op":"move","path":"/a"}, {"op":"add","path":"a","value":1}, {"op":"add","path":"/~2","value":1},
        {"op":"add","path":"/a"}, {"op":7,"path":"/a"}, {"op":"remove","path":"/a"}]"#;
    let faults = patched(r#"{"a":1}"#, changes).unwrap_err();
    let wanted = [
        ("wrong_kind", "/0"),
        ("missing_field", "/1/op"),
        ("missing_field", "/1/path"),
        ("not_a_choice", "/2/op"),
        ("not_a_pointer", "/3/path"),
        ("not_a_pointer", "/4/path"),
        ("missing_field", "/5/value"),
        ("wrong_kind", "/6/op"),
    ];
    let wanted: Vec<(&str, String)> = wanted
        .iter()
        .map(|(code, path)| (*code, (*path).to_owned()))
        .collect();
    assert_eq!(faults, wanted);
    assert_eq!(patched("{}", "{}").unwrap_err(), [("wrong_kind", String::new())]);
}

#[test]
fn places_that_the_document_does_not_have_are_told() {
    let document = r#"{"list":[1,2],"text":"a"}"#;
    for (operation, pointer) in [
        ("replace", "/other"),
        ("replace", "/list/2"),
        ("replace", "/list/01"),
        ("replace", "/list/-"),
        ("replace", "/list/+1"),
        ("add", "/list/3"),
        ("add", "/text/0"),
        ("add", "/other/0"),
        ("remove", ""),
        ("remove", "/list/2"),
        ("remove", "/list/-"),
        ("remove", "/other"),
        ("test", "/text/a"),
    ] {
        // The second change is the one that fails.
        let changes = format!(
            r#"[{{"op":"test","path":"/text","value":"a"}},{{"op":"{operation}","path":"{pointer}","value":1}}]"#
        );
        let fault = vec![("nothing_there", "/1/path".to_owned())];
        assert_eq!(
            patched(document, &changes).unwrap_err(),
            fault,
            "{operation} {pointer}"
        );
    }
    let end = r#"[{"op":"add","path":"/list/2","value":3},{"op":"add","path":"/text","value":"b"}]"#;
    assert_eq!(patched(document, end).unwrap(), r#"{"list":[1,2,3],"text":"b"}"#);
}

#[test]
fn objects_are_the_same_in_any_order_and_numbers_by_their_value() {
    let document = r#"{"a":{"x":1.50,"y":[null,true]}}"#;
    let test = |value: &str| {
        patched(
            document,
            &format!(r#"[{{"op":"test","path":"/a","value":{value}}}]"#),
        )
    };
    assert_eq!(test(r#"{"y":[null,true],"x":15e-1}"#).unwrap(), document);
    for other in [
        r#"{"y":[null,true],"x":1.5,"z":0}"#,
        r#"{"x":1.5}"#,
        r#"{"y":[null,false],"x":1.5}"#,
        r#"{"y":[false,true],"x":1.5}"#,
        r#"{"y":[null],"x":1.5}"#,
        r#"{"y":[null,true],"x":1.51}"#,
    ] {
        assert!(test(other).is_err(), "{other}");
    }
}
