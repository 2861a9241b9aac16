use super::Error;
use crate::length::{Length, Unit};

#[test]
fn a_length_s_fault_has_the_form_of_a_document_s_fault() {
    let error = Error::from(Length::parse("97,125", Unit::Inch).unwrap_err());
    let length: serde_json::Value = serde_json::from_str(&error.json()).unwrap();
    let document: serde_json::Value =
        serde_json::from_str(&crate::plan_json("{").unwrap_err().json()).unwrap();
    assert_eq!(length["error"], "length");
    assert_eq!(length["issues"][0]["code"], "comma");
    assert_eq!(length["issues"][0]["found"], "97,125");
    let fields = |value: &serde_json::Value| -> Vec<String> {
        value["issues"][0].as_object().unwrap().keys().cloned().collect()
    };
    assert_eq!(fields(&length), fields(&document));
}
