use super::differences;
use crate::answer::Answer;
use crate::case::Case;

fn case(expectation: &str) -> Case {
    let text =
        format!(r#"{{"name":"n","operation":"plan","source":{{"id":"s"}},"input":{{}},{expectation}}}"#);
    serde_json::from_str(&text).unwrap()
}

fn result(text: &str) -> Answer {
    Answer::Result(text.into())
}

#[test]
fn integers_are_exact_and_tolerance_is_relative() {
    let exact = case(r#""expect":{"/a/0":100}"#);
    assert!(differences(&exact, &result(r#"{"a":[100]}"#)).is_empty());
    assert_eq!(differences(&exact, &result(r#"{"a":[101]}"#)).len(), 1);
    assert_eq!(differences(&exact, &result("{}")).len(), 1);
    let about = case(r#""expect":{"/a":100},"tolerance":{"/a":0.01}"#);
    assert!(differences(&about, &result(r#"{"a":100.9}"#)).is_empty());
    assert_eq!(differences(&about, &result(r#"{"a":101.1}"#)).len(), 1);
}

#[test]
fn an_expected_fault_must_be_among_those_found() {
    let case = case(r#""expect_error":{"code":"out_of_range","path":"/walls"}"#);
    let error = |path: &str| {
        Answer::Error(format!(
            r#"{{"error":"issues","issues":[{{"code":"out_of_range","path":"{path}"}}]}}"#
        ))
    };
    assert!(differences(&case, &error("/walls")).is_empty());
    assert_eq!(differences(&case, &error("/name")).len(), 1);
    assert_eq!(differences(&case, &result("{}")).len(), 1);
}
