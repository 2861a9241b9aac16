//! Formulas of derivations, evaluated from their text: the proof that a step says what was computed.

use super::derivation::Step;

/// Evaluates a step's formula over its inputs.
///
/// # Errors
/// What is wrong with the formula: a symbol that no input has, or text that is no formula.
pub fn evaluate(step: &Step) -> Result<f64, String> {
    let mut reader = Reader {
        step,
        rest: step.formula.as_str(),
    };
    let value = reader.sum()?;
    reader.skip();
    if reader.rest.is_empty() {
        Ok(value)
    } else {
        Err(format!("{}: `{}` is left over", step.formula, reader.rest))
    }
}

struct Reader<'s> {
    step: &'s Step,
    rest: &'s str,
}

impl Reader<'_> {
    fn skip(&mut self) {
        self.rest = self.rest.trim_start();
    }

    fn eat(&mut self, mark: char) -> bool {
        self.skip();
        match self.rest.strip_prefix(mark) {
            Some(rest) => {
                self.rest = rest;
                true
            }
            None => false,
        }
    }

    fn sum(&mut self) -> Result<f64, String> {
        let mut value = self.product()?;
        loop {
            if self.eat('+') {
                value += self.product()?;
            } else if self.eat('-') {
                value -= self.product()?;
            } else {
                return Ok(value);
            }
        }
    }

    fn product(&mut self) -> Result<f64, String> {
        let mut value = self.power()?;
        loop {
            if self.eat('*') {
                value *= self.power()?;
            } else if self.eat('/') {
                value /= self.power()?;
            } else {
                return Ok(value);
            }
        }
    }

    fn power(&mut self) -> Result<f64, String> {
        if self.eat('-') {
            return Ok(-self.power()?);
        }
        let base = self.atom()?;
        if self.eat('^') {
            return Ok(libm::pow(base, self.power()?));
        }
        Ok(base)
    }

    fn atom(&mut self) -> Result<f64, String> {
        if self.eat('(') {
            let value = self.sum()?;
            return if self.eat(')') {
                Ok(value)
            } else {
                Err(format!("{}: a parenthesis is not closed", self.step.formula))
            };
        }
        let end = self
            .rest
            .find(|mark: char| !mark.is_ascii_alphanumeric() && mark != '_' && mark != '.')
            .unwrap_or(self.rest.len());
        let (word, rest) = self.rest.split_at(end);
        self.rest = rest;
        if word.starts_with(|mark: char| mark.is_ascii_digit()) {
            return word.parse().map_err(|error| format!("{word}: {error}"));
        }
        if matches!(word, "sqrt" | "min" | "max") && self.eat('(') {
            return self.function(word);
        }
        let input = self.step.inputs.iter().find(|input| input.symbol == word);
        input
            .map(|input| input.value)
            .ok_or_else(|| format!("{}: `{word}` is no input", self.step.formula))
    }

    fn function(&mut self, name: &str) -> Result<f64, String> {
        let mut value = self.sum()?;
        while self.eat(',') {
            let other = self.sum()?;
            value = if name == "min" {
                value.min(other)
            } else {
                value.max(other)
            };
        }
        if !self.eat(')') {
            return Err(format!("{}: a parenthesis is not closed", self.step.formula));
        }
        Ok(if name == "sqrt" { value.sqrt() } else { value })
    }
}
