//! Bytes to a tree, after RFC 8259.

use super::place::{line_and_column, pointer};
use super::{DEPTH_MOST, DOCUMENT_MOST, Kind, Node};
use crate::issue::{Code, Issue, more_faults};
use std::collections::BTreeSet;

/// Reads a document; keys given twice are reported together, any other fault alone.
pub(crate) fn parse(bytes: &[u8]) -> Result<Node, Vec<Issue>> {
    if bytes.len() > DOCUMENT_MOST {
        let found = format!("{} bytes", bytes.len());
        return Err(vec![issue(
            Code::DocumentTooLong,
            &[],
            &found,
            "at most 64 MiB",
            "The document is too long",
        )]);
    }
    let text = std::str::from_utf8(bytes).map_err(|error| {
        let offset = error.valid_up_to();
        let found = bytes
            .get(offset)
            .map_or(String::new(), |byte| format!("byte {byte:#04x}"));
        vec![at(
            bytes,
            offset,
            Code::Encoding,
            &[],
            &found,
            "UTF-8",
            "The document is not UTF-8",
        )]
    })?;
    let mut parser = Parser {
        text,
        position: 0,
        path: Vec::new(),
        duplicates: Vec::new(),
        unlisted: 0,
    };
    let read = parser.document();
    let mut issues = parser.duplicates;
    if parser.unlisted > 0 {
        issues.push(more_faults(parser.unlisted));
    }
    match read {
        Ok(node) if issues.is_empty() => Ok(node),
        Ok(_) => Err(issues),
        Err(fault) => {
            issues.push(*fault);
            Err(issues)
        }
    }
}

/// Keys given twice that are listed: each costs a look over the whole text for its line.
const DUPLICATES_MOST: usize = 100;

/// A fault that ends the reading. Boxed, since every step returns it or nothing.
type Fault = Box<Issue>;

struct Parser<'a> {
    text: &'a str,
    position: usize,
    path: Vec<String>,
    duplicates: Vec<Issue>,
    unlisted: usize,
}

impl Parser<'_> {
    fn document(&mut self) -> Result<Node, Fault> {
        let node = self.value()?;
        self.space();
        match self.peek() {
            None => Ok(node),
            Some(_) => Err(self.syntax("the end of the document")),
        }
    }

    fn value(&mut self) -> Result<Node, Fault> {
        self.space();
        let offset = self.position;
        let kind = match self.peek() {
            Some(b'{') => self.object()?,
            Some(b'[') => self.list()?,
            Some(b'"') => Kind::Text(self.string()?),
            Some(b'-' | b'0'..=b'9') => Kind::Number(self.number()?),
            _ if self.take("true") => Kind::Bool(true),
            _ if self.take("false") => Kind::Bool(false),
            _ if self.take("null") => Kind::Null,
            _ => return Err(self.syntax("a value")),
        };
        Ok(Node { kind, offset })
    }

    fn object(&mut self) -> Result<Kind, Fault> {
        self.position += 1;
        let mut fields = Vec::new();
        let mut keys = BTreeSet::new();
        self.space();
        if self.take("}") {
            return Ok(Kind::Object(fields));
        }
        loop {
            self.space();
            let start = self.position;
            if self.peek() != Some(b'"') {
                return Err(self.syntax("a key in double quotes"));
            }
            let key = self.string()?;
            self.enter(key.clone())?;
            if !keys.insert(key.clone()) {
                self.duplicate(start, &key);
            }
            self.space();
            if !self.take(":") {
                return Err(self.syntax("a colon"));
            }
            let node = self.value()?;
            self.path.pop();
            fields.push((key, node));
            self.space();
            if self.take("}") {
                return Ok(Kind::Object(fields));
            }
            if !self.take(",") {
                return Err(self.syntax("a comma or `}`"));
            }
        }
    }

    fn list(&mut self) -> Result<Kind, Fault> {
        self.position += 1;
        let mut entries = Vec::new();
        self.space();
        if self.take("]") {
            return Ok(Kind::List(entries));
        }
        loop {
            self.enter(entries.len().to_string())?;
            entries.push(self.value()?);
            self.path.pop();
            self.space();
            if self.take("]") {
                return Ok(Kind::List(entries));
            }
            if !self.take(",") {
                return Err(self.syntax("a comma or `]`"));
            }
        }
    }

    fn duplicate(&mut self, offset: usize, key: &str) {
        if self.duplicates.len() >= DUPLICATES_MOST {
            self.unlisted += 1;
            return;
        }
        let found = key.chars().take(200).collect::<String>();
        let message = "A key is given twice";
        self.duplicates
            .push(self.at(offset, Code::DuplicateKey, &found, "each key once", message));
    }

    /// Goes into an entry of an object or a list.
    fn enter(&mut self, step: String) -> Result<(), Fault> {
        self.path.push(step);
        if self.path.len() <= DEPTH_MOST {
            return Ok(());
        }
        let found = format!("{} levels", self.path.len());
        let message = "Objects and lists lie too deep in each other";
        Err(Box::new(self.at(
            self.position,
            Code::TooDeep,
            &found,
            "at most 32 levels",
            message,
        )))
    }

    fn string(&mut self) -> Result<String, Fault> {
        self.position += 1;
        let mut text = String::new();
        loop {
            let rest = self.text.get(self.position..).unwrap_or_default();
            let plain = rest
                .bytes()
                .position(|byte| byte == b'"' || byte == b'\\' || byte < b' ')
                .unwrap_or(rest.len());
            text.push_str(rest.get(..plain).unwrap_or_default());
            self.position += plain;
            match self.peek() {
                Some(b'"') => {
                    self.position += 1;
                    return Ok(text);
                }
                Some(b'\\') => text.push(self.escape()?),
                _ => return Err(self.syntax("a closing double quote; control characters are escaped")),
            }
        }
    }

    fn escape(&mut self) -> Result<char, Fault> {
        let start = self.position;
        self.position += 1;
        let letter = self.peek();
        self.position += 1;
        let character = match letter {
            Some(plain @ (b'"' | b'\\' | b'/')) => Some(char::from(plain)),
            Some(b'b') => Some('\u{8}'),
            Some(b'f') => Some('\u{c}'),
            Some(b'n') => Some('\n'),
            Some(b'r') => Some('\r'),
            Some(b't') => Some('\t'),
            Some(b'u') => self.utf16(),
            _ => None,
        };
        character.ok_or_else(|| {
            self.position = start;
            self.syntax("an escape of JSON, with surrogates in pairs")
        })
    }

    /// The character of one or two escaped units of UTF-16.
    fn utf16(&mut self) -> Option<char> {
        let first = self.hex()?;
        let units = if (0xD800..0xDC00).contains(&first) {
            if !self.take("\\u") {
                return None;
            }
            vec![first, self.hex()?]
        } else {
            vec![first]
        };
        char::decode_utf16(units).next()?.ok()
    }

    fn hex(&mut self) -> Option<u16> {
        let digits = self.text.get(self.position..self.position + 4)?;
        self.position += 4;
        let plain = digits.bytes().all(|digit| digit.is_ascii_hexdigit());
        plain.then(|| u16::from_str_radix(digits, 16).ok()).flatten()
    }

    fn number(&mut self) -> Result<String, Fault> {
        let start = self.position;
        self.take("-");
        if !self.take("0") && self.digits() == 0 {
            return Err(self.syntax("a digit"));
        }
        if self.take(".") && self.digits() == 0 {
            return Err(self.syntax("a digit after the point"));
        }
        if self.take("e") || self.take("E") {
            let _sign = self.take("+") || self.take("-");
            if self.digits() == 0 {
                return Err(self.syntax("a digit of the exponent"));
            }
        }
        Ok(self.text.get(start..self.position).unwrap_or_default().into())
    }

    fn digits(&mut self) -> usize {
        let start = self.position;
        while self.peek().is_some_and(|byte| byte.is_ascii_digit()) {
            self.position += 1;
        }
        self.position - start
    }

    fn space(&mut self) {
        while matches!(self.peek(), Some(b' ' | b'\t' | b'\n' | b'\r')) {
            self.position += 1;
        }
    }

    fn peek(&self) -> Option<u8> {
        self.text.as_bytes().get(self.position).copied()
    }

    fn take(&mut self, word: &str) -> bool {
        let rest = self.text.as_bytes().get(self.position..).unwrap_or_default();
        let taken = rest.starts_with(word.as_bytes());
        self.position += if taken { word.len() } else { 0 };
        taken
    }

    #[expect(
        clippy::unnecessary_box_returns,
        reason = "every fault of the parser is boxed"
    )]
    fn syntax(&self, wanted: &str) -> Fault {
        let rest = self.text.get(self.position..).unwrap_or_default();
        let found = match rest.chars().next() {
            Some(_) => rest.chars().take(20).collect(),
            None => "the end of the document".to_owned(),
        };
        let mut issue = self.at(
            self.position,
            Code::Syntax,
            &found,
            wanted,
            "The document is not JSON",
        );
        issue.path = String::new();
        Box::new(issue)
    }

    fn at(&self, offset: usize, code: Code, found: &str, allowed: &str, message: &str) -> Issue {
        at(
            self.text.as_bytes(),
            offset,
            code,
            &self.path,
            found,
            allowed,
            message,
        )
    }
}

fn at(
    bytes: &[u8],
    offset: usize,
    code: Code,
    path: &[String],
    found: &str,
    allowed: &str,
    message: &str,
) -> Issue {
    let (line, column) = line_and_column(bytes, offset);
    let message = format!("{message}: line {line}, column {column}, byte {offset}");
    issue(code, path, found, allowed, &message)
}

fn issue(code: Code, path: &[String], found: &str, allowed: &str, message: &str) -> Issue {
    Issue {
        code,
        path: pointer(path),
        wall: String::new(),
        found: found.into(),
        allowed: allowed.into(),
        message: format!("{message}; allowed: {allowed}."),
    }
}
