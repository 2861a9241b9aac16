//! A tree as JSON text.

use super::{Kind, Node};

impl Node<'_> {
    /// The value as JSON without spaces; numbers as they were written.
    ///
    /// ```
    /// use edgenail::reading::tree::parse;
    /// let (tree, _) = parse(br#"{ "gap" : 0.1250, "names": ["a\"b", null] }"#)?;
    /// assert_eq!(tree.json(), r#"{"gap":0.1250,"names":["a\"b",null]}"#);
    /// # Ok::<(), Box<edgenail::issue::Issue>>(())
    /// ```
    pub fn json(&self) -> String {
        let mut text = String::new();
        self.write(&mut text);
        text
    }

    fn write(&self, text: &mut String) {
        match &self.kind {
            Kind::Object(entries) => {
                text.push('{');
                for (place, (key, node)) in entries.iter().enumerate() {
                    text.push_str(if place > 0 { "," } else { "" });
                    quoted(key, text);
                    text.push(':');
                    node.write(text);
                }
                text.push('}');
            }
            Kind::List(items) => {
                text.push('[');
                for (place, node) in items.iter().enumerate() {
                    text.push_str(if place > 0 { "," } else { "" });
                    node.write(text);
                }
                text.push(']');
            }
            Kind::Text(value) => quoted(value, text),
            Kind::Number(number) => text.push_str(number),
            Kind::Flag(flag) => text.push_str(if *flag { "true" } else { "false" }),
            Kind::Null => text.push_str("null"),
        }
    }
}

fn quoted(value: &str, text: &mut String) {
    // Writing text into memory has no way to fail.
    text.push_str(&serde_json::to_string(value).unwrap_or_default());
}
