//! Bytes to a tree, in one pass (RFC 8259).

use super::super::ISSUES_MOST;
use super::text::string;
use super::{BYTES_MOST, DEPTH_MOST, Kind, NODES_MOST, Node, Place, cut, pointer_part};
use crate::issue::{Code, Issue};
use std::borrow::Cow;

/// What ended the parsing, or a key that was found twice.
#[derive(Debug)]
pub(super) struct Fault {
    offset: usize,
    code: Code,
    expected: &'static str,
}

impl Fault {
    pub(super) const fn new(offset: usize, code: Code, expected: &'static str) -> Self {
        Self {
            offset,
            code,
            expected,
        }
    }
}

/// Reads a document; keys that an object has twice are faults that do not end the reading.
///
/// # Errors
/// The bytes are not UTF-8, are not JSON, or are too large or too deeply nested.
///
/// ```
/// use edgenail::reading::tree::{parse, Kind};
/// let (tree, issues) = parse(br#"{"gap": 0.1250}"#)?;
/// assert!(issues.is_empty());
/// assert_eq!(tree.get("gap").map(|node| node.shown()), Some("0.1250".to_owned()));
/// # Ok::<(), Box<edgenail::issue::Issue>>(())
/// ```
pub fn parse(bytes: &[u8]) -> Result<(Node<'_>, Vec<Issue>), Box<Issue>> {
    if bytes.len() > BYTES_MOST {
        return Err(Box::new(issue(
            Code::TooLarge,
            "",
            &format!("{} bytes", bytes.len()),
            &format!("at most {BYTES_MOST} bytes"),
            "the document is too large",
        )));
    }
    let text = std::str::from_utf8(bytes).map_err(|error| {
        let place = Place::of(bytes, error.valid_up_to());
        Box::new(issue(
            Code::NotUtf8,
            "",
            &place.to_string(),
            "UTF-8",
            &format!("the bytes are not UTF-8 at {place}"),
        ))
    })?;
    let mut parser = Parser {
        text,
        at: 0,
        nodes: 0,
        path: String::new(),
        doubles: Vec::new(),
    };
    match parser.document() {
        Ok(node) => Ok((node, doubles(bytes, parser.doubles))),
        Err(fault) => Err(Box::new(describe(&parser, &fault))),
    }
}

/// A key that its object had before.
struct Double {
    offset: usize,
    path: String,
    key: String,
}

fn doubles(bytes: &[u8], mut doubles: Vec<Double>) -> Vec<Issue> {
    doubles.sort_by_key(|double| double.offset);
    let places = Place::of_all(bytes, doubles.iter().map(|double| double.offset));
    let said = |(double, place): (&Double, Place)| {
        let message = format!("`{}` stands twice in one object, again at {place}", double.key);
        issue(
            Code::DuplicateKey,
            &double.path,
            &place.to_string(),
            "each key once",
            &message,
        )
    };
    doubles.iter().zip(places).map(said).collect()
}

fn describe(parser: &Parser<'_>, fault: &Fault) -> Issue {
    let place = Place::of(parser.text.as_bytes(), fault.offset);
    let rest = parser.text.get(fault.offset..).unwrap_or_default();
    let found = match rest.lines().next().map(str::trim_end) {
        None => "the end of the text".to_owned(),
        Some(line) => cut(line),
    };
    let message = match fault.code {
        Code::TooDeep => format!("lists and objects are nested too deep at {place}"),
        Code::TooLarge => "the document has too many values".to_owned(),
        _ => format!("the text is not JSON at {place}: expected {}", fault.expected),
    };
    issue(fault.code, &parser.path, &found, fault.expected, &message)
}

fn issue(code: Code, path: &str, found: &str, allowed: &str, message: &str) -> Issue {
    Issue {
        code,
        path: path.to_owned(),
        wall: String::new(),
        found: found.to_owned(),
        allowed: allowed.to_owned(),
        message: message.to_owned(),
    }
}

struct Parser<'a> {
    text: &'a str,
    at: usize,
    nodes: usize,
    /// JSON pointer of the value that is being read.
    path: String,
    doubles: Vec<Double>,
}

impl<'a> Parser<'a> {
    fn document(&mut self) -> Result<Node<'a>, Fault> {
        // A byte order mark is no part of the text.
        if self.text.starts_with('\u{feff}') {
            self.at = '\u{feff}'.len_utf8();
        }
        self.space();
        let node = self.value(0)?;
        self.space();
        if self.at < self.text.len() {
            self.path.clear();
            return Err(self.expected("the end of the text"));
        }
        Ok(node)
    }

    const fn expected(&self, what: &'static str) -> Fault {
        Fault::new(self.at, Code::Syntax, what)
    }

    fn peek(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or_default()
    }

    fn space(&mut self) {
        while matches!(self.peek(), Some(b' ' | b'\t' | b'\n' | b'\r')) {
            self.at += 1;
        }
    }

    /// Steps over this byte if it is next.
    fn take(&mut self, byte: u8) -> bool {
        let next = self.peek() == Some(byte);
        self.at += usize::from(next);
        next
    }

    fn value(&mut self, depth: usize) -> Result<Node<'a>, Fault> {
        self.nodes += 1;
        if self.nodes > NODES_MOST {
            return Err(Fault::new(self.at, Code::TooLarge, "at most 8 million values"));
        }
        let offset = self.at;
        let kind = match self.peek() {
            Some(b'{' | b'[') if depth >= DEPTH_MOST => {
                return Err(Fault::new(
                    self.at,
                    Code::TooDeep,
                    "at most 32 lists and objects in each other",
                ));
            }
            Some(b'{') => self.object(depth + 1)?,
            Some(b'[') => self.list(depth + 1)?,
            Some(b'"') => Kind::Text(self.text()?),
            Some(b'-' | b'0'..=b'9') if !self.rest().starts_with("-I") => self.number()?,
            _ => self.word()?,
        };
        Ok(Node { kind, offset })
    }

    fn text(&mut self) -> Result<Cow<'a, str>, Fault> {
        let (text, after) = string(self.text, self.at + 1)?;
        self.at = after;
        Ok(text)
    }

    fn word(&mut self) -> Result<Kind<'a>, Fault> {
        let rest = self.rest();
        for (word, kind) in [
            ("true", Kind::Flag(true)),
            ("false", Kind::Flag(false)),
            ("null", Kind::Null),
            // No JSON, but what many programs write for such doubles: the field that it stands in refuses it by name.
            ("NaN", Kind::Number(Cow::Borrowed("NaN"))),
            ("Infinity", Kind::Number(Cow::Borrowed("Infinity"))),
            ("-Infinity", Kind::Number(Cow::Borrowed("-Infinity"))),
        ] {
            if rest.starts_with(word) {
                self.at += word.len();
                return Ok(kind);
            }
        }
        Err(self.expected("a value"))
    }

    fn number(&mut self) -> Result<Kind<'a>, Fault> {
        let start = self.at;
        self.take(b'-');
        if !self.take(b'0') {
            self.digits()?;
        }
        if self.take(b'.') {
            self.digits()?;
        }
        if self.take(b'e') || self.take(b'E') {
            if !self.take(b'+') {
                self.take(b'-');
            }
            self.digits()?;
        }
        if self.peek().is_some_and(|byte| byte.is_ascii_alphanumeric()) {
            return Err(self.expected("the end of the number"));
        }
        let number = self.text.get(start..self.at).unwrap_or_default();
        Ok(Kind::Number(Cow::Borrowed(number)))
    }

    fn digits(&mut self) -> Result<(), Fault> {
        let start = self.at;
        while matches!(self.peek(), Some(b'0'..=b'9')) {
            self.at += 1;
        }
        if self.at == start {
            Err(self.expected("a digit"))
        } else {
            Ok(())
        }
    }

    fn list(&mut self, depth: usize) -> Result<Kind<'a>, Fault> {
        self.at += 1;
        let mut items = Vec::new();
        self.space();
        if self.take(b']') {
            return Ok(Kind::List(items));
        }
        loop {
            self.space();
            let outer = self.path.len();
            self.enter(&items.len().to_string());
            items.push(self.value(depth)?);
            self.path.truncate(outer);
            self.space();
            if self.take(b']') {
                return Ok(Kind::List(items));
            }
            if !self.take(b',') {
                return Err(self.expected("`,` or `]`"));
            }
        }
    }

    fn object(&mut self, depth: usize) -> Result<Kind<'a>, Fault> {
        self.at += 1;
        let mut entries = Vec::new();
        let mut offsets = Vec::new();
        self.space();
        if !self.take(b'}') {
            loop {
                self.space();
                offsets.push(self.at);
                entries.push(self.entry(depth)?);
                self.space();
                if self.take(b'}') {
                    break;
                }
                if !self.take(b',') {
                    return Err(self.expected("`,` or `}`"));
                }
            }
        }
        self.find_doubles(&entries, &offsets);
        Ok(Kind::Object(entries))
    }

    fn entry(&mut self, depth: usize) -> Result<(Cow<'a, str>, Node<'a>), Fault> {
        if self.peek() != Some(b'"') {
            return Err(self.expected("a key in quotes"));
        }
        let key = self.text()?;
        self.space();
        if !self.take(b':') {
            return Err(self.expected("`:`"));
        }
        self.space();
        let outer = self.path.len();
        self.enter(&pointer_part(&key));
        let node = self.value(depth)?;
        self.path.truncate(outer);
        Ok((key, node))
    }

    fn enter(&mut self, part: &str) {
        self.path.push('/');
        self.path.push_str(part);
    }

    /// Sorting keeps this quick for any number of keys.
    fn find_doubles(&mut self, entries: &[(Cow<'a, str>, Node<'a>)], offsets: &[usize]) {
        let mut sorted: Vec<(&str, usize)> = entries
            .iter()
            .zip(offsets)
            .map(|((key, _), offset)| (key.as_ref(), *offset))
            .collect();
        sorted.sort_unstable();
        for pair in sorted.windows(2) {
            let [(first, _), (second, offset)] = pair else {
                continue;
            };
            if first == second && self.doubles.len() < ISSUES_MOST {
                self.doubles.push(Double {
                    offset: *offset,
                    path: format!("{}/{}", self.path, pointer_part(first)),
                    key: cut(first),
                });
            }
        }
    }
}
