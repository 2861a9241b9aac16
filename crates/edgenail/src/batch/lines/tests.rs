use super::*;
use std::io::{BufReader, ErrorKind};

fn read(text: &str) -> Vec<String> {
    json_lines(text.as_bytes())
        .map(|line| String::from_utf8(line).unwrap())
        .collect()
}

#[test]
fn blank_lines_are_none_and_line_ends_are_not_part_of_a_line() {
    assert_eq!(read("{}\n[1]\r\n\n  \n3"), ["{}", "[1]", "3"]);
    assert_eq!(read(""), Vec::<String>::new());
}

#[test]
fn a_line_that_is_too_long_is_cut_off_one_byte_past_the_limit_and_the_next_one_is_whole() {
    for (first, read) in [("12345", "12345"), ("123456", "123456"), ("1234567890", "123456")] {
        let text = format!("{first}\nnext\n");
        let mut lines = Lines {
            reader: BufReader::with_capacity(3, text.as_bytes()),
            most: 5,
            failure: None,
        };
        assert_eq!(lines.next().unwrap(), read.as_bytes());
        assert_eq!(lines.next().unwrap(), b"next");
        assert!(lines.next().is_none());
    }
}

/// Gives one line, then fails.
struct Broken(bool);

impl Read for Broken {
    fn read(&mut self, buffer: &mut [u8]) -> Result<usize, Error> {
        if std::mem::replace(&mut self.0, true) {
            return Err(Error::from(ErrorKind::ConnectionReset));
        }
        buffer[..3].copy_from_slice(b"{}\n");
        Ok(3)
    }
}

#[test]
fn reading_that_fails_ends_the_lines_and_is_told() {
    let mut lines = json_lines(BufReader::new(Broken(false)));
    assert_eq!(lines.next().unwrap(), b"{}");
    assert!(lines.next().is_none());
    assert_eq!(lines.failure().unwrap().kind(), ErrorKind::ConnectionReset);
    assert!(lines.next().is_none());
}
