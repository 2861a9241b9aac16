//! The tree agrees with a general-purpose JSON library, and bad text is a value, never a panic.

use super::{Kind, Node, Place, parse};
use crate::issue::Code;
use proptest::prelude::*;
use serde_json::Value;

/// The same document, with numbers as text, so that nothing is rounded.
fn plain(node: &Node<'_>) -> Value {
    match &node.kind {
        Kind::Object(entries) => {
            Value::Object(entries.iter().map(|(k, v)| (k.to_string(), plain(v))).collect())
        }
        Kind::List(items) => Value::Array(items.iter().map(plain).collect()),
        Kind::Text(text) => Value::String(text.to_string()),
        Kind::Number(text) => serde_json::from_str(text).unwrap(),
        Kind::Flag(flag) => Value::Bool(*flag),
        Kind::Null => Value::Null,
    }
}

fn any_json() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::Bool),
        any::<i64>().prop_map(Value::from),
        ".*".prop_map(Value::from),
    ];
    leaf.prop_recursive(5, 40, 6, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..6).prop_map(Value::Array),
            prop::collection::btree_map(".{0,8}", inner, 0..6)
                .prop_map(|map| Value::Object(map.into_iter().collect())),
        ]
    })
}

proptest! {
    #[test]
    fn well_formed_text_is_read_as_another_library_reads_it(value in any_json(), pretty in any::<bool>()) {
        let text = if pretty { serde_json::to_string_pretty(&value) } else { serde_json::to_string(&value) }.unwrap();
        let (tree, issues) = parse(text.as_bytes()).unwrap();
        prop_assert!(issues.is_empty());
        prop_assert_eq!(plain(&tree), value);
    }

    #[test]
    fn any_bytes_are_accepted_exactly_when_another_library_accepts_them(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        prop_assert_eq!(parse(&bytes).is_ok(), serde_json::from_slice::<Value>(&bytes).is_ok());
    }

    #[test]
    fn bytes_that_look_like_json_are_accepted_exactly_when_another_library_accepts_them(
        text in r#"[\[\]{}",:\\ulnrtse01.eE+\- dD8]{0,24}"#
    ) {
        // The other library keeps the last of two keys silently and rounds large exponents; both are well formed.
        let other = serde_json::from_str::<Value>(&text);
        let out_of_range = other.as_ref().is_err_and(|error| error.to_string().contains("out of range"));
        prop_assert!(out_of_range || parse(text.as_bytes()).is_ok() == other.is_ok());
    }
}

#[test]
fn numbers_stay_as_written_and_offsets_point_at_values() {
    let text = br#"{"a": [1.50, -0, 2E+3], "b": "x"}"#;
    let (tree, _) = parse(text).unwrap();
    let shown = |pointer: &str| {
        let rest = &text[tree.offset_at(pointer)..];
        String::from_utf8_lossy(rest)
            .split([',', ']', '}'])
            .next()
            .unwrap()
            .to_owned()
    };
    assert_eq!(
        (shown("/a/0"), shown("/a/1"), shown("/a/2"), shown("/b")),
        ("1.50".into(), "-0".into(), "2E+3".into(), "\"x\"".into())
    );
    // What is not there is as near as its innermost parent.
    assert_eq!(tree.offset_at("/a/9/deeper"), tree.offset_at("/a"));
}

#[test]
fn surrogates_come_in_pairs() {
    let (tree, _) = parse(r#""\ud83d\ude00 \u00e9""#.as_bytes()).unwrap();
    assert_eq!(tree.shown(), "\u{1f600} é");
    for text in [r#""\ud83d""#, r#""\ude00""#, r#""\ud83dx\ude00""#, r#""\u12""#] {
        assert_eq!(parse(text.as_bytes()).unwrap_err().code, Code::Syntax);
    }
}

#[test]
fn two_equal_keys_are_named_with_their_place() {
    let (tree, issues) = parse(b"{\"a\": {\"b\": 1,\n \"c\": 2, \"b\": 3}}").unwrap();
    assert_eq!(issues.len(), 1);
    assert_eq!(
        (issues[0].code, issues[0].path.as_str()),
        (Code::DuplicateKey, "/a/b")
    );
    assert_eq!(issues[0].found, "line 2, column 10");
    assert_eq!(tree.get("a").and_then(|a| a.get("b")).unwrap().shown(), "1");
}

#[test]
fn nesting_ends_at_32() {
    let nested = |depth: usize| "[".repeat(depth) + &"]".repeat(depth);
    assert!(parse(nested(32).as_bytes()).is_ok());
    assert_eq!(parse(nested(33).as_bytes()).unwrap_err().code, Code::TooDeep);
    // Far deeper text must not use up the stack.
    assert_eq!(
        parse("[".repeat(1_000_000).as_bytes()).unwrap_err().code,
        Code::TooDeep
    );
}

#[test]
fn size_ends_at_64_mib() {
    let large = vec![b' '; super::BYTES_MOST + 1];
    assert_eq!(parse(&large).unwrap_err().code, Code::TooLarge);
}

#[test]
fn faults_of_syntax_say_where() {
    let issue = parse(b"{\"walls\": [\n  {\"name\": nort}]}").unwrap_err();
    assert_eq!((issue.code, issue.path.as_str()), (Code::Syntax, "/walls/0/name"));
    assert!(issue.message.contains("line 2, column 12"), "{}", issue.message);
    assert_eq!(issue.found, "nort}]}");
    assert_eq!(parse(b"[1,").unwrap_err().found, "the end of the text");
    assert_eq!(parse(b"\"\xff\"").unwrap_err().code, Code::NotUtf8);
}

#[test]
fn columns_count_characters() {
    assert_eq!(Place::of("é\nñx".as_bytes(), 5), Place { line: 2, column: 2 });
}
